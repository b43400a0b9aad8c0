"""From a pasted lift table to rockers, clearance and a plain stop, all without a signal."""

import re

from playwright.sync_api import expect

from e2e.browser import Phone
from e2e.flow import go, open_app, wait_until_kept, wait_until_offline_ready
from e2e.lift_flow import enter_clearance, lobe, paste, table, wait_for
from e2e.service import Service
from midspan.core import run


def test_a_table_rockers_clearance_and_a_stop_without_a_signal(
    phone: Phone, service: Service
) -> None:
    page = open_app(phone, service)
    wait_until_offline_ready(page)
    phone.lose_network()

    # A table pasted, with a row that is none: told, and the rest is taken.
    text = table(108)
    paste(page, "Intake", text + "\noops;1")
    wait_for(page, "sound")
    asked = {"valve": "intake", "lobe": lobe(text), "heights_mm": [1.27]}
    exact = run("lift", asked)["durations"][0]["duration_deg"]["value"]
    shown = float(page.get_by_test_id("hero-value").inner_text())
    assert abs(shown - exact) < 0.6
    # It names its lobe, here and in the list of what was saved.
    expect(page.locator(".hero-what")).to_contain_text("Intake lobe: duration at")
    expect(page.get_by_text("1 row left out")).to_be_visible()
    expect(page.get_by_text("Row 67", exact=True)).to_be_visible()

    # A row keyed in joins the text; killed and opened again, nothing is lost.
    page.get_by_label("Angle", exact=True).fill("270")
    page.get_by_label("Lift", exact=True).fill("0.01")
    page.get_by_role("button", name="Add this row").click()
    page.get_by_label("Angle", exact=True).fill("27")
    exhaust = table(248, "\t")  # 112 before TDC, once more round
    paste(page, "Exhaust", exhaust)
    expect(page.locator(".hero-what")).to_contain_text("Exhaust lobe: duration at")
    wait_until_kept(page, exhaust)
    phone.kill()
    phone.start()
    phone.lose_network()
    page = open_app(phone, service)
    go(page, "lift")
    page.get_by_role("button", name="Intake lobe").click()
    kept = page.get_by_label("Table: angle and lift, a row a line")
    expect(kept).to_have_value(text + "\noops;1\n270;0.01\n")
    expect(page.get_by_label("Angle", exact=True)).to_have_value("27")
    wait_for(page, "sound")

    # A wheel that slipped is named.
    rows = text.split("\n")
    cut = len(rows) // 3
    slipped = [f"{int(a) + 5};{x}" for a, x in (row.split(";") for row in rows[cut:])]
    kept.fill("\n".join(rows[:cut] + slipped))
    wait_for(page, "faults")
    expect(page.get_by_text("Fix the wheel")).to_be_visible()
    kept.fill(text)
    wait_for(page, "sound")

    # 1.5 and 1.6 side by side.
    go(page, "rockers")
    wait_for(page, "move")
    rockers = [{"label": r, "rocker_ratio": float(r)} for r in ("1.5", "1.6")]
    found = run("rockers", {"intake": lobe(text), "rockers": rockers})["rockers"][1]
    moved = float(page.get_by_test_id("hero-value").inner_text())
    assert abs(moved - found["move"]["cam_moved_deg"]) < 0.06
    expect(page.get_by_role("img", name=re.compile("^Intake: valve lift"))).to_be_visible()
    page.get_by_role("button", name="Order of tests").click()
    wait_for(page, "least")
    page.get_by_role("checkbox", name=re.compile("^1. Rocker 1.5, cam as now")).check()

    # Enough clearance, saved; then so little that it is a stop, whatever limit is typed.
    enter_clearance(page, "0 7.0\n10 7.9\n-10 7.9")
    wait_for(page, "within")
    page.get_by_role("button", name="Save reading").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    enter_clearance(page, "0 0.4")
    wait_for(page, "would-touch")
    expect(page.get_by_text("Do not turn the engine at this setting")).to_be_visible()
    page.get_by_text("Limit from the maker's manual").click()
    page.get_by_label("Lower limit", exact=True).fill("0.1 mm")
    page.get_by_label("Where it is printed").fill("a note")
    page.wait_for_timeout(500)
    wait_for(page, "would-touch")

    page.get_by_role("button", name="Compression").click()
    page.get_by_label("Static compression ratio").fill("10")
    page.get_by_label("Intake closes, after BDC").fill("62")
    wait_for(page, "told")
    assert page.get_by_test_id("hero-value").inner_text().startswith("8.")


HELD = """() => {
  const read = File.prototype.text;
  const held = new Promise((go) => { globalThis.letGo = go; });
  File.prototype.text = async function () { await held; return read.call(this); };
}"""


def test_what_is_typed_while_a_file_is_read_stays(phone: Phone, service: Service) -> None:
    page = open_app(phone, service)
    paste(page, "Intake", "10;1")
    page.evaluate(HELD)
    rows = page.get_by_label("Table: angle and lift, a row a line")
    page.locator(".file-button input").set_input_files(
        {"name": "lift.csv", "mimeType": "text/csv", "buffer": table(108).encode()}
    )
    # The table is about to be another, so it takes nothing; the row beside it does.
    expect(rows).not_to_be_editable()
    page.get_by_label("Angle", exact=True).fill("270")
    page.get_by_label("Lift", exact=True).fill("0.01")
    page.evaluate("letGo()")
    expect(rows).to_have_value(table(108))
    expect(rows).to_be_editable()
    expect(page.get_by_label("Angle", exact=True)).to_have_value("270")
    page.get_by_role("button", name="Add this row").click()
    expect(rows).to_have_value(table(108) + "\n270;0.01\n")

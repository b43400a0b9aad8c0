"""From a pasted lift table to rockers, clearance and a plain stop, all without a signal."""

import re
from typing import Any

from playwright.sync_api import Page, expect

from core.lobes import polynomial
from e2e.browser import Phone
from e2e.flow import go, open_app, wait_until_offline_ready
from e2e.service import Service
from midspan.core import run

HALF = 130.0


def table(centre: int, sign: str = ";") -> str:
    """A lift table as it comes out of a spreadsheet, its wheel going round through 360."""
    lift = polynomial(8.0, HALF)
    rows = [(a % 360, float(lift(a - centre))) for a in range(centre - 160, centre + 161, 5)]
    return f"angle{sign}lift\n" + "\n".join(f"{a}{sign}{x:.2f}" for a, x in rows)


def wait_for(page: Page, outcome: str) -> None:
    """Wait for this outcome."""
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", outcome)


def lobe(text: str) -> dict[str, Any]:
    """The question that the bench asks of a table."""
    return {"text": text, "lift_unit": "mm", "angle_of": "crank", "wheel": "to-360",
            "lift_of": "lobe", "zero": "tdc"}  # fmt: skip


def paste(page: Page, which: str, text: str) -> None:
    """Put a table into the lift bench."""
    go(page, "lift")
    page.get_by_role("button", name=f"{which} lobe").click()
    page.get_by_label("Table: angle and lift, a row a line").fill(text)


def enter_clearance(page: Page, travel: str) -> None:
    """Enter the crank and how far the seated intake valve goes to the piston."""
    go(page, "clearance")
    page.get_by_role("button", name="Intake valve").click()
    page.get_by_label("Crank angle and valve travel, a row a line").fill(travel)
    page.get_by_label("Unit of the travels").select_option("mm")
    page.get_by_label("Stroke", exact=True).fill("88.4 mm")
    page.get_by_label("Rod length", exact=True).fill("144.8 mm")


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
    expect(page.get_by_text("1 rows left out")).to_be_visible()
    expect(page.get_by_text("Row 67", exact=True)).to_be_visible()

    # A row keyed in joins the text; killed and opened again, nothing is lost.
    page.get_by_label("Angle", exact=True).fill("270")
    page.get_by_label("Lift", exact=True).fill("0.01")
    page.get_by_role("button", name="Add this row").click()
    page.get_by_label("Angle", exact=True).fill("27")
    paste(page, "Exhaust", table(248, "\t"))  # 112 before TDC, once more round
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

"""A dyno session without a signal: a file with a bad row, a run typed, a kill, and the service."""

import re
from typing import Any

from playwright.sync_api import Page, expect

from dyno_files import close, rows, written
from e2e.browser import Phone
from e2e.flow import go, open_app, wait_until_kept, wait_until_offline_ready
from e2e.service import Service
from e2e.test_faults import STATE
from e2e.test_screens import SMALL_TARGETS, STICKS_OUT, TARGET_PX, violations
from midspan.core import run

LABEL = "Slack, tight against free"
BAD = "kaputt;;;"


def table() -> str:
    """Two pulls with a decimal comma, and one row that nobody can read."""
    lines = written([rows(), rows(3000, 6500)]).split("\n")
    lines.insert(40, BAD)
    return "\n".join(lines)


def make_session(page: Page) -> None:
    """Two settings with their movements, corrected by one standard."""
    go(page, "sessions")
    page.get_by_role("link", name="New session").click()
    page.get_by_label("What is compared", exact=True).fill(LABEL)
    page.get_by_label("Correct all runs by").select_option("iso-1585")
    page.get_by_label("A: what it is", exact=True).fill("As built")
    page.get_by_label("A: mid-span movement, cold", exact=True).fill("2.5 mm")
    page.get_by_label("B: what it is", exact=True).fill("Freed")
    page.get_by_label("B: mid-span movement, cold", exact=True).fill("5.5 mm")
    page.get_by_role("button", name="Save the session").click()
    expect(page.get_by_role("heading", name=LABEL)).to_be_visible()


def fill_air(page: Page) -> None:
    """The air of the first run beside its file, in the units of the page.

    The file tells a temperature: it is used and shown; what was typed comes back without it.
    """
    # 24.5 degC are 76.1 degF.
    degrees = page.get_by_label("Air temperature at the inlet", exact=True)
    column = page.get_by_label("Column Lufttemperatur [°C] is")
    expect(degrees).to_have_value("76.1")
    column.select_option("")
    degrees.fill("27.5 C")
    column.select_option("air")
    expect(degrees).to_have_value("76.1")
    expect(degrees).not_to_be_editable()
    expect(page.get_by_text("Entered here: 27.5 C, kept but not used")).to_be_visible()
    column.select_option("")
    expect(degrees).to_have_value("27.5 C")
    column.select_option("air")
    expect(degrees).to_have_value("76.1")
    page.get_by_label("Barometer: unit").select_option("hPa")
    page.get_by_label("Barometer", exact=True).fill("982")
    page.get_by_label("Relative humidity", exact=True).fill("45")
    page.get_by_label("Altitude of the dyno", exact=True).fill("850 ft")


def sound(page: Page) -> None:
    """Nothing of the screen breaks what every screen keeps to."""
    page.evaluate("scrollTo(0, 0)")  # nothing lies under the bars by chance
    assert page.evaluate(STICKS_OUT) == []
    assert page.evaluate(SMALL_TARGETS, TARGET_PX) == []
    assert violations(page) == []


def test_a_session_by_file_and_by_hand_through_a_kill(phone: Phone, service: Service) -> None:
    page = open_app(phone, service)
    wait_until_offline_ready(page)
    phone.lose_network()
    make_session(page)
    sound(page)

    # A file: how it was taken is shown; the bad row with its line; each pull gets its setting.
    page.get_by_role("link", name="Bring a file").click()
    file: Any = {"name": "cell.csv", "mimeType": "text/csv", "buffer": table().encode()}
    page.locator("input[type=file]").set_input_files(file)
    expect(page.get_by_role("heading", name="2 pulls found")).to_be_visible()
    expect(page.get_by_label("Decimal sign", exact=True)).to_have_value("comma")
    expect(page.get_by_label("Unit of Drehmoment [Nm]")).to_have_value("N m")
    expect(page.get_by_text("Line 41")).to_be_visible()
    expect(page.get_by_text(BAD)).to_be_visible()
    page.get_by_label("Pull 1: setting").select_option("A")
    page.get_by_label("Pull 2: setting").select_option("B")
    fill_air(page)
    sound(page)
    page.get_by_role("button", name="Save 2 runs").click()
    expect(page.get_by_text("Run 2", exact=True)).to_be_visible()

    # As read and as corrected stand side by side, as the core gives them on the service.
    layout = run("dyno-table", {"step": "guess", "text": table()})["layout"]
    done = run("dyno-table", {"step": "read", "text": table(), "layout": layout})["done"]
    peaks = done["pulls"][0]["peaks"]
    air = {"air_temperature_c": 24.5, "barometer_kpa": 98.2, "pressure_kind": "station",
           "relative_humidity_percent": 45}  # fmt: skip
    asked = {"conditions": air, "power_kw": peaks["power_kw"]}
    factor = {s["standard"]: s["factor"] for s in run("correction", asked)["standards"]}
    first = page.locator("li.session-run").first
    expect(first).to_contain_text(f"factor {factor['iso-1585']:.4f}")
    expect(first).to_contain_text("As read")
    expect(first).to_contain_text("By ISO 1585 form")

    # A run half typed, the browser killed: it is all there again, and its air was copied visibly.
    page.get_by_role("link", name="Type a run").click()
    expect(page.get_by_text("Copied from run 2")).to_be_visible()
    page.get_by_role("radio", name="A: As built").check()
    page.get_by_label("Peak power", exact=True).fill("251.5 kW")
    wait_until_kept(page, "251.5 kW")
    phone.kill()
    phone.start()
    phone.lose_network()
    page = open_app(phone, service)
    go(page, "sessions")
    page.get_by_role("link", name=re.compile(LABEL)).click()
    page.get_by_role("link", name="Type a run").click()
    expect(page.get_by_label("Peak power", exact=True)).to_have_value("251.5 kW")
    expect(page.get_by_role("radio", name="A: As built")).to_be_checked()

    # Figures that the dyno had corrected are refused with the air of another run.
    page.get_by_label("What the dyno shows").select_option("j607")
    expect(page.get_by_text("this run's own conditions", exact=False).first).to_be_visible()
    expect(page.get_by_role("button", name="Save the run")).to_be_disabled()
    page.get_by_label("What the dyno shows").select_option("observed")
    page.get_by_role("button", name="I have read it again").click()
    sound(page)
    page.get_by_role("button", name="Save the run").click()
    expect(page.get_by_text("Run 3", exact=True)).to_be_visible()
    sound(page)

    # With a signal everything goes to the service, in order, with the row that was left out.
    phone.regain_network()
    expect(page.get_by_test_id(STATE)).to_have_attribute("data-state", "server", timeout=60_000)
    phone.kill()
    (session,) = service.get("/api/v1/sessions")["items"]
    assert [one["movement_mm"] for one in session["settings"]] == [2.5, 5.5]
    kept = sorted(service.get("/api/v1/runs")["items"], key=lambda one: one["place"])
    assert [(one["place"], one["setting"]) for one in kept] == [(1, "A"), (2, "B"), (3, "A")]
    assert kept[0]["source"]["bad_rows"] == done["bad_rows"]
    assert close(kept[0]["curve"], done["pulls"][0]["curve"]) == []
    assert close(kept[0]["peaks"], peaks) == []
    assert kept[2]["peaks"] == {"power_kw": 251.5}
    assert kept[2]["figures_are"] == "observed"

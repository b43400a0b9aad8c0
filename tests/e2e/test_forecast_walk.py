"""When the slack will be where, beside the engine: offline first, then with the shop."""

import json
import re
import time
from typing import Any

from playwright.sync_api import Locator, Page, expect

from e2e.browser import Phone
from e2e.flow import READING, enter_drive, go, open_app, wait_until_offline_ready
from e2e.running_in import kept_log, make_plan
from e2e.service import Service
from e2e.test_running_in import check

KM_PER_MILE = 1.609344
RAN = "Run since the first start"
# Movement as typed, and how far the chain had run.
READINGS = (("5.5 mm", "0 km"), ("8.5 mm", "2000 km"), ("9.2 mm", "300 h"))

# What stands large and what stands in the table, at every change of the page.
WATCH = """() => {
  globalThis.pairs = [];
  const look = () => pairs.push([
    document.querySelector("[data-testid=hero-value]").textContent,
    document.querySelector("[data-event=reaches-limit] td").textContent,
  ]);
  look();
  new MutationObserver(() => requestAnimationFrame(look)).observe(
    document.body, { subtree: true, childList: true, characterData: true });
}"""


def save_reading(page: Page, typed: str, ran: str) -> None:
    """Save a slack reading with how far the chain has run."""
    go(page, "slack")
    page.get_by_label(READING, exact=True).fill(typed)
    if not page.get_by_label(RAN, exact=True).is_visible():
        page.get_by_text("How far it has run").click()
    page.get_by_label(RAN, exact=True).fill(ran)
    save = page.get_by_role("button", name="Save reading")
    expect(save).to_be_enabled()
    save.click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    expect(page.get_by_label(RAN, exact=True)).to_have_value("")


def full_state(page: Page, state: str) -> None:
    """Wait until the service's part has come so far."""
    expect(page.get_by_test_id("full-state")).to_have_attribute("data-state", state)


def happens(page: Page, event: str) -> Locator:
    """What is shown of one of the three things to come."""
    return page.locator(f".happens[data-event={event}]")


def shown_as(hours: float, per_hour: float) -> str:
    """A running as the screen writes it: three figures, thousands apart."""
    value = hours * per_hour
    step = 10 ** max(0, len(str(int(value))) - 3)
    return f"{round(value / step) * step:,.0f}".replace(",", "\u202f")


def kept_readings(page: Page) -> list[dict[str, Any]]:
    """The readings as the phone keeps them, oldest first."""
    found: list[dict[str, Any]] = page.evaluate(
        """() => new Promise((done, no) => {
          const open = indexedDB.open("midspan");
          open.onerror = () => no(open.error);
          open.onsuccess = () => {
            const ask = open.result.transaction("readings").objectStore("readings").getAll();
            ask.onsuccess = () => { open.result.close(); done(ask.result); };
          };
        })"""
    )
    return found


def question(page: Page) -> dict[str, Any]:
    """The question that the three readings and the plan make, put together here by hand."""
    kept = kept_readings(page)
    measured = [one["result"]["measured"] for one in kept]
    ran = [
        {"distance_since_start_km": 0},
        {"distance_since_start_km": 2000},
        {"running_since_start_h": 300},
    ]
    return {
        "drive": kept[-1]["input"]["drive"],
        "readings": [
            {
                "quantity": "movement_mm",
                "movement_mm": one["value"],
                "standard_uncertainty_mm": one["standard_uncertainty"],
            }
            | at
            for one, at in zip(measured, ran, strict=True)
        ],
        "oil_kind": "running-in",
    }


def test_readings_saved_offline_are_forecast_and_the_posterior_arrives_and_stays(
    service: Service, phone: Phone
) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    make_plan(page)
    wait_until_offline_ready(page)
    phone.lose_network()
    for typed, ran in READINGS:
        save_reading(page, typed, ran)
    noted = [
        (one.get("distance_since_start_km"), one.get("running_since_start_h"))
        for one in kept_readings(page)
    ]
    assert noted == [(0, None), (2000, None), (None, 300)]

    go(page, "forecast")
    page.get_by_role("group", name="Unit of Count the running in").get_by_text("h").click()
    full_state(page, "waiting")
    expect(page.get_by_text("Laplace approximation")).to_be_visible()
    expect(page.get_by_text("no engine of this shop")).to_be_visible()
    asked = question(page)
    here = json.loads(
        page.evaluate(
            "async (asked) => await midspan.dispatch('forecast', asked)", json.dumps(asked)
        )
    )["result"]
    limit = next(e for e in here["events"] if e["event"] == "reaches-limit")
    median = shown_as(limit["at_running_h"]["median"], 1)
    # The plan's 200 km a week at 50 km/h: each has its day.
    expect(happens(page, "reaches-limit").locator("td").first).to_contain_text(f"{median} h")
    expect(happens(page, "reaches-limit").locator("td").first).to_contain_text(
        re.compile(r"20\d\d|decades off")
    )
    assert page.get_by_test_id("hero-value").inner_text() == median
    expect(page.get_by_role("img", name=re.compile("Slack over the running"))).to_be_visible()

    # One left out: another question, another answer; and back.
    page.get_by_role("checkbox").nth(2).uncheck()
    expect(page.get_by_test_id("hero-value")).not_to_have_text(median)
    page.get_by_role("checkbox").nth(2).check()
    expect(page.get_by_test_id("hero-value")).to_have_text(median)

    # Number and table change from the phone's answer to the service's in one step.
    page.evaluate(WATCH)
    phone.regain_network()
    page.evaluate("dispatchEvent(new Event('online'))")
    full_state(page, "here")
    expect(page.get_by_text("Worked out by the service: the full posterior.")).to_be_visible()
    there = service.calculate_lab("forecast", asked)
    told = next(e for e in there["events"] if e["event"] == "reaches-limit")["at_running_h"]
    full = shown_as(told["median"], 1)
    assert page.get_by_test_id("hero-value").inner_text() == full != median
    expect(happens(page, "reaches-limit").locator("td").first).to_contain_text(f"{full} h")
    seen = {(number, table.split(" ")[0]) for number, table in page.evaluate("pairs")}
    assert seen == {(median, median), (full, full)}
    readings = service.get("/api/v1/readings")["items"]
    assert [one["running_since_start_h"] for one in readings][-1] == 300

    page.get_by_role("button", name="Put it into the plan's calendar").click()
    expect(page.get_by_text("In the plan: measure at")).to_be_visible()
    end = time.monotonic() + 30
    while kept_log(page)[-1]["kind"] != "re-check":
        assert time.monotonic() < end, "the re-check is not in the log"
        page.wait_for_timeout(50)

    address = page.url
    phone.kill()
    service.kill()
    phone.start()
    phone.lost_network = True
    page = phone.page()
    page.goto(address)
    full_state(page, "here")
    assert page.get_by_test_id("hero-value").inner_text() == full
    page.get_by_role("link", name="Open the plan").click()
    expect(page.get_by_text("Measure the slack: here a reading tells most")).to_be_visible()


def test_with_no_readings_it_says_how_little_and_a_distance_can_follow(
    service: Service, phone: Phone
) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    go(page, "forecast")
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", "not-measured")
    expect(page.get_by_text("How little: the limit may come anywhere from")).to_be_visible()
    expect(page.get_by_text("Nothing was measured")).to_be_visible()
    expect(page.get_by_text("Now: a first reading.")).to_be_visible()
    expect(page.get_by_text("passed")).to_have_count(0)
    check(page, "forecast, nothing measured")
    go(page, "slack")
    page.get_by_label(READING, exact=True).fill("8.5 mm")
    page.get_by_role("button", name="Save reading").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    go(page, "forecast")
    # How far it had run was not noted with it: it is told here, and then it counts.
    expect(page.get_by_role("checkbox")).to_be_disabled()
    page.get_by_label(re.compile("^Run since the first start, at")).fill("500 mi")
    expect(page.get_by_role("checkbox")).to_be_checked()
    expect(page.get_by_text("One reading tells where the chain stands")).to_be_visible()
    full_state(page, "here")
    page.get_by_role("button", name="Save forecast").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    (kept,) = [one for one in kept_readings(page) if one["calc"] == "forecast"]
    (reading,) = kept["input"]["readings"]
    assert abs(reading["distance_since_start_km"] - 500 * KM_PER_MILE) < 1e-9
    check(page, "forecast, one reading")
    page.get_by_role("link", name="Open it").click()
    expect(page.get_by_role("heading", name="When the slack will be where")).to_be_visible()
    check(page, "forecast, saved")

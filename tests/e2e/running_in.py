"""What a mechanic does with a plan of running in, by the labels on the screen."""

import time
from typing import Any

from playwright.sync_api import Page, expect

from e2e.flow import go

BEFORE_START = 5  # steps to tick before the timer of a flat-tappet cam


def make_plan(page: Page, follower: str = "Flat tappets") -> None:
    """Make a plan for a tight chain on running-in oil."""
    go(page, "plan")
    page.get_by_role("link", name="New plan").click()
    page.get_by_role("radio", name="Running-in", exact=True).check()
    page.get_by_label("SAE grade", exact=True).fill("10W-40")
    page.get_by_role("radio", name=follower, exact=True).check()
    page.get_by_label("Mid-span movement", exact=True).fill("2.0 mm")
    page.get_by_label("Use a week", exact=True).fill("200 km")
    page.get_by_role("button", name="Make the plan").click()
    expect(page.get_by_role("link", name="Start the plan")).to_be_visible()


def to_the_timer(page: Page) -> None:
    """Follow the plan up to its first timed step."""
    page.get_by_role("link", name="Start the plan").click()
    tick_to_the_timer(page)


def tick_to_the_timer(page: Page) -> None:
    """Tick every step before the first timed one."""
    for number in range(1, BEFORE_START + 1):
        expect(page.get_by_text(f"Step {number} of")).to_be_visible()
        page.get_by_role("button", name="Tick it off").click()
    expect(page.get_by_role("heading", name="Run the cam in")).to_be_visible()


def left_s(page: Page) -> int:
    """The time left that the screen shows [s]."""
    total = 0
    for part in page.get_by_test_id("left").inner_text().split(":"):
        total = 60 * total + int(part)
    return total


# What the screen's timer counts unrounded, when it did, and the time now [ms]: page's clock.
COUNTED = (
    """(at) => ({ run: Number(at.dataset.runMs), at: Number(at.dataset.at), now: Date.now() })"""
)
FRESH_MS = 500


def run_s(page: Page) -> float:
    """The time run as the screen counts it [s], not rounded, at the moment of asking.

    What is shown is older by up to a tick; one that is older by more has stopped.
    """
    end = time.monotonic() + 30
    while True:
        seen = page.get_by_test_id("left").evaluate(COUNTED)
        age = seen["now"] - seen["at"]
        if 0 <= age <= FRESH_MS:
            return float(seen["run"] + age) / 1000
        assert time.monotonic() < end, f"the timer was last seen {age} ms ago"
        page.wait_for_timeout(20)


def kept_log(page: Page) -> list[dict[str, Any]]:
    """The log of the newest plan, as the phone keeps it."""
    found: list[dict[str, Any]] = page.evaluate(
        """() => new Promise((done, no) => {
          const open = indexedDB.open("midspan");
          open.onerror = () => no(open.error);
          open.onsuccess = () => {
            const ask = open.result.transaction("plans").objectStore("plans").getAll();
            ask.onsuccess = () => { open.result.close(); done(ask.result.at(-1).log); };
          };
        })"""
    )
    return found

"""Measure the app with Lighthouse: its production build, the real service, a throttled phone.

`.venv/bin/python tests/e2e/lighthouse.py [SCREEN ...]`, after `python3 api/start.py test` has set
up. It takes minutes and a quiet machine, so it is no part of the test command. npm fetches
Lighthouse, at the version below, the first time; it is no package of the app. Screens are addresses
after the `#/`; each is loaded cold (Lighthouse empties the caches), the records in place.

The scores are Lighthouse's own, with its mobile settings: the processor slowed four times. Below
them stands the performance with the slow-down that Lighthouse's documents give for a machine as
fast as this one; it decides nothing.
"""

import json
import sys
import tempfile
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "api"))

from playwright.sync_api import Page, expect, sync_playwright

import npm
from e2e.browser import Phone
from e2e.chromium import find_or_install
from e2e.flow import READING, go, look_round, open_app, wait_until_offline_ready
from e2e.service import Service

PACKAGE = "lighthouse@13.5.0"
CATEGORIES = ("performance", "accessibility", "best-practices")
LEAST = 0.98
# A bench with a figure in it shows its result; saved/ leads to the reading that is kept below.
SCREENS = ("", "slack", "shelf", "saved/")
MOST_SHOWN = 6
# Slow-down that makes a mid-tier phone of a machine whose benchmarkIndex is at least this:
# https://github.com/GoogleChrome/lighthouse/blob/main/docs/throttling.md, "CPU Throttling", the
# class of a machine by its index in one table, the slow-down by its class in the next. The index is
# measured anew by each load and falls while the machine is busy, so it is told beside the figure.
SLOW_DOWN = ((1500, 4), (800, 2), (0, 1))


def fill(page: Page) -> str:
    """Load the invented engine and keep a reading; give the address of that reading."""
    look_round(page)
    go(page, "slack")
    page.get_by_role("textbox", name=READING, exact=True).fill("17/32 in")
    page.get_by_role("button", name="Save reading").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    go(page, "saved")
    link = page.locator("main a[href^='#/saved/']").first
    link.wait_for()
    return str(link.get_attribute("href")).removeprefix("#/")


def measure(url: str, port: str, report: Path, slow_down: int | None = None) -> Any:
    """Have Lighthouse load this address in the browser on this port; give its report."""
    words = [url, f"--port={port}", "--output=json", f"--output-path={report}", "--quiet"]
    words.append(f"--only-categories={','.join(CATEGORIES)}")
    if slow_down is not None:
        words.append(f"--throttling.cpuSlowdownMultiplier={slow_down}")
    npm.npm("exec", "--yes", "--ignore-scripts", f"--package={PACKAGE}", "--", "lighthouse", *words)
    return json.loads(report.read_text())


def meant_for(index: float) -> int:
    """Give the slow-down that makes a mid-tier phone of a machine of this benchmarkIndex."""
    return next(times for least, times in SLOW_DOWN if index >= least)


def told(report: Any) -> list[str]:
    """What cost points, and the figures that performance is made of."""
    audits = report["audits"]
    names = [
        f"{kind}: {one['id']}"
        for kind in CATEGORIES
        for one in report["categories"][kind]["auditRefs"]
        if one["weight"] and (audits[one["id"]]["score"] or 0) < 1
        and audits[one["id"]]["scoreDisplayMode"] not in ("notApplicable", "manual", "informative")
    ]  # fmt: skip
    figures = ("first-contentful-paint", "largest-contentful-paint", "total-blocking-time")
    figures += ("cumulative-layout-shift", "speed-index")
    said = ", ".join(f"{name} {audits[name].get('displayValue', '?')}" for name in figures)
    return [said, *names[:MOST_SHOWN]]


def main(screens: list[str]) -> int:
    """Print a line of scores a screen, and what cost points; fail if one is under the least."""
    expect.set_options(timeout=30_000)
    low = 0
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        service = Service(Path(folder) / "data")
        phone = Phone(playwright, find_or_install(), Path(folder) / "profile")
        try:
            service.start()
            phone.start()
            page = open_app(phone, service)
            kept = fill(page)
            wait_until_offline_ready(page)
            page.close()

            def load(url: str, slow_down: int | None = None) -> Any:
                # A browser of its own, as a person opens the app: in one that was used before, the
                # profiler first walks through all that the last screen left in memory, which is
                # then counted, four times over, as work of this one.
                phone.kill()
                return measure(url, phone.launch(), Path(folder) / "report.json", slow_down)

            for screen in screens:
                url = f"{service.url}/#/{kept if screen == 'saved/' else screen}"
                report = load(url)
                scores = {name: report["categories"][name]["score"] or 0 for name in CATEGORIES}
                low += sum(score < LEAST for score in scores.values())
                shown = "  ".join(f"{name} {score:.2f}" for name, score in scores.items())
                name = screen or "first screen"
                print(f"{name:14}{shown}", *told(report), sep="\n    ", flush=True)
                index = report["environment"]["benchmarkIndex"]
                times = meant_for(index)
                again = report if times == SLOW_DOWN[0][1] else load(url, times)
                fitted = again["categories"]["performance"]["score"] or 0
                told_for = f"slowed {times}x, as is meant for benchmarkIndex {index:.0f}"
                print(f"    performance {fitted:.2f} {told_for}", flush=True)
        finally:
            phone.kill()
            service.kill()
    print(f"{low} scores are under {LEAST}" if low else f"every score is {LEAST} or better")
    return 1 if low else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:] or list(SCREENS)))

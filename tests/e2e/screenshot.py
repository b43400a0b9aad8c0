"""Draw the README's picture, pwa/screenshot.png, from the running app with its invented engine.

`.venv/bin/python tests/e2e/screenshot.py`, after `python3 api/start.py test` or `serve` has set up
(the packages of the test command are needed).
"""

import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from playwright.sync_api import expect, sync_playwright

from e2e.browser import Phone
from e2e.chromium import find_or_install
from e2e.flow import READING, go, look_round, open_app
from e2e.service import Service

PICTURE = Path(__file__).resolve().parents[2] / "pwa/screenshot.png"


def main() -> None:
    """Load the invented engine, take readings of its worn chain on the Slack bench, draw."""
    expect.set_options(timeout=30_000)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        service = Service(Path(folder) / "data")
        phone = Phone(playwright, find_or_install(), Path(folder) / "profile")
        try:
            service.start()
            phone.start()
            page = open_app(phone, service)
            look_round(page)
            go(page, "slack")
            for reading in ("1/2 in", "17/32 in", "0.52 in"):
                page.get_by_role("textbox", name=READING, exact=True).fill(reading)
                page.get_by_role("button", name=f"Add to {READING}").click()
            expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", "too-close")
            expect(page.get_by_test_id("sync-state")).to_have_attribute("data-state", "server")
            page.evaluate("document.activeElement.blur(); scrollTo(0, 0);")
            page.screenshot(path=PICTURE)
        finally:
            phone.kill()
            service.kill()
    print(f"{PICTURE.name}: {PICTURE.stat().st_size} bytes")


if __name__ == "__main__":
    main()

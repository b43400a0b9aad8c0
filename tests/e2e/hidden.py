"""A page that is hidden in earnest.

Playwright keeps every page it drives visible, so it is taken off the browser while another tab is
in front; the browser then hides the page and holds back its ticks, as it does on a phone.
"""

import json
import time
import urllib.request

from playwright.sync_api import Page, Playwright

from e2e.browser import Phone

# What the page saw of itself: when it was hidden and shown, and how often a tick came.
WATCH = """() => {
  window.watched = { states: [document.visibilityState], ticks: 0, before: 0, hidden: 0 };
  document.addEventListener("visibilitychange", () => {
    const { watched } = window;
    watched.states.push(document.visibilityState);
    if (document.visibilityState === "hidden") watched.before = watched.ticks;
    else watched.hidden = watched.ticks - watched.before;
  });
  setInterval(() => { window.watched.ticks += 1; }, 100);
}"""


def hide(phone: Phone, playwright: Playwright, page: Page, seconds: float) -> Page:
    """Hide the page for so long; give it back, shown again."""
    address = page.url
    page.evaluate(WATCH)
    assert phone.context is not None
    assert phone.context.browser is not None
    phone.context.browser.close()  # only lets go of it
    door = f"http://127.0.0.1:{_port(phone)}"
    made = urllib.request.Request(f"{door}/json/new?about:blank", method="PUT")  # noqa: S310
    with urllib.request.urlopen(made) as answer:  # noqa: S310
        tab = json.loads(answer.read())
    with urllib.request.urlopen(f"{door}/json/activate/{tab['id']}") as answer:  # noqa: S310
        answer.read()
    time.sleep(seconds)
    browser = playwright.chromium.connect_over_cdp(door)
    phone.context = browser.contexts[0]
    return next(one for one in phone.context.pages if one.url == address)


def _port(phone: Phone) -> str:
    return (phone.profile / "DevToolsActivePort").read_text().splitlines()[0]

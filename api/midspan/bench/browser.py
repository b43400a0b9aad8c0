"""How quick the app is in a browser that is slowed down like a cheap phone."""

import json
import shutil
import tempfile
from collections.abc import Iterator
from typing import TYPE_CHECKING

from midspan import places
from midspan.web.calc_examples import INPUTS

from .services import SERVICE, started
from .sizes import Sizes
from .table import Compared, Row, Target, compare

if TYPE_CHECKING:
    from playwright.sync_api import Browser, CDPSession, Page

SLOWER = 4
PROGRAMS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
TYPED = f"slack: a key to its verdict, p95, {SLOWER}x slower CPU"
STARTED = f"offline cold start, {SLOWER}x slower CPU"
# The budgets, for which the loop below is made to stand on this machine: see `_turns`.
KEY_MS, START_MS = 50, 1000
WITHIN = Target(False, 1)
SHORT = 100_000  # turns of a short go of the loop
LOOP = """(count) => {
  const start = performance.now();
  let sum = 0;
  for (let i = 0; i < count; i += 1) sum = (sum + i * i) % 1000003;
  return performance.now() - start + (sum < 0 ? 1 : 0);
}"""
# The interpreter's own time of a question, from asking to answer; the median of some.
CORE = """async (question) => {
  const spent = [];
  for (let i = 0; i < 9; i += 1) {
    const start = performance.now();
    await window.midspan.dispatch("slack", question);
    spent.push(performance.now() - start);
  }
  return spent.sort((a, b) => a - b)[4];
}"""
READING = "Movement, fully in to fully out"
# From the key to the frame that shows its verdict; the two readings typed differ in theirs.
KEY_TO_VERDICT = """(field, [text, outcome]) => new Promise((done, fail) => {
  const start = performance.now();
  const look = () => {
    const shown = document.querySelector("[data-testid=verdict]");
    if (shown?.dataset.outcome === outcome) done(performance.now() - start);
    else if (performance.now() - start > 30000) fail(new Error(`no verdict ${outcome}`));
    else requestAnimationFrame(look);
  };
  field.value = text;
  field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  look();
})"""
KEYS = (("25.4 mm", "too-loose"), ("2 mm", "too-close"))
# Notes when the field to type a reading into is on the screen, counted from the start of loading.
WATCH = """(() => {
  const look = () => {
    if (document.querySelector("main input")) window.usable = performance.now();
    else requestAnimationFrame(look);
  };
  look();
})()"""
DRIVE = {
    "Engine name": "Invented engine",
    "Chain pitch": "3/8 in",
    "Crank gear teeth": "22",
    "Cam gear teeth": "44",
    "Links in the chain": "58",
    "Centre distance": "114.10 mm",
}


def rows(sizes: Sizes, chosen: str | None = None) -> Iterator[Row]:
    """Measure both rows, or say why not."""
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        yield from _neither("no browser at hand: install playwright and a Chromium")
        return
    if places.pwa() is None:
        yield from _neither("the phone app is not built: api/npm.py run build")
        return
    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        program = chosen or _program(playwright.chromium.executable_path)
        if program is None:
            yield from _neither("no Chromium at hand: install one, or give --chromium PROGRAM")
            return
        browser = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        try:
            yield from _in_browser(browser, folder, sizes)
        finally:
            browser.close()


def _neither(why: str) -> Iterator[Row]:
    yield Row(TYPED, why_not=why)
    yield Row(STARTED, why_not=why)


def _program(of_playwright: str) -> str | None:
    found = next(filter(None, map(shutil.which, PROGRAMS)), None)
    return found or shutil.which(of_playwright)


def _in_browser(browser: "Browser", folder: str, sizes: Sizes) -> Iterator[Row]:
    with started(SERVICE, folder) as port:
        address = f"http://127.0.0.1:{port}"
        page = browser.new_context(viewport={"width": 390, "height": 844}).new_page()
        page.goto(address)
        _enter_drive(page)
        page.evaluate("() => navigator.serviceWorker.ready.then(() => true)")
        page.goto(address + "/#/slack")
        yield _key_row(page, sizes)
    # The service is gone by now, and with it every network.
    yield _start_row(page, address, sizes)


def _enter_drive(page: "Page") -> None:
    page.locator("nav a[href='#/drive']").first.evaluate("link => link.click()")
    page.get_by_role("button", name="Enter your engine").click()
    for label, value in DRIVE.items():
        page.get_by_label(label, exact=True).fill(value)
    page.get_by_role("button", name="Save engine and drive").click()
    page.get_by_role("heading", name="Chains of this engine").wait_for()


def _at_speed(page: "Page") -> "CDPSession":
    """Give what sets the page's speed; it is slowed down from now on."""
    session = page.context.new_cdp_session(page)
    _slow_down(session, SLOWER)
    return session


def _slow_down(session: "CDPSession", times: int) -> None:
    session.send("Emulation.setCPUThrottlingRate", {"rate": times})


def _turns(page: "Page", milliseconds: float, goes: int) -> int:
    """Count the turns of the loop that take so long on this page, slowed down as it is.

    By the clock: the best of many goes, each so short that a busy machine lets some of them through
    undisturbed. In the rounds the loop then takes that long if the machine is quiet, else longer.
    """
    best = min(float(page.evaluate(LOOP, SHORT)) for _ in range(goes))
    return round(SHORT * milliseconds / best)


def _key_row(page: "Page", sizes: Sizes) -> Row:
    field = page.get_by_label(READING, exact=True)
    field.wait_for()
    for text, outcome in KEYS:  # the first one waits for the interpreter
        field.evaluate(KEY_TO_VERDICT, [text, outcome])
    session = _at_speed(page)
    turns = _turns(page, KEY_MS, sizes.goes)
    question = json.dumps(INPUTS["slack"])

    def slowest() -> float:
        # The browser slows down the page and not the interpreter, which has a thread of its own:
        # what that would take longer is added.
        _slow_down(session, 1)
        core = float(page.evaluate(CORE, question))
        _slow_down(session, SLOWER)
        spent = [
            field.evaluate(KEY_TO_VERDICT, list(KEYS[number % 2])) for number in range(sizes.keys)
        ]
        return float(sorted(spent)[int(0.95 * len(spent))]) + (SLOWER - 1) * core

    return _row(TYPED, compare(slowest, lambda: page.evaluate(LOOP, turns), sizes.rounds))


def _start_row(first: "Page", address: str, sizes: Sizes) -> Row:
    context = first.context
    turns = _turns(first, START_MS, sizes.goes)

    def start() -> float:
        page = context.new_page()
        _at_speed(page)
        page.add_init_script(WATCH)
        page.goto(address + "/#/slack")
        page.wait_for_function("() => window.usable")
        spent = float(page.evaluate("() => window.usable"))
        page.close()
        return spent

    return _row(STARTED, compare(start, lambda: first.evaluate(LOOP, turns), sizes.rounds))


def _row(what: str, found: Compared) -> Row:
    return Row(what, f"{found.measured:.0f} ms", f"{found.reference:.0f} ms", found.ratio, WITHIN)

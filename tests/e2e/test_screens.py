"""Every screen at phone size: nothing sticks out, targets are large, axe finds nothing."""

import re
from collections.abc import Iterator
from itertools import pairwise

import pytest
from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Page, expect

from e2e.browser import PHONE, Phone
from e2e.builds import BUILD_SCREENS, add_entry, open_in_build, start_build
from e2e.flow import (
    READING,
    add_part,
    enter_drive,
    go,
    measure,
    wait_for_verdict,
)
from e2e.lift_flow import enter_clearance, paste, table, wait_for
from e2e.ready import Ready
from e2e.service import Service

BENCHES = ["wear", "slack", "heat", "gear", "combined", "tdc", "cam", "adjust"]
BENCHES += ["lift", "rockers", "clearance", "forecast", "pulls", "spark", "gain", "torsion"]
OTHERS = ["home", "shelf", "fit", "drive", "saved", "settings", "builds", "files"]
OTHERS += ["plan", "sessions"]
SCREENS = [*BENCHES, *OTHERS, *BUILD_SCREENS]
BUILD = "Build of the browser check"
TARGET_PX = 48
OTHER_SIZES = ({"width": 844, "height": 390}, {"width": 320, "height": 640})

# Contrast of 7:1 and target size are rules that axe leaves out unless asked.
AXE_OPTIONS = {
    "resultTypes": ["violations"],
    "rules": {
        "color-contrast-enhanced": {"enabled": True},
        "target-size": {"enabled": True},
    },
}

CONTRAST = ["color-contrast", "color-contrast-enhanced"]
# What the size of the text can change, of all that axe looks at: what lies where, and how large.
PLACES = [*CONTRAST, "target-size", "scrollable-region-focusable"]

# Names and sizes of everything to tap that is smaller than it should be. A choice is tapped on its
# tile, a link within a sentence on its text (the exception of WCAG 2.5.8), and what only shows when
# focused is not tapped at all.
SMALL_TARGETS = """(least) => {
  const small = [];
  const taps = "a[href], button, input, select, textarea, summary, [role=button], [tabindex='0']";
  for (const one of document.querySelectorAll(taps)) {
    const inSentence = one.matches("p a, li > a:not(:only-child), dd a, small a");
    if (inSentence || one.matches(".skip") || !one.checkVisibility()) continue;
    const box = (one.matches("input") && one.closest("label") || one).getBoundingClientRect();
    if (box.width + 0.5 < least || box.height + 0.5 < least) {
      small.push(`${one.tagName} ${one.ariaLabel || one.textContent} ${box.width}x${box.height}`);
    }
  }
  return small;
}"""

STICKS_OUT = """() => {
  const wide = document.documentElement.clientWidth;
  const out = document.documentElement.scrollWidth > wide ? ["the page scrolls sideways"] : [];
  for (const one of document.querySelectorAll("main *, header *, nav *")) {
    const box = one.getBoundingClientRect();
    const scrolls = one.closest("[data-scrolls]") || !one.checkVisibility();
    if (!scrolls && !one.closest("svg") && box.width > 1 && box.right > wide + 1) {
      out.push(`${one.tagName}.${one.className} ends at ${box.right}`);
    }
  }
  return out;
}"""

# Words at twice the size: which are cut off by their box, which lie over others. What scrolls is
# reached by scrolling; the bar at the bottom has its words in full in its lists.
CUT_OR_OVERLAID = """() => {
  const found = [];
  const inks = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let text = walk.nextNode(); text; text = walk.nextNode()) {
    const one = text.parentElement;
    if (!text.data.trim() || !one.checkVisibility({ opacityProperty: true })) continue;
    if (one.closest("svg, canvas, option, .visually-hidden, .nav, .skip, .u-wrap")) continue;
    const words = text.data.trim().slice(0, 40);
    const range = document.createRange();
    range.selectNodeContents(text);
    const ink = range.getBoundingClientRect();
    for (let box = one; box && box !== document.body; box = box.parentElement) {
      const style = getComputedStyle(box);
      if (box.closest("[data-scrolls]") || style.overflowX === "auto") break;
      if (style.overflowX === "visible" && style.overflowY === "visible") continue;
      const edge = box.getBoundingClientRect();
      const past = Math.max(ink.right - edge.right, edge.left - ink.left, ink.bottom - edge.bottom);
      if (past > 4) found.push(`cut by ${Math.round(past)} px: ${words}`);
      break;
    }
    if (one.closest("main") && !one.closest(".action, [data-scrolls]")) {
      for (const rect of range.getClientRects()) inks.push([rect, words, one]);
    }
  }
  inks.forEach(([a, words, one], at) => {
    for (const [b, others, other] of inks.slice(at + 1)) {
      const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (wide > 2 && high > 0.35 * Math.min(a.height, b.height) && one !== other) {
        found.push(`${words} lies over ${others}`);
      }
    }
  });
  return found;
}"""
# Every name of a level, and the level of the heading before it.
HEADINGS = """() => [...document.querySelectorAll("h1, h2, h3, h4")]
  .filter((one) => one.checkVisibility()).map((one) => Number(one.tagName[1]))"""


# A chart on canvas learns of its new width in the frame that lays it out, and is drawn in the next.
NEXT_FRAMES = """() => new Promise((done) =>
  requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(done))))"""


def resize(page: Page, size: dict[str, int]) -> None:
    """Give the page another size, and wait until all on it has one of its own."""
    page.set_viewport_size(size)  # type: ignore[arg-type]
    page.evaluate(NEXT_FRAMES)


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory, ready: Ready) -> Iterator[Page]:
    """The app with a drive entered and a reading saved, so that each screen has much to show."""
    with ready.opened(tmp_path_factory.mktemp("screens")) as (_, page):
        enter_drive(page)
        add_part(page, "chain", "worn", "C-1")
        add_part(page, "gear set", "as bought", "G-1")
        start_build(page, BUILD)
        add_entry(page, "Note", {"In words": "Front cover off."})
        measure(page, "17/32 in")
        yield page


GUIDE = ("It cannot start", "Wheel is fixed", "Stop is in", "Now the other side")


def follow_the_guide(page: Page) -> None:
    """Go through the steps of true TDC to its result, or stay there."""
    step = page.get_by_test_id("step")
    step.or_(page.get_by_role("button", name="Begin again")).wait_for()
    for name in GUIDE if step.is_visible() else ():
        if name == GUIDE[-1]:
            page.get_by_label("Wheel, piston coming up", exact=True).fill("36.75")
        page.get_by_role("button", name=name).click()
    if step.is_visible():
        page.get_by_label("Wheel, piston going down", exact=True).fill("35.25")
        page.get_by_role("button", name="See true TDC now").click()
    page.get_by_role("img", name=re.compile("^Degree wheel")).wait_for()


def show(page: Page, screen: str) -> None:
    """Go to a screen with everything on it open; a bench that needs an entry gets one."""
    if screen in BUILD_SCREENS:
        open_in_build(page, BUILD, screen)
    else:
        go(page, screen)
    if screen == "heat":
        page.get_by_role("radio", name="Cast aluminium").check()
        page.get_by_role("img", name=re.compile("^Mid-span movement from cold")).wait_for()
    if screen == "gear":
        page.get_by_label("Pin diameter", exact=True).fill("6.35 mm")
        page.get_by_label("Over the two pins", exact=True).fill("139.71 mm")
        page.get_by_role("heading", name="What the gear has lost").wait_for()
    if screen == "combined":
        page.get_by_role("img", name=re.compile("^Excess length")).wait_for()
    if screen == "tdc":
        follow_the_guide(page)
    if screen == "cam":
        page.get_by_label("Intake opens", exact=True).fill("20")
        page.get_by_label("Intake closes", exact=True).fill("60")
        page.get_by_role("img", name=re.compile("^Timing diagram")).wait_for()
    if screen == "adjust":
        page.get_by_label("Intake centreline, after TDC", exact=True).fill("110")
        page.get_by_label("Centreline wanted", exact=True).fill("105")
        page.get_by_label("Its steps", exact=True).fill("0 2 4 6")
        page.get_by_label("Unit of its figures", exact=True).select_option("cam-deg")
        page.get_by_role("img", name=re.compile("^Cam gear seen")).wait_for()
    if screen == "fit":
        page.get_by_role("button", name=re.compile("C-1 .* on G-1 .* tried once")).click()
    if screen in ("lift", "rockers", "clearance"):
        paste(page, "Intake", table(108) + "\noops;1")
        wait_for(page, "sound")
    if screen == "rockers":
        go(page, screen)
        wait_for(page, "move")
    if screen == "clearance":
        enter_clearance(page, "0 2.6\n10 3.5\n-10 3.5")
        page.get_by_role("heading", name="Least gap at other settings").wait_for()
    if screen == "slack":
        page.get_by_label(READING, exact=True).fill("17/32 in")
        wait_for_verdict(page)
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    # From the top, as a target that has scrolled half under the bar would count as too small.
    page.evaluate("scrollTo(0, 0)")


@pytest.mark.parametrize("screen", SCREENS)
def test_every_screen_can_be_read_and_tapped(app: Page, screen: str) -> None:
    """At phone size, on its side and small, in light and dark, and with words at twice the size."""
    app.emulate_media(color_scheme="light")
    show(app, screen)
    assert app.evaluate(STICKS_OUT) == []
    assert app.evaluate(SMALL_TARGETS, TARGET_PX) == []
    try:
        for size in OTHER_SIZES:
            resize(app, size)
            assert app.evaluate(STICKS_OUT) == [], size
    finally:
        resize(app, PHONE)
    levels = app.evaluate(HEADINGS)
    assert levels[:1] == [1]
    assert all(after <= before + 1 for before, after in pairwise(levels)), levels
    assert violations(app) == [], "light"
    app.emulate_media(color_scheme="dark")
    expect(app.locator("html")).to_have_attribute("data-theme", "dark")
    assert violations(app, CONTRAST) == [], "dark"
    try:
        app.evaluate("document.documentElement.style.fontSize = '200%'")
        app.evaluate(NEXT_FRAMES)
        assert app.evaluate(STICKS_OUT) == []
        assert app.evaluate(CUT_OR_OVERLAID) == []
        assert violations(app, PLACES) == [], "large"
    finally:
        app.evaluate("document.documentElement.style.fontSize = ''")


def test_every_step_of_the_guide_keeps_to_the_same_rules(app: Page) -> None:
    go(app, "tdc")
    app.get_by_test_id("step").or_(app.get_by_role("button", name="Begin again")).wait_for()
    if not app.get_by_test_id("step").is_visible():
        app.get_by_role("button", name="Begin again").click()
    # Nothing of a guide that was gone through before is left in the new one.
    expect(app.locator(".chips li")).to_have_count(0)
    for name in (*GUIDE, "See true TDC now"):
        app.evaluate("scrollTo(0, 0)")
        assert app.evaluate(STICKS_OUT) == [], name
        assert app.evaluate(SMALL_TARGETS, TARGET_PX) == [], name
        for scheme in ("light", "dark"):
            app.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
            rules = CONTRAST if scheme == "dark" else None
            assert violations(app, rules) == [], (name, scheme)
        for label, typed in (("coming up", "36.75"), ("going down", "35.25")):
            field = app.get_by_label(f"Wheel, piston {label}", exact=True)
            if field.is_visible():
                field.fill(typed)
        app.get_by_role("button", name=name).click()
    app.get_by_role("img", name=re.compile("^Degree wheel")).wait_for()


def test_the_checks_above_can_fail(app: Page) -> None:
    go(app, "slack")
    app.evaluate(
        """() => {
          const main = document.querySelector("main");
          const wide = main.appendChild(document.createElement("div"));
          wide.style.width = "500px"; wide.style.height = "9px";
          const button = main.appendChild(document.createElement("button"));
          button.style.width = "20px"; button.style.height = "20px"; button.style.padding = "0";
          button.style.minHeight = "0"; button.style.minWidth = "0";
        }"""
    )
    app.evaluate(
        """() => {
          const box = document.querySelector("main").appendChild(document.createElement("div"));
          box.style.cssText = "width: 40px; height: 20px; overflow: hidden; white-space: nowrap";
          box.textContent = "much longer than its box";
          for (const word of ["one", "other"]) {
            const over = document.querySelector("main").appendChild(document.createElement("p"));
            over.style.cssText = "position: absolute; left: 0; top: 300px";
            over.textContent = word;
          }
        }"""
    )
    found = "; ".join(app.evaluate(CUT_OR_OVERLAID))
    assert "much longer" in found
    assert "one lies over other" in found
    assert app.evaluate(STICKS_OUT) != []
    assert app.evaluate(SMALL_TARGETS, TARGET_PX) != []
    assert violations(app) != []
    assert violations(app, CONTRAST) == []
    app.evaluate(
        """() => {
          const pale = document.querySelector("main").appendChild(document.createElement("p"));
          pale.style.cssText = "color: #777; background: #888";
          pale.textContent = "hard to read";
        }"""
    )
    for rules in (CONTRAST, PLACES):
        assert any("hard to read" in one for one in violations(app, rules))
    app.reload()


def test_the_reference_page_shows_the_interface(new_service: Service, new_phone: Phone) -> None:
    page = new_phone.page()
    page.goto(new_service.url + "/reference/")
    page.get_by_text("/api/v1/calc/slack").first.wait_for()
    assert page.evaluate("document.title") != ""


def violations(page: Page, rules: list[str] | None = None) -> list[str]:
    """What axe found: rule, and where; by all rules, or by these alone."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE_SCRIPT)
    only = {"runOnly": {"type": "rule", "values": rules}} if rules else {}
    asked = "async (options) => (await axe.run(options)).violations"
    found = page.evaluate(asked, AXE_OPTIONS | only)
    return [f"{v['id']}: {node['html'][:200]}" for v in found for node in v["nodes"]]

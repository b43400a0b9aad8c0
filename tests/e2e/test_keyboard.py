"""The app by its keys alone and as it is read out; and still, where motion is not wanted."""

import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from e2e.flow import READING, go, look_round
from e2e.ready import Ready

SCREENS = ["home", "slack", "combined", "forecast", "shelf", "saved", "sessions", "settings"]

# Marks all that Tab has to come to, in the order of the document, and tells what each is. Of a
# group of radio buttons Tab comes to one; within it the arrows move.
MARK_STOPS = """() => {
  const may = "a[href], button, input, select, textarea, summary, [tabindex]";
  const groups = new Set();
  const stops = [...document.querySelectorAll(may)].filter((one) => {
    if (one.tabIndex < 0 || one.disabled || !one.checkVisibility()) return false;
    if (one.type !== "radio") return true;
    const chosen = document.querySelector(`input[name="${CSS.escape(one.name)}"]:checked`);
    if (groups.has(one.name) || (chosen && chosen !== one)) return false;
    groups.add(one.name);
    return true;
  });
  return stops.map((one, at) => {
    one.dataset.stop = at;
    return `${one.tagName} ${one.ariaLabel || one.labels?.[0]?.textContent || one.textContent}`;
  });
}"""
# Where the focus is, whether a ring shows it (on itself or on the tile that it is in), and where
# that is on the page; null for the top where it is fixed to the screen.
FOCUS = """() => {
  const one = document.activeElement;
  let ring = false;
  let fixed = false;
  for (let at = one, up = 0; at && at !== document.body; at = at.parentElement, up += 1) {
    const { outlineStyle, outlineWidth, position } = getComputedStyle(at);
    if (up < 3 && outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2) ring = true;
    if (position === "fixed" || position === "sticky") fixed = true;
  }
  const box = one.getBoundingClientRect();
  const main = Boolean(one.closest("main"));
  return { stop: Number(one.dataset.stop ?? -1), ring, main, inView: box.bottom > 0
    && box.top < innerHeight, top: fixed ? null : box.top + scrollY, bottom: box.bottom + scrollY };
}"""
# All that would move by itself. A thing that only stays a moment longer does not.
MOVES = """() => [...document.querySelectorAll("*")].filter((one) => {
  const { animationName, transitionProperty, transitionDuration, scrollBehavior }
    = getComputedStyle(one);
  const lasts = transitionDuration.split(", ").some((time) => Number.parseFloat(time) > 0);
  const changes = lasts && transitionProperty !== "display";
  return animationName !== "none" || changes || scrollBehavior === "smooth";
}).map((one) => `${one.tagName}.${one.className}`)"""


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory, ready: Ready) -> Iterator[Page]:
    """The app with the invented engine."""
    with ready.opened(tmp_path_factory.mktemp("keys")) as (_, page):
        look_round(page)
        yield page


def walk(page: Page) -> tuple[list[str], list[dict[str, Any]]]:
    """Press Tab from the top of the page until every stop had its turn."""
    names: list[str] = page.evaluate(MARK_STOPS)
    found = []
    for _ in names:
        page.keyboard.press("Tab")
        found.append(page.evaluate(FOCUS))
    return names, found


@pytest.mark.parametrize("screen", SCREENS)
def test_tab_comes_to_everything_in_order_and_shows_where_it_is(app: Page, screen: str) -> None:
    go(app, screen)
    heading = app.get_by_role("heading", level=1).first
    expect(heading).to_be_visible()
    app.reload()
    expect(app.get_by_role("heading", level=1).first).to_be_visible()
    app.wait_for_load_state("networkidle")
    if screen == "forecast":  # what the service answers comes later, and is more to tap
        expect(app.get_by_test_id("full-state")).to_have_attribute("data-state", "here")
    if screen == "combined":  # its answer pushes down what is being walked through
        app.get_by_role("img", name=re.compile("^Excess length")).wait_for()
    names, found = walk(app)
    assert len(names) > 8
    assert [one["stop"] for one in found] == list(range(len(names))), names
    assert [name for name, one in zip(names, found, strict=True) if not one["ring"]] == []
    assert [name for name, one in zip(names, found, strict=True) if not one["inView"]] == []
    # What comes next is never above what came before, unless both are in one row.
    there = [
        (name, one) for name, one in zip(names, found, strict=True)
        if one["main"] and one["top"] is not None
    ]  # fmt: skip
    back = [
        f"{name} after {before}"
        for (before, a), (name, b) in pairwise(there)
        if b["bottom"] <= a["top"]
    ]
    assert back == []


def test_the_first_stop_leads_past_the_navigation(app: Page) -> None:
    go(app, "slack")
    app.reload()
    expect(app.get_by_label(READING, exact=True).first).to_be_visible()
    app.keyboard.press("Tab")
    skip = app.locator(".skip")
    expect(skip).to_be_focused()
    box = skip.bounding_box()
    assert box is not None
    assert box["x"] >= 0
    assert box["y"] >= 0
    app.keyboard.press("Enter")
    assert app.evaluate("document.activeElement.id") == "screen"
    app.keyboard.press("Tab")
    assert app.evaluate("document.activeElement.closest('main') !== null")


def test_a_new_screen_takes_the_focus_and_a_verdict_is_read_out(app: Page) -> None:
    go(app, "home")
    go(app, "slack")
    assert app.evaluate("document.activeElement.closest('main, nav') !== null")
    app.get_by_label(READING, exact=True).first.fill("17/32 in")
    status = app.locator("[role=status][aria-live=polite]").filter(has_text=re.compile("oose"))
    expect(status).to_be_attached()


def test_nothing_moves_where_motion_is_not_wanted(app: Page) -> None:
    go(app, "slack")
    # Nothing of the app moves as it is; so that the check can fail, something is made to.
    app.evaluate("document.querySelector('main').style.transition = 'color 1s'")
    app.emulate_media(reduced_motion="no-preference")
    assert app.evaluate(MOVES) == ["MAIN."]
    app.emulate_media(reduced_motion="reduce")
    for screen in SCREENS:
        go(app, screen)
        assert app.evaluate(MOVES) == [], screen

"""The app in Spanish: every screen, without a network; what is kept stays as it was said."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from e2e.browser import Phone
from e2e.flow import READING, go, look_round, wait_until_offline_ready
from e2e.ready import Ready
from e2e.test_screens import BENCHES, OTHERS, STICKS_OUT
from phrases import kept

SCREENS = [*BENCHES, *OTHERS, "methods", "saved"]
# Every word on the screen that a person reads, and every word that is read out.
WORDS = """() => {
  for (const one of document.querySelectorAll("details")) one.open = true;
  const found = new Set();
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let text = walk.nextNode(); text; text = walk.nextNode()) {
    const one = text.parentElement;
    if (one.closest("[lang=en], .source, script, style, noscript")) continue;
    found.add(text.data.trim());
  }
  for (const name of ["aria-label", "placeholder", "title", "alt"]) {
    for (const one of document.querySelectorAll(`[${name}]`)) {
      if (!one.closest("[lang=en], .source")) found.add(one.getAttribute(name).trim());
    }
  }
  return [...found];
}"""
# Everything in the phone's database, by the names of its parts.
RECORDS = """async () => {
  const done = (asked) => new Promise((yes, no) => {
    asked.onsuccess = () => yes(asked.result);
    asked.onerror = () => no(asked.error);
  });
  const found = {};
  for (const { name } of await indexedDB.databases()) {
    const db = await done(indexedDB.open(name));
    for (const part of db.objectStoreNames) {
      found[part] = await done(db.transaction(part).objectStore(part).getAll());
    }
    db.close();
  }
  return found;
}"""
# Two words of letters: less may be a name, a unit or the same in both.
TWO_WORDS = re.compile(r"[A-Za-z]{2,}[,;:]? [A-Za-z]{2,}")


def typed(value: Any) -> Iterator[str]:
    """What the records hold in the user's own words: all of it but what the core answered."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, list):
        for one in value:
            yield from typed(one)
    elif isinstance(value, dict):
        for name, one in value.items():
            if name != "result":
                yield from typed(one)


def without(text: str, theirs: set[str]) -> str:
    """A text without what the user named in it."""
    for name in sorted(theirs, key=len, reverse=True):
        if len(name) > 1:
            text = text.replace(name, "·")
    return text


def words(page: Page) -> set[str]:
    """All words of the screen, once they no longer change."""
    before: set[str] = set()
    for _ in range(20):
        page.wait_for_timeout(150)
        now = set(page.evaluate(WORDS))
        if now == before:
            break
        before = now
    return before


def speak(page: Page, language: str) -> None:
    """Choose a language; the page is made anew in it."""
    page.locator("a[href='#/settings']").click()
    page.get_by_role("radio", name=language, exact=True).check()
    code = {"English": "en", "Español": "es"}[language]
    expect(page.locator("html")).to_have_attribute("lang", code)
    page.locator("nav a[href='#/slack']").wait_for(state="attached")


def visit(page: Page, screen: str) -> None:
    """Go to a screen by its address, whatever the language."""
    page.evaluate("(at) => { location.hash = at; }", f"#/{screen}")
    page.locator("main h1").first.wait_for(state="attached")


def tell_slack(page: Page, label: str) -> str:
    """Type a reading; give the verdict."""
    visit(page, "slack")
    page.get_by_role("textbox", name=label, exact=True).fill("17/32 in")
    verdict = page.get_by_test_id("verdict")
    expect(verdict).to_have_attribute("data-outcome", "too-loose")
    return verdict.inner_text()


@pytest.fixture(scope="module")
def phone_and_app(
    tmp_path_factory: pytest.TempPathFactory, ready: Ready
) -> Iterator[tuple[Phone, Page]]:
    """The app in English, with the invented engine to look at."""
    with ready.opened(tmp_path_factory.mktemp("spanish")) as (phone, page):
        look_round(page)
        yield phone, page


@pytest.fixture
def phone(phone_and_app: tuple[Phone, Page]) -> Phone:
    return phone_and_app[0]


@pytest.fixture
def app(phone_and_app: tuple[Phone, Page]) -> Page:
    return phone_and_app[1]


def test_no_screen_keeps_english_words(app: Page) -> None:
    english: dict[str, set[str]] = {}
    for screen in SCREENS:
        visit(app, screen)
        english[screen] = words(app)
    speak(app, "Español")
    theirs = kept() | set(typed(app.evaluate(RECORDS)))
    same: dict[str, Any] = {}
    for screen in SCREENS:
        visit(app, screen)
        found = (words(app) & english[screen]) - theirs
        left = {one for one in found if TWO_WORDS.search(without(one, theirs))}
        if left:
            same[screen] = sorted(left)
        assert app.evaluate(STICKS_OUT) == [], screen
    assert same == {}


def test_a_verdict_is_said_in_spanish_offline_and_kept_in_english(app: Page, phone: Phone) -> None:
    wait_until_offline_ready(app)
    phone.lose_network()
    try:
        app.reload()
        said = tell_slack(app, "Movimiento, de todo adentro a todo afuera")
        assert "floja" in said.lower()
        app.locator("summary").get_by_text("Nota", exact=True).click()
        app.get_by_role("textbox", name="Nota", exact=True).fill("Too loose")
        app.get_by_role("button", name="Guardar lectura").click()
        expect(app.locator(".saved-note")).to_be_visible()
        readings = app.evaluate(RECORDS)["readings"]
        kept_as = [
            [str(one["result"].get("verdict", {}).get("headline")).split(":")[0], one["note"]]
            for one in readings
        ]
        assert ["Too loose", "Too loose"] in kept_as
        app.locator(".saved-note a").click()
        expect(app.get_by_test_id("verdict")).to_contain_text("floja")
        # The user's own words stay, even if they are words that the app knows.
        expect(app.get_by_text("Too loose", exact=True)).to_be_visible()
    finally:
        phone.regain_network()


def test_words_left_in_english_are_found() -> None:
    assert TWO_WORDS.search(without("Nothing saved yet, C-1", {"C-1", "s"}))
    assert not TWO_WORDS.search(without("Chain of the check on 4.5 mm", {"Chain of the check"}))


def test_back_in_english_everything_is(app: Page) -> None:
    speak(app, "English")
    go(app, "slack")
    assert "too loose" in tell_slack(app, READING).lower()

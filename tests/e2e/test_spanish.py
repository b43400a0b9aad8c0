"""The app in Spanish: every screen, without a network; what is kept stays as it was said."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright, expect

from e2e.flow import READING, go, look_round, opened, wait_until_offline_ready
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
# What the records hold in the user's own words: all of it but what the core answered.
TYPED = """async () => {
  const open = (name) => new Promise((yes, no) => {
    const asked = indexedDB.open(name);
    asked.onsuccess = () => yes(asked.result);
    asked.onerror = () => no(asked.error);
  });
  const found = [];
  const texts = (value, name) => {
    if (typeof value === "string") found.push(value);
    else if (value && typeof value === "object" && name !== "result") {
      for (const [key, one] of Object.entries(value)) texts(one, key);
    }
  };
  for (const { name } of await indexedDB.databases()) {
    const db = await open(name);
    for (const store of db.objectStoreNames) {
      const all = db.transaction(store).objectStore(store).getAll();
      texts(await new Promise((yes) => { all.onsuccess = () => yes(all.result); }), "");
    }
    db.close();
  }
  return found;
}"""
RESULTS = """async () => {
  const [{ name }] = await indexedDB.databases();
  const db = await new Promise((yes) => {
    const asked = indexedDB.open(name);
    asked.onsuccess = () => yes(asked.result);
  });
  const all = db.transaction("readings").objectStore("readings").getAll();
  return await new Promise((yes) => {
    all.onsuccess = () => yes(all.result.map((one) => [one.result.verdict?.headline, one.note]));
  });
}"""
# Two words of letters: less may be a name, a unit or the same in both.
TWO_WORDS = re.compile(r"[A-Za-z]{2,}[,;:]? [A-Za-z]{2,}")


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
def app(
    tmp_path_factory: pytest.TempPathFactory, playwright: Playwright, chromium: str
) -> Iterator[Page]:
    """The app in English, with the invented engine to look at."""
    with opened(tmp_path_factory.mktemp("spanish"), playwright, chromium) as page:
        look_round(page)
        yield page


def test_no_screen_keeps_english_words(app: Page) -> None:
    english: dict[str, set[str]] = {}
    for screen in SCREENS:
        visit(app, screen)
        english[screen] = words(app)
    speak(app, "Español")
    theirs = kept() | set(app.evaluate(TYPED))
    same: dict[str, Any] = {}
    for screen in SCREENS:
        visit(app, screen)
        found = (words(app) & english[screen]) - theirs
        left = {one for one in found if TWO_WORDS.search(one) and not any(t in one for t in theirs)}
        if left:
            same[screen] = sorted(left)
        assert app.evaluate(STICKS_OUT) == [], screen
    assert same == {}


def test_a_verdict_is_said_in_spanish_offline_and_kept_in_english(app: Page) -> None:
    wait_until_offline_ready(app)
    app.context.set_offline(True)
    try:
        app.reload()
        said = tell_slack(app, "Movimiento, del todo adentro al todo afuera")
        assert "floja" in said.lower()
        app.get_by_role("textbox", name="Nota", exact=True).fill("Too loose")
        app.get_by_role("button", name="Guardar lectura").click()
        expect(app.locator(".saved-note")).to_be_visible()
        kept_as = app.evaluate(RESULTS)
        assert ["Too loose", "Too loose"] in [[str(a).split(":")[0], b] for a, b in kept_as]
        app.locator(".saved-note a").click()
        expect(app.get_by_test_id("verdict")).to_contain_text("floja")
        # The user's own words stay, even if they are words that the app knows.
        expect(app.get_by_text("Too loose", exact=True)).to_be_visible()
    finally:
        app.context.set_offline(False)


def test_back_in_english_everything_is(app: Page) -> None:
    speak(app, "English")
    go(app, "slack")
    assert "too loose" in tell_slack(app, READING).lower()

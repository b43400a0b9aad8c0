"""The methods and their proofs on the phone, without a network."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from e2e.browser import PHONE
from e2e.flow import go
from e2e.ready import Ready
from e2e.test_screens import SMALL_TARGETS, STICKS_OUT, TARGET_PX, resize, violations


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory, ready: Ready) -> Iterator[Page]:
    """The screen Methods, first opened when there is no network any more."""
    with ready.opened(tmp_path_factory.mktemp("methods")) as (phone, shown):
        phone.lose_network()
        shown.reload()
        go(shown, "methods")
        shown.get_by_test_id("held").wait_for()
        yield shown


def test_every_published_value_holds_on_the_phone(page: Page) -> None:
    expect(page.get_by_test_id("held")).to_have_attribute("data-all", "true")
    expect(page.get_by_test_id("held")).to_contain_text(re.compile(r"All \d{3} values hold"))


def test_a_published_value_stands_beside_ours(page: Page) -> None:
    # 24 pitches of 12.7 mm read 307.2 mm: jitetan.com prints 0.79 %; 2.4 / 304.8 is 0.787 %.
    page.get_by_label("Find a relation", exact=True).fill("chain glossary elongation jitetan")
    proof = page.get_by_test_id("proof").filter(has_text="Chain glossary: elongation")
    row = proof.locator("tbody tr")
    expect(row).to_contain_text("12.7 · 24 · 307.2")
    expect(row.locator("td").nth(0)).to_have_text("0.79")
    expect(row.locator("td").nth(1)).to_have_text("0.7874")
    expect(row.locator("td").nth(2)).to_contain_text("−0.0026")
    expect(row.locator("td").nth(2)).to_contain_text("holds")
    expect(row.locator("td").nth(2)).to_contain_text("allowed 0.005")
    expect(proof.get_by_text("published", exact=True)).to_be_visible()
    expect(proof.get_by_role("link", name="jitetan.com")).to_be_visible()


def test_what_is_from_memory_says_so(page: Page) -> None:
    page.get_by_label("Find a relation", exact=True).fill("measurement over two pins")
    proof = page.get_by_test_id("proof").filter(has_text="ISO 606, cl. 5.3")
    expect(proof.get_by_text("from memory, unverified")).to_be_visible()
    expect(proof.locator("tbody tr")).to_have_count(4)


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_the_screen_can_be_read_and_tapped(page: Page, theme: str) -> None:
    page.emulate_media(color_scheme=theme)  # type: ignore[arg-type]
    page.get_by_label("Find a relation", exact=True).fill("")
    page.get_by_text(re.compile("^Chain geometry")).click()
    page.get_by_text(re.compile("^Radius of the circle through the joint")).click()
    page.get_by_role("button", name="Show all 44").click()
    for size in (PHONE, {"width": 320, "height": 640}):
        resize(page, size)
        assert page.evaluate(STICKS_OUT)[:6] == [], size
        assert page.evaluate(SMALL_TARGETS, TARGET_PX) == [], size
    resize(page, PHONE)
    assert violations(page) == []
    page.get_by_text(re.compile("^Chain geometry")).click()


def test_a_figure_opens_how_it_is_worked_out_and_the_way_back(page: Page) -> None:
    go(page, "slack")
    page.get_by_role("link", name="Mid-span movement").first.click()
    expect(page.get_by_role("heading", name=re.compile("^How it is worked out: "))).to_be_visible()
    first = page.locator(".relation").first
    for part in ("Formula", "From", "Holds for", "Source"):
        expect(first.get_by_text(part, exact=True)).to_be_visible()
    expect(first).to_contain_text("movement.excess_from_movement")
    page.get_by_role("button", name="Back to the result").click()
    expect(page.get_by_role("heading", name="Slack bench")).to_be_attached()

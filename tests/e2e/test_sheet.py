"""The build sheet as pages of paper, made by a real Chromium and read back."""

import io
import re
import unicodedata
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from pypdf import PageObject, PdfReader

from e2e.builds import add_entry, open_build
from e2e.flow import look_round
from e2e.ready import Ready

POINTS = {"A4": (595.3, 841.9), "Letter": (612.0, 792.0)}
MARGIN_PT = 14 / 25.4 * 72
NOTES = 40  # enough to fill pages, so that rows would be cut if they could be


@pytest.fixture(scope="module")
def sheet(tmp_path_factory: pytest.TempPathFactory, ready: Ready) -> Iterator[Page]:
    """The sheet of the invented build, with many notes more, on a dark phone."""
    with ready.opened(tmp_path_factory.mktemp("sheet")) as (_, page):
        page.emulate_media(color_scheme="dark")
        look_round(page)
        open_build(page, "second build")
        for number in range(NOTES):
            words = f"begin{number} {'several words of a note ' * (number % 7 + 1)} end{number}"
            add_entry(page, "Note", {"In words": words})
        page.get_by_role("link", name="Build sheet").click()
        expect(page.get_by_role("heading", name="Where the figures come from")).to_be_visible()
        yield page


@pytest.fixture(scope="module")
def papers(sheet: Page) -> dict[str, PdfReader]:
    """The same sheet on either paper."""
    return {
        name: PdfReader(io.BytesIO(sheet.pdf(format=name, print_background=True)))
        for name in POINTS
    }


def squeezed(text: str) -> str:
    """Leave out blanks, of which a PDF keeps none where a line breaks; undo ligatures."""
    return re.sub(r"\s+", "", unicodedata.normalize("NFKC", text))


def places(page: PageObject) -> list[tuple[float, float, str]]:
    """Give every run of text of a page with its place [pt]."""
    found: list[tuple[float, float, str]] = []

    def visit(text: str, matrix: Any, text_matrix: Any, _font: Any, _size: Any) -> None:
        if text.strip():
            x, y = text_matrix[4], text_matrix[5]
            a, b, c, d, e, f = matrix
            found.append((a * x + c * y + e, b * x + d * y + f, text))

    page.extract_text(visitor_text=visit)
    return found


@pytest.mark.parametrize("name", POINTS)
def test_the_pages_have_the_papers_size(papers: dict[str, PdfReader], name: str) -> None:
    pages = papers[name].pages
    assert len(pages) >= 3
    for page in pages:
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(POINTS[name], abs=1.5)


@pytest.mark.parametrize("name", POINTS)
def test_every_word_of_the_sheet_is_on_paper(
    sheet: Page, papers: dict[str, PdfReader], name: str
) -> None:
    printed = squeezed("".join(page.extract_text() for page in papers[name].pages))
    lines = sheet.locator(".sheet").inner_text().splitlines()
    words = {word for line in lines for word in line.split()}
    assert len(words) > 150
    missing = {word for word in words if squeezed(word) not in printed}
    assert missing == set()


@pytest.mark.parametrize("name", POINTS)
def test_the_sheet_says_what_another_mechanic_needs(
    papers: dict[str, PdfReader], name: str
) -> None:
    printed = squeezed(" ".join(page.extract_text() for page in papers[name].pages))
    for wanted in (
        "Build sheet", "Invented demo engine", "second build (invented)", "Invented. This engine",
        "Cam drive (invented)", "C-1", "G-1", "Value ± U", "± 0.0", "Wanted slack",
        "common practice, no source", "published", "Keyway 4 crank deg", "Peak torque 402 N m",
        "Correction: none, as read.", "Battery disconnected", "never turn crank or cam alone",
        "expanded uncertainty", "95 % coverage",
    ):  # fmt: skip
        assert squeezed(wanted) in printed, wanted
    # The frame of the screen is not printed.
    for unwanted in ("Print, or save as PDF", "On the server", "Back to the build"):
        assert squeezed(unwanted) not in printed, unwanted


@pytest.mark.parametrize("name", POINTS)
def test_no_row_is_cut_by_the_end_of_a_page(papers: dict[str, PdfReader], name: str) -> None:
    texts = [squeezed(page.extract_text()) for page in papers[name].pages]
    pages_of = {
        mark: [at for at, text in enumerate(texts) if re.search(rf"{mark}(?!\d)", text)]
        for number in range(NOTES)
        for mark in (f"begin{number}", f"end{number}")
    }
    for number in range(NOTES):
        start, end = pages_of[f"begin{number}"], pages_of[f"end{number}"]
        assert len(start) >= 1
        assert start == end, f"note {number} begins on {start}, ends on {end}"
    assert len({pages[0] for pages in pages_of.values()}) >= 2, "the notes fill no two pages"


@pytest.mark.parametrize("name", POINTS)
def test_nothing_is_outside_the_margins_and_every_page_has_its_foot(
    papers: dict[str, PdfReader], name: str
) -> None:
    pages = papers[name].pages
    width, height = POINTS[name]
    for number, page in enumerate(pages, start=1):
        for x, y, text in places(page):
            assert MARGIN_PT - 2 <= x <= width - MARGIN_PT, (x, text)
            assert 0 < y < height - MARGIN_PT + 2, (y, text)
        printed = page.extract_text()
        assert f"Page {number} of {len(pages)}" in printed
        assert "Invented demo engine: pushrod V8 · second build (invented)" in printed


def test_the_table_says_its_columns_again_on_every_page(papers: dict[str, PdfReader]) -> None:
    for page in papers["A4"].pages:
        printed = squeezed(page.extract_text())
        if re.search(r"begin\d", printed):
            assert "WhenKindWhat" in printed


def test_wide_words_are_not_cut_off(sheet: Page) -> None:
    """Laid out at the width of the paper, nothing is wider than its box."""
    sheet.emulate_media(media="print")
    sheet.set_viewport_size({"width": 690, "height": 900})  # Letter less its margins, at 96 a inch
    try:
        wide = sheet.evaluate(
            """() => [...document.querySelectorAll(".sheet, .sheet *")]
              .filter((one) => !one.closest("svg") && one.scrollWidth > one.clientWidth + 1
                && getComputedStyle(one).display !== "inline")
              .map((one) => `${one.tagName}.${one.className} ${one.textContent.slice(0, 40)}`)"""
        )
        assert wide == []
    finally:
        sheet.emulate_media(media="screen")

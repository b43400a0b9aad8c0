"""Units are chosen once in Settings and hold on every screen."""

from playwright.sync_api import Page, expect

from e2e.browser import Phone
from e2e.flow import go, open_app
from e2e.service import Service


def choose(page: Page, unit: str) -> None:
    """Choose the unit of all lengths."""
    go(page, "settings")
    page.get_by_role("radio", name=unit, exact=True).check()
    expect(page.get_by_role("radio", name=unit, exact=True)).to_be_checked()


def test_one_choice_turns_every_length(phone: Phone, service: Service) -> None:
    page = open_app(phone, service)
    for unit, other, names in (("mm", "in", "9.525 mm"), ("in", "mm", "0.375 in")):
        # A field's own switch, against the choice that follows.
        go(page, "wear")
        pitch = page.get_by_role("group", name="Unit of Chain pitch")
        pitch.get_by_role("button", name=other, exact=True).click()
        choose(page, unit)
        go(page, "wear")
        expect(pitch.get_by_role("button", name=unit, exact=True)).to_have_attribute(
            "aria-pressed", "true"
        )
        sizes = page.get_by_label("Chain size", exact=True)
        expect(sizes.locator("option", has_text="06B")).to_contain_text(names)
        go(page, "lift")
        expect(page.get_by_label("Unit of the lifts in the table")).to_have_value(unit)

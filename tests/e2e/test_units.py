"""Units are chosen once in Settings and hold on every screen."""

from playwright.sync_api import Page, expect

from e2e.browser import Phone
from e2e.flow import READING, enter_drive, go, open_app, wait_for_verdict
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


def test_heat_and_fractions_follow_the_units_chosen(phone: Phone, service: Service) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    choose(page, "in")
    choose(page, "°F")
    go(page, "heat")
    page.get_by_role("radio", name="Grey iron").check()
    page.get_by_label("Movement, cold", exact=True).fill("0.225")
    # A cold movement as it was typed, whatever heat makes of it.
    expect(page.locator(".hero-pm")).to_contain_text("0.225 in")
    page.get_by_text("How sure the figures are").click()
    # A difference: 10 K are 18 degF, and no 32 is added.
    error = page.get_by_label("Running temperatures, plus or minus", exact=True)
    expect(page.locator("#field-temperature_error_k-note")).to_contain_text("18.0 °F")
    error.fill("1000")
    expect(page.locator("#field-temperature_error_k-note")).to_contain_text("180 °F")
    error.fill("18")
    expect(page.locator("#field-temperature_error_k-note")).to_contain_text("18.0 °F")

    # Who works in millimetres alone reads no fraction of an inch; in one, not what is beyond it.
    for unit, typed, fraction in (("mm", "8.33", ""), ("in", "0.328", "≈ 21/64 in")):
        choose(page, unit)
        go(page, "slack")
        page.get_by_label(READING, exact=True).fill(typed)
        wait_for_verdict(page, "loose")
        expect(page.locator(".hero-fraction")).to_have_text(fraction)
        expect(page.get_by_text("21/64")).to_have_count(1 if fraction else 0)


def test_what_is_half_typed_keeps_its_meaning(phone: Phone, service: Service) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    choose(page, "in")
    go(page, "slack")
    field = page.get_by_label(READING, exact=True)
    field.fill("0.53")
    wait_for_verdict(page, "too-loose")
    choose(page, "mm")
    go(page, "slack")
    expect(field).to_have_value("0.53 in")
    wait_for_verdict(page, "too-loose")

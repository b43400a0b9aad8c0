"""From shelf to ranking without a signal: what was tried says which chain to take."""

import re

from playwright.sync_api import Page, expect

from e2e.browser import Phone
from e2e.flow import READING, add_part, enter_drive, go, open_app, wait_until_offline_ready
from e2e.service import Service


def save_movement(page: Page, typed: str, outcome: str) -> None:
    """Type a movement on the Slack bench as it stands, and save it."""
    page.get_by_label(READING, exact=True).fill(typed)
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", outcome)
    page.get_by_role("button", name="Save reading").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()


def chosen(page: Page, field: str) -> str:
    """Give the choice that shows in a list."""
    return str(page.get_by_label(field, exact=True).locator("option:checked").inner_text())


def test_trial_fits_rank_the_shelf_offline_and_reach_the_service(
    service: Service, phone: Phone
) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    wait_until_offline_ready(page)
    page.close()
    service.kill()
    phone.lose_network()

    page = open_app(phone, service)
    add_part(page, "chain", "fresh", "C-1")
    add_part(page, "chain", "worn", "C-2")
    add_part(page, "gear set", "as bought", "G-1")

    # The first trial is chosen by hand; the table names the second, and opens the bench for it.
    go(page, "slack")
    page.get_by_label("Chain", exact=True).select_option(label="C-1 · fresh")
    page.get_by_label("Gear set", exact=True).select_option(label="G-1 · as bought")
    save_movement(page, "5.5 mm", "wanted")
    go(page, "fit")
    expect(page.get_by_text("1 of 2 combinations are not determined", exact=False)).to_be_visible()
    following = page.get_by_role("region", name="Try this next")
    expect(following).to_contain_text("C-2 · worn")
    expect(following).not_to_contain_text("Tried before")
    following.get_by_role("button").click()
    expect(page.get_by_label(READING, exact=True)).to_be_visible()
    assert chosen(page, "Chain") == "C-2 · worn"
    assert chosen(page, "Gear set") == "G-1 · as bought"
    save_movement(page, "9.5 mm", "loose")

    # Both are known now; the one in the window comes first, and nothing is left undetermined.
    go(page, "fit")
    rows = page.locator(".fit-list > li")
    expect(rows).to_have_count(2)
    expect(rows.nth(0)).to_contain_text("C-1 on G-1")
    expect(rows.nth(1)).to_contain_text("C-2 on G-1")
    # Both were tried, so that whichever tells more is a repeat, and is called one.
    expect(following).to_contain_text("Tried before: fit it anew")
    expect(page.get_by_role("heading", name="Not determined")).to_have_count(0)
    expect(page.get_by_role("button", name=re.compile("C-1 .* G-1 .* tried once"))).to_be_visible()

    # Half a chain is typed; it is there after a look elsewhere, and after the battery fell out.
    go(page, "shelf")
    page.get_by_role("link", name="Add a chain").click()
    page.get_by_label("Name", exact=True).fill("third, half")
    go(page, "shelf")
    page.get_by_role("link", name="Add a chain").click()
    expect(page.get_by_label("Name", exact=True)).to_have_value("third, half")
    phone.kill()
    phone.start()
    phone.lose_network()
    page = open_app(phone, service)
    go(page, "shelf")
    page.get_by_role("link", name="Add a chain").click()
    expect(page.get_by_label("Name", exact=True)).to_have_value("third, half")

    # Back in the shop everything reaches the database, each trial with what it was of.
    service.start()
    phone.regain_network()
    expect(page.get_by_test_id("sync-state")).to_have_attribute(
        "data-state", "server", timeout=60_000
    )
    found = service.rows(
        "select c.tag, g.tag, r.calc from reading r "
        "join chain c on c.id = r.chain_id and c.shop_id = r.shop_id "
        "join gear_set g on g.id = r.gear_set_id and g.shop_id = r.shop_id order by r.taken_at"
    )
    assert found == [("C-1", "G-1", "slack"), ("C-2", "G-1", "slack")]


def test_a_button_tapped_twice_keeps_one_reading(service: Service, phone: Phone) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    go(page, "slack")
    page.get_by_label(READING, exact=True).fill("17/32 in")
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", "too-loose")
    # Both before the first is kept, which empties the field that the second would be of.
    save = page.get_by_role("button", name="Save reading")
    save.evaluate("(one) => { one.click(); one.click(); }")
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    # A second would be kept before this is judged, as the core answers in turn.
    page.get_by_label(READING, exact=True).fill("1/4 in")
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", "too-close")
    go(page, "saved")
    expect(page.locator(".saved-row")).to_have_count(1)

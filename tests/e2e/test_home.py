"""The first screen: a newcomer is led to an engine, and anything kept is found by a word."""

from playwright.sync_api import Route, expect

from e2e.browser import Phone
from e2e.flow import add_part, enter_drive, go, measure, open_app
from e2e.service import Service


def test_it_begins_with_the_day_and_leads_to_the_first_engine(
    service: Service, phone: Phone
) -> None:
    page = open_app(phone, service)
    expect(page.get_by_role("heading", name="A builder's day")).to_be_visible()
    page.get_by_role("link", name="Enter your engine").click()
    expect(page.get_by_label("Engine name", exact=True)).to_be_visible()
    go(page, "home")
    page.get_by_role("main").get_by_role("link", name="True TDC").click()
    expect(page.locator("nav a[href='#/tdc'][aria-current=page]")).to_be_attached()


def test_what_is_kept_is_found_by_a_word(service: Service, phone: Phone) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    add_part(page, "chain", "worn", "C-1")
    measure(page, "17/32 in")
    go(page, "home")
    expect(page.get_by_text("1 chain, 0 gear sets", exact=False)).to_be_visible()
    find = page.get_by_label("Find", exact=True)
    find.fill("WORN c-1")
    (hit,) = page.locator(".home-row").all()
    expect(hit).to_contain_text("C-1 · worn")
    find.fill("degree wheel")
    expect(page.locator(".home-row").filter(has_text="True TDC")).to_be_visible()
    find.fill("mid-span loose")
    page.locator(".home-row").filter(has_text="Reading").click()
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", "too-loose")
    go(page, "home")
    page.get_by_label("Find", exact=True).fill("zzzz")
    expect(page.get_by_role("heading", name="Nothing found", exact=False)).to_be_visible()


def test_what_a_screen_needs_is_fetched_while_the_app_still_is(
    service: Service, new_phone: Phone
) -> None:
    page = new_phone.page()
    asked: list[str] = []
    held: list[Route] = []
    page.on("request", lambda one: asked.append(one.url.split("/")[-1]))
    page.route("**/assets/app-*.js", lambda one: held.append(one))
    page.goto(f"{service.url}/#/shelf", wait_until="commit")
    page.wait_for_selector("link[href*='/record-']", state="attached")
    (app,) = held
    app.continue_()
    expect(page.get_by_role("main")).to_be_visible()
    for name in ("app", "bench", "record"):
        assert len([one for one in asked if one.startswith(name) and one.endswith(".js")]) == 1


def test_a_browser_that_keeps_nothing_is_told_so(service: Service, phone: Phone) -> None:
    page = phone.page()
    page.add_init_script("indexedDB.open = () => { throw new Error('no room'); }")
    page.goto(service.url)
    expect(page.get_by_text("What is kept on this device cannot be read")).to_be_visible()
    expect(page.get_by_text("no room")).to_be_visible()

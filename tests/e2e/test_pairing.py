"""Letting phones in by link and typed code; revoked, nothing is lost; a reader sends nothing."""

import re

import pytest
from playwright.sync_api import Page, Playwright, expect

from e2e.browser import PHONE, Phone
from e2e.flow import ENGINE, READING, enter_drive, go, measure, open_app, pair
from e2e.service import Service
from e2e.test_scan import drawn, read
from e2e.test_screens import SMALL_TARGETS, STICKS_OUT, TARGET_PX, resize, violations

REFUSED = re.compile("the server responded with a status of (401|403)")
STATE = "sync-state"


@pytest.fixture
def service(new_service: Service) -> Service:
    """No phone was ever paired with it."""
    return new_service


@pytest.fixture
def phone(new_phone: Phone) -> Phone:
    """It never saw the app."""
    return new_phone


def only_complained_of_refusals(phone: Phone) -> None:
    """A browser writes every 401 and 403 into its console; it must have written nothing else."""
    assert all(REFUSED.search(one) for one in phone.complaints), phone.complaints
    phone.complaints.clear()


def bare(phone: Phone, service: Service) -> Page:
    """Open the app without pairing."""
    page = phone.page()
    page.goto(service.url)
    expect(page.get_by_role("navigation", name="Screens")).to_be_visible()
    return page


def state(page: Page, name: str) -> None:
    expect(page.get_by_test_id(STATE)).to_have_attribute("data-state", name, timeout=60_000)


def rows(service: Service, table: str = "reading") -> int:
    return int(service.rows(f"select count(*) from {table}")[0][0])  # noqa: S608


def test_unpaired_it_works_wholly_on_the_phone_and_asks_the_service_for_nothing(
    service: Service, phone: Phone
) -> None:
    asked: list[str] = []
    page = bare(phone, service)
    page.on("request", lambda request: asked.append(request.url))
    enter_drive(page)
    measure(page, "17/32 in")
    expect(page.get_by_test_id(STATE)).to_have_text("On this phone only")
    assert [url for url in asked if "/api/" in url] == []
    assert rows(service) == 0

    # Paired by the code as a person types it, everything goes to the shop.
    go(page, "settings")
    code = service.pairing_link("member").rsplit("/", 1)[1]
    page.get_by_label("Pairing code", exact=True).fill(code.replace("-", " ").lower())
    page.get_by_label("Name of this device", exact=True).fill("Phone at the stand")
    page.get_by_role("button", name="Pair this device").click()
    told = page.get_by_role("status").filter(has_text="Paired with")
    expect(told).to_contain_text("“This machine” as “Phone at the stand”")
    state(page, "server")
    assert (rows(service), rows(service, "engine")) == (1, 1)
    # No secret in the address bar, and a member sees no other devices.
    assert page.evaluate("location.href") == f"{service.url}/#/settings"
    expect(page.get_by_role("heading", name="Devices of the shop")).to_have_count(0)


def test_a_link_pairs_only_once_it_is_agreed_to(service: Service, phone: Phone) -> None:
    link = service.pairing_link()
    page = phone.page()
    page.goto(link)
    expect(page.get_by_label("Pairing code", exact=True)).to_have_value(link.rsplit("/", 1)[1])
    assert rows(service, "device") == 0
    page.get_by_role("button", name="Pair this device").click()
    expect(page.get_by_role("status").filter(has_text="Paired with")).to_be_visible()
    assert rows(service, "device") == 1
    kept = service.rows("select token_hash from device")[0][0]
    assert kept not in page.evaluate("document.body.innerText")


def test_a_wrong_code_is_explained_and_a_short_one_is_not_sent(
    service: Service, phone: Phone
) -> None:
    page = bare(phone, service)
    go(page, "settings")
    page.get_by_label("Pairing code", exact=True).fill("ABC")
    page.get_by_role("button", name="Pair this device").click()
    expect(page.get_by_role("alert")).to_contain_text("needs 10 letters and digits")
    assert phone.complaints == []
    page.get_by_label("Pairing code", exact=True).fill("ABCDE-23456")
    page.get_by_role("button", name="Pair this device").click()
    expect(page.get_by_role("alert")).to_contain_text("too many wrong codes")
    only_complained_of_refusals(phone)


@pytest.fixture
def second(tmp_path, playwright: Playwright, chromium: str):
    """Another person's phone."""
    one = Phone(playwright, chromium, tmp_path / "second")
    try:
        one.start()
        yield one
    finally:
        one.kill()


def test_revoked_on_another_phone_it_loses_nothing_and_goes_on_after_pairing_again(
    service: Service, phone: Phone, second: Phone
) -> None:
    theirs = open_app(second, service, "member")
    enter_drive(theirs)
    measure(theirs, "17/32 in")
    state(theirs, "server")

    ours = open_app(phone, service)
    go(ours, "settings")
    row = ours.get_by_role("listitem").filter(has_text="member")
    expect(row).to_contain_text("last seen")
    row.get_by_role("button", name=re.compile("^Revoke")).click()
    row.get_by_role("button", name=re.compile("^Yes, revoke")).click()
    expect(row).to_have_count(0)
    assert len(service.rows("select id from device where revoked_at is null")) == 1

    # It does not know yet: it measures on, is turned away, and says so quietly.
    measure(theirs, "7/16 in", "loose")
    state(theirs, "unpaired")
    expect(theirs.get_by_test_id(STATE)).to_have_text("Pair again")
    only_complained_of_refusals(second)
    assert rows(service) == 1
    go(theirs, "saved")
    saved = theirs.get_by_role("listitem").filter(has_text=ENGINE)
    expect(saved).to_have_count(2)
    expect(saved.filter(has_text="On this phone")).to_have_count(1)
    go(theirs, "settings")
    expect(theirs.get_by_role("status").filter(has_text="Nothing is lost")).to_be_visible()
    expect(theirs.get_by_text("1 record waits.", exact=False)).to_be_visible()

    pair(theirs, service, "member")
    state(theirs, "server")
    assert rows(service) == 2
    assert second.complaints == []


def test_a_reader_sees_the_shops_records_and_sends_none(
    service: Service, phone: Phone, second: Phone
) -> None:
    ours = open_app(phone, service)
    enter_drive(ours)
    measure(ours, "17/32 in")
    state(ours, "server")
    theirs = open_app(second, service, "reader")
    go(theirs, "saved")
    expect(theirs.get_by_role("listitem").filter(has_text=ENGINE)).to_have_count(1)
    measure(theirs, "7/16 in", "loose")
    state(theirs, "waiting")
    go(theirs, "settings")
    expect(theirs.get_by_text("what is saved on it stays on it", exact=False)).to_be_visible()
    assert rows(service) == 1
    assert second.complaints == []


def test_an_owner_lets_another_phone_in_and_unpairs_itself(
    service: Service, phone: Phone, second: Phone
) -> None:
    ours = open_app(phone, service)
    go(ours, "settings")
    ours.get_by_role("radio", name="Only looks").check()
    ours.get_by_role("button", name="Make a pairing code").click()
    shown = ours.locator(".pairing-code strong").inner_text()
    link = read(drawn(ours, ".pairing-code"))
    assert link == f"{service.url}/#/pair/{shown}"
    assert ours.evaluate(STICKS_OUT) == []
    assert violations(ours) == []

    theirs = second.page()
    theirs.goto(link)
    theirs.get_by_role("button", name="Pair this device").click()
    expect(theirs.get_by_role("status").filter(has_text="a reader")).to_be_visible()

    ours.get_by_role("button", name="Unpair this device").click()
    ours.get_by_role("button", name="Cancel").click()
    ours.get_by_role("button", name="Unpair this device").click()
    ours.get_by_role("button", name="Yes, unpair").click()
    expect(ours.get_by_role("heading", name="Pair this device")).to_be_visible()
    state(ours, "unpaired")
    live = service.rows("select role from device where revoked_at is null")
    assert live == [("reader",)]


def test_pairing_survives_a_kill_and_works_on_without_the_service(
    service: Service, phone: Phone
) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    # The phone first: a page that is open when the service dies complains of the cut line.
    phone.kill()
    service.kill()
    service.start()
    phone.start()
    page = open_app(phone, service)
    go(page, "settings")
    expect(page.get_by_role("status").filter(has_text="Paired with")).to_be_visible()
    go(page, "slack")
    expect(page.get_by_label(READING, exact=True)).to_be_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_pairing_screens_are_large_and_clear(service: Service, phone: Phone, scheme: str) -> None:
    page = bare(phone, service)
    page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
    for path in ("/#/settings", "/#/pair/ABCDE-23456"):
        page.goto(service.url + path)
        page.get_by_role("button", name="Pair this device").wait_for()
        for size in (PHONE, {"width": 320, "height": 640}, {"width": 844, "height": 390}):
            resize(page, size)
            assert page.evaluate(STICKS_OUT) == [], (path, size)
        resize(page, PHONE)
        assert page.evaluate(SMALL_TARGETS, TARGET_PX) == []
        assert violations(page) == []

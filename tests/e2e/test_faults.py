"""A real browser on a bad line, killed at the worst moment, and two phones on one record."""

import re
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright, expect

from e2e.browser import Phone
from e2e.flow import (
    add_part,
    enter_drive,
    go,
    measure,
    open_app,
    wait_until_offline_ready,
)
from e2e.service import Service
from e2e.test_screens import SMALL_TARGETS, STICKS_OUT, TARGET_PX, violations
from faults.proxy import PHASES, Proxy

STATE = "sync-state"
# As if the phone's clock were an hour behind, from the first script of the page on.
AN_HOUR_BEHIND = """{
  const Now = Date, late = 3600000;
  globalThis.Date = class extends Now {
    constructor(...given) { super(...(given.length ? given : [Now.now() - late])); }
    static now() { return Now.now() - late; }
  };
}"""


class Behind:
    """The service as it is reached through a proxy."""

    def __init__(self, service: Service, proxy: Proxy) -> None:
        self.service = service
        self.url = proxy.url

    def pairing_link(self, role: str = "owner") -> str:
        """Give a link that leads through the proxy."""
        return self.service.pairing_link(role).replace(self.service.url, self.url)


@pytest.fixture
def proxy(service: Service) -> Iterator[Proxy]:
    """A line to the service that can be cut."""
    one = Proxy(service.port)
    yield one
    one.close()


def on_server(page: Page) -> None:
    """Wait until nothing waits on the phone."""
    expect(page.get_by_test_id(STATE)).to_have_attribute("data-state", "server", timeout=60_000)


def counts(service: Service) -> list[tuple[Any, ...]]:
    """Count readings, readings that differ, and readings changed since they came."""
    told = "select count(*), count(distinct input || taken_at), sum(version > 1) from reading"
    return service.rows(told)


def forget_cuts(phone: Phone) -> None:
    """Take what the browser said of a cut line for what it is."""
    phone.complaints[:] = [said for said in phone.complaints if "net::ERR_" not in said]


def wait_for(proxy: Proxy, cuts: int) -> None:
    """Wait until the line was cut so many times."""
    end = time.monotonic() + 60
    while len(proxy.done) < cuts:
        assert time.monotonic() < end, proxy.done
        time.sleep(0.02)


def test_the_line_cut_in_every_phase(service: Service, phone: Phone, proxy: Proxy) -> None:
    page = open_app(phone, Behind(service, proxy))  # type: ignore[arg-type]
    enter_drive(page)
    on_server(page)
    for number, phase in enumerate(PHASES, start=1):
        proxy.cuts.append(phase)
        measure(page, f"{12 + number}.5 mm")
        wait_for(proxy, number)
        go(page, "settings")
        page.get_by_role("button", name="Send now").click()
        on_server(page)
        assert counts(service) == [(number, number, 0)]
    assert proxy.done == list(PHASES)
    forget_cuts(phone)
    print(f"network cut in {len(PHASES)} phases in the browser: {len(PHASES)} readings, 0 lost")


def test_killed_between_saving_and_sending(service: Service, phone: Phone, proxy: Proxy) -> None:
    page = open_app(phone, Behind(service, proxy))  # type: ignore[arg-type]
    enter_drive(page)
    on_server(page)
    page.evaluate("navigator.serviceWorker.ready")
    kills = ("before", "answer", "half", "before", "answer")
    for number, phase in enumerate(kills, start=1):
        # The phone loses its battery when the batch is on its way, or done but not answered.
        before = len(proxy.done)
        proxy.cuts += [phase] * 20
        measure(page, f"{12 + number}.5 mm")
        wait_for(proxy, before + 1)
        phone.kill()
        proxy.cuts.clear()
        on_its_way = proxy.keys[-1]
        phone.start()
        page = open_app(phone, Behind(service, proxy))  # type: ignore[arg-type]
        on_server(page)
        # It was kept before it was sent: after the kill the same batch went again.
        assert proxy.keys[-1] == on_its_way
        assert proxy.keys.count(on_its_way) >= 2
        assert counts(service) == [(number, number, 0)]
    forget_cuts(phone)
    print(f"browser killed {len(kills)} times while sending: {len(kills)} readings, 0 lost")


@pytest.fixture
def other(tmp_path: Path, playwright: Playwright, chromium: str) -> Iterator[Phone]:
    """A second phone; its clock is an hour behind."""
    one = Phone(playwright, chromium, tmp_path / "other")
    try:
        one.start().add_init_script(AN_HOUR_BEHIND)
        yield one
        assert one.complaints == []
    finally:
        one.kill()


def rename(page: Page, name: str, note: str | None = None) -> None:
    """Change the chain's name, and its note."""
    page.get_by_role("link", name=re.compile("Edit|Change|Correct")).click()
    page.get_by_label("Name", exact=True).fill(name)
    if note is not None:
        page.get_by_text("More", exact=False).first.click()
        page.get_by_label("Note", exact=True).fill(note)
    page.get_by_role("button", name="Save chain").click()
    expect(page.get_by_role("heading", name=f"C-1 {name}")).to_be_visible()


def open_chain(page: Page) -> None:
    go(page, "shelf")
    page.locator("a.shelf-row", has_text="C-1").click()


def refresh(page: Page) -> None:
    """Send and fetch now."""
    page.locator("a.header-state").click()
    page.get_by_role("button", name="Send now").click()


def test_two_phones_change_one_record(service: Service, phone: Phone, other: Phone) -> None:
    first = open_app(phone, service)
    enter_drive(first)
    add_part(first, "chain", "as bought", "C-1")
    on_server(first)
    second = open_app(other, service)
    wait_until_offline_ready(second)
    assert second.evaluate("Date.now()") < first.evaluate("Date.now()") - 3_000_000
    on_server(second)
    open_chain(second)
    open_chain(first)

    # Both change the name while only the first has a signal, and both take a reading.
    other.lose_network()
    rename(second, "by the second")
    rename(first, "by the first")
    measure(first, "13.5 mm")
    measure(second, "14.5 mm")
    on_server(first)
    other.regain_network()
    refresh(second)

    # Nothing is overwritten and nothing lost: the second phone shows both, and waits.
    state = second.get_by_test_id(STATE)
    expect(state).to_have_text("1 to choose", timeout=60_000)
    assert service.rows("select label, version from chain") == [("by the first", 2)]
    second.get_by_role("link", name="Compare and choose").click()
    both = second.get_by_role("group", name="Name")
    expect(both.get_by_role("radio", name="This phone: by the second")).to_be_checked()
    for scheme in ("light", "dark"):
        second.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        assert violations(second) == []
    assert second.evaluate(STICKS_OUT) == []
    assert second.evaluate(SMALL_TARGETS, TARGET_PX) == []
    both.get_by_role("radio", name="The server: by the first").check()
    expect(second.get_by_role("button", name="Keep what is chosen")).to_be_visible()
    second.get_by_role("button", name="Keep this phone's").click()
    on_server(second)
    assert service.rows("select label, version from chain") == [("by the second", 3)]
    refresh(first)
    on_server(first)
    open_chain(first)
    expect(first.get_by_role("heading", name="C-1 by the second")).to_be_visible()
    assert counts(service) == [(2, 2, 0)]

    # What one removes leaves the other's shelf; what is brought back is there again.
    first.get_by_role("button", name="Remove from the shelf").click()
    expect(first.get_by_text("C-1 · by the second was removed", exact=False)).to_be_visible()
    on_server(first)
    refresh(second)
    on_server(second)
    go(second, "shelf")
    expect(second.locator("a.shelf-row", has_text="C-1")).to_have_count(0)
    second.get_by_text("Removed (1)").click()
    second.get_by_role("button", name="Bring back C-1").click()
    expect(second.locator("a.shelf-row", has_text="C-1")).to_have_count(1)
    on_server(second)
    assert service.rows("select version, deleted_at from chain") == [(5, None)]

    # A reading is set aside on one, and comes back from the other. It was never erased.
    go(second, "saved")
    second.locator("a.saved-row").first.click()
    second.get_by_role("button", name="Set aside").click()
    expect(second.get_by_text("This reading is set aside", exact=False)).to_be_visible()
    on_server(second)
    refresh(first)
    on_server(first)
    go(first, "saved")
    expect(first.locator("a.saved-row")).to_have_count(1)
    first.get_by_text("Set aside (1)").click()
    first.get_by_role("button", name=re.compile("^Bring back")).click()
    expect(first.locator("a.saved-row")).to_have_count(2)
    on_server(first)
    told = "select count(*), count(deleted_at), max(version) from reading"
    assert service.rows(told) == [(2, 0, 3)]
    print("two phones, one an hour behind, on one record: 2 readings, 0 lost, 0 doubled")

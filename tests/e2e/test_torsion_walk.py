"""The torsional study asked of the service: answered, kept without it, answered by itself later."""

from playwright.sync_api import Page, expect

from e2e.browser import Phone
from e2e.flow import enter_drive, go, open_app, wait_until_offline_ready
from e2e.service import Service
from e2e.test_screens import SMALL_TARGETS, STICKS_OUT, TARGET_PX, violations

STATE = "study-state"


def state(page: Page, name: str) -> None:
    expect(page.get_by_test_id(STATE)).to_have_attribute("data-state", name, timeout=60_000)


def test_a_study_is_answered_kept_and_answered_by_itself_later(
    service: Service, phone: Phone
) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    wait_until_offline_ready(page)
    go(page, "torsion")
    expect(page.get_by_text("A study by a model, not a measurement", exact=False)).to_be_visible()
    state(page, "none")
    page.get_by_label("From a speed of", exact=True).fill("3000")
    page.get_by_role("button", name="Ask the service").click()
    state(page, "answered")
    cells = page.locator(".study-map td")
    expect(cells).to_have_count(64)
    # Looser chains let the cam scatter more: the last row's worst against the first row's.
    told = [float(cell.inner_text().replace("−", "-")) for cell in cells.all()]
    assert max(told[:8]) < max(told[-8:])
    assert violations(page) == []
    assert page.evaluate(STICKS_OUT) == []
    assert page.evaluate(SMALL_TARGETS, TARGET_PX) == []

    # Without the service the question is kept, and the last answer stays.
    page.close()
    service.kill()
    phone.lose_network()
    page = open_app(phone, service)
    go(page, "torsion")
    state(page, "answered")
    page.get_by_label("From a speed of", exact=True).fill("4000")
    expect(page.get_by_text("ask again", exact=False)).to_be_visible()
    page.get_by_role("button", name="Ask the service").click()
    state(page, "waiting")
    expect(page.locator(".study-map thead")).to_contain_text("3000")

    # The battery falls out; back in the shop it is answered without being asked again.
    phone.kill()
    service.start()
    phone.start()
    page = open_app(phone, service)
    go(page, "torsion")
    state(page, "answered")
    expect(page.locator(".study-map thead")).to_contain_text("4000")
    expect(page.get_by_label("From a speed of", exact=True)).to_have_value("4000")

"""The whole point, on the production build: one load, then no network, and nothing is lost."""

import json
from fractions import Fraction
from typing import Any

import pytest
from playwright.sync_api import Error as PlaywrightError
from playwright.sync_api import Page, expect

from e2e.browser import Phone
from e2e.flow import (
    ENGINE,
    READING,
    enter_drive,
    go,
    measure,
    open_app,
    wait_until_offline_ready,
)
from e2e.service import Service

REACHES = """async (path) => {
  try { return (await fetch(path, { cache: "no-store" })).status; } catch { return 0; }
}"""


def reaches_service(page: Page) -> bool:
    """Whether this page gets an answer over the network (the app's cache holds no such path)."""
    return bool(page.evaluate(REACHES, "/healthz") == 200)


def devtools(page: Page, method: str) -> dict[str, Any]:
    """Ask the browser itself about the page."""
    session = page.context.new_cdp_session(page)
    try:
        return session.send(method)
    finally:
        session.detach()


def test_the_app_can_be_installed(new_service: Service, new_phone: Phone) -> None:
    page = open_app(new_phone, new_service)
    wait_until_offline_ready(page)
    manifest = devtools(page, "Page.getAppManifest")
    assert manifest["errors"] == []
    read = json.loads(manifest["data"])
    assert read["display"] == "standalone"
    assert {"192x192", "512x512"} <= {icon["sizes"] for icon in read["icons"]}
    assert any(icon.get("purpose") == "maskable" for icon in read["icons"])
    assert devtools(page, "Page.getInstallabilityErrors")["installabilityErrors"] == []


def test_without_the_first_load_there_is_no_app(new_service: Service, new_phone: Phone) -> None:
    """So a check that finds the app offline does not find it by some other way."""
    new_service.kill()
    page = new_phone.page()
    new_phone.lose_network()
    with pytest.raises(PlaywrightError, match="net::ERR_"):
        page.goto(new_service.url)
    assert page.get_by_role("navigation", name="Screens").count() == 0


def test_measured_offline_killed_reopened_and_sent_when_back(
    service: Service, phone: Phone
) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    wait_until_offline_ready(page)
    assert reaches_service(page)
    page.close()

    # No network: the browser's is off, and the service is dead too.
    service.kill()
    phone.lose_network()

    # A cold start in a fresh page, then a worn chain, typed as read off a rule.
    page = open_app(phone, service)
    assert not reaches_service(page)
    assert not service.answers("/healthz")
    shown = measure(page, "17/32 in")
    assert shown.startswith("13.5") or "17/32" in shown or shown.startswith("0.53")
    expect(page.get_by_test_id("sync-state")).to_have_attribute("data-state", "waiting")

    # The battery falls out: no process gets to tidy up.
    phone.kill()
    phone.start()
    phone.lose_network()
    page = open_app(phone, service)
    assert not reaches_service(page)
    go(page, "saved")
    row = page.get_by_role("listitem").filter(has_text=ENGINE)
    expect(row).to_have_count(1)
    expect(row).to_contain_text("Too loose")
    expect(row).to_contain_text("On this phone")

    # Back in the shop: the service has an empty table until the phone is back online.
    service.start()
    assert service.rows("select count(*) from reading") == [(0,)]
    phone.regain_network()
    assert reaches_service(page)
    expect(row).to_contain_text("On the server", timeout=60_000)
    expect(page.get_by_test_id("sync-state")).to_have_attribute("data-state", "server")
    stored = service.rows("select calc, input, result from reading")
    assert len(stored) == 1
    calc, asked, result = stored[0]
    assert calc == "slack"
    assert json.loads(asked)["readings_mm"] == [float(Fraction(17, 32) * Fraction("25.4"))]
    assert json.loads(result)["verdict"]["outcome"] == "too-loose"
    assert service.rows("select name from engine") == [(ENGINE,)]


def test_what_the_phone_said_is_what_the_service_says(service: Service, phone: Phone) -> None:
    """A saved reading, recomputed by the service, has the same verdict."""
    page = open_app(phone, service)
    enter_drive(page)
    measure(page, "17/32 in")
    expect(page.get_by_test_id("sync-state")).to_have_attribute(
        "data-state", "server", timeout=60_000
    )
    (kept,) = service.get("/api/v1/readings")["items"]
    told = service.get(f"/api/v1/readings/{kept['id']}/explanation")
    assert told["same_verdict"] is True
    assert told["problems"] == []


def test_what_is_being_typed_survives_a_kill(service: Service, phone: Phone) -> None:
    """Entered but not saved: after a kill it is still in the field."""
    page = open_app(phone, service)
    enter_drive(page)
    wait_until_offline_ready(page)
    go(page, "slack")
    page.get_by_label(READING, exact=True).fill("7/16 in")
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", "loose")
    phone.kill()
    service.kill()
    phone.start()
    phone.lose_network()
    page = open_app(phone, service)
    go(page, "slack")
    expect(page.get_by_label(READING, exact=True)).to_have_value("7/16 in")

"""What a mechanic does in the app, by the labels on the screen."""

import json
import time

from playwright.sync_api import Page, expect

from e2e.browser import Phone
from e2e.service import Service

ENGINE = "Engine of the browser check"
READING = "Movement, fully in to fully out"
# The first page of all is served by the network; the copy on the phone is complete when "ready".
READY = """async () => {
  const late = new Promise((_, no) => setTimeout(() => no(new Error("no offline copy")), 60000));
  await Promise.race([navigator.serviceWorker.ready, late]);
}"""


def open_app(phone: Phone, service: Service, role: str = "owner") -> Page:
    """Open the app in a fresh page, paired with the service, and wait for its first screen."""
    page = phone.page()
    if service.url not in phone.paired:
        pair(page, service, role)
        phone.paired.add(service.url)
    page.goto(service.url)
    expect(page.get_by_role("navigation", name="Screens")).to_be_visible()
    return page


def look_round(page: Page) -> None:
    """Take the invented engine to look at."""
    go(page, "drive")
    page.get_by_role("button", name="Look round with an invented engine").click()
    expect(page.get_by_role("link", name="Engine: Invented")).to_be_visible()


def pair(page: Page, service: Service, role: str = "owner") -> None:
    """Open a pairing link and agree to it."""
    page.goto(service.pairing_link(role))
    page.get_by_role("button", name="Pair this device").click()
    expect(page.get_by_role("status").filter(has_text="Paired with")).to_be_visible()


def go(page: Page, screen: str) -> None:
    """Tap a screen's name, in the list of its place if it is in one; or the settings."""
    if screen == "settings":
        page.locator("a[href='#/settings']").click()
        page.get_by_role("heading", name="Settings").wait_for()
        return
    if screen == "home":
        page.locator("a[href='#/home']").click()
        page.get_by_role("heading", name="A builder's day").wait_for()
        return
    link = page.locator(f"nav a[href='#/{screen}']")
    if not link.is_visible():
        group = page.locator(".nav-group", has=page.locator(f"a[href='#/{screen}']"))
        group.locator("> button").click()
    link.click()
    page.locator(f"nav a[href='#/{screen}'][aria-current=page]").wait_for(state="attached")


def enter_drive(page: Page) -> None:
    """Enter an engine with a 58-link 3/8 inch drive and save it."""
    go(page, "drive")
    page.get_by_role("button", name="Enter your engine").click()
    typed = {
        "Engine name": ENGINE,
        "Chain pitch": "3/8 in",
        "Crank gear teeth": "22",
        "Cam gear teeth": "44",
        "Links in the chain": "58",
        "Centre distance": "114.10 mm",
    }
    for label, value in typed.items():
        page.get_by_label(label, exact=True).fill(value)
    page.get_by_label("Centre distance", exact=True).blur()
    page.get_by_role("button", name="Save engine and drive").click()
    # The engine's chains show once both the engine and its drive are kept.
    expect(page.get_by_role("heading", name="Chains of this engine")).to_be_visible()
    expect(page.get_by_role("link", name=f"Engine: {ENGINE}")).to_be_visible()


def add_part(page: Page, what: str, name: str, tag: str) -> None:
    """Put a part on the shelf by its name and tag alone: the drive gives its size."""
    go(page, "shelf")
    page.get_by_role("link", name=f"Add a {what}").click()
    page.get_by_label("Name", exact=True).fill(name)
    page.get_by_label("Tag", exact=True).fill(tag)
    page.get_by_role("button", name=f"Save {what}").click()
    expect(page.get_by_role("heading", name=f"{tag} {name}")).to_be_visible()


def wait_for_verdict(page: Page, outcome: str = "too-loose") -> None:
    """Wait until the phone's core has judged the reading."""
    expect(page.get_by_test_id("verdict")).to_have_attribute("data-outcome", outcome)


def measure(page: Page, typed: str, outcome: str = "too-loose") -> str:
    """Type a movement on the Slack bench, wait for the verdict, save; give the number shown."""
    go(page, "slack")
    page.get_by_label(READING, exact=True).fill(typed)
    wait_for_verdict(page, outcome)
    shown = page.get_by_test_id("hero-value").inner_text()
    page.get_by_role("button", name="Save reading").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    return shown


# A write to the phone's database ends a moment after the key that caused it.
KEPT = """(text) => new Promise((done, no) => {
  const open = indexedDB.open("midspan");
  open.onerror = () => no(open.error);
  open.onsuccess = () => {
    const ask = open.result.transaction("kept").objectStore("kept").getAll();
    ask.onsuccess = () => { open.result.close(); done(JSON.stringify(ask.result).includes(text)); };
  };
})"""


def wait_until_kept(page: Page, typed: str) -> None:
    """Wait until what was typed is in the phone's database; from then on a kill may come."""
    end = time.monotonic() + 30
    while not page.evaluate(KEPT, json.dumps(typed)):
        assert time.monotonic() < end, f"{typed} is not kept"
        page.wait_for_timeout(50)


def wait_until_offline_ready(page: Page) -> None:
    """Wait until the copy on the phone is complete, and open the page from it."""
    page.evaluate(READY)
    page.reload()
    expect(page.locator("nav.nav")).to_be_visible()
    assert page.evaluate("navigator.serviceWorker.controller !== null")

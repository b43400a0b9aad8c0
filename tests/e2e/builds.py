"""What a mechanic does in the build record, by the labels on the screen."""

from playwright.sync_api import Page, expect

from e2e.flow import ENGINE, go

KINDS = ["Part", "Setting", "Plan", "Dyno session", "Note"]
# The screens that a build leads to, by what is tapped there.
BUILD_SCREENS = ["Build", "Build sheet", "Change", *KINDS]


def start_build(page: Page, name: str) -> None:
    """Start a build of the engine on the bench."""
    go(page, "builds")
    page.get_by_role("button", name="Start a build of").click()
    page.get_by_label("Build name", exact=True).fill(name)
    page.get_by_role("button", name="Save build").click()
    expect(page.get_by_role("heading", name=name)).to_be_visible()


def add_entry(page: Page, kind: str, typed: dict[str, str]) -> None:
    """Enter one thing from the page of its build, and come back to it."""
    page.get_by_role("navigation", name="Add to the build").get_by_role("link", name=kind).click()
    expect(page.get_by_role("heading", name=kind)).to_be_visible()
    for label, value in typed.items():
        page.get_by_label(label, exact=True).fill(value)
    page.get_by_role("button", name=f"Save {kind.lower()}").click()
    expect(page.get_by_role("heading", name="In time order")).to_be_visible()


def open_build(page: Page, name: str) -> None:
    """Open a build from the list of all."""
    go(page, "builds")
    page.get_by_role("main").get_by_role("link", name=name).click()
    expect(page.get_by_role("heading", name="In time order")).to_be_visible()


def open_in_build(page: Page, name: str, screen: str) -> None:
    """Open one of the screens that a build leads to."""
    open_build(page, name)
    if screen == "Build":
        return
    page.get_by_role("main").get_by_role("link", name=screen, exact=True).click()
    heading = ENGINE if screen == "Build sheet" else "Change the build"
    page.get_by_role("heading", name=screen if screen in KINDS else heading).wait_for()

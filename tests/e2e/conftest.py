"""The service as installed, and a real Chromium before it."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Playwright, expect, sync_playwright

from e2e.browser import Phone
from e2e.chromium import find_or_install
from e2e.ready import Ready
from e2e.service import Service


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """Drive browsers; one for all tests."""
    # Long enough for a busy machine: these checks are about what happens, not how fast.
    expect.set_options(timeout=30_000)
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def chromium() -> str:
    """Path of the Chromium to test with."""
    return find_or_install()


@pytest.fixture(scope="session")
def ready(
    tmp_path_factory: pytest.TempPathFactory, playwright: Playwright, chromium: str
) -> Iterator[Ready]:
    """What most checks begin with."""
    one = Ready(tmp_path_factory.mktemp("ready"), playwright, chromium)
    yield one
    one.one.kill()


@pytest.fixture
def service(ready: Ready) -> Service:
    """A started service that has kept nothing yet; `phone` is paired with it."""
    return ready.service()


@pytest.fixture
def phone(tmp_path: Path, ready: Ready) -> Iterator[Phone]:
    """A started browser that has the app; fails the test if a page complained."""
    yield from _without_complaint(ready.phone(tmp_path))


@pytest.fixture
def new_service(tmp_path: Path) -> Iterator[Service]:
    """A started service that no phone was ever paired with."""
    one = Service(tmp_path / "new-data")
    try:
        one.start()
        yield one
    finally:
        one.kill()


@pytest.fixture
def new_phone(tmp_path: Path, playwright: Playwright, chromium: str) -> Iterator[Phone]:
    """A started browser that never saw the app; fails the test if a page complained."""
    yield from _without_complaint(Phone(playwright, chromium, tmp_path / "new-profile"))


def _without_complaint(one: Phone) -> Iterator[Phone]:
    try:
        one.start()
        yield one
        assert one.complaints == []
    finally:
        one.kill()

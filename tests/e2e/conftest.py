"""The service as installed, and a real Chromium before it."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Playwright, expect, sync_playwright

from e2e.browser import Phone
from e2e.chromium import find_or_install
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


@pytest.fixture
def service(tmp_path: Path) -> Iterator[Service]:
    """A started service with an empty data folder."""
    one = Service(tmp_path / "data")
    try:
        one.start()
        yield one
    finally:
        one.kill()


@pytest.fixture
def phone(tmp_path: Path, playwright: Playwright, chromium: str) -> Iterator[Phone]:
    """A started browser with an empty profile; fails the test if a page complained."""
    one = Phone(playwright, chromium, tmp_path / "profile")
    try:
        one.start()
        yield one
        assert one.complaints == []
    finally:
        one.kill()

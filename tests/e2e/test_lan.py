"""A phone in the shop's network: over HTTPS, by the private authority, and then without signal."""

import shutil
import subprocess
from base64 import b64encode
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat
from playwright.sync_api import Error as PlaywrightError
from playwright.sync_api import Playwright, expect

from e2e.browser import Phone
from e2e.flow import enter_drive, measure, open_app, wait_until_offline_ready
from e2e.service import Service
from midspan import lan


def address() -> str:
    """An address of this machine, in its own network if it is in one: no request leaves it."""
    try:
        return lan.choose([])[0]
    except lan.NotPrivate:
        return "127.0.0.2"


def trust(service: Service, home: Path) -> tuple[str, ...]:
    """Make the browser trust the authority, as the steps on a phone do; give its flags."""
    if shutil.which("certutil"):
        database = home / ".pki" / "nssdb"
        database.mkdir(parents=True)
        store = ["certutil", "-d", f"sql:{database}"]
        subprocess.run([*store, "-N", "--empty-password"], check=True)
        added = ["-A", "-t", "C,,", "-n", "Shop", "-i", str(service.authority)]
        subprocess.run([*store, *added], check=True)
        return ()
    # Without that tool: the one key of the service, by its hash. What it is signed by, and for
    # which names, tests/web/test_lan.py holds against a client that trusts the authority alone.
    shown = x509.load_pem_x509_certificate((service.authority.parent / "service.pem").read_bytes())
    key = shown.public_key().public_bytes(Encoding.DER, PublicFormat.SubjectPublicKeyInfo)
    return (f"--ignore-certificate-errors-spki-list={b64encode(sha256(key).digest()).decode()}",)


@pytest.fixture
def in_shop(tmp_path: Path) -> Iterator[Service]:
    """A service started for the shop's network."""
    one = Service(tmp_path / "data", address())
    try:
        one.start()
        yield one
    finally:
        one.kill()


@pytest.fixture
def stranger(
    tmp_path: Path, playwright: Playwright, chromium: str, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Phone]:
    """A browser not yet started, with a home of its own, so with nobody's trust."""
    (tmp_path / "home").mkdir()
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    one = Phone(playwright, chromium, tmp_path / "profile")
    try:
        yield one
        assert one.complaints == []
    finally:
        one.kill()


def test_a_phone_that_trusts_the_shop_works_without_signal(
    in_shop: Service, stranger: Phone, tmp_path: Path
) -> None:
    stranger.more = trust(in_shop, tmp_path / "home")
    stranger.start()
    page = open_app(stranger, in_shop)
    assert page.evaluate("window.isSecureContext && location.protocol === 'https:'")
    wait_until_offline_ready(page)
    enter_drive(page)
    page.close()

    in_shop.kill()
    stranger.lose_network()
    page = open_app(stranger, in_shop)
    measure(page, "17/32 in")
    expect(page.get_by_test_id("sync-state")).to_have_attribute("data-state", "waiting")

    in_shop.start()
    stranger.regain_network()
    expect(page.get_by_test_id("sync-state")).to_have_attribute(
        "data-state", "server", timeout=60_000
    )
    assert in_shop.rows("select count(*) from reading") == [(1,)]


def test_a_phone_that_does_not_is_warned(in_shop: Service, stranger: Phone) -> None:
    stranger.start()
    page = stranger.page()
    with pytest.raises(PlaywrightError, match="ERR_CERT_AUTHORITY_INVALID"):
        page.goto(in_shop.url)
    stranger.complaints.clear()

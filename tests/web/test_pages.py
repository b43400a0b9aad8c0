"""Serving the built app: headers, caching, compression; and saying so where it is not built."""

import gzip
from pathlib import Path

import pytest

from midspan import places
from midspan.settings import Settings
from midspan.web import create_app, headers

KEEPS_NOTHING = True
HASHED = "/assets/index-C0ffee12.js"


@pytest.fixture
def built(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """A client of a service that has a built app."""
    folder = tmp_path / "pwa"
    (folder / "assets").mkdir(parents=True)
    (folder / "reference").mkdir()
    for name in ("index.html", "reference/index.html", "sw.js", "manifest.webmanifest"):
        (folder / name).write_text(f"this is {name}")
    (folder / "core.wasm").write_bytes(b"\0asm")
    script = "let a = 1;" * 500
    (folder / HASHED[1:]).write_text(script)
    (folder / (HASHED[1:] + ".gz")).write_bytes(gzip.compress(script.encode()))
    (folder / (HASHED[1:] + ".br")).write_bytes(b"brotli")
    monkeypatch.setattr(places, "pwa", lambda: folder)
    return create_app(Settings(data_dir=tmp_path)).test_client()


@pytest.mark.parametrize("path", ["/", "/reference/", "/sw.js", "/manifest.webmanifest"])
def test_pages_are_asked_about_each_time(built, path: str) -> None:
    answer = built.get(path)
    assert answer.status_code == 200
    assert answer.text.startswith("this is ")
    assert answer.headers["Cache-Control"] == "no-cache"
    again = built.get(path, headers={"If-Modified-Since": answer.headers["Last-Modified"]})
    assert again.status_code == 304


def test_hashed_assets_are_kept_for_good(built) -> None:
    answer = built.get(HASHED)
    assert "immutable" in answer.headers["Cache-Control"]
    assert "max-age=315360000" in answer.headers["Cache-Control"]


@pytest.mark.parametrize("coding", ["br", "gzip"])
def test_what_was_compressed_ahead_is_sent_so(built, coding: str) -> None:
    answer = built.get(HASHED, headers={"Accept-Encoding": coding})
    assert answer.headers["Content-Encoding"] == coding
    assert "Accept-Encoding" in answer.headers["Vary"]
    assert "Content-Encoding" not in built.get(HASHED).headers


def test_types_a_browser_insists_on(built) -> None:
    assert built.get("/core.wasm").mimetype == "application/wasm"
    assert built.get("/manifest.webmanifest").mimetype == "application/manifest+json"
    assert built.get(HASHED).mimetype == "text/javascript"


@pytest.mark.parametrize("path", ["/", HASHED, "/healthz", "/nowhere", "/api/v1/limits"])
def test_everything_goes_out_with_the_same_security_headers(built, path: str) -> None:
    answer = built.get(path)
    for name, value in headers.SECURITY.items():
        assert answer.headers.getlist(name) == [value]
    assert "Access-Control-Allow-Origin" not in answer.headers


def test_the_policy_lets_no_foreign_code_in() -> None:
    rules = dict(rule.split(" ", 1) for rule in headers.CONTENT_SECURITY_POLICY.split("; "))
    assert rules["default-src"] == "'self'"
    assert rules["script-src"] == "'self' 'wasm-unsafe-eval'"
    for name in ("object-src", "base-uri", "frame-ancestors"):
        assert rules[name] == "'none'"
    assert "unsafe-inline" not in headers.CONTENT_SECURITY_POLICY


def test_answers_of_the_api_are_not_stored_on_the_way(client) -> None:
    assert client.get("/api/v1/limits").headers["Cache-Control"] == "no-store"


def test_an_app_that_is_not_built_is_told_plainly(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(places, "pwa", lambda: None)
    answer = create_app(Settings(data_dir=tmp_path)).test_client().get("/")
    assert answer.status_code == 200
    assert "python3 api/start.py serve" in answer.text


def test_the_packed_parts_come_before_the_checkouts(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(places, "PACKAGE", tmp_path)
    monkeypatch.setattr(places, "CHECKOUT", tmp_path / "checkout")
    assert places.migrations() == tmp_path / "checkout" / "migrations"
    assert places.pwa() is None
    for folder in ("_migrations", "_pwa"):
        (tmp_path / folder).mkdir()
    (tmp_path / "_pwa" / "index.html").touch()
    assert places.migrations() == tmp_path / "_migrations"
    assert places.pwa() == tmp_path / "_pwa"

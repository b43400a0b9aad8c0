"""A missing browser is an error that says what to install, never a skipped check."""

import sys
from pathlib import Path

import pytest

from e2e import chromium


def test_a_program_that_does_not_start_is_no_browser(tmp_path: Path) -> None:
    stub = tmp_path / "chromium"
    stub.write_text("#!/bin/sh\necho 'install me from the store'\nexit 1\n")
    stub.chmod(0o755)
    assert not chromium.works(stub)
    assert not chromium.works(tmp_path / "nothing")
    assert not chromium.works(None)
    assert chromium.works(sys.executable)


def test_the_one_that_was_asked_for_is_taken_or_none(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("MIDSPAN_CHROMIUM", sys.executable)
    assert chromium.find() == sys.executable
    monkeypatch.setenv("MIDSPAN_CHROMIUM", "/nowhere/chromium")
    assert chromium.find() is None


def test_without_any_it_tries_to_install_and_then_says_what_is_needed(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    tried = []
    monkeypatch.setattr(chromium, "find", lambda: None)
    monkeypatch.setattr(chromium, "install", lambda: tried.append("install"))
    with pytest.raises(SystemExit, match="apt-get install chromium"):
        chromium.find_or_install()
    assert tried == ["install"]

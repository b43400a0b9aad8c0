"""The test command runs everything, and fails if anything failed, was skipped or was not there."""

import sys
from pathlib import Path

import pytest

import checks

ROOT = Path(__file__).resolve().parents[2]
PASSES = [sys.executable, "-c", ""]
FAILS = [sys.executable, "-c", "raise SystemExit(2)"]
CLOSING = {"all good": "3 passed in 0.1s", "skipped": "3 passed, 1 skipped in 0.1s"}


def fake_pytest(closing: str, code: int) -> list[str]:
    """A program that prints and ends as pytest would."""
    return [sys.executable, "-c", f"print('...'); print({closing!r}); raise SystemExit({code})"]


@pytest.mark.parametrize(
    ("commands", "closing", "code", "expected"),
    [
        ([PASSES, PASSES], CLOSING["all good"], 0, 0),
        ([FAILS, PASSES], CLOSING["all good"], 0, 1),
        ([PASSES, PASSES], CLOSING["all good"], 1, 1),
        ([PASSES, PASSES], CLOSING["skipped"], 0, 1),
    ],
)
def test_any_failure_fails_the_whole_and_the_closing_line_comes_last(
    monkeypatch: pytest.MonkeyPatch,
    capfd: pytest.CaptureFixture[str],
    commands: list[list[str]],
    closing: str,
    code: int,
    expected: int,
) -> None:
    monkeypatch.setattr(checks, "CHECKS", [(f"check {i}", c) for i, c in enumerate(commands)])
    monkeypatch.setattr(checks, "PYTEST", fake_pytest(closing, code))
    monkeypatch.setattr(sys, "argv", ["checks.py"])
    assert checks.main() == expected
    printed = capfd.readouterr().out
    assert printed.endswith(closing + "\n")
    assert printed.count(closing) == 1
    assert "check 1" in printed.split("What passed")[1]


def test_the_phone_app_has_unit_tests_to_run() -> None:
    assert len(list((ROOT / "pwa/src").rglob("*.test.ts"))) > 0

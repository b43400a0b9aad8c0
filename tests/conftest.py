"""Shared by all tests: the settings of whoever runs them must not reach the service."""

import os

import pytest


@pytest.fixture(autouse=True)
def no_settings_from_outside(monkeypatch: pytest.MonkeyPatch) -> None:
    """Start every test without MIDSPAN_ variables; a test sets the ones it is about."""
    for name in [name for name in os.environ if name.startswith("MIDSPAN_")]:
        monkeypatch.delenv(name)

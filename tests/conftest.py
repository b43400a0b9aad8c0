"""Shared by all tests: no settings of whoever runs them, and databases of both kinds."""

import os
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from databases import Databases


@pytest.fixture(scope="session")
def databases() -> Iterator[Databases]:
    """Databases of both kinds; the PostgreSQL is a real one, which brings itself."""
    # Not in pytest's own folder: as root, PostgreSQL runs as another user, and every start of
    # pytest takes that folder away from all others.
    with TemporaryDirectory(prefix="midspan-") as folder:
        made = Databases(Path(folder))
        yield made
        made.close()


@pytest.fixture(autouse=True)
def no_settings_from_outside(monkeypatch: pytest.MonkeyPatch) -> None:
    """Start every test without MIDSPAN_ variables; a test sets the ones it is about."""
    for name in [name for name in os.environ if name.startswith("MIDSPAN_")]:
        monkeypatch.delenv(name)

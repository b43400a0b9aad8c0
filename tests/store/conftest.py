"""A migrated store on each of the two databases."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from databases import KINDS, Databases
from midspan.store import Store


@pytest.fixture(params=KINDS)
def url(request: pytest.FixtureRequest, tmp_path: Path, databases: Databases) -> Iterator[str]:
    """Address of an empty database of either kind."""
    made = databases.empty(request.param, tmp_path)
    yield made
    databases.drop(made)


@pytest.fixture
def empty(url: str) -> Iterator[Store]:
    """A store before its first migration."""
    store = Store(url)
    yield store
    store.close()


@pytest.fixture(params=KINDS)
def store(request: pytest.FixtureRequest, databases: Databases) -> Iterator[Store]:
    """A store in today's form."""
    with databases.lent(request.param) as (url, _):
        made = Store(url)
        yield made
        made.close()

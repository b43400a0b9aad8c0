"""The real service on a database of either kind, to be killed, starved and locked."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from databases import Databases
from faults.sender import Sender
from midspan.store import Store
from web.pairing import paired
from web.process import Process


class Bench:
    """A database, and the `midspan serve` on it that is there just now."""

    def __init__(self, url: str, folder: Path) -> None:
        self.url = url
        self.folder = folder
        self.process: Process | None = None
        self.port = "0"

    def start(self, **settings: str) -> Process:
        """Start the service, where it was before."""
        given = {"MIDSPAN_DATABASE_URL": self.url, "MIDSPAN_REQUESTS_PER_MINUTE": "0"} | settings
        self.process = Process(self.folder, port=self.port, settings=given)
        self.process.wait_until_it_says_where()
        self.port = str(self.process.host[1])
        return self.process

    def kill(self) -> None:
        """End it as a power cut would."""
        if self.process is not None:
            self.process.kill()
            self.process = None

    def sender(self) -> Sender:
        """Pair a phone with the running service."""
        assert self.process is not None
        store = Store(self.url)
        token, _ = paired(store)
        store.close()
        return Sender(self.process.address, token)


@pytest.fixture
def bench_of(tmp_path: Path, databases: Databases) -> Iterator[Callable[[str], Bench]]:
    """Make benches on a kind of database; none is left running."""
    made: list[Bench] = []

    def make(kind: str) -> Bench:
        made.append(Bench(databases.migrated(kind, tmp_path), tmp_path))
        return made[-1]

    yield make
    for one in made:
        one.kill()
        databases.drop(one.url)

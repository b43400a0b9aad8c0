"""Connections and sessions."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event, make_url
from sqlalchemy.orm import Session

from .written import write

BUSY_MS = 10_000


class Store:
    """A database, opened. Nothing is created here: `migrate.upgrade` does that.

    Parameters
    ----------
    url : an SQLAlchemy URL of SQLite or PostgreSQL
    """

    def __init__(self, url: str) -> None:
        """Prepare to connect; the first use connects."""
        self.engine = _open(url)

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """Give a session for reading."""
        with Session(self.engine, expire_on_commit=False) as session:
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """Give a session that commits at the end, or keeps nothing if anything is raised."""
        with Session(self.for_writing, expire_on_commit=False) as session, session.begin():
            yield session

    @property
    def for_writing(self) -> Engine:
        """The same database, its transactions announced as writing from their start."""
        return self.engine.execution_options(writes=True)

    def close(self) -> None:
        """Close every connection."""
        self.engine.dispose()


def _open(url: str) -> Engine:
    # hide_parameters: what was entered, and hashes of tokens, must not reach a log by an error.
    parsed = make_url(url)
    if parsed.get_backend_name() == "sqlite":
        if parsed.database and parsed.database != ":memory:":
            # For this user alone, as a backup is: all records are in it.
            Path(parsed.database).parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        engine = create_engine(parsed, json_serializer=write, hide_parameters=True)
        event.listen(engine, "connect", _prepare_sqlite)
        event.listen(engine, "begin", _begin_sqlite)
        return engine
    if parsed.drivername in ("postgresql", "postgres"):
        parsed = parsed.set(drivername="postgresql+psycopg")
    return create_engine(parsed, pool_pre_ping=True, json_serializer=write, hide_parameters=True)


def _prepare_sqlite(connection: sqlite3.Connection, _: object) -> None:
    """Switch on what SQLite leaves off; and leave transactions to `_begin_sqlite`."""
    connection.isolation_level = None
    for pragma in ("journal_mode = WAL", "foreign_keys = ON", f"busy_timeout = {BUSY_MS}"):
        connection.execute("PRAGMA " + pragma).close()


def _begin_sqlite(connection: Connection) -> None:
    """Lock at the start where writing is meant: a later upgrade could fail without waiting."""
    writes = connection.get_execution_options().get("writes", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")

"""Backup and restore: everything kept, in one file that both kinds of database give and take.

The file is gzip over lines of JSON: a first line that says what it is and which tables and columns
follow, one line for each row, and a last line with the number of rows and the SHA-256 of every line
before it. The hash finds damage and a cut; it is no signature. Keep the file as safe as the
database: it holds all records, and the hashes of the devices' tokens.
"""

import gzip
import hashlib
import json
import zlib
from collections.abc import Iterator
from datetime import UTC, datetime
from itertools import islice
from pathlib import Path
from typing import IO, Any
from uuid import uuid4

import sqlalchemy as sa
from alembic import command
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory

from midspan.core import VERSION

from . import portable
from .database import Store
from .migrate import config, lock
from .models import Shop

FORM = "midspan-backup-1"
ROWS_AT_ONCE = 500
# No row comes near this; a file that is no backup must not fill the memory.
LONGEST_LINE = 64 * 1024 * 1024


class Unusable(Exception):  # noqa: N818  (it names what is wrong)
    """A backup, or a database, that cannot be used; the message says why and what to do."""


def write(store: Store, out: IO[bytes]) -> int:
    """Write everything kept, as it is at one instant, while others go on writing.

    Returns
    -------
    int : how many rows

    Raises
    ------
    Unusable : nothing to back up, or SQLite finds its file damaged
    """
    hashed = hashlib.sha256()
    rows = 0

    def line(value: object) -> None:
        text = json.dumps(value, separators=(",", ":")).encode() + b"\n"
        hashed.update(text)
        packed.write(text)

    with _snapshot(store) as connection, gzip.GzipFile(fileobj=out, mode="wb", mtime=0) as packed:
        revision = MigrationContext.configure(connection).get_current_revision()
        if revision is None:
            raise Unusable("The database has no records yet: there is nothing to back up.")
        _check_sound(connection)
        found = portable.tables(connection)
        described = {table.name: portable.columns(table) for table in found}
        head = {"form": FORM, "revision": revision, "core_version": VERSION}
        line(head | {"made_at": datetime.now(UTC).isoformat(), "tables": described})
        for table in found:
            kinds = described[table.name].values()
            ordered = sa.select(table).order_by(*table.primary_key.columns)
            for row in connection.execution_options(yield_per=ROWS_AT_ONCE).execute(ordered):
                line([table.name, *map(portable.to_plain, kinds, row)])
                rows += 1
        line({"rows": rows, "sha256": hashed.hexdigest()})
    return rows


def check(file: Path) -> dict[str, Any]:
    """Read a whole backup and give its first line.

    Raises
    ------
    Unusable : not a backup, cut, damaged, or of a newer version
    """
    lines = _lines(file)
    head: dict[str, Any] = next(lines)
    for _ in lines:
        pass
    try:
        ScriptDirectory.from_config(config()).get_revision(head["revision"])
    except Exception:
        newer = f"It was made by version {head.get('core_version')}, which is newer than this one."
        raise Unusable(f"{file}: {newer} Update Midspan, then restore.") from None
    return head


def restore(store: Store, file: Path, replace: bool = False) -> int:
    """Put a backup in the place of what is kept: all of it, or nothing is changed.

    A backup of an older form is brought to today's. Others may go on reading meanwhile.

    Parameters
    ----------
    store : where to
    file : the backup
    replace : whether what is kept there now may be thrown away

    Returns
    -------
    int : how many rows

    Raises
    ------
    Unusable : see `check`; or something is kept there already and `replace` is not said
    """
    head = check(file)
    with store.for_writing.begin() as connection:
        lock(connection)
        if not replace and kept(connection):
            raise Unusable("There are records already. To throw them away: --replace")
        old = sa.MetaData()
        old.reflect(connection)
        old.drop_all(connection)
        command.upgrade(config(connection), head["revision"])
        tables = {table.name: table for table in portable.tables(connection)}
        if {name: portable.columns(table) for name, table in tables.items()} != head["tables"]:
            raise Unusable(f"{file}: its tables are not those of its form {head['revision']}.")
        for table in reversed(tables.values()):
            connection.execute(table.delete())
        # Read anew, hash and all: should the file have changed since, nothing is changed here.
        rows = _insert(connection, tables, islice(_lines(file), 1, None), file)
        command.upgrade(config(connection), "head")
        _new_histories(connection)
        _check_sound(connection)
    return rows


def kept(connection: sa.Connection) -> bool:
    """Tell whether anybody has entered anything: a record, or a device that was paired."""
    return any(
        connection.execute(sa.select(table.c.id).limit(1)).first()
        for table in portable.tables(connection)
        if "received_at" in table.c or table.name == "device"
    )


def _new_histories(connection: sa.Connection) -> None:
    """Let phones notice: what they sent after the backup was made, they then send again."""
    for shop in connection.scalars(sa.select(Shop.id)).all():
        connection.execute(sa.update(Shop).where(Shop.id == shop).values(history=uuid4()))


def _insert(
    connection: sa.Connection, tables: dict[str, sa.Table], rows: Iterator[Any], file: Path
) -> int:
    count = 0
    while some := list(islice(rows, ROWS_AT_ONCE)):
        start = 0
        while start < len(some):  # the rows of one table follow each other
            name = some[start][0]
            together = [row for row in some[start:] if row[0] == name]
            try:
                table = tables[name]
                kinds = portable.columns(table)
                values = [
                    {
                        column: portable.from_plain(kind, value)
                        for (column, kind), value in zip(kinds.items(), row[1:], strict=True)
                    }
                    for row in together
                ]
            except (KeyError, TypeError, ValueError) as error:
                raise Unusable(f"{file}: a row of {name!r} cannot be read: {error}.") from None
            connection.execute(table.insert(), values)
            start += len(together)
            count += len(together)
    return count


def _lines(file: Path) -> Iterator[Any]:
    """Give the first line and the rows, and raise at the end if the last line does not fit them."""
    hashed = hashlib.sha256()
    rows = -1
    last: Any = None
    try:
        with gzip.open(file) as opened:
            while text := opened.readline(LONGEST_LINE):
                last = json.loads(text)
                if rows < 0 and not (isinstance(last, dict) and last.get("form") == FORM):
                    raise Unusable(f"{file}: this is no backup of Midspan.")
                if isinstance(last, dict) and rows >= 0:
                    break
                hashed.update(text)
                rows += 1
                yield last
            more = opened.read(1)
    except (EOFError, OSError, ValueError, zlib.error) as error:
        raise Unusable(f"{file}: it cannot be read to its end: {error}.") from None
    if last != {"rows": rows, "sha256": hashed.hexdigest()} or more:
        raise Unusable(f"{file}: it is cut or damaged. Nothing was changed; use another backup.")


def _snapshot(store: Store) -> sa.Connection:
    connection = store.engine.connect()
    if connection.dialect.name == "postgresql":
        return connection.execution_options(
            isolation_level="REPEATABLE READ", postgresql_readonly=True
        )
    return connection  # SQLite: a transaction that reads sees one instant, whoever writes


def _check_sound(connection: sa.Connection) -> None:
    if connection.dialect.name != "sqlite":
        return  # PostgreSQL holds its own constraints and checks its own pages
    for pragma, good in (("integrity_check", [("ok",)]), ("foreign_key_check", [])):
        said = connection.exec_driver_sql(f"PRAGMA {pragma}").fetchmany(5)
        if [tuple(row) for row in said] != good:
            raise Unusable(f"SQLite's {pragma} finds the database damaged: {said}.")

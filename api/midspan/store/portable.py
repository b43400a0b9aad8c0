"""What is kept, as plain values: tables read from the database itself, of any form it ever had.

A backup must be readable by a later version and on the other kind of database, so it knows no
models: it asks the database for its tables, and takes each column for one of eight kinds.
"""

from base64 import b64decode, b64encode
from datetime import datetime
from typing import Any
from uuid import UUID

import sqlalchemy as sa

from .models import Moment

# Codes live for minutes; a restored one would be another door.
LEFT_OUT = frozenset({"alembic_version", "pairing_code"})
_TYPES: dict[str, sa.types.TypeEngine[Any]] = {
    "uuid": sa.Uuid(),
    "json": sa.JSON(none_as_null=True),
    "boolean": sa.Boolean(),
    "moment": Moment(),
    "double": sa.Double(),
    "integer": sa.BigInteger(),
    "bytes": sa.LargeBinary(),
    "text": sa.String(),
}


def tables(connection: sa.Connection) -> list[sa.Table]:
    """Read the tables there are, those referred to first, each column as one of the kinds."""
    found = sa.MetaData()
    found.reflect(connection)
    for table in found.tables.values():
        for column in table.columns:
            column.type = _TYPES[_kind(column.type)]
    return [table for table in found.sorted_tables if table.name not in LEFT_OUT]


def columns(table: sa.Table) -> dict[str, str]:
    """Give the kind of every column of a table that `tables` read."""
    return {column.name: _kind(column.type) for column in table.columns}


def to_plain(kind: str, value: Any) -> Any:  # noqa: ANN401
    """Turn a value of a column into one that JSON has."""
    if value is None:
        return None
    if kind == "moment":
        return value.isoformat()
    if kind == "bytes":
        return b64encode(value).decode()
    return str(value) if kind == "uuid" else value


def from_plain(kind: str, value: Any) -> Any:  # noqa: ANN401
    """Turn it back.

    Raises
    ------
    ValueError, TypeError : it is no value of this kind
    """
    if value is None:
        return None
    if kind == "moment":
        return datetime.fromisoformat(value)
    if kind == "bytes":
        return b64decode(value, validate=True)
    return UUID(value) if kind == "uuid" else value


def _kind(type_: sa.types.TypeEngine[Any]) -> str:
    if isinstance(type_, (sa.Uuid, sa.CHAR)):  # SQLite keeps a UUID as 32 characters
        return "uuid"
    for kind, usual in (
        ("json", sa.JSON), ("boolean", sa.Boolean), ("moment", (sa.DateTime, Moment)),
        ("integer", sa.Integer), ("double", (sa.Numeric, sa.Float)), ("bytes", sa.LargeBinary),
        ("text", sa.String),
    ):  # fmt: skip
        if isinstance(type_, usual):
            return kind
    raise TypeError(f"a column of type {type_!r} has no place in a backup")

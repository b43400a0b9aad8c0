"""Rows for every table that a database has, whatever its form: made up from its columns."""

from datetime import UTC, datetime, timedelta
from typing import Any
from uuid import UUID

import sqlalchemy as sa

from midspan.store import Store, portable
from midspan.store.models import LOCAL_SHOP

OTHER_SHOP = UUID("00000000-0000-7000-8000-000000000002")
ROWS = 3
AT = datetime(2026, 1, 31, 12, 0, 0, 123456, tzinfo=UTC)
NOTE = "naïve — 日本\n"


def key(number: int) -> UUID:
    return UUID(f"01923f5e-8c00-7000-8000-{number:012x}")


def value(kind: str, name: str, number: int) -> Any:
    """Give a value of a column that is not easily kept by chance."""
    return {
        "uuid": key(number),
        "json": {"b": number, "a": [0.1, 1e300, "🔧", "\ud800", None]},
        "boolean": number % 2 == 1,
        "moment": AT + timedelta(seconds=number),
        "double": 0.1 + number,
        "integer": number,
        "bytes": bytes([0, 255, number]),
        "text": f"{name} {number} {NOTE}",
    }[kind]


def fill(store: Store) -> dict[str, list[dict[str, Any]]]:
    """Put rows of two shops into every table, each referring to one made before; give them all."""
    with store.for_writing.begin() as connection:
        for table in portable.tables(connection):
            if table.name == "shop":
                other = {"id": OTHER_SHOP, "name": NOTE, "created_at": AT}
                connection.execute(table.insert().values(other))
                continue
            for shop in (LOCAL_SHOP, OTHER_SHOP):
                first = 1 if shop == LOCAL_SHOP else 11
                rows = [_row(table, shop, first + number) for number in range(ROWS)]
                for row in rows:
                    connection.execute(table.insert().values(row))
    return everything(store)


def _row(table: sa.Table, shop: UUID, number: int) -> dict[str, Any]:
    row = {}
    for column, kind in portable.columns(table).items():
        optional = table.columns[column].nullable
        # Of three rows the last one leaves out all it may.
        missing = optional and number % 10 == ROWS
        row[column] = None if missing else value(kind, column, number)
    return row | {"shop_id": shop}


def everything(store: Store) -> dict[str, list[dict[str, Any]]]:
    """Read every row of every table, in the order of its key."""
    with store.engine.connect() as connection:
        return {
            table.name: [
                dict(row)
                for row in connection.execute(
                    sa.select(table).order_by(*table.primary_key.columns)
                ).mappings()
            ]
            for table in portable.tables(connection)
        }


def shape(store: Store) -> dict[str, Any]:
    """Give the columns, keys and indexes of every table."""
    seen = sa.inspect(store.engine)
    columns = seen.get_multi_columns()
    named = [
        seen.get_multi_foreign_keys(),
        seen.get_multi_indexes(),
        seen.get_multi_unique_constraints(),
    ]
    return {
        table: (
            {column["name"]: column["nullable"] for column in found},
            *({one["name"] for one in kind[schema, table]} for kind in named),
        )
        for (schema, table), found in columns.items()
    }

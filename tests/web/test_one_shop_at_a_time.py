"""What keeps the database divisible by shop: no key, number or query reaches across shops."""

import json
import re
from collections.abc import Iterator

import pytest
import sqlalchemy as sa

from midspan.store.models import Base
from midspan.web.examples import WRITES
from midspan.web.records import NOUNS

OF_SHOPS = [table for table in Base.metadata.sorted_tables if table.name != "shop"]
KEY = "01923f5e-8c00-7000-8000-000000000001"


def test_there_are_tables_to_check() -> None:
    assert len(OF_SHOPS) > 8


@pytest.mark.parametrize("table", OF_SHOPS, ids=lambda table: table.name)
def test_every_key_and_index_leads_with_the_shop(table: sa.Table) -> None:
    assert next(iter(table.primary_key.columns)).name == "shop_id"
    for index in table.indexes:
        assert next(iter(index.columns)).name == "shop_id", index.name
    for constraint in table.constraints:
        if isinstance(constraint, sa.UniqueConstraint):
            assert next(iter(constraint.columns)).name == "shop_id", constraint.name
        if isinstance(constraint, sa.ForeignKeyConstraint):
            to_shop = [key.target_fullname for key in constraint.elements] == ["shop.id"]
            first = constraint.elements[0]
            within = (first.parent.name, first.column.name) == ("shop_id", "shop_id")
            assert to_shop or within, constraint.name


@pytest.mark.parametrize("table", OF_SHOPS, ids=lambda table: table.name)
def test_no_number_is_drawn_across_shops(table: sa.Table) -> None:
    for column in table.columns:
        assert column.autoincrement is not True
        assert column.identity is None
        assert not isinstance(column.default, sa.Sequence)
    assert table.autoincrement_column is None


@pytest.fixture
def asked(app) -> Iterator[list[str]]:
    """Every statement that the service sends to the database."""
    said: list[str] = []

    def hear(_c: object, _k: object, statement: str, *_: object) -> None:
        said.append(" ".join(statement.split()))

    engine = app.extensions["midspan"].engine
    sa.event.listen(engine, "before_cursor_execute", hear)
    yield said
    sa.event.remove(engine, "before_cursor_execute", hear)


def reaches_across(statement: str) -> bool:
    """Tell whether a statement looks at more than one shop's rows of a table."""
    if not re.match(r"(SELECT|UPDATE|DELETE|WITH)\b", statement):
        return False
    named = {t.name for t in OF_SHOPS if re.search(rf"\b(FROM|JOIN|UPDATE) {t.name}\b", statement)}
    # Each part of a union has a condition of its own.
    parts = re.split(r"\bUNION\b", statement)
    return bool(named) and not all("shop_id = " in part for part in parts)


def test_the_check_sees_a_query_across_shops() -> None:
    assert reaches_across("SELECT engine.id FROM engine ORDER BY engine.id")
    assert reaches_across("UPDATE reading SET note = ? WHERE id = ?")
    assert not reaches_across("SELECT id FROM engine WHERE engine.shop_id = ? AND id = ?")


def test_every_query_names_its_shop(client, asked: list[str]) -> None:
    for noun in NOUNS:
        path = f"/api/v1/{noun.many}/{KEY}"
        sent = {"data": json.dumps(WRITES[noun.one]), "content_type": "application/json"}
        for _ in range(2):
            assert client.put(path, **sent).status_code in (200, 201, 409, 422, 428), noun.one
        for asks in (path, f"/api/v1/{noun.many}", "/api/v1/changes", "/api/v1/devices"):
            assert client.get(asks).status_code in (200, 404), asks
    assert len(asked) > 50
    assert [statement for statement in asked if reaches_across(statement)] == []

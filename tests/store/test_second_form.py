"""From the first form to the second and back, with records in it, on both databases."""

from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import pytest
import sqlalchemy as sa
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy.exc import IntegrityError

from midspan.store import Chain, Engine, GearSet, Reading, Store, at_head, upgrade
from midspan.store.migrate import downgrade
from midspan.store.models import LOCAL_SHOP, Base
from midspan.store.records import get, put

AT = datetime(2026, 1, 31, 12, 0, 0, 123456, tzinfo=UTC)
INPUT = {"b": 1, "a": [0.1, 1e300, "🔧", None]}
NOTE = "naïve — 日本\n"


def key(number: int) -> UUID:
    return UUID(f"01923f5e-8c00-7000-8000-{number:012x}")


def table(store: Store, name: str) -> sa.Table:
    """Read a table's form from the database itself; the models know today's only."""
    found = sa.Table(name, sa.MetaData(), autoload_with=store.engine, resolve_fks=False)
    for column in found.columns:  # SQLite tells neither a UUID nor a zone from plain text
        today = Base.metadata.tables[name].columns.get(column.name)
        if today is not None:
            column.type = today.type
    return found


def add(store: Store, name: str, number: int, values: dict[str, Any]) -> None:
    whole = {"shop_id": LOCAL_SHOP, "id": key(number), "version": 1, "received_at": AT} | values
    with store.for_writing.begin() as connection:
        connection.execute(table(store, name).insert().values(whole))


def rows(store: Store, name: str) -> list[dict[str, Any]]:
    at = table(store, name)
    with store.engine.connect() as connection:
        return [dict(row) for row in connection.execute(sa.select(at).order_by(at.c.id)).mappings()]


def keys(store: Store, name: str) -> tuple[set[Any], set[Any]]:
    """Give the names of a table's foreign keys and of its indexes."""
    seen = sa.inspect(store.engine)
    return (
        {found["name"] for found in seen.get_foreign_keys(name)},
        {found["name"] for found in seen.get_indexes(name)},
    )


@pytest.fixture
def first(empty: Store) -> Store:
    """A store of the first form, with an engine, a drive, two chains and readings in it."""
    upgrade(empty, "0001")
    add(empty, "engine", 1, {"name": "Engine", "note": NOTE, "invented": False, "created_at": AT})
    figures = {
        "pitch_mm": 9.525, "crank_teeth": 22, "cam_teeth": 44, "centre_distance_mm": 114.1,
        "links": 58,
    }  # fmt: skip
    add(empty, "drive", 2, figures | {"engine_id": key(1), "label": "Drive", "created_at": AT})
    for number in (3, 4):
        chain = {"engine_id": key(1), "label": f"Chain {number}", "pitch_mm": 9.525, "links": 58}
        add(empty, "chain", number, chain | {"note": NOTE, "created_at": AT})
    for number in (5, 6, 7):
        reading = {
            "engine_id": key(1), "drive_id": key(2), "chain_id": key(3 + number % 2),
            "calc": "slack", "taken_at": AT, "input": INPUT, "result": {"x": number},
            "core_version": "0.1.0", "limit": None if number == 5 else {"id": "own"}, "note": NOTE,
        }  # fmt: skip
        add(empty, "reading", number, reading)
    return empty


def test_the_first_form_is_not_todays(first: Store) -> None:
    assert not at_head(first)
    assert not sa.inspect(first.engine).has_table("gear_set")
    assert "tag" not in rows(first, "chain")[0]


def test_every_record_survives_the_way_up(first: Store) -> None:
    names = ("engine", "drive", "chain", "reading")
    before = {name: rows(first, name) for name in names}
    upgrade(first)
    assert at_head(first)
    for name in names:
        after = rows(first, name)
        assert len(after) == len(before[name]) > 0
        for old, new in zip(before[name], after, strict=True):
            assert {column: new[column] for column in old} == old
            assert {new[column] for column in set(new) - set(old) - {"seq"}} <= {None}
    with first.reading() as session:
        row = get(session, Reading, LOCAL_SHOP, key(6))
        assert row is not None
        assert (row.input, list(row.input), row.note) == (INPUT, ["b", "a"], NOTE)
        assert (row.taken_at, row.limit, row.gear_set_id) == (AT, {"id": "own"}, None)


def test_the_form_reached_from_the_first_is_the_one_the_models_say(first: Store) -> None:
    upgrade(first)
    with first.engine.connect() as connection:
        options = {"compare_type": True, "compare_server_default": True}
        context = MigrationContext.configure(connection, opts=options)
        assert compare_metadata(context, Base.metadata) == []
    for name in ("chain", "gear_set", "reading"):
        model = Base.metadata.tables[name]
        constraints, indexes = keys(first, name)
        assert constraints == {found.name for found in model.foreign_key_constraints}
        assert indexes == {found.name for found in model.indexes}


def test_the_second_form_keeps_what_it_is_for(first: Store) -> None:
    upgrade(first)
    set_ = {
        "label": "Set", "tag": "G-1", "pitch_mm": 9.525, "crank_teeth": 22, "cam_teeth": 44,
        "adjuster": "multi-keyway", "keyway_offsets_crank_deg": [-4.0, 0.0, 4.0], "created_at": AT,
    }  # fmt: skip
    chain = {"label": "Chain", "pitch_mm": 9.525, "links": 58, "created_at": AT, "tag": "C-1"}
    with first.writing() as session:
        put(session, GearSet, LOCAL_SHOP, key(8), set_)
        put(session, Chain, LOCAL_SHOP, key(3), chain | {"distance_run_km": 1.5})
    reading = {
        "calc": "gear", "taken_at": AT, "input": {}, "result": {}, "core_version": "0.2.0",
        "limit": None, "gear_set_id": key(8), "load_n": 110.5,
    }  # fmt: skip
    with first.writing() as session:
        put(session, Reading, LOCAL_SHOP, key(9), reading)
    with first.reading() as session:
        gears = session.get_one(GearSet, (LOCAL_SHOP, key(8)))
        assert gears.keyway_offsets_crank_deg == [-4.0, 0.0, 4.0]
        row = session.get_one(Reading, (LOCAL_SHOP, key(9)))
        assert (row.gear_set_id, row.load_n) == (key(8), 110.5)
    # And the database itself holds the line: a reading of gears that nobody has.
    received = {"shop_id": LOCAL_SHOP, "id": key(10), "received_at": AT, "version": 1}
    with pytest.raises(IntegrityError), first.writing() as session:
        session.add(Reading(**received, **reading | {"gear_set_id": key(11)}))


def test_down_again_keeps_what_the_first_form_knew(first: Store) -> None:
    before = {name: rows(first, name) for name in ("engine", "drive", "chain", "reading")}
    shape = {name: keys(first, name) for name in before}
    upgrade(first)
    with first.writing() as session:
        put(session, GearSet, LOCAL_SHOP, key(8), {
            "label": "Set", "pitch_mm": 9.525, "crank_teeth": 22, "cam_teeth": 44, "created_at": AT,
        })  # fmt: skip
        session.get_one(Chain, (LOCAL_SHOP, key(3))).tag = "C-1"
        session.get_one(Reading, (LOCAL_SHOP, key(5))).gear_set_id = key(8)
    downgrade(first, "0001")
    assert {name: rows(first, name) for name in before} == before
    assert {name: keys(first, name) for name in before} == shape
    assert not sa.inspect(first.engine).has_table("gear_set")
    upgrade(first)
    with first.reading() as session:
        assert session.get_one(Engine, (LOCAL_SHOP, key(1))).note == NOTE
        assert session.get_one(Chain, (LOCAL_SHOP, key(3))).tag is None


def test_a_fault_half_way_leaves_the_first_form_whole(
    first: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = rows(first, "reading")

    def fail(*_: object, **__: object) -> None:
        raise RuntimeError("power cut")

    # The last thing of the second form: by then every table of it has been changed.
    monkeypatch.setattr("alembic.operations.batch.BatchOperationsImpl.flush", fail)
    with pytest.raises(RuntimeError, match="power cut"):
        upgrade(first)
    monkeypatch.undo()
    assert not sa.inspect(first.engine).has_table("gear_set")
    assert rows(first, "reading") == before
    upgrade(first)
    assert at_head(first)

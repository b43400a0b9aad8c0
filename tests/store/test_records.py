"""What the store promises of its records, on both databases."""

from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import pytest
from sqlalchemy.exc import IntegrityError

from midspan.core.errors import Refused
from midspan.store import (
    Build,
    Chain,
    Drive,
    Engine,
    Entry,
    GearSet,
    Plan,
    Reading,
    ReadingExists,
    Store,
)
from midspan.store.explain import explain
from midspan.store.models import LOCAL_SHOP, Shop
from midspan.store.records import get, page, put

AT = datetime(2026, 1, 31, 12, 0, 0, 123456, tzinfo=UTC)
OTHER_SHOP = UUID("00000000-0000-7000-8000-000000000002")


def key(number: int) -> UUID:
    return UUID(f"01923f5e-8c00-7000-8000-{number:012x}")


ENGINE = {"name": "Engine", "created_at": AT}
READING: dict[str, Any] = {
    "engine_id": key(1), "calc": "slack", "taken_at": AT, "core_version": "0.0.1", "limit": None,
    "input": {"b": 1, "a": [0.1, 1e300, "\ud800", None]}, "result": {"verdict": {"outcome": "x"}},
}  # fmt: skip

BUILD = {"engine_id": key(1), "label": "Build", "started_at": AT, "created_at": AT}
FIGURES = [{"label": "Peak torque", "value": 402.0, "unit": "N m"}]
PLAN = {
    "label": "Plan", "input": {}, "result": {}, "core_version": "0", "log": [], "created_at": AT,
}  # fmt: skip
ENTRY = {"kind": "note", "at": AT, "title": "Entry", "figures": FIGURES, "created_at": AT}


def keep(store: Store, kind: Any, number: int, values: dict[str, Any], shop: UUID = LOCAL_SHOP):
    with store.writing() as session:
        return put(session, kind, shop, key(number), values)


def test_a_record_comes_back_as_it_went_in(store: Store) -> None:
    _, new = keep(store, Engine, 1, ENGINE | {"note": "naïve — 日本\n", "invented": True})
    assert new
    with store.reading() as session:
        row = get(session, Engine, LOCAL_SHOP, key(1))
    assert row is not None
    assert (row.name, row.note, row.invented) == ("Engine", "naïve — 日本\n", True)
    assert (row.created_at, row.version) == (AT, 1)
    assert row.created_at.tzinfo is UTC
    assert row.received_at.tzinfo is UTC


def test_a_change_counts_the_version_up_and_the_same_again_does_not(store: Store) -> None:
    keep(store, Engine, 1, ENGINE)
    row, new = keep(store, Engine, 1, ENGINE)
    assert (row.version, new) == (1, False)
    row, new = keep(store, Engine, 1, ENGINE | {"name": "Other"})
    assert (row.version, new) == (2, False)
    with store.reading() as session:
        assert session.get_one(Engine, (LOCAL_SHOP, key(1))).name == "Other"


def test_a_gear_set_is_the_same_again_only_with_the_same_offsets(store: Store) -> None:
    offsets = {"keyway_offsets_crank_deg": [-4.0, 0.0, 4.0]}
    gears = {"label": "Set", "pitch_mm": 9.525, "crank_teeth": 22, "cam_teeth": 44}
    gears |= {"created_at": AT} | offsets
    assert keep(store, GearSet, 2, gears)[1]
    assert keep(store, GearSet, 2, gears)[0].version == 1
    row, new = keep(store, GearSet, 2, gears | {"keyway_offsets_crank_deg": None})
    assert (row.version, new, row.keyway_offsets_crank_deg) == (2, False, None)
    assert keep(store, GearSet, 2, gears)[0].keyway_offsets_crank_deg == [-4.0, 0.0, 4.0]


def test_a_reading_is_never_overwritten(store: Store) -> None:
    keep(store, Engine, 1, ENGINE)
    assert keep(store, Reading, 2, READING)[1]
    assert not keep(store, Reading, 2, READING)[1]
    for change in ({"note": "x"}, {"input": READING["input"] | {"b": 1.0}}, {"limit": {}}):
        with pytest.raises(ReadingExists):
            keep(store, Reading, 2, READING | change)
    with store.reading() as session:
        row = session.get_one(Reading, (LOCAL_SHOP, key(2)))
    assert row.input == READING["input"]
    assert list(row.input) == ["b", "a"]
    assert (row.limit, row.note, row.version) == (None, None, 1)


@pytest.mark.parametrize(
    ("kind", "values", "field"),
    [
        (Drive, {"engine_id": key(9)}, "engine_id"),
        (Chain, {"engine_id": key(9)}, "engine_id"),
        (Reading, READING | {"drive_id": key(9)}, "drive_id"),
        (Reading, READING | {"chain_id": key(9)}, "chain_id"),
        (GearSet, {"engine_id": key(9)}, "engine_id"),
        (Reading, READING | {"gear_set_id": key(9)}, "gear_set_id"),
        (Reading, READING | {"build_id": key(9)}, "build_id"),
        (Build, BUILD | {"engine_id": key(9)}, "engine_id"),
        (Entry, ENTRY | {"build_id": key(9)}, "build_id"),
        (Plan, PLAN | {"build_id": key(9)}, "build_id"),
    ],
)
def test_what_it_refers_to_must_be_kept(store: Store, kind: Any, values: Any, field: str) -> None:
    keep(store, Engine, 1, ENGINE)
    with pytest.raises(Refused) as refused:
        keep(store, kind, 2, values)
    (found,) = refused.value.problems
    assert (found["field"], found["code"]) == (field, "no-such-record")


def test_a_plan_changes_with_its_log_and_with_nothing_else(store: Store) -> None:
    log = [{"kind": "note", "at": "2026-01-31T12:00:00Z", "text": "a"}]
    assert keep(store, Plan, 3, PLAN | {"log": log})[1]
    assert keep(store, Plan, 3, PLAN | {"log": log})[0].version == 1
    row, new = keep(store, Plan, 3, PLAN | {"log": log * 2})
    assert (row.version, new, row.log) == (2, False, log * 2)


def test_an_entry_is_the_same_again_only_with_the_same_figures(store: Store) -> None:
    keep(store, Engine, 1, ENGINE)
    keep(store, Build, 2, BUILD)
    entry = ENTRY | {"build_id": key(2)}
    assert keep(store, Entry, 3, entry)[1]
    assert keep(store, Entry, 3, entry)[0].version == 1
    assert keep(store, Entry, 3, entry | {"figures": None})[0].version == 2
    row, _ = keep(store, Entry, 3, entry)
    assert (row.figures, row.version) == (FIGURES, 3)


def test_another_shops_records_cannot_be_seen_or_referred_to(store: Store) -> None:
    with store.writing() as session:
        session.add(Shop(id=OTHER_SHOP, name="Other", created_at=AT))
    keep(store, Engine, 1, ENGINE, OTHER_SHOP)
    with store.reading() as session:
        assert get(session, Engine, LOCAL_SHOP, key(1)) is None
        assert page(session, Engine, LOCAL_SHOP, None, 10) == ([], None)
    with pytest.raises(Refused):
        keep(store, Reading, 2, READING)
    # And the database itself holds the line, should a query ever forget.
    received = {"shop_id": LOCAL_SHOP, "id": key(2), "received_at": AT, "version": 1}
    with pytest.raises(IntegrityError), store.writing() as session:
        session.add(Reading(**received, **READING))


def test_a_deleted_record_is_gone_but_not_lost(store: Store) -> None:
    keep(store, Engine, 1, ENGINE)
    with store.writing() as session:
        session.get_one(Engine, (LOCAL_SHOP, key(1))).deleted_at = AT
    with store.reading() as session:
        assert get(session, Engine, LOCAL_SHOP, key(1)) is None
        assert page(session, Engine, LOCAL_SHOP, None, 10) == ([], None)
        assert session.get_one(Engine, (LOCAL_SHOP, key(1))).name == "Engine"


def test_pages_give_every_record_once_in_order(store: Store) -> None:
    for number in (5, 3, 1, 4, 2):
        keep(store, Engine, number, ENGINE)
    seen, after = [], None
    with store.reading() as session:
        while True:
            rows, after = page(session, Engine, LOCAL_SHOP, after, 2)
            seen += [row.id for row in rows]
            if after is None:
                break
        assert page(session, Engine, LOCAL_SHOP, None, 5)[1] is None
    assert seen == [key(number) for number in (1, 2, 3, 4, 5)]


def test_the_same_reading_sent_many_times_at_once_is_kept_once(store: Store) -> None:
    keep(store, Engine, 1, ENGINE)
    with ThreadPoolExecutor(8) as pool:
        done = list(pool.map(lambda _: keep(store, Reading, 2, READING)[1], range(16)))
    assert done.count(True) == 1
    with store.reading() as session:
        assert len(page(session, Reading, LOCAL_SHOP, None, 10)[0]) == 1


def test_writers_at_once_lose_nothing(store: Store) -> None:
    with ThreadPoolExecutor(8) as pool:
        list(pool.map(lambda number: keep(store, Engine, number, ENGINE), range(1, 41)))
    with store.reading() as session:
        assert len(page(session, Engine, LOCAL_SHOP, None, 100)[0]) == 40


def test_nothing_is_kept_if_anything_fails(store: Store) -> None:
    def half_done() -> None:
        with store.writing() as session:
            put(session, Engine, LOCAL_SHOP, key(1), ENGINE)
            raise RuntimeError

    with pytest.raises(RuntimeError):
        half_done()
    with store.reading() as session:
        assert get(session, Engine, LOCAL_SHOP, key(1)) is None


@pytest.mark.parametrize("result", [{}, {"verdict": None}, {"verdict": {"outcome": "wanted"}}])
def test_an_explanation_copes_with_whatever_was_once_stored(result: dict[str, Any]) -> None:
    said = explain(Reading(calc="slack", input={}, result=result, core_version="0.0.1"))
    assert said["recomputed"] is None
    assert said["same_verdict"] is False
    assert {found["code"] for found in said["problems"]} == {"missing"}


def test_a_calculation_without_a_verdict_has_none_to_compare() -> None:
    drive = {"pitch_mm": 9.525, "crank_teeth": 22, "cam_teeth": 44, "links": 58}
    bored = {"drive": drive | {"centre_distance_mm": 114.1}, "new_centre_distance_mm": 114.0}
    said = explain(Reading(calc="bored", input=bored, result={}, core_version="0.0.1"))
    assert said["recomputed"]["after"]["centre_distance_mm"] == 114.0
    assert said["same_verdict"] is None
    judged = {"verdict": {"outcome": "wanted"}}
    said = explain(Reading(calc="bored", input=bored, result=judged, core_version="0.0.1"))
    assert said["same_verdict"] is False

"""Whole shops in and out of the store, on both databases."""

from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import pytest

from midspan.store import Build, Engine, Reading, Store, sync, transfer
from midspan.store.models import LOCAL_SHOP
from midspan.store.transfer import Given

AT = datetime(2026, 1, 31, 12, 0, 0, 123456, tzinfo=UTC)
EARLIER = datetime(2025, 12, 24, 18, 0, tzinfo=UTC)
ENGINE = {"name": "Engine", "created_at": AT}
BUILD = {"label": "Build", "started_at": AT, "created_at": AT}
READING: dict[str, Any] = {
    "calc": "slack", "taken_at": AT, "core_version": "0.0.1", "limit": None,
    "input": {"a": [1.0, True, None]}, "result": {"x": 2.0},
}  # fmt: skip


def key(number: int) -> UUID:
    return UUID(f"01923f5e-8c00-7000-8000-{number:012x}")


def take(store: Store, kind: Any, *given: Given, chosen: int | None = None) -> list[str]:
    marked = frozenset() if chosen is None else frozenset([key(chosen)])
    with store.writing() as session:
        return [
            one.outcome for one in transfer.take(session, kind, LOCAL_SHOP, list(given), marked)
        ]


def given(number: int, values: Any, deleted_at: datetime | None = None) -> Given:
    return Given(number, key(number), values, deleted_at)


def every(store: Store, kind: Any, *, deleted: bool = False) -> list[int]:
    with store.reading() as session:
        transfer.snapshot(session, LOCAL_SHOP)
        rows = transfer.every(session, kind, LOCAL_SHOP, deleted=deleted)
        return [row.id.int & 0xFFFFFFFFFFFF for row in rows]


def test_every_record_is_given_once_in_order_however_many(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(transfer, "_AT_ONCE", 3)
    numbers = [5, 3, 9, 1, 7, 2, 8, 4, 6]
    take(store, Engine, *(given(number, ENGINE) for number in numbers))
    assert every(store, Engine) == sorted(numbers)
    with store.writing() as session:
        sync.apply(session, LOCAL_SHOP, [sync.Change(Engine, key(4), None, sync.ANY)])
    assert every(store, Engine) == [1, 2, 3, 5, 6, 7, 8, 9]
    assert every(store, Engine, deleted=True) == [4]


def test_what_is_new_is_added_and_the_same_again_changes_nothing(store: Store) -> None:
    assert take(store, Engine, given(1, ENGINE), given(2, ENGINE)) == ["added", "added"]
    assert take(store, Engine, given(1, ENGINE), given(3, ENGINE)) == ["same", "added"]
    with store.reading() as session:
        assert session.get_one(Engine, (LOCAL_SHOP, key(1))).version == 1


def test_what_differs_is_kept_unless_chosen(store: Store) -> None:
    take(store, Engine, given(1, ENGINE))
    other = given(1, ENGINE | {"name": "Other"})
    assert take(store, Engine, other) == ["kept"]
    assert take(store, Engine, other, chosen=1) == ["taken"]
    with store.reading() as session:
        row = session.get_one(Engine, (LOCAL_SHOP, key(1)))
    assert (row.name, row.version) == ("Other", 2)
    assert take(store, Engine, other, chosen=1) == ["same"]


def test_a_reading_is_never_changed_even_if_chosen(store: Store) -> None:
    take(store, Reading, given(1, READING))
    assert take(store, Reading, given(1, READING | {"note": "x"}), chosen=1) == ["kept"]
    with store.reading() as session:
        assert session.get_one(Reading, (LOCAL_SHOP, key(1))).note is None


def test_a_phone_that_writes_one_for_one_point_nought_means_the_same(store: Store) -> None:
    take(store, Reading, given(1, READING))
    as_phone = READING | {"input": {"a": [1, True, None]}, "result": {"x": 2}}
    assert take(store, Reading, given(1, as_phone)) == ["same"]
    for other in ([1, 1, None], [1, True, 0], [1, True], [True, True, None]):
        assert take(store, Reading, given(1, READING | {"input": {"a": other}})) == ["kept"], other


def test_a_bad_record_spoils_none_of_the_others(store: Store) -> None:
    lost = given(2, BUILD | {"engine_id": key(9)})
    take(store, Engine, given(1, ENGINE))
    good = BUILD | {"engine_id": key(1)}
    outcomes = take(store, Build, given(3, good), lost, given(4, good), given(3, good))
    assert outcomes == ["added", "refused", "added", "twice"]
    assert every(store, Build) == [3, 4]


def test_what_was_deleted_is_taken_in_as_deleted_and_when_it_was(store: Store) -> None:
    assert take(store, Engine, given(1, ENGINE, EARLIER)) == ["added"]
    assert take(store, Build, given(2, BUILD | {"engine_id": key(1)})) == ["added"]
    assert take(store, Reading, given(3, READING, EARLIER)) == ["added"]
    assert (every(store, Engine), every(store, Engine, deleted=True)) == ([], [1])
    with store.reading() as session:
        assert session.get_one(Engine, (LOCAL_SHOP, key(1))).deleted_at == EARLIER
    assert take(store, Engine, given(1, ENGINE, AT)) == ["same"]


@pytest.mark.parametrize("kind", [Engine, Reading])
def test_deleted_on_one_side_only_is_kept_as_here_unless_chosen(store: Store, kind: Any) -> None:
    values = ENGINE if kind is Engine else READING
    take(store, kind, given(1, values))
    gone = given(1, values, EARLIER)
    assert take(store, kind, gone) == ["kept"]
    assert every(store, kind) == [1]
    assert take(store, kind, gone, chosen=1) == ["taken"]
    assert every(store, kind, deleted=True) == [1]
    # And back: what is alive in the file, and deleted here.
    assert take(store, kind, given(1, values)) == ["kept"]
    assert take(store, kind, given(1, values), chosen=1) == ["taken"]
    assert every(store, kind) == [1]

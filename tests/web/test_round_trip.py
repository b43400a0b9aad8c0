"""Any shop, out as a file and into an empty one and out again: the same."""

import json
from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from midspan.store import Store, sync, upgrade
from midspan.store.models import LOCAL_SHOP
from midspan.web import transfer_file
from midspan.web.nouns import NOUNS
from web.document import Document
from web.files import FILE, file_of, record
from web.shelf import key

# Whatever a person may type: any text that the schemas let through.
TEXT = st.text(st.characters(exclude_categories=["Cs", "Cc"], include_characters="\n"), max_size=40)
NAME = TEXT.filter(str.strip)
MOMENT = st.datetimes(datetime(1990, 1, 1), datetime(2100, 1, 1)).map(
    lambda at: at.replace(tzinfo=UTC).isoformat().replace("+00:00", "Z")
)
NUMBER = st.floats(-1e9, 1e9) | st.integers(-(2**53), 2**53)
JSON = st.dictionaries(
    st.text(max_size=5),
    st.recursive(
        st.none() | st.booleans() | NUMBER | st.text(max_size=5),
        lambda inner: st.lists(inner, max_size=3)
        | st.dictionaries(st.text(max_size=5), inner, max_size=3),
        max_leaves=6,
    ),
    max_size=4,
)  # fmt: skip
FIGURE = st.fixed_dictionaries(
    {"label": NAME, "value": st.floats(-1e12, 1e12)}, optional={"unit": st.none() | TEXT.map(
        lambda text: text[:20]
    )},
)  # fmt: skip


@st.composite
def shops(draw: st.DrawFn) -> tuple[dict[str, Any], set[str]]:
    """Draw the records of a shop, each referring to any of those before it, and what is deleted."""
    ids = (key(number) for number in range(1, 1000))
    made: dict[str, list[str]] = {"engine": [], "chain": [], "gear-set": [], "build": []}

    def some(noun: str, base: dict[str, Any]) -> list[dict[str, Any]]:
        found = []
        for _ in range(draw(st.integers(0, 3))):
            refs = {
                f"{other.replace('-', '_')}_id": draw(st.sampled_from(made[other]) | st.none())
                for other in made
                if made[other] and other != noun and f"{other}_id".replace("-", "_") in may(noun)
            }
            values = record(noun, 1) | {name: draw(how) for name, how in base.items()} | refs
            values["id"] = next(ids)
            if all(values.get(name) for name in must(noun)):
                found.append(values)
                made.setdefault(noun, []).append(values["id"])
        return found

    label = {"label": NAME, "note": st.none() | TEXT, "created_at": MOMENT}
    file = file_of(
        engines=some("engine", {"name": NAME, "note": TEXT, "invented": st.booleans()}),
        chains=some("chain", label | {"distance_run_km": st.floats(0, 1e6)}),
        gear_sets=some("gear-set", label),
        builds=some("build", label | {"started_at": MOMENT}),
        entries=some("entry", {
            "title": NAME, "text": st.none() | TEXT, "at": MOMENT,
            "figures": st.none() | st.lists(FIGURE, max_size=3),
            "kind": st.sampled_from(["part", "setting", "plan", "session", "note"]),
        }),
        plans=some("plan", {"label": NAME, "created_at": MOMENT}),
        readings=some("reading", {"taken_at": MOMENT, "input": JSON, "result": JSON}),
        sessions=some("session", label | {"at": MOMENT, "invented": st.booleans()}),
        runs=some("run", {"taken_at": MOMENT, "source": st.none() | JSON}),
    )  # fmt: skip
    every = [one["id"] for records in file["records"].values() for one in records]
    gone = set(draw(st.lists(st.sampled_from(every), unique=True))) if every else set()
    return file, gone


def may(noun: str) -> set[str]:
    """Give the fields of a noun."""
    (found,) = [one for one in NOUNS if one.one == noun]
    return set(found.write().fields)


def must(noun: str) -> set[str]:
    """Give the references that a noun cannot be without."""
    (found,) = [one for one in NOUNS if one.one == noun]
    return {n for n, field in found.write().fields.items() if field.required and n.endswith("_id")}


@pytest.fixture(scope="module")
def two_shops(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    """Two stores, emptied by being other shops each time."""
    folder = tmp_path_factory.mktemp("two")
    made = []
    for name in ("one", "two"):
        store = Store(f"sqlite:///{folder / name}.sqlite3")
        upgrade(store)
        made.append(store)
    yield made
    for store in made:
        store.close()


def emptied(store: Store) -> None:
    """Take every record out."""
    with store.for_writing.begin() as connection:
        for noun in reversed(NOUNS):
            connection.execute(noun.model.__table__.delete())  # type: ignore[attr-defined]


def exported(store: Store) -> dict[str, Any]:
    """Export, and leave out when that was."""
    whole: dict[str, Any] = json.loads("".join(transfer_file.write(store, LOCAL_SHOP)))
    del whole["exported_at"]
    return whole


@given(drawn=shops())
@settings(
    max_examples=60, deadline=None, derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)  # fmt: skip
def test_any_shop_goes_out_and_into_an_empty_one_and_out_the_same(
    two_shops: list[Store], document: Document, drawn: tuple[dict[str, Any], set[str]]
) -> None:
    one, two = two_shops
    for store in two_shops:
        emptied(store)
    file, gone = drawn
    count = sum(map(len, file["records"].values()))
    report = transfer_file.read(one, LOCAL_SHOP, file, frozenset())
    assert (report["added"], report["refused"], report["conflicts"]) == (count, [], [])
    delete(one, file, gone)
    first = exported(one)
    assert document.faults(first | {"exported_at": "2026-01-31T12:00:00Z"}, FILE) == []
    assert len(first["tombstones"]) == len(gone)
    assert transfer_file.read(two, LOCAL_SHOP, first, frozenset())["added"] == count
    second = exported(two)
    assert second == first
    # Once more into either: nothing changes.
    for store in two_shops:
        again = transfer_file.read(store, LOCAL_SHOP, second, frozenset())
        assert (again["added"], again["same"]) == (0, count)
        assert (again["conflicts"], again["refused"]) == ([], [])
        assert exported(store) == first
    # And through a phone, which has one kind of number: 1.0 comes back as 1.
    as_phone = json.loads(json.dumps(second), parse_float=_as_javascript)
    assert transfer_file.read(one, LOCAL_SHOP, as_phone, frozenset())["same"] == count


def _as_javascript(digits: str) -> float | int:
    value = float(digits)
    return int(value) if value.is_integer() and abs(value) < 2**53 else value


def delete(store: Store, file: dict[str, Any], gone: set[str]) -> None:
    """Delete some of a file's records."""
    with store.writing() as session:
        for noun in NOUNS:
            changes = [
                sync.Change(noun.model, UUID(one["id"]), None, sync.ANY)
                for one in file["records"][noun.many]
                if one["id"] in gone
            ]
            sync.apply(session, LOCAL_SHOP, changes)


def test_the_drawn_shops_hold_what_they_are_to_test(document: Document) -> None:
    """Every kind but drives, whose figures the core checks: those are in the other tests."""
    found: set[str] = set()

    @given(drawn=shops())
    @settings(max_examples=60, deadline=None, derandomize=True, database=None)
    def look(drawn: tuple[dict[str, Any], set[str]]) -> None:
        file, gone = drawn
        found.update(kind for kind, records in file["records"].items() if records)
        if gone:
            found.add("gone")

    look()
    assert found == {noun.many for noun in NOUNS} - {"drives"} | {"gone"}

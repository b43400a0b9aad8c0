"""An invented engine to look at. Its results are not stored here: the core works them out."""

import json
from collections.abc import Iterator, Mapping
from datetime import datetime
from pathlib import Path
from typing import Any
from uuid import UUID

from midspan.core import VERSION, run
from midspan.store import (
    Build,
    Chain,
    Drive,
    DynoRun,
    DynoSession,
    Engine,
    Entry,
    GearSet,
    Reading,
    ReadingExists,
    Store,
)
from midspan.store.models import LOCAL_SHOP
from midspan.store.records import put

# What a record is told by, the first of these that it has.
SAID = ("name", "label", "title", "note", "taken_at")
SCENARIO = Path(__file__).with_name("scenario.json")


def scenario() -> dict[str, Any]:
    """Read the scenario: an engine and what belongs to it; no result and no version is in it."""
    found: dict[str, Any] = json.loads(SCENARIO.read_text(encoding="utf-8"))
    return found


def load(store: Store) -> Iterator[str]:
    """Keep the scenario; what is kept already stays as it is.

    Yields
    ------
    what was done, line by line
    """
    told = scenario()
    yield told["notice"]
    yield _keep(store, Engine, told["engine"])
    for drive in told["drives"]:
        yield _keep(store, Drive, drive)
    for chain in told["chains"]:
        yield _keep(store, Chain, chain)
    for gear_set in told["gear_sets"]:
        yield _keep(store, GearSet, gear_set)
    for build in told["builds"]:
        yield _keep(store, Build, build)
    for entry in told["entries"]:
        yield _keep(store, Entry, entry)
    for reading in told["readings"]:
        yield _keep(store, Reading, reading | worked_out(reading))
    for session in told["sessions"]:
        yield _keep(store, DynoSession, session)
    for pull in told["runs"]:
        yield _keep(store, DynoRun, pull | {"core_version": VERSION})


def worked_out(reading: Mapping[str, Any]) -> dict[str, Any]:
    """Have the core work out a reading's result and the limit its verdict rests on."""
    result: Any = run(reading["calc"], reading["input"])
    return {"result": result, "core_version": VERSION, "limit": result["verdict"]["limit"]}


def _keep(store: Store, kind: Any, record: dict[str, Any]) -> str:  # noqa: ANN401
    values = {name: _value(name, value) for name, value in record.items() if name != "id"}
    said = next(record[name] for name in SAID if name in record)
    try:
        with store.writing() as session:
            _, new = put(session, kind, LOCAL_SHOP, UUID(record["id"]), values)
    except ReadingExists:
        return f"kept from before, by other calculations: {said}"
    return f"{'added' if new else 'there already'}: {said}"


def _value(name: str, value: Any) -> Any:  # noqa: ANN401
    if name.endswith("_id") and value is not None:
        return UUID(value)
    return datetime.fromisoformat(value) if name == "at" or name.endswith("_at") else value

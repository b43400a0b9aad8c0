"""Files of everything, made from the examples of each kind."""

from typing import Any

from midspan.web.examples import WRITES
from midspan.web.nouns import NOUNS
from web.shelf import key

FILE = {"$ref": "#/components/schemas/ExportFile"}
ALL = len(NOUNS)  # how many records a file with one of each kind has
REPORT = {"$ref": "#/components/schemas/ImportReport"}


def record(noun: str, number: int, **changes: Any) -> dict[str, Any]:
    """Give an example of a record as a file has it; it refers to nothing but what is said."""
    sent = {name: value for name, value in WRITES[noun].items() if not name.endswith("_id")}
    return {"id": key(number)} | sent | changes


def file_of(**records: list[Any]) -> dict[str, Any]:
    """Give a file with these records."""
    lists = {noun.many: records.get(noun.many.replace("-", "_"), []) for noun in NOUNS}
    return {
        "format": "midspan-export", "version": 1, "exported_at": "2026-01-31T12:00:00Z",
        "core_version": "0.1.0", "kinds": list(lists), "records": lists, "tombstones": [],
    }  # fmt: skip


def one_of_each() -> dict[str, Any]:
    """Give a file with a record of each kind, each referring to what it may."""
    whose = {"engine_id": key(1)}
    parts = {"chain_id": key(3), "gear_set_id": key(4)}
    return file_of(
        engines=[record("engine", 1)],
        drives=[record("drive", 2, **whose)],
        chains=[record("chain", 3, **whose)],
        gear_sets=[record("gear-set", 4)],
        builds=[record("build", 5, **whose, **parts, drive_id=key(2))],
        entries=[record("entry", 6, build_id=key(5), **parts)],
        plans=[record("plan", 8, **whose, build_id=key(5))],
        readings=[
            record("reading", 7, **whose, **parts, drive_id=key(2), build_id=key(5), load_n=None)
        ],
        sessions=[record("session", 9, **whose, build_id=key(5))],
        runs=[record("run", 10, session_id=key(9))],
    )

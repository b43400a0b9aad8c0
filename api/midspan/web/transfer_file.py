"""The open file of everything: written record by record, and read one record at a time.

Its form is the component ExportFile of the OpenAPI document. The phone writes and reads the same.
"""

import json
from collections.abc import Iterator
from datetime import UTC, datetime
from itertools import islice
from typing import Any
from uuid import UUID

from midspan.core import VERSION
from midspan.core.errors import Refused, problem
from midspan.store import Store, transfer
from midspan.store.models import Record
from midspan.store.transfer import Given, Taken

from .nouns import NOUNS, Noun, take
from .problems import as_error, refuse
from .schemas.record_fields import NEED_IDENTIFIER, as_identifier, as_moment
from .schemas.transfer import EXPORTED, FORM, FORMAT

_AT_ONCE = 200


def write(store: Store, shop: UUID) -> Iterator[str]:
    """Write the file in pieces, all of it as it was at one moment.

    Parameters
    ----------
    store, shop : whose records
    """
    with store.reading() as session:
        transfer.snapshot(session, shop)
        head = {
            "format": FORMAT,
            "version": FORM,
            "exported_at": _now(),
            "core_version": VERSION,
            "kinds": [noun.many for noun in NOUNS],
        }
        yield json.dumps(head)[:-1] + ',\n"records": {'
        for number, noun in enumerate(NOUNS):
            yield ("," if number else "") + f'\n"{noun.many}": ['
            rows = transfer.every(session, noun.model, shop, deleted=False)
            yield from _listed(content(noun, row) for row in rows)
            yield "]"
        yield '},\n"tombstones": ['
        yield from _listed(_tombstones(session, shop))
        yield "]}\n"


def content(noun: Noun, row: Record) -> dict[str, Any]:
    """Give a record as the file has it: what is the user's, nothing of the store's."""
    dumped: dict[str, Any] = EXPORTED[noun.many].dump(row)
    return dumped


def read(store: Store, shop: UUID, file: object, chosen: frozenset[UUID]) -> dict[str, Any]:
    """Take in a file: what is new is added, nothing kept is overwritten, all else is reported.

    Parameters
    ----------
    store, shop : where to
    file : as parsed from JSON
    chosen : ids of kept records that are to become as in the file; never of readings

    Returns
    -------
    the report: added, same, taken (counts), conflicts (with both sides), refused (with problems)

    Raises
    ------
    Refused : it is no such file
    """
    records, tombstones = _parts(file)
    report: dict[str, Any] = {"added": 0, "same": 0, "taken": 0, "conflicts": [], "refused": []}
    for name in sorted(records.keys() - {noun.many for noun in NOUNS}):
        found = problem("unknown-kind", f"records.{name}", name, _KINDS, "Leave it out.")
        report["refused"].append(_refused(name, 0, None, [found]))
    for noun in NOUNS:
        # What was deleted comes first: what follows may still refer to it.
        gone = [(i, one) for i, one in enumerate(tombstones) if _kind(one) == noun.many]
        lists = ((gone, True), (list(enumerate(_list(records, noun, report))), False))
        for listed, deleted in lists:
            checked = _checked(noun, listed, deleted, report)
            while some := list(islice(checked, _AT_ONCE)):
                with store.writing() as session:
                    taken = transfer.take(session, noun.model, shop, some, chosen)
                    for one in taken:
                        _tell(report, noun, one)
    return report


_KINDS = "one of " + ", ".join(noun.many for noun in NOUNS)


def _listed(items: Iterator[dict[str, Any]]) -> Iterator[str]:
    for number, item in enumerate(items):
        yield (",\n" if number else "\n") + json.dumps(item, allow_nan=False)


def _tombstones(session: Any, shop: UUID) -> Iterator[dict[str, Any]]:  # noqa: ANN401
    for noun in NOUNS:
        for row in transfer.every(session, noun.model, shop, deleted=True):
            assert row.deleted_at is not None  # noqa: S101  (that is what was asked for)
            yield {
                "kind": noun.many,
                "id": str(row.id),
                "deleted_at": _written(row.deleted_at),
                "record": content(noun, row),
            }


def _parts(file: object) -> tuple[dict[str, Any], list[Any]]:
    """Find the two lists of a file, or refuse it."""
    step = "Choose a file that was exported by this app or this service."
    if not isinstance(file, dict):
        raise refuse("not-an-object", "", file, "an object with format and records", step)
    if file.get("format") != FORMAT:
        raise refuse("not-a-choice", "format", file.get("format"), FORMAT, step)
    version = file.get("version")
    if isinstance(version, bool) or version != FORM:
        step = "Update Midspan, then import the file again."
        raise refuse("not-a-choice", "version", version, str(FORM), step)
    records, tombstones = file.get("records"), file.get("tombstones", [])
    if not isinstance(records, dict):
        raise refuse("not-an-object", "records", records, "an object of lists by kind", step)
    if not isinstance(tombstones, list):
        raise refuse("not-a-list", "tombstones", tombstones, "a list", step)
    return records, tombstones


def _list(records: dict[str, Any], noun: Noun, report: dict[str, Any]) -> list[Any]:
    found = records.get(noun.many, [])
    if isinstance(found, list):
        return found
    wrong = problem("not-a-list", f"records.{noun.many}", found, "a list", "Put them in a list.")
    report["refused"].append(_refused(noun.many, 0, None, [wrong]))
    return []


def _kind(tombstone: object) -> object:
    return tombstone.get("kind") if isinstance(tombstone, dict) else None


def _checked(
    noun: Noun, listed: list[tuple[int, Any]], deleted: bool, report: dict[str, Any]
) -> Iterator[Given]:
    """Give what can be taken; what cannot is put into the report."""
    for index, one in listed:
        at = one.get("deleted_at") if deleted else None
        record = one.get("record") if deleted else one
        if deleted and record is None:
            continue  # only that it is gone is known: there is nothing to add
        id = as_identifier(record.get("id")) if isinstance(record, dict) else None
        try:
            if not isinstance(record, dict):
                raise refuse("not-an-object", "", record, "a record", "Send named fields.")
            if id is None:
                raise refuse("not-an-id", "id", record.get("id"), NEED_IDENTIFIER, "Correct it.")
            when = as_moment(at) if deleted else None
            if deleted and when is None:
                need = "a time in UTC, such as 2026-01-31T12:00:00Z"
                raise refuse("not-a-time", "deleted_at", at, need, "Correct it.")
            values = take(noun, {name: record[name] for name in record if name != "id"})
        except Refused as refused:
            report["refused"].append(_refused(noun.many, index + 1, id, refused.problems))
        else:
            yield Given(index + 1, id, values, when)


def _tell(report: dict[str, Any], noun: Noun, taken: Taken) -> None:
    given, outcome, here, problems = taken
    if outcome in ("added", "same", "taken"):
        report[outcome] += 1
    elif here is None:
        found = list(problems) or [
            problem("given-twice", "id", str(given.id), "each id once", "Keep one of them.")
        ]
        report["refused"].append(_refused(noun.many, given.place, given.id, found))
    else:
        row = noun.model(id=given.id, **given.values)
        report["conflicts"].append(
            {
                "kind": noun.many,
                "id": str(given.id),
                "here": content(noun, here),
                "there": content(noun, row),
                "deleted_here": here.deleted_at is not None,
                "deleted_there": given.deleted_at is not None,
            }
        )


def _refused(
    kind: str, place: int, id: UUID | None, problems: list[dict[str, object]]
) -> dict[str, Any]:
    errors = [as_error(found) for found in problems]
    return {"kind": kind, "place": place, "id": str(id) if id else None, "errors": errors}


def _now() -> str:
    return _written(datetime.now(UTC))


def _written(moment: datetime) -> str:
    return moment.astimezone(UTC).isoformat().replace("+00:00", "Z")


def told(report: dict[str, Any]) -> Iterator[str]:
    """Say a report in words, line by line: the counts, then both sides, then what was refused."""
    yield f"{report['added']} added, {report['same']} here already and the same."
    if report["taken"]:
        yield f"{report['taken']} now as in the file, as chosen."
    for one in report["conflicts"]:
        yield f"{one['kind']} {one['id']} is not the same here; what is here was kept:"
        names = [name for name in one["here"] if one["here"][name] != one["there"].get(name)]
        for name in names:
            yield f"    {name}: here {_short(one['here'][name])}, file {_short(one['there'][name])}"
        for side, words in (("deleted_here", "deleted here"), ("deleted_there", "deleted there")):
            if one[side]:
                yield f"    {words}"
    for one in report["refused"]:
        yield f"{one['kind']}, number {one['place']}, could not be taken ({one['id'] or 'no id'}):"
        for error in one["errors"]:
            yield f"    {error['detail']} {error['next_step']}"


def _short(value: object) -> str:
    text = json.dumps(value, ensure_ascii=False)
    return text if len(text) <= 80 else text[:79] + "…"

"""Changing records: one or many, by one set of rules, each answered for itself.

A change says which version of the record it was made from. Changes of a shop are done one batch
after the other, under the lock on the shop's row, and each takes the next number of that row. So
the numbers appear in their order, and whoever has fetched up to a number has missed nothing.
"""

import json
from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from datetime import UTC, datetime
from functools import cache
from itertools import islice
from typing import Any, Literal, NamedTuple
from uuid import UUID

from sqlalchemy import insert, select
from sqlalchemy.orm import Session

from midspan.core.errors import problem

from .models import Record, Shop
from .written import Packed

# Versions that a change may be made from; 0 stands for a record that is not there yet.
NEW: Container[int] = range(1)
KEPT: Container[int] = range(1, 2**62)
ANY: Container[int] = range(2**62)
# Databases limit how many values a query may name.
_AT_ONCE = 500

Outcome = Literal[
    "new", "same", "changed", "deleted", "restored",
    "stale", "differs", "absent", "twice", "refused",
]  # fmt: skip
DONE = ("new", "changed", "deleted", "restored")


class Change(NamedTuple):
    """A record as it is to be, or, without values, a record that is to go."""

    kind: type[Record]
    id: UUID
    values: Mapping[str, Any] | None
    base: Container[int]


class Answer(NamedTuple):
    """What became of a change. `theirs` is the record as kept, where that is something else."""

    outcome: Outcome
    version: int | None = None
    theirs: Record | None = None
    problems: Sequence[dict[str, object]] = ()


def lock(session: Session, shop: UUID) -> Shop:
    """Wait until nobody else changes records of this shop, and keep it so to the end."""
    owner = select(Shop).where(Shop.id == shop).with_for_update(key_share=True)
    return session.scalars(owner.execution_options(populate_existing=True)).one()


def apply(session: Session, shop: UUID, changes: Sequence[Change]) -> list[Answer]:
    """Do changes, parents before children; a bad one spoils none of the others.

    Parameters
    ----------
    session : one for writing
    shop : whose records
    changes : at most one for each record; whatever comes second is answered "twice"

    Returns
    -------
    an answer for each, in their order
    """
    counter = lock(session, shop)
    now = datetime.now(UTC)
    answers: list[Answer | None] = [None] * len(changes)
    for kind in Record.kinds:
        first: dict[UUID, int] = {}
        for index, change in enumerate(changes):
            if change.kind is kind and first.setdefault(change.id, index) != index:
                answers[index] = Answer("twice")
        if not first:
            continue
        rows = {row.id: row for row in _rows(session, kind, shop, first)}
        missing = _missing(session, kind, shop, [changes[index] for index in first.values()])
        fresh: list[dict[str, Any]] = []
        for id, index in first.items():
            change, row = changes[index], rows.get(id)
            full = None if change.values is None else filled(kind, change.values)
            problems = missing.get(id, [])
            outcome = "refused" if problems else _judge(row, change, full)
            if outcome in DONE:
                counter.seq += 1
            if outcome == "new" and full is not None:
                fresh.append(full | _new(shop, id, now, counter.seq))
            elif outcome in DONE and row is not None:
                _change(row, full, now, counter.seq)
            answers[index] = _answer(outcome, row, problems)
        if fresh:
            session.execute(insert(kind.__table__), fresh)  # type: ignore[arg-type]
    session.flush()
    return [answer for answer in answers if answer is not None]


def filled(kind: type[Record], values: Mapping[str, Any]) -> dict[str, Any]:
    """Give every field of a record: what was left out is not kept, or has its first value."""
    full = {name: values.get(name) for name in fields(kind)}
    for name, first in _firsts(kind).items():
        if full[name] is None:
            full[name] = first
    return full


@cache
def _firsts(kind: type[Record]) -> dict[str, Any]:
    columns = kind.__table__.columns
    found = {name: columns[name].default for name in fields(kind)}
    return {name: getattr(first, "arg", None) for name, first in found.items() if first is not None}


@cache
def fields(kind: type[Record]) -> list[str]:
    """List the fields that are the user's."""
    return [name for name in kind.__table__.columns.keys() if name not in _OURS]  # noqa: SIM118


_OURS = frozenset(("shop_id", "id", "version", "received_at", "deleted_at", "seq"))


def _judge(row: Record | None, change: Change, full: Mapping[str, Any] | None) -> Outcome:
    """Decide what becomes of a change to a record as kept, or to none."""
    fits = (0 if row is None else row.version) in change.base
    if row is None:
        return "absent" if full is None else "new" if fits else "stale"
    gone = row.deleted_at is not None
    if full is None:
        return "same" if gone else "deleted" if fits else "stale"
    same = _same(row, full)
    if row.append_only and not same:
        return "differs"
    if same and not gone:
        return "same"
    if fits:
        return "restored" if gone else "changed"
    # Sent once more by a phone that missed the answer; set aside by another since.
    return "same" if same and row.append_only and 0 in change.base else "stale"


def _answer(outcome: Outcome, row: Record | None, problems: Sequence[dict[str, object]]) -> Answer:
    version = row.version if row is not None else 1 if outcome == "new" else None
    return Answer(outcome, version, None if outcome in DONE else row, problems)


def _new(shop: UUID, id: UUID, now: datetime, seq: int) -> dict[str, Any]:
    kept = {"shop_id": shop, "id": id, "version": 1, "received_at": now, "deleted_at": None}
    return kept | {"seq": seq}


def _change(row: Record, full: Mapping[str, Any] | None, now: datetime, seq: int) -> None:
    for name, value in (full or {}).items():
        setattr(row, name, value)
    row.deleted_at = now if full is None else None
    row.received_at = now
    row.version += 1
    row.seq = seq


def _rows(
    session: Session, kind: type[Record], shop: UUID, ids: Iterable[UUID]
) -> Iterator[Record]:
    for some in _in_parts(ids):
        found = select(kind).where(kind.shop_id == shop, kind.id.in_(some))
        yield from session.scalars(found.execution_options(populate_existing=True))


def _missing(
    session: Session, kind: type[Record], shop: UUID, changes: Sequence[Change]
) -> dict[UUID, list[dict[str, object]]]:
    """Find what changes refer to and is not kept. What is deleted is kept, so it may be named."""
    found: dict[UUID, list[dict[str, object]]] = {}
    for name, other in references(kind).items():
        wanted = {c.values[name] for c in changes if c.values and c.values.get(name)}
        if not wanted:
            continue
        there: set[UUID] = set()
        for some in _in_parts(wanted):
            there.update(
                session.scalars(select(other.id).where(other.shop_id == shop, other.id.in_(some)))
            )
        what = other.__tablename__.replace("_", " ")
        for change in changes:
            id = change.values.get(name) if change.values else None
            if id is not None and id not in there:
                need, step = f"the id of a kept {what}", f"Send the {what} first."
                refused = problem("no-such-record", name, str(id), need, step)
                found.setdefault(change.id, []).append(refused)
    return found


def references(kind: type[Record]) -> dict[str, type[Record]]:
    """Give the fields that name another record, and of which kind that is."""
    tables = {other.__table__: other for other in Record.kinds}
    return {
        key.column_keys[1]: tables[key.referred_table]
        for key in kind.__table__.foreign_key_constraints  # type: ignore[attr-defined]
        if key.referred_table in tables
    }


def _same(row: Record, full: Mapping[str, Any]) -> bool:
    return all(_plain(getattr(row, name)) == _plain(value) for name, value in full.items())


def _plain(value: object) -> object:
    """Make two equal JSON values equal texts; Python alone would take 1, 1.0 and true as one."""
    if isinstance(value, Packed):
        value = value.unpack()
    return json.dumps(value, sort_keys=True) if isinstance(value, (dict, list)) else value


def _in_parts(ids: Iterable[UUID]) -> Iterator[list[UUID]]:
    rest = iter(ids)
    while some := list(islice(rest, _AT_ONCE)):
        yield some

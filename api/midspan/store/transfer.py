"""Whole shops in and out: every record in order, and what a file would change."""

from collections.abc import Iterator, Mapping
from datetime import datetime
from typing import Any, NamedTuple
from uuid import UUID

from sqlalchemy import select
from sqlalchemy.orm import Session

from . import sync
from .models import Record, Shop

_AT_ONCE = 500


class Given(NamedTuple):
    """A record of a file, checked; deleted where the file says that it was."""

    place: int
    id: UUID
    values: Mapping[str, Any]
    deleted_at: datetime | None = None


class Taken(NamedTuple):
    """What became of it: added, same, taken (the file's side, as chosen), kept, or refused.

    `kept` is a record that is here and other than in the file: `here` is the one that stays.
    """

    given: Given
    outcome: str
    here: Record | None = None
    problems: tuple[dict[str, object], ...] = ()


def snapshot(session: Session, shop: UUID) -> None:
    """Have all that this session reads be of one moment: of now."""
    # SQLite's transactions are so by themselves.
    if session.get_bind().dialect.name == "postgresql":
        session.connection(execution_options={"isolation_level": "REPEATABLE READ"})
    session.get_one(Shop, shop)  # the moment is that of the first query


def every(session: Session, kind: type[Record], shop: UUID, *, deleted: bool) -> Iterator[Record]:
    """Give the records of a kind in the order of their ids, those that were deleted or the others.

    Parameters
    ----------
    session : one for reading
    kind, shop : which records
    deleted : which of the two
    """
    after: UUID | None = None
    gone = kind.deleted_at.is_not(None) if deleted else kind.deleted_at.is_(None)
    while True:
        found = select(kind).where(kind.shop_id == shop, gone)
        if after is not None:
            found = found.where(kind.id > after)
        rows = session.scalars(found.order_by(kind.id).limit(_AT_ONCE)).all()
        yield from rows
        if len(rows) < _AT_ONCE:
            return
        after = rows[-1].id
        session.expunge_all()  # a long export must not hold all it has given


def take(
    session: Session, kind: type[Record], shop: UUID, given: list[Given], chosen: frozenset[UUID]
) -> list[Taken]:
    """Add what is new of a file's records of one kind; nothing that is kept is overwritten.

    Parameters
    ----------
    session : one for writing
    kind, shop : which records
    given : at most a few hundred, all they refer to being kept already
    chosen : of which the file's side is to be kept, unless they are never changed

    Returns
    -------
    what became of each, in their order
    """
    changes = [sync.Change(kind, one.id, one.values, sync.NEW) for one in given]
    answers = sync.apply(session, shop, changes)
    gone = [
        one for one, answer in zip(given, answers, strict=True)
        if one.deleted_at and answer.outcome == "new"
    ]  # fmt: skip
    _delete(session, kind, shop, gone)
    results = []
    for one, answer in zip(given, answers, strict=True):
        if answer.outcome == "new":
            results.append(Taken(one, "added"))
        elif answer.outcome in ("refused", "twice"):
            results.append(Taken(one, answer.outcome, None, tuple(answer.problems)))
        else:
            results.append(_held(session, shop, kind, one, one.id in chosen))
    return results


def _held(session: Session, shop: UUID, kind: type[Record], one: Given, chosen: bool) -> Taken:
    """Decide on a record that is here already: the same, the file's if chosen, or kept."""
    row = session.get_one(kind, (shop, one.id))
    alike = _alike(row, kind, one.values)
    if alike and (row.deleted_at is None) == (one.deleted_at is None):
        return Taken(one, "same")
    if chosen and one.deleted_at:
        _delete(session, kind, shop, [one])
        return Taken(one, "taken")
    if chosen and (alike or not kind.append_only):
        values = {name: getattr(row, name) for name in sync.fields(kind)} if alike else one.values
        sync.apply(session, shop, [sync.Change(kind, one.id, values, sync.ANY)])
        return Taken(one, "taken")
    return Taken(one, "kept", row)


def _delete(session: Session, kind: type[Record], shop: UUID, gone: list[Given]) -> None:
    sync.apply(session, shop, [sync.Change(kind, one.id, None, sync.ANY) for one in gone])
    for one in gone:  # it was deleted when it was, not when the file came in
        session.get_one(kind, (shop, one.id)).deleted_at = one.deleted_at
    session.flush()


def _alike(row: Record, kind: type[Record], values: Mapping[str, Any]) -> bool:
    full = sync.filled(kind, values)
    return all(alike(getattr(row, name), value) for name, value in full.items())


def alike(one: object, other: object) -> bool:
    """Tell whether two JSON values are one to a reader that has one kind of number, as a phone."""
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(alike(one[name], other[name]) for name in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(alike, one, other))
    if isinstance(one, bool) or isinstance(other, bool):
        return one is other
    return one == other

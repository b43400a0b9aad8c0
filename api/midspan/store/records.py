"""Keeping records and finding them again, always within one shop."""

import json
from collections.abc import Mapping, Sequence
from datetime import UTC, datetime
from typing import Any, TypeVar
from uuid import UUID

from sqlalchemy import select
from sqlalchemy.exc import IntegrityError
from sqlalchemy.orm import Session

from midspan.core.errors import Refused, problem

from .models import Build, Chain, Drive, Engine, GearSet, Reading, Record

R = TypeVar("R", bound=Record)
REFERENCES: dict[str, type[Record]] = {
    "engine_id": Engine, "drive_id": Drive, "chain_id": Chain, "gear_set_id": GearSet,
    "build_id": Build,
}  # fmt: skip


class ReadingExists(Exception):  # noqa: N818  (it names what happened)
    """A reading with this id is kept already, and differs. The stored one is untouched."""


def put(
    session: Session, kind: type[R], shop: UUID, id: UUID, values: Mapping[str, Any]
) -> tuple[R, bool]:
    """Keep a record under its id; a change counts its version up, the same again does nothing.

    Parameters
    ----------
    session : one for writing
    kind : the model
    shop, id : the key
    values : every other field of the record; what is left out is not kept

    Returns
    -------
    the record as kept, and whether it is new

    Raises
    ------
    Refused : a record it refers to is not in this shop
    ReadingExists : a reading of this id is kept already, and differs
    """
    _check_references(session, kind, shop, values)
    full = {name: values.get(name) for name in _fields(kind)}
    if kind is Engine:
        full["invented"] = bool(full["invented"])
    row = session.get(kind, (shop, id))
    if row is None:
        try:
            with session.begin_nested():
                row = kind(shop_id=shop, id=id, received_at=datetime.now(UTC), **full)
                session.add(row)
            return row, True
        except IntegrityError:  # another process was quicker by a hair
            session.expire_all()
            row = session.get_one(kind, (shop, id))
    if _same(row, full):
        return row, False
    if isinstance(row, Reading):
        raise ReadingExists
    for name, value in full.items():
        setattr(row, name, value)
    row.version += 1
    row.received_at = datetime.now(UTC)
    return row, False


def get(session: Session, kind: type[R], shop: UUID, id: UUID) -> R | None:
    """Find a record, or None."""
    row = session.get(kind, (shop, id))
    return None if row is None or row.deleted_at is not None else row


def page(
    session: Session, kind: type[R], shop: UUID, after: UUID | None, limit: int
) -> tuple[Sequence[R], UUID | None]:
    """List records in the order of their ids.

    The page starts at a key, not at a count, so a late page costs no more than the first.

    Parameters
    ----------
    session : one for reading
    kind, shop : which records
    after : id of the last record of the page before; None for the first page
    limit : how many at most

    Returns
    -------
    the records, and the id to send as `after` for the next page (None at the end)
    """
    found = select(kind).where(kind.shop_id == shop, kind.deleted_at.is_(None))
    if after is not None:
        found = found.where(kind.id > after)
    rows = session.scalars(found.order_by(kind.id).limit(limit + 1)).all()
    more = len(rows) > limit
    return rows[:limit], rows[limit - 1].id if more else None


def _fields(kind: type[Record]) -> list[str]:
    kept = {"shop_id", "id", "version", "received_at", "deleted_at"}
    return [column.key for column in kind.__mapper__.columns if column.key not in kept]


def _check_references(
    session: Session, kind: type[Record], shop: UUID, values: Mapping[str, Any]
) -> None:
    problems = []
    for name, other in REFERENCES.items():
        id = values.get(name)
        if name in _fields(kind) and id is not None and get(session, other, shop, id) is None:
            what = other.__tablename__.replace("_", " ")
            need, step = f"the id of a kept {what}", f"Send the {what} first."
            problems.append(problem("no-such-record", name, str(id), need, step))
    if problems:
        raise Refused(problems)


def _same(row: Record, full: Mapping[str, Any]) -> bool:
    return all(_plain(getattr(row, name)) == _plain(value) for name, value in full.items())


def _plain(value: object) -> object:
    """Make two equal JSON objects equal texts; Python alone would take 1, 1.0 and true as one."""
    return json.dumps(value, sort_keys=True) if isinstance(value, dict) else value

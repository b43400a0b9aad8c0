"""Keeping records and finding them again, always within one shop."""

from collections.abc import Mapping, Sequence
from typing import Any, TypeVar
from uuid import UUID

from sqlalchemy import select
from sqlalchemy.orm import Session

from midspan.core.errors import Refused

from . import sync
from .models import Record

R = TypeVar("R", bound=Record)


class ReadingExists(Exception):  # noqa: N818  (it names what happened)
    """A reading, or a run, with this id is kept already, and differs; it stays untouched."""


def put(
    session: Session, kind: type[R], shop: UUID, id: UUID, values: Mapping[str, Any]
) -> tuple[R, bool]:
    """Keep a record under its id, whatever was there; the same again does nothing.

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
    ReadingExists : what is never changed is kept under this id already, and differs
    """
    (answer,) = sync.apply(session, shop, [sync.Change(kind, id, values, sync.ANY)])
    if answer.problems:
        raise Refused(list(answer.problems))
    if answer.outcome == "differs":
        raise ReadingExists
    return session.get_one(kind, (shop, id)), answer.outcome == "new"


def get(
    session: Session, kind: type[R], shop: UUID, id: UUID, *, deleted: bool = False
) -> R | None:
    """Find a record, or None; one that was deleted only where it is asked for."""
    row = session.get(kind, (shop, id))
    return None if row is None or (row.deleted_at is not None and not deleted) else row


def page(
    session: Session,
    kind: type[R],
    shop: UUID,
    after: UUID | None,
    limit: int,
    *,
    deleted: bool = False,
) -> tuple[Sequence[R], UUID | None]:
    """List records in the order of their ids.

    The page starts at a key, not at a count, so a late page costs no more than the first.

    Parameters
    ----------
    session : one for reading
    kind, shop : which records
    after : id of the last record of the page before; None for the first page
    limit : how many at most
    deleted : whether those that were deleted are listed too

    Returns
    -------
    the records, and the id to send as `after` for the next page (None at the end)
    """
    found = select(kind).where(kind.shop_id == shop)
    if not deleted:
        found = found.where(kind.deleted_at.is_(None))
    if after is not None:
        found = found.where(kind.id > after)
    rows = session.scalars(found.order_by(kind.id).limit(limit + 1)).all()
    more = len(rows) > limit
    return rows[:limit], rows[limit - 1].id if more else None

"""What changed in a shop, in the order in which it changed: how a phone catches up."""

import re
from collections.abc import Sequence
from typing import NamedTuple
from uuid import UUID

from sqlalchemy import literal, select, union_all
from sqlalchemy.orm import Session

from .models import Record, Shop


class Page(NamedTuple):
    """Records as they are now, each at its last change, and where to go on."""

    rows: Sequence[Record]
    cursor: str
    more: bool


class UnknownCursor(Exception):  # noqa: N818  (it names what happened)
    """The cursor is of another history of this shop: of before a restore, or of another shop."""


def since(session: Session, shop: UUID, cursor: str | None, limit: int) -> Page:
    """Give what changed after a cursor, deleted records included.

    Parameters
    ----------
    session : one for reading
    shop : whose records
    cursor : that of the page before; None to begin
    limit : how many records at most

    Raises
    ------
    UnknownCursor : begin again, and send what the shop has not got
    """
    # All numbers up to this one have been committed. What comes in while this reads is left for
    # the next page, or a number in between, not yet visible to an earlier query, would be missed.
    owner = session.get_one(Shop, shop)
    history = owner.history.hex[:12] if owner.history else "0"
    after = 0 if cursor is None else _read(cursor, history, owner.seq)
    last = _last(session, shop, after, owner.seq, limit)
    rows: list[Record] = []
    for kind in Record.kinds:
        within = (kind.shop_id == shop, kind.seq > after, kind.seq <= last)
        rows += session.scalars(select(kind).where(*within)).all()
    rows.sort(key=lambda row: row.seq)
    return Page(rows, f"{history}-{last}", last < owner.seq)


def _last(session: Session, shop: UUID, after: int, bound: int, limit: int) -> int:
    """Find the number of the last record of a page; the bound if all that is left fits."""
    numbers = []
    for kind in Record.kinds:
        some = select(kind.seq).where(
            kind.shop_id == shop, kind.seq > literal(after), kind.seq <= literal(bound)
        )
        numbers.append(select(some.order_by(kind.seq).limit(limit).subquery().c.seq))
    every = union_all(*numbers).subquery()
    found = session.scalars(select(every.c.seq).order_by(every.c.seq).limit(limit)).all()
    return found[-1] if len(found) == limit else bound


def _read(cursor: str, history: str, bound: int) -> int:
    found = re.fullmatch(r"([0-9a-f]{1,12})-([0-9]{1,18})", cursor, re.ASCII)
    if found is None or found[1] != history or int(found[2]) > bound:
        raise UnknownCursor
    return int(found[2])

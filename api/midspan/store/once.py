"""Doing a batch once: its key and what was answered are kept with what it changed."""

from datetime import UTC, datetime, timedelta
from uuid import UUID

from sqlalchemy import delete
from sqlalchemy.orm import Session

from .models import SentBatch

# A batch that comes again later is not told from a new one; its records then answer for
# themselves: what is kept already is the same again, and what has changed since is stale.
KEPT_FOR = timedelta(days=7)


class KeyReused(Exception):  # noqa: N818  (it names what happened)
    """The key stands for another batch."""


def recall(session: Session, shop: UUID, key: str, fingerprint: bytes) -> bytes | None:
    """Give what was answered to this batch, or None if it was not done yet.

    Ask after `sync.lock`: then a batch that is being done is waited for.

    Raises
    ------
    KeyReused : the key was sent with another body
    """
    found = session.get(SentBatch, (shop, key))
    if found is None:
        return None
    if found.fingerprint != fingerprint:
        raise KeyReused
    return found.answer


def remember(session: Session, shop: UUID, key: str, fingerprint: bytes, answer: bytes) -> None:
    """Keep an answer for as long as `KEPT_FOR` says, and drop those that were kept so long."""
    now = datetime.now(UTC)
    old = SentBatch.created_at < now - KEPT_FOR
    session.execute(delete(SentBatch).where(SentBatch.shop_id == shop, old))
    session.add(
        SentBatch(shop_id=shop, key=key, fingerprint=fingerprint, answer=answer, created_at=now)
    )

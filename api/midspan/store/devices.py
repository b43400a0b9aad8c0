"""Pairing devices with a shop, telling whose a token is, and revoking it."""

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from uuid import UUID

from sqlalchemy import delete, select, update
from sqlalchemy.orm import Session

from . import tokens
from .models import Device, PairingCode, Shop

# Each may do what the ones before it may.
ROLES = ("reader", "member", "owner")
CODE_LASTS = timedelta(minutes=10)
# Of 2^50 codes, so many tries find one of ten open codes once in 5 * 10^12 attacks.
MOST_WRONG_TRIES = 20
# How exactly it is told when a device was last seen: not every request is worth a write.
SEEN_EVERY = timedelta(minutes=5)


def open_code(session: Session, shop: UUID, role: str) -> tuple[str, datetime]:
    """Make a code that pairs one device; codes that are too old go.

    Parameters
    ----------
    session : one for writing
    shop, role : what the device is let in to, and as what (one of ROLES)

    Returns
    -------
    the code, as it is shown and never kept; and when it ends
    """
    now = datetime.now(UTC)
    of_shop = PairingCode.shop_id == shop
    session.execute(delete(PairingCode).where(of_shop, PairingCode.expires_at <= now))
    code, ends = tokens.new_code(), now + CODE_LASTS
    kept = PairingCode(
        shop_id=shop, id=tokens.new_id(), role=role, created_at=now, expires_at=ends,
        code_hash=tokens.hash_code(str(tokens.tidy_code(code))), wrong_tries=0,
    )  # fmt: skip
    session.add(kept)
    return code, ends


def pair(session: Session, code: str, name: str) -> tuple[str, Device] | None:
    """Use a code up, and take a device in.

    Parameters
    ----------
    session : one for writing; commit it in either case, as wrong tries are counted
    code : as `tokens.tidy_code` gives it
    name : what the device is called

    Returns
    -------
    the device's token, which is never kept, and the device; None where the code was refused
    """
    now = datetime.now(UTC)
    may_be_used = (PairingCode.expires_at > now, PairingCode.wrong_tries < MOST_WRONG_TRIES)
    meant = PairingCode.code_hash == tokens.hash_code(code)
    found = session.scalars(select(PairingCode).where(meant, *may_be_used)).first()
    if found is None:
        more = {"wrong_tries": PairingCode.wrong_tries + 1}
        session.execute(update(PairingCode).where(*may_be_used).values(more))
        return None
    this = (PairingCode.shop_id == found.shop_id, PairingCode.id == found.id)
    # Of two that send it at once, only one deletes it.
    if session.execute(delete(PairingCode).where(*this)).rowcount == 0:  # type: ignore[attr-defined]
        return None
    id = tokens.new_id()
    token, hashed = tokens.new_token(found.shop_id, id)
    device = Device(
        shop_id=found.shop_id, id=id, name=name, role=found.role, token_hash=hashed, created_at=now
    )
    session.add(device)
    session.flush()
    return token, device


def of_token(session: Session, text: str) -> Device | None:
    """Find the device that a token is of; None where it is nobody's, or was revoked."""
    token = tokens.read_token(text)
    if token is None:
        return None
    device = session.get(Device, (token.shop, token.device))
    hashed = tokens.hash_secret(token.secret)
    if device is None or not tokens.same(hashed, device.token_hash):
        return None
    return device if device.revoked_at is None else None


def seen(session: Session, device: Device) -> None:
    """Remember that a device is in use."""
    this = (Device.shop_id == device.shop_id, Device.id == device.id)
    session.execute(update(Device).where(*this).values(last_seen_at=datetime.now(UTC)))


def seen_lately(device: Device) -> bool:
    """Tell whether it is known well enough that a device is in use."""
    last = device.last_seen_at
    return last is not None and datetime.now(UTC) - last < SEEN_EVERY


def page(
    session: Session, shop: UUID, after: UUID | None, limit: int, *, revoked: bool = False
) -> tuple[Sequence[Device], UUID | None]:
    """List the paired devices as `records.page` lists records, those revoked too if asked."""
    found = select(Device).where(Device.shop_id == shop)
    if not revoked:
        found = found.where(Device.revoked_at.is_(None))
    if after is not None:
        found = found.where(Device.id > after)
    rows = session.scalars(found.order_by(Device.id).limit(limit + 1)).all()
    return rows[:limit], rows[limit - 1].id if len(rows) > limit else None


def revoke(session: Session, shop: UUID, id: UUID) -> Device | None:
    """Let a device in no more; None where no paired device has this id."""
    device = session.get(Device, (shop, id))
    if device is None or device.revoked_at is not None:
        return None
    device.revoked_at = datetime.now(UTC)
    return device


def any_paired(session: Session, shop: UUID) -> bool:
    """Tell whether a device is paired with a shop."""
    found = select(Device.id).where(Device.shop_id == shop, Device.revoked_at.is_(None)).limit(1)
    return session.scalars(found).first() is not None


def shop_name(session: Session, shop: UUID) -> str:
    """Give the name of a shop."""
    return session.get_one(Shop, shop).name

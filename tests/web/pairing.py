"""Shops and devices for the checks, straight into the store."""

from datetime import UTC, datetime
from uuid import UUID

from flask import Flask
from flask.testing import FlaskClient

from midspan.store import Device, Store, tokens
from midspan.store.models import LOCAL_SHOP, Shop

OTHER_SHOP = UUID("00000000-0000-7000-8000-000000000002")


def add_shop(store: Store, id: UUID = OTHER_SHOP) -> UUID:
    """Keep another shop beside the first."""
    with store.writing() as session:
        session.add(Shop(id=id, name="Another shop", created_at=datetime.now(UTC)))
    return id


def paired(store: Store, role: str = "owner", shop: UUID = LOCAL_SHOP) -> tuple[str, Device]:
    """Let a device in without a code, whose hash is slow on purpose; give its token and it."""
    id = tokens.new_id()
    token, hashed = tokens.new_token(shop, id)
    device = Device(
        shop_id=shop, id=id, name=f"Device of the checks, {role}", role=role, token_hash=hashed,
        created_at=datetime.now(UTC),
    )  # fmt: skip
    with store.writing() as session:
        session.add(device)
    return token, device


def bearer(token: str) -> dict[str, str]:
    """Give the headers that carry a token."""
    return {"Authorization": f"Bearer {token}"}


def client_of(app: Flask, token: str) -> FlaskClient:
    """Give a client that sends a token with whatever it asks."""
    made = app.test_client()
    made.environ_base["HTTP_AUTHORIZATION"] = f"Bearer {token}"
    return made

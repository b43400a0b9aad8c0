"""Shops and devices for the checks, straight into the store."""

from datetime import UTC, datetime
from uuid import UUID

from flask import Flask
from flask.testing import FlaskClient

from midspan.store import Device, Store, devices, tokens
from midspan.store.models import LOCAL_SHOP, Shop

OTHER_SHOP = UUID("00000000-0000-7000-8000-000000000002")


def add_shop(store: Store, id: UUID = OTHER_SHOP) -> UUID:
    """Keep another shop beside the first."""
    with store.writing() as session:
        session.add(Shop(id=id, name="Another shop", created_at=datetime.now(UTC)))
    return id


def paired(store: Store, role: str = "owner", shop: UUID = LOCAL_SHOP) -> tuple[str, Device]:
    """Pair a device by a code; give its token and it."""
    with store.writing() as session:
        code, _ = devices.open_code(session, shop, role)
    with store.writing() as session:
        done = devices.pair(session, str(tokens.tidy_code(code)), f"Device of the checks, {role}")
    assert done is not None
    return done


def bearer(token: str) -> dict[str, str]:
    """Give the headers that carry a token."""
    return {"Authorization": f"Bearer {token}"}


def client_of(app: Flask, token: str) -> FlaskClient:
    """Give a client that sends a token with whatever it asks."""
    made = app.test_client()
    made.environ_base["HTTP_AUTHORIZATION"] = f"Bearer {token}"
    return made

"""Who may do what: the routes open to anyone, and the role that each of the others needs.

What is not listed here needs a device token: a route added later is closed until it is listed.
"""

from fnmatch import fnmatchcase
from functools import cache
from typing import Any
from uuid import UUID

from apispec import BasePlugin
from flask import Flask, current_app, g, request
from sqlalchemy.exc import SQLAlchemyError

from midspan.store import Device, Store, devices

from .problems import Problem

# Nothing that is kept can be read or changed by these.
OPEN = (
    "/",  # says that the app for the phone is not built
    "/healthz",
    "/readyz",
    "/problems/*",
    "/authority.crt",
    "/api/v1/openapi.json",
    "/api/v1/calc/*",
    "/api/v1/limits",
    "/api/v1/materials",
    "/api/v1/glossary",
    "/api/v1/methods",
    "/api/v1/pair",
)
# Where the method alone does not tell: reading takes a reader, all else a member.
ROLE_NEEDED = {
    ("GET", "/metrics"): "owner",
    ("GET", "/api/v1/devices"): "owner",
    ("DELETE", "/api/v1/devices/*"): "reader",  # its own; another's takes an owner
    ("POST", "/api/v1/pairing-codes"): "owner",
    ("POST", "/api/v1/lab/*"): "reader",  # nothing is kept
}
READS = ("GET", "OPTIONS")
SCHEME = "deviceToken"
CHALLENGE = {"WWW-Authenticate": 'Bearer realm="midspan"'}


@cache
def is_open(path: str) -> bool:
    """Tell whether anyone may ask; of a route's pattern, as Flask or as the document writes it."""
    return any(fnmatchcase(path, pattern) for pattern in OPEN)


@cache
def role_needed(method: str, path: str) -> str:
    """Give the least role that may ask; of a route's pattern, like `is_open`."""
    method = "GET" if method == "HEAD" else method
    for (listed, pattern), role in ROLE_NEEDED.items():
        if method == listed and fnmatchcase(path, pattern):
            return role
    return "reader" if method in READS else "member"


def guard(app: Flask) -> None:
    """Put the check before every view of the app."""
    app.before_request(_check)


def shop() -> UUID:
    """Give the shop whose records this request may touch, and no others."""
    return device().shop_id


def device() -> Device:
    """Give the device that this request comes from."""
    found = g.device
    assert isinstance(found, Device)  # noqa: S101  (_check put it there)
    return found


def need(role: str) -> None:
    """Refuse a device whose role is not enough.

    Raises
    ------
    Problem : not allowed
    """
    has = device().role
    if devices.ROLES.index(has) < devices.ROLES.index(role):
        step = "Ask an owner of the shop to pair this device with that role."
        raise Problem("not-allowed", f"This takes a {role}; this device is a {has}. {step}")


def _check() -> None:
    rule = request.url_rule
    if rule is None or is_open(rule.rule):
        return  # without a route there is nothing to guard: it will be 404 or 405
    found = _of_request()
    if found is None:
        raise Problem("not-paired", headers=CHALLENGE)
    g.device = found
    need(role_needed(request.method, rule.rule))


def _of_request() -> Device | None:
    """Find the device that the request's token is of."""
    given = request.authorization
    if given is None or given.type != "bearer" or not given.token:
        return None
    store: Store = current_app.extensions["midspan"]
    with store.reading() as session:
        found = devices.of_token(session, given.token)
    if found is not None and not devices.seen_lately(found):
        _remember(store, found)
    return found


def _remember(store: Store, found: Device) -> None:
    try:
        with store.writing() as session:
            devices.seen(session, found)
    except SQLAlchemyError:
        # A store that is busy or full can still be read.
        current_app.logger.warning("it could not be kept when a device was last seen")


class AccessPlugin(BasePlugin):
    """Writes into the document which operations need a token, and of whom."""

    def init_spec(self, spec: Any) -> None:  # noqa: ANN401
        """Describe the token."""
        said = "The token of a device, given once when it is paired: POST /api/v1/pair."
        scheme = {"type": "http", "scheme": "bearer", "description": said}
        spec.components.security_scheme(SCHEME, scheme)

    def operation_helper(
        self,
        path: str | None = None,
        operations: dict[str, Any] | None = None,
        **_: Any,  # noqa: ANN401
    ) -> None:
        """Describe what each operation of a path needs."""
        for method, operation in (operations or {}).items():
            if is_open(str(path)):
                operation["security"] = []
                continue
            role = role_needed(method.upper(), str(path))
            operation["security"] = [{SCHEME: [role]}]
            told = f"Needs the token of a device, as {role} or above."
            operation["description"] = " ".join(filter(None, [operation.get("description"), told]))

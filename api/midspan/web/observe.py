"""What is told of each request, in one place for the log and the figures: and no more than that.

Told are the route's pattern, never the path or the query; and who asked, never with what token. A
log line can so be shown to anyone who looks after the machine.
"""

import logging
import re
import secrets
import time
from collections.abc import Iterable
from contextvars import ContextVar
from typing import TYPE_CHECKING, Any

from flask import Flask, Response, g

from .metrics import Metrics
from .plain import asked

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

METHODS = frozenset({"GET", "HEAD", "OPTIONS", "POST", "PUT", "PATCH", "DELETE"})
# A proxy's own id is taken over if it can be nothing else: 32 hexadecimal digits, or a UUID.
_GIVEN_ID = re.compile(r"[0-9a-f]{32}|[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")
_TOLD = "midspan.told"
request_id: ContextVar[str] = ContextVar("request_id", default="")
log = logging.getLogger("midspan.request")


def watch(app: Flask, metrics: Metrics) -> None:
    """Measure whatever goes in and out, static files included; call it last."""
    app.after_request(_tell)
    app.wsgi_app = _watched(app.wsgi_app, metrics)  # type: ignore[method-assign,assignment]


def _tell(response: Response) -> Response:
    request = asked()
    told = request.environ.get(_TOLD, {})
    told["route"] = "none" if request.url_rule is None else request.url_rule.rule
    device = g.get("device")
    if device is not None:
        told |= {"shop": str(device.shop_id), "device": str(device.id)}
    return response


def _watched(inner: "WSGIApplication", metrics: Metrics) -> "WSGIApplication":
    def app(environ: "WSGIEnvironment", start_response: "StartResponse") -> Iterable[bytes]:
        given = environ.get("HTTP_X_REQUEST_ID", "")
        own = given if _GIVEN_ID.fullmatch(given) else secrets.token_hex(16)
        method = environ["REQUEST_METHOD"]
        # A file of the app never reaches a route.
        told = {"method": method if method in METHODS else "other", "route": "static"}
        environ[_TOLD] = told
        request_id.set(own)
        status = 500

        def start(line: str, headers: list[tuple[str, str]], *rest: Any) -> Any:  # noqa: ANN401
            nonlocal status
            status = int(line[:3])
            return start_response(line, [*headers, ("X-Request-Id", own)], *rest)

        began = time.perf_counter()
        try:
            return inner(environ, start)
        finally:
            took = time.perf_counter() - began
            metrics.count(told["method"], told["route"], status, took)
            if log.isEnabledFor(logging.INFO):
                seen = told | {"status": status, "duration_ms": round(took * 1000, 3)}
                log.info("request", extra={"told": seen})

    return app

"""Security headers, the same on everything that goes out."""

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from flask import Response, request

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

CONTENT_SECURITY_POLICY = "; ".join(
    (
        "default-src 'self'",
        "script-src 'self' 'wasm-unsafe-eval'",  # the core on the phone is WebAssembly
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
    )
)
SECURITY = {
    "Content-Security-Policy": CONTENT_SECURITY_POLICY,
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(self), geolocation=(), microphone=(), payment=(), usb=()",
}


def add(response: Response) -> Response:
    """Add to what the app answers that it is never stored on the way."""
    if request.path.startswith("/api/"):
        response.headers.setdefault("Cache-Control", "no-store")
    return response


def secure(inner: "WSGIApplication") -> "WSGIApplication":
    """Add the security headers to whatever goes out, static files too."""
    more = list(SECURITY.items())

    def app(environ: "WSGIEnvironment", start_response: "StartResponse") -> Iterable[bytes]:
        def start(status: str, headers: list[tuple[str, str]], *rest: Any) -> Any:  # noqa: ANN401
            return start_response(status, headers + more, *rest)

        return inner(environ, start)

    return app

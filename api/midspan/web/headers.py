"""Security headers, the same on everything that goes out."""

from typing import Protocol

from flask import Response, request

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
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
}


class Settable(Protocol):
    """Headers of a framework or of WSGI: all that is asked is that they can be set."""

    def __setitem__(self, name: str, value: str, /) -> None:
        """Set one header."""


def add(response: Response) -> Response:
    """Add them to what the app answers; answers are never stored on the way."""
    secure(response.headers)
    if request.path.startswith("/api/"):
        response.headers.setdefault("Cache-Control", "no-store")
    return response


def secure(headers: Settable) -> None:
    """Add them to any headers."""
    for name, value in SECURITY.items():
        headers[name] = value

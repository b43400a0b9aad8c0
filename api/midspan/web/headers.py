"""Security headers, the same on everything that goes out."""

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

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


def secure(inner: "WSGIApplication") -> "WSGIApplication":
    """Add the security headers to whatever goes out, static files too.

    To what the interface answers also that it is never stored on the way, if it does not say so
    otherwise.
    """
    files = list(SECURITY.items())
    answers = [("Cache-Control", "no-store"), *files]

    def app(environ: "WSGIEnvironment", start_response: "StartResponse") -> Iterable[bytes]:
        more = answers if environ.get("PATH_INFO", "").startswith("/api/") else files

        def start(status: str, headers: list[tuple[str, str]], *rest: Any) -> Any:  # noqa: ANN401
            said = any(name.lower() == "cache-control" for name, _ in headers)
            return start_response(status, headers + (files if said else more), *rest)

        return inner(environ, start)

    return app

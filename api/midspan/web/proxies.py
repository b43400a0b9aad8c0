"""Behind proxies: whose request it is, and whether it came over HTTPS."""

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from flask import Flask
from werkzeug.middleware.proxy_fix import ProxyFix

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

# A year of HTTPS only, for this host. Never for this machine's own names: a browser would then
# refuse plain HTTP to everything else that is developed here.
HSTS = ("Strict-Transport-Security", "max-age=31536000")
THIS_MACHINE = ("localhost", "127.0.0.1", "[::1]")


def trust(app: Flask, count: int) -> None:
    """Believe as many proxies as the settings say, no more; and hold browsers to HTTPS."""
    app.wsgi_app = _secure(app.wsgi_app)  # type: ignore[method-assign,assignment]
    if count:
        app.wsgi_app = ProxyFix(  # type: ignore[method-assign]
            app.wsgi_app, x_for=count, x_proto=count, x_host=0
        )


def _secure(inner: "WSGIApplication") -> "WSGIApplication":
    """Add the header to whatever goes out over HTTPS, static files too."""

    def app(environ: "WSGIEnvironment", start_response: "StartResponse") -> Iterable[bytes]:
        host = environ.get("HTTP_HOST", "").rsplit(":", 1)[0]
        if environ["wsgi.url_scheme"] != "https" or host in THIS_MACHINE:
            return inner(environ, start_response)

        def start(status: str, headers: list[tuple[str, str]], *rest: Any) -> Any:  # noqa: ANN401
            return start_response(status, [*headers, HSTS], *rest)

        return inner(environ, start)

    return app

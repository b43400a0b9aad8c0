"""The built app for the phone, served as files: compressed ahead, cached for good where hashed."""

import re
from wsgiref.headers import Headers

from flask import Flask, Response
from whitenoise import WhiteNoise

from midspan import places

NOT_BUILT = """The service runs, but the app for the phone is not built.

Build it, from the checkout:  python3 api/start.py serve
Then start the service again. A packed release (pip install) brings it built.

The API is here already:  /api/v1/openapi.json
"""
# The bundler puts a hash of the content into the names of its assets.
_HASHED = re.compile(r"^/assets/.+-[A-Za-z0-9_-]{8,}\.[a-z0-9.]+$")


def serve(app: Flask) -> None:
    """Put the built app in front of the service, or say plainly that it is not built."""
    built = places.pwa()
    if built is None:
        app.add_url_rule("/", "not-built", lambda: Response(NOT_BUILT, mimetype="text/plain"))
        return
    app.wsgi_app = WhiteNoise(  # type: ignore[method-assign]
        app.wsgi_app,
        root=str(built),
        index_file=True,
        max_age=0,
        immutable_file_test=lambda _path, url: bool(_HASHED.match(url)),
        allow_all_origins=False,
        add_headers_function=_headers,
        mimetypes={".webmanifest": "application/manifest+json"},
    )


def _headers(found: Headers, _path: str, url: str) -> None:
    if not _HASHED.match(url):
        # index.html, sw.js, the manifest: kept, but asked about each time.
        found["Cache-Control"] = "no-cache"

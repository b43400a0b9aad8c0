"""The service and a bare echo, each under the same server: run as `python -m` with its name."""

import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from flask import Flask, Response, jsonify, request

from midspan.server import Gunicorn
from midspan.settings import Settings
from midspan.store import Store, upgrade
from midspan.web import metrics

ECHO, SERVICE = "echo", "service"


class One(Gunicorn):
    """One worker, with threads as the service has them. Requests are counted, as there, but by a
    limit that nobody reaches.
    """

    def __init__(self, kind: str, url: str) -> None:
        """Take which it is, and the database of the service."""
        self.kind = kind
        settings = Settings(database_url=url, requests_per_minute=10**9, workers=1)
        # A line stays open while the other one has its turn.
        options = {"bind": "127.0.0.1:0", "when_ready": _say_where, "keepalive": 600}
        super().__init__(settings, options)

    def load(self) -> Flask:
        """Make the app."""
        return _echo() if self.kind == ECHO else super().load()


def _echo() -> Flask:
    app = Flask("echo")

    @app.post("/echo")
    def echo() -> Response:
        return jsonify(request.get_json())

    return app


def _say_where(server: Any) -> None:  # noqa: ANN401
    print(server.LISTENERS[0].sock.getsockname()[1], flush=True)


@contextmanager
def started(kind: str, folder: str) -> Iterator[int]:
    """Start one in a process of its own; give its port."""
    command = [sys.executable, "-m", __name__, kind, f"sqlite:///{folder}/{kind}.sqlite3"]
    running = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    try:
        assert running.stdout is not None  # noqa: S101  (PIPE, above)
        yield int(running.stdout.readline())
    finally:
        running.terminate()
        running.wait()


def main(kind: str, url: str) -> None:
    """Serve until told to stop."""
    if kind == SERVICE:
        store = Store(url)
        upgrade(store)
        store.close()
    with tempfile.TemporaryDirectory() as folder:
        os.environ[metrics.FOLDER] = folder
        One(kind, url).run()


if __name__ == "__main__":
    main(*sys.argv[1:])

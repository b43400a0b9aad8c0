"""Starting the service: migrate, listen on this machine only, say where."""

import socket
from typing import Any

import click
from flask import Flask
from gunicorn.app.base import BaseApplication

from . import pairing
from .settings import Settings
from .store import Store, upgrade
from .web import create_app

HOST = "127.0.0.1"


class CannotServe(Exception):  # noqa: N818  (it names what happened)
    """The service cannot start; the message says why and what to do."""


class _Gunicorn(BaseApplication):
    """Gunicorn told by our settings alone; each worker makes its own app and connections."""

    def __init__(self, settings: Settings, port: int, first_code: str | None) -> None:
        self.settings = settings
        self.port = port
        self.first_code = first_code
        super().__init__()

    def load_config(self) -> None:
        options: dict[str, Any] = {
            "bind": f"{HOST}:{self.port}",
            "workers": self.settings.workers,
            "worker_class": "gthread",
            "threads": self.settings.threads,
            "loglevel": "warning",
            "graceful_timeout": 10,
            "proc_name": "midspan",
            "when_ready": self._say_where,
        }
        for name, value in options.items():
            self.cfg.set(name, value)

    def load(self) -> Flask:
        return create_app(self.settings)

    def _say_where(self, server: Any) -> None:  # noqa: ANN401
        address = f"http://{HOST}:{server.LISTENERS[0].sock.getsockname()[1]}"
        click.echo(f"Midspan answers on this machine: {address}/   (Ctrl+C stops it)")
        if self.first_code:
            opens = pairing.link(address, self.first_code)
            lasts = f"{pairing.CODE_MINUTES} minutes"
            click.echo(
                f"No device is paired yet. To pair this browser, open within {lasts}: {opens}"
            )


def serve(settings: Settings, port: int) -> None:
    """Migrate the database, then serve until told to stop.

    Raises
    ------
    CannotServe : the port is taken
    """
    store = Store(settings.database())
    upgrade(store)
    store.close()
    _check_free(port)
    _Gunicorn(settings, port, pairing.first_code(settings)).run()


def _check_free(port: int) -> None:
    """Find a taken port before gunicorn does, which would only retry and give up."""
    with socket.socket() as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((HOST, port))
        except OSError as error:
            reason = f"Port {port} on {HOST}: {error.strerror}."
            raise CannotServe(f"{reason} Choose another: midspan serve --port N") from None

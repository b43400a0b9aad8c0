"""Starting the service: migrate, listen on this machine or in the shop's network, say where."""

import contextlib
import gc
import logging
import os
import shutil
import socket
import ssl
import tempfile
import threading
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import Any

import click
from flask import Flask
from gunicorn.app.base import BaseApplication

from . import lan, logs, pairing, worker
from .settings import Settings, variable
from .store import Store, trouble, upgrade
from .web import create_app, metrics, rates

HOST = "127.0.0.1"
GRACEFUL_SECONDS = 30
RENEWAL_SECONDS = 12 * 3600
log = logging.getLogger(__name__)


class CannotServe(Exception):  # noqa: N818  (it names what happened)
    """The service cannot start; the message says why and what to do."""


class Gunicorn(BaseApplication):
    """Gunicorn told by our settings alone; each worker makes its own app and connections."""

    def __init__(self, settings: Settings, options: dict[str, Any]) -> None:
        """Take our settings, and gunicorn's options that differ from the service's usual ones."""
        self.settings = settings
        self.options = options
        super().__init__()

    def load_config(self) -> None:
        """Hand both to gunicorn."""

        class Worker(worker.Worker):
            request_seconds = float(self.settings.request_seconds)

        usual: dict[str, Any] = {
            "workers": self.settings.workers,
            "worker_class": Worker,
            "threads": self.settings.threads,
            "loglevel": "warning",
            "graceful_timeout": GRACEFUL_SECONDS,
            "keepalive": 5,
            # As long as it may be: the layout of a dyno's table stands in the address.
            "limit_request_line": 8190,
            "logconfig_dict": logs.configuration(self.settings.log_level),
            "proc_name": "midspan",
        }
        for name, value in (usual | self.options).items():
            self.cfg.set(name, value)

    def load(self) -> Flask:
        """Make the app of one worker."""
        app = create_app(self.settings)
        # What is there by now stays; to look through it again and again for garbage takes longer
        # than most answers.
        gc.collect()
        gc.freeze()
        return app


def serve(settings: Settings, port: int, in_network: bool = False) -> None:
    """Migrate the database, then serve until told to stop.

    Parameters
    ----------
    settings : see `midspan.settings`
    port : where to listen; 0 takes any free port
    in_network : whether phones in the shop's network are answered too, over HTTPS

    Raises
    ------
    BadSetting : the store of rate limits cannot be used
    CannotServe : the port is taken, this machine has no address for phones, or the database or
        the certificate cannot be kept
    """
    if in_network:
        settings, options, say_where = _in_network(settings, port)
    else:
        port = _free_port([HOST], port)
        options, say_where = {"bind": f"{HOST}:{port}"}, _say_where
    rates.open_store(settings)  # a slip in its setting is told here, not by each worker
    _migrate(settings)
    first_code = pairing.first_code(settings)
    os.environ[metrics.FOLDER] = folder = tempfile.mkdtemp(prefix="midspan-metrics-")

    def when_ready(server: Any) -> None:  # noqa: ANN401
        address = say_where(server)
        if first_code:
            opens, lasts = pairing.link(address, first_code), pairing.CODE_MINUTES
            click.echo(f"No device is paired yet. Open this once, within {lasts} minutes: {opens}")
            if in_network:
                click.echo(lan.code(opens))

    def on_exit(_: Any) -> None:  # noqa: ANN401
        shutil.rmtree(folder, ignore_errors=True)

    Gunicorn(settings, options | {"when_ready": when_ready, "on_exit": on_exit}).run()


def _migrate(settings: Settings) -> None:
    try:
        store = Store(settings.database())
        upgrade(store)
        store.close()
    except (*trouble.TROUBLE, ImportError, OSError) as error:
        raise CannotServe(trouble.told(error, variable("database_url"))) from None


def _in_network(
    settings: Settings, port: int
) -> tuple[Settings, dict[str, Any], Callable[[Any], str]]:
    """Prepare to answer on this machine's addresses, with a certificate phones can trust."""
    try:
        addresses = lan.choose(settings.lan_addresses)
    except lan.NotPrivate as reason:
        raise CannotServe(str(reason)) from None
    hosts = [HOST, *addresses]
    port = _free_port(hosts, port)
    try:
        certificate = lan.certificate(settings.authority_file(), addresses)
    except OSError as error:
        raise CannotServe(f"The certificate cannot be kept: {error}") from None
    trusted = (*settings.trusted_hosts, *addresses)

    def renew() -> None:
        while True:
            threading.Event().wait(RENEWAL_SECONDS)
            try:
                lan.certificate(settings.authority_file(), addresses)
            except OSError:
                log.exception("the certificate could not be renewed; it is tried again")

    def say_where(_: Any) -> str:  # noqa: ANN401
        threading.Thread(target=renew, daemon=True).start()
        click.echo(lan.steps(certificate, addresses, port))
        return f"https://{addresses[0]}:{port}"

    options = {
        "bind": [f"{host}:{port}" for host in hosts],
        "certfile": str(certificate.file),
        "ssl_context": _tls,
    }
    return replace(settings, trusted_hosts=trusted), options, say_where


def _tls(config: Any, _: object) -> ssl.SSLContext:  # noqa: ANN401
    """Give the TLS to speak; a renewed certificate is taken up without a restart."""
    with open(config.certfile, "rb") as file:  # noqa: PTH123
        return _context(file.read(), config.certfile)


@lru_cache(maxsize=1)
def _context(_content: bytes, path: str) -> ssl.SSLContext:
    made = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
    made.minimum_version = ssl.TLSVersion.TLSv1_2
    made.load_cert_chain(path)
    return made


def _free_port(hosts: list[str], port: int) -> int:
    """Find a taken port before gunicorn does, which would only retry and give up; 0 finds one."""
    with contextlib.ExitStack() as held:
        for host in hosts:
            probe = held.enter_context(socket.socket())
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                probe.bind((host, port))
            except OSError as error:
                reason = f"Port {port} on {host}: {error.strerror}."
                raise CannotServe(f"{reason} Choose another: midspan serve --port N") from None
            if len(hosts) > 1:
                port = probe.getsockname()[1]
    return port


def _say_where(server: Any) -> str:  # noqa: ANN401
    address = f"http://{HOST}:{server.LISTENERS[0].sock.getsockname()[1]}"
    click.echo(f"Midspan answers on this machine: {address}/   (Ctrl+C stops it)")
    return address

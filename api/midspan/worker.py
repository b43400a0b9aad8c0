"""The worker of the service: gunicorn's with threads, which here waits for no client for ever.

Gunicorn's own bounds how long a new or kept connection may be silent, but not how long a request
may drip in; a few such clients would hold every thread. Here a request has a time by which it must
have arrived whole. What gunicorn itself refuses goes out as a problem detail (RFC 9457), as all
else does.
"""

import contextlib
import json
import ssl
import time
from http import HTTPStatus
from typing import Any

from gunicorn.http import get_parser
from gunicorn.sock import ssl_wrap_socket
from gunicorn.workers.gthread import TConn, ThreadWorker
from werkzeug.exceptions import RequestTimeout

from midspan.web import problems

# How long one send may take in which the client takes nothing.
SEND_SECONDS = 30.0
_SAID = {
    "LimitRequestLine": (414, "Shorten the address: it has more characters than are read."),
    "LimitRequestHeaders": (431, "Send fewer and shorter headers."),
    "UnsupportedTransferCoding": (501, "Send the body plain or in chunks."),
    "ExpectationFailed": (417, "Send the request without Expect."),
    "RequestTimeout": (408, "The request did not arrive whole in time. Send it again."),
}


class _Timed:
    """A socket for reading that gives up when its connection's time is over."""

    def __init__(self, connection: "Connection") -> None:
        self.connection = connection

    def recv(self, size: int) -> bytes:
        """Receive, or raise once the request should have arrived."""
        left = self.connection.ends - time.monotonic()
        try:
            if left <= 0:
                raise TimeoutError
            self.connection.sock.settimeout(left)
            received: bytes = self.connection.sock.recv(size)
            return received
        except TimeoutError:
            self.connection.late = True
            detail = _SAID["RequestTimeout"][1]
            raise RequestTimeout(detail) from None
        finally:
            with contextlib.suppress(OSError):
                self.connection.sock.settimeout(SEND_SECONDS)


class Connection(TConn):
    """A connection whose every request has a time to arrive by."""

    sock: Any
    initialized: bool
    ends = 0.0
    late = False

    def init(self) -> None:
        """Shake hands where there is TLS, within the time, and prepare to read requests."""
        if self.initialized:
            return
        self.initialized = True
        self.sock.settimeout(max(self.ends - time.monotonic(), 0.001))
        if self.cfg.is_ssl:
            self.sock = ssl_wrap_socket(self.sock, self.cfg)
            self.sock.do_handshake()
        self.parser = get_parser(self.cfg, _Timed(self), self.client)

    def wait_for_data(self, timeout: float) -> bool:
        """Never wait in a thread: the poller does, at no cost."""
        return bool(super().wait_for_data(0))


class Worker(ThreadWorker):
    """Gunicorn's worker with threads, on such connections."""

    request_seconds = 30.0

    def accept(self, listener: Any) -> None:  # noqa: ANN401
        """Take a new connection."""
        try:
            sock, client = listener.accept()
        except OSError:  # gone again, or another worker was quicker
            return
        self.nr_conns += 1
        self.enqueue_req(Connection(self.cfg, sock, client, listener.getsockname()))

    def set_accept_enabled(self, enabled: bool) -> None:
        """Listen, or not; one that stops refuses newcomers, who can then go to another host."""
        super().set_accept_enabled(enabled)
        if not enabled and not self.alive:
            for listener in self.sockets:
                listener.close()

    def handle(self, conn: Connection) -> Any:  # noqa: ANN401
        """Serve one request, its clock starting with its first byte."""
        conn.ends = time.monotonic() + self.request_seconds
        return super().handle(conn)

    def _keepalive_after(self, conn: Connection, keepalive: bool) -> bool:
        return bool(super()._keepalive_after(conn, keepalive and not conn.late))

    def handle_error(self, req: Any, client: Any, addr: Any, exc: Exception) -> None:  # noqa: ANN401
        """Answer what cannot be read as a request; a fault of ours is logged and told apart."""
        if isinstance(exc, ssl.SSLError):
            return  # there is no way to tell the client anything
        kind = type(exc).__name__
        known = kind in _SAID or type(exc).__module__ == "gunicorn.http.errors"
        if not known:
            self.log.exception("unexpected error outside the app")
        usual = (400, "This is no HTTP request that can be read.") if known else (500, "")
        status, detail = _SAID.get(kind, usual)
        title = HTTPStatus(status).phrase
        built = problems.body("about:blank", title, status, detail or title, "")
        content = json.dumps(built).encode()
        head = (
            f"HTTP/1.1 {status} {title}\r\nConnection: close\r\n"
            f"Content-Type: {problems.MEDIA_TYPE}\r\nContent-Length: {len(content)}\r\n\r\n"
        )
        with contextlib.suppress(OSError):
            client.sendall(head.encode() + content)

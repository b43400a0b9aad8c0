"""A loopback TCP proxy that cuts the line at a chosen instant of a sync request."""

import contextlib
import re
import socket
import threading
from typing import Literal

Phase = Literal["before", "request", "answer", "half"]
# Nothing reaches the service; half of the request does; all does, and no answer comes back; half
# of the answer comes back.
PHASES: tuple[Phase, ...] = ("before", "request", "answer", "half")
SYNC = b"POST /api/v1/sync"


class Proxy:
    """Passes everything on, but cuts the next sync requests as it is told."""

    def __init__(self, port: int) -> None:
        self.target = port
        self.cuts: list[Phase] = []
        self.done: list[Phase] = []
        self.keys: list[str] = []
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.port = int(self._listener.getsockname()[1])
        threading.Thread(target=self._accept, daemon=True).start()

    @property
    def url(self) -> str:
        """Address of what is behind it."""
        return f"http://127.0.0.1:{self.port}"

    def close(self) -> None:
        """Take no more connections."""
        self._listener.close()

    def _accept(self) -> None:
        while True:
            try:
                client, _ = self._listener.accept()
            except OSError:
                return
            threading.Thread(target=self._serve, args=(client,), daemon=True).start()

    def _serve(self, client: socket.socket) -> None:
        try:
            server = socket.create_connection(("127.0.0.1", self.target))
        except OSError:
            client.close()
            return
        line = _Line(client, server)
        threading.Thread(target=self._up, args=(line,), daemon=True).start()
        self._down(line)

    def _up(self, line: "_Line") -> None:
        """Carry what the phone says, and find the sync requests in it."""
        with contextlib.suppress(OSError):
            while said := line.client.recv(65536):
                if SYNC in said:
                    found = re.search(rb"idempotency-key: *(\S+)", said, re.IGNORECASE)
                    self.keys.append(found[1].decode() if found else "")
                    line.phase = self.cuts.pop(0) if self.cuts else None
                    if line.phase == "before":
                        self._cut(line)
                        return
                    if line.phase == "request":
                        line.server.sendall(said[: len(said) // 2])
                        self._cut(line)
                        return
                line.server.sendall(said)
        line.close()

    def _down(self, line: "_Line") -> None:
        """Carry what the service says."""
        with contextlib.suppress(OSError):
            while said := line.server.recv(65536):
                if line.phase == "half":
                    line.client.sendall(said[: len(said) // 2])
                if line.phase in ("answer", "half"):
                    self._cut(line)
                    return
                line.client.sendall(said)
        line.close()

    def _cut(self, line: "_Line") -> None:
        assert line.phase is not None
        self.done.append(line.phase)
        line.close()


class _Line:
    """One connection through the proxy."""

    def __init__(self, client: socket.socket, server: socket.socket) -> None:
        self.client = client
        self.server = server
        self.phase: Phase | None = None

    def close(self) -> None:
        for end in (self.client, self.server):
            with contextlib.suppress(OSError):
                end.shutdown(socket.SHUT_RDWR)
            end.close()

"""How fast the service calculates, beside a bare echo that does nothing."""

import json
import socket
import tempfile
import time
from collections.abc import Iterator

from midspan.web.calc_examples import INPUTS

from .services import ECHO, SERVICE, started
from .sizes import Sizes
from .table import Row, Target, compare

# Asked over so many lines, so that the service is what everything waits for.
LINES = 4
CALCS = ("slack", "drive")
ECHOED = Target(True, 0.75)
BATCHED = Target(True, 10)


class Client:
    """Asks the same again and again, as fast as it is answered.

    It is written for this alone: whatever time a client takes would be counted on both sides, and
    make the service look better than it is.
    """

    def __init__(self, port: int, path: str, body: object) -> None:
        """Open the lines."""
        data = json.dumps(body, separators=(",", ":")).encode()
        head = f"POST {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n"
        head += f"Content-Type: application/json\r\nContent-Length: {len(data)}\r\n\r\n"
        self._sent = head.encode() + data
        self._lines = [socket.create_connection(("127.0.0.1", port)) for _ in range(LINES)]

    def rate(self, asked: int, each: int = 1) -> float:
        """Ask so many times, each for so many things; give how many things a second came."""
        start = time.perf_counter()
        lines = self._lines[:asked]
        for line in lines:
            line.sendall(self._sent)
        for number in range(asked):
            line = lines[number % len(lines)]
            _receive(line)
            if number + len(lines) < asked:
                line.sendall(self._sent)
        return asked * each / (time.perf_counter() - start)

    def close(self) -> None:
        """Close the lines."""
        for line in self._lines:
            line.close()


def _receive(line: socket.socket) -> None:
    read = bytearray()
    while (end := read.find(b"\r\n\r\n")) < 0:
        part = line.recv(1 << 16)
        if not part:
            raise ConnectionError("The service closed the line.")
        read += part
    head = bytes(read[:end]).lower()
    if not head.startswith(b"http/1.1 200"):
        raise ConnectionError(f"The service answered: {bytes(read).decode()}")
    left = end + 4 + int(head.split(b"content-length:")[1].split(b"\r\n")[0]) - len(read)
    while left > 0:
        part = line.recv(1 << 16)
        if not part:
            raise ConnectionError("The service closed the line.")
        left -= len(part)


def rows(sizes: Sizes) -> Iterator[Row]:
    """Measure both rows of every calculation listed."""
    with (
        tempfile.TemporaryDirectory() as folder,
        started(ECHO, folder) as echo_port,
        started(SERVICE, folder) as port,
    ):
        for calc in CALCS:
            yield from _rows_of(calc, echo_port, port, sizes)


def _rows_of(calc: str, echo_port: int, port: int, sizes: Sizes) -> Iterator[Row]:
    payload = INPUTS[calc]
    items = [{"calc": calc, "input": payload} for _ in range(sizes.batch)]
    echo = Client(echo_port, "/echo", payload)
    single = Client(port, f"/api/v1/calc/{calc}", payload)
    batch = Client(port, "/api/v1/calc/batch", {"items": items})
    try:
        found = compare(
            lambda: single.rate(sizes.asked), lambda: echo.rate(sizes.asked), sizes.rounds
        )
        yield Row(
            f"POST /calc/{calc}, beside a bare echo", f"{found.measured:.0f}/s",
            f"{found.reference:.0f}/s", found.ratio, ECHOED,
        )  # fmt: skip
        found = compare(
            lambda: batch.rate(2, sizes.batch), lambda: single.rate(sizes.asked), sizes.rounds
        )
        yield Row(
            f"batch of {sizes.batch} {calc}, beside one by one", f"{found.measured:.0f}/s",
            f"{found.reference:.0f}/s", found.ratio, BATCHED,
        )  # fmt: skip
    finally:
        for client in (echo, single, batch):
            client.close()

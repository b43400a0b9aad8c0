"""Clients that are slow, silent, too large or no clients at all, over real sockets."""

import contextlib
import json
import signal
import socket
import ssl
import time
from http.client import HTTPResponse
from typing import Any

import pytest

from web.process import Process

LIMIT = 20_000
FEW = {
    "MIDSPAN_WORKERS": "1", "MIDSPAN_THREADS": "2", "MIDSPAN_REQUEST_SECONDS": "2",
    "MIDSPAN_MAX_BODY_BYTES": str(LIMIT),
}  # fmt: skip
POST = "POST /api/v1/calc/drive HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
DRIVE = {
    "drive": {
        "pitch_mm": 9.525, "crank_teeth": 22, "cam_teeth": 44, "centre_distance_mm": 114.1,
        "links": 58,
    }
}  # fmt: skip


def answered(sock: socket.socket) -> tuple[int, Any]:
    """Read one answer: status and JSON; whatever refuses, refuses with a problem detail."""
    response = HTTPResponse(sock)
    response.begin()
    kind = response.headers.get_content_type()
    value = json.loads(response.read())
    if response.status >= 400:
        assert kind == "application/problem+json"
        assert value["status"] == response.status
        assert len(value["detail"]) > 10
    return response.status, value


def drip(sock: socket.socket, drops: int = 600) -> None:
    """Send a byte now and then until the service has enough of it."""
    sock.settimeout(0.1)
    for _ in range(drops):
        try:
            sock.sendall(b"a")
            if sock.recv(1, socket.MSG_PEEK):
                sock.settimeout(60)
                return
        except TimeoutError:
            continue
    raise AssertionError("it goes on for ever")


@pytest.fixture
def service(start) -> Process:
    process: Process = start(settings=FEW).wait_until_it_says_where()
    return process


@pytest.mark.parametrize(
    "begun", ["GET /healthz HTTP/1.1\r\nHost: localhost\r\nX-Slow: ",
              POST + "Content-Length: 19000\r\n\r\n"],
    ids=["head", "body"],
)  # fmt: skip
def test_requests_that_drip_in_are_given_up_and_others_are_served(service, begun: str) -> None:
    slow = [service.connect() for _ in range(6)]  # three for each thread
    for sock in slow:
        sock.sendall(begun.encode())
    assert service.ask("GET", "/healthz")[0] == 200
    for sock in slow:
        drip(sock)
        assert answered(sock)[0] == 408
        sock.close()
    assert service.ask("GET", "/healthz")[0] == 200


def test_silent_connections_take_no_thread(service) -> None:
    began = time.monotonic()
    assert service.ask("GET", "/healthz")[0] == 200
    usual = time.monotonic() - began
    silent = [service.connect() for _ in range(40)]
    began = time.monotonic()
    assert service.ask("GET", "/healthz")[0] == 200
    # Were each to hold a thread for a second only, this would take a hundred times as long.
    assert time.monotonic() - began < 20 * usual + 1
    for sock in silent:
        assert sock.recv(1) == b""  # let go in the end


def test_a_handshake_that_never_ends_is_given_up(start) -> None:
    process = start("--lan", settings=FEW | {"MIDSPAN_LAN_ADDRESSES": "127.0.0.2"})
    process.wait_until_it_says_where()
    process.tls = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
    process.tls.load_verify_locations(cadata=(process.data / "tls/authority.crt").read_bytes())
    slow = [process.connect() for _ in range(6)]
    for sock in slow:
        sock.sendall(b"\x16\x03\x01\x02\x00")  # the first bytes of a hello, and no more
    assert process.ask("GET", "/healthz")[0] == 200
    for sock in slow:
        assert sock.recv(1) == b""


def test_a_stop_lets_a_request_under_way_finish(start) -> None:
    settings = FEW | {"MIDSPAN_REQUEST_SECONDS": "60"}
    process = start(settings=settings).wait_until_it_says_where()
    body = json.dumps(DRIVE).encode()
    with process.connect() as sock:
        sock.sendall(f"{POST}Content-Length: {len(body)}\r\n\r\n".encode() + body[:20])
        assert process.ask("GET", "/healthz")[0] == 200  # so the first one is being read
        process.running.send_signal(signal.SIGTERM)
        while takes_anybody(process):
            time.sleep(0.1)
        sock.sendall(body[20:])
        status, value = answered(sock)
    assert status == 200
    assert "excess_mm" in json.dumps(value)
    assert process.running.wait(timeout=120) == 0
    assert "Traceback" not in process.kill()


def takes_anybody(process: Process) -> bool:
    try:
        process.connect().close()
    except OSError:
        return False
    return True


def test_an_address_with_the_layout_of_a_wide_table_is_read(service) -> None:
    with service.connect() as sock:
        sock.sendall(
            b"GET /nowhere?layout=" + b"a" * 8000 + b" HTTP/1.1\r\nHost: localhost\r\n\r\n"
        )
        assert answered(sock)[0] == 404


CHUNKED = b"Transfer-Encoding: chunked\r\n\r\n"
REFUSED = {
    "a body over the limit": (
        413, f"{POST}Content-Length: {LIMIT * 3}\r\n\r\n".encode() + b" " * LIMIT * 3,
    ),
    "a body over the limit, in chunks": (
        413, POST.encode() + CHUNKED + b"1000\r\n" + b" " * 4096 + b"\r\n"
        + (b"1000\r\n" + b" " * 4096 + b"\r\n") * 9 + b"0\r\n\r\n",
    ),
    "arrays nested deep": (
        400, f"{POST}Content-Length: 18000\r\n\r\n".encode() + b"[" * 18000,
    ),
    "another charset": (
        415, POST.replace("json", "json; charset=utf-16").encode()
        + b"Content-Length: 4\r\n\r\n\xff\xfe{\0",
    ),
    "not UTF-8": (400, POST.encode() + b"Content-Length: 8\r\n\r\n{\"a\": \"\xff"),
    "a long header": (431, b"GET / HTTP/1.1\r\nX: " + b"a" * 70_000 + b"\r\n\r\n"),
    "many headers": (431, b"GET / HTTP/1.1\r\n" + b"X-A: b\r\n" * 500 + b"\r\n"),
    "a long address": (414, b"GET /" + b"a" * 70_000 + b" HTTP/1.1\r\n\r\n"),
    "no HTTP": (400, b"hello, is anybody there?\r\n\r\n"),
    "two lengths": (400, POST.encode() + b"Content-Length: 5\r\nContent-Length: 6\r\n\r\n{}"),
    "a length and chunks": (400, POST.encode() + b"Content-Length: 5\r\n" + CHUNKED + b"0\r\n\r\n"),
    "a length that is none": (400, POST.encode() + b"Content-Length: -1\r\n\r\n{}"),
}  # fmt: skip


def test_what_cannot_be_taken_gets_a_clear_answer(service) -> None:
    for name, (status, sent) in REFUSED.items():
        with service.connect() as sock:
            sock.settimeout(60)
            # It may stop listening as soon as it has seen enough.
            with contextlib.suppress(ConnectionError):
                sock.sendall(sent)
            assert answered(sock)[0] == status, name
        assert service.ask("GET", "/healthz")[0] == 200, name
    assert "Traceback" not in service.kill()

"""The real service, as a process: it says where it is and outlives a power cut."""

import json
import os
import re
import signal
import socket
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from midspan.web.examples import WRITES
from web.pairing import bearer

API = Path(__file__).parents[2] / "api"
KEY = "01923f5e-8c00-7000-8000-000000000001"


class Process:
    """One `midspan serve` on a free port."""

    def __init__(self, data: Path, port: str = "0") -> None:
        env = os.environ | {"MIDSPAN_DATA_DIR": str(data), "PYTHONPATH": str(API)}
        self.running = subprocess.Popen(
            [sys.executable, "-m", "midspan", "serve", "--port", port],
            env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
            start_new_session=True,
        )  # fmt: skip
        self.address = ""
        self.token = ""

    def wait_until_it_says_where(self) -> "Process":
        assert self.running.stdout is not None
        line = self.running.stdout.readline()
        found = re.search(r"http://127\.0\.0\.1:\d+", line)
        if found is None:
            raise AssertionError(f"it said {line!r} and {self.kill()}")
        self.address = found[0]
        return self

    def pair(self) -> "Process":
        """Pair by the address that it prints while no device is paired."""
        assert self.running.stdout is not None
        code = re.search(r"/#/pair/(\S+)", self.running.stdout.readline())
        assert code is not None
        sent = {"code": code[1], "device_name": "Browser of the check"}
        self.token = self.ask("POST", "/api/v1/pair", sent)[1]["token"]
        return self

    def ask(self, method: str, path: str, body: Any = None) -> tuple[int, Any]:
        request = urllib.request.Request(  # noqa: S310
            self.address + path,
            method=method,
            data=None if body is None else json.dumps(body).encode(),
            headers={"Content-Type": "application/json"} | bearer(self.token),
        )
        with urllib.request.urlopen(request, timeout=30) as answer:  # noqa: S310
            return answer.status, json.load(answer)

    def kill(self) -> str:
        """End it and its workers at once, as a power cut would; give what it complained of."""
        if self.running.poll() is None:
            os.killpg(self.running.pid, signal.SIGKILL)
        return self.running.communicate()[1]


@pytest.fixture
def start(tmp_path: Path) -> Iterator[Any]:
    """Start processes on one data folder; none is left behind."""
    started = []

    def one(port: str = "0") -> Process:
        started.append(Process(tmp_path, port))
        return started[-1]

    yield one
    for process in started:
        process.kill()


def test_a_reading_survives_a_power_cut_and_is_explained_after(start) -> None:
    process = start().wait_until_it_says_where().pair()
    assert process.ask("GET", "/readyz")[0] == 200
    assert process.ask("PUT", f"/api/v1/engines/{KEY}", WRITES["engine"])[0] == 201
    status, kept = process.ask("PUT", f"/api/v1/readings/{KEY}", WRITES["reading"])
    assert status == 201
    process.kill()

    token, process = process.token, start().wait_until_it_says_where()
    process.token = token
    assert process.ask("GET", f"/api/v1/readings/{KEY}") == (200, kept)
    said = process.ask("GET", f"/api/v1/readings/{KEY}/explanation")[1]
    assert said["stored"] == kept
    assert said["same_verdict"] is True
    assert process.ask("PUT", f"/api/v1/readings/{KEY}", WRITES["reading"])[0] == 200


def test_it_listens_on_this_machine_only_and_stops_in_good_order(start) -> None:
    process = start().wait_until_it_says_where()
    port = int(process.address.rsplit(":", 1)[1])
    with socket.socket() as probe, pytest.raises(OSError):  # noqa: PT011
        # 127.0.0.2 is this machine too; a service bound to every address would answer.
        probe.connect(("127.0.0.2", port))
    process.running.send_signal(signal.SIGTERM)
    assert process.running.wait(timeout=60) == 0


def test_a_taken_port_is_told_at_once(start) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        process = start(port)
        _, said = process.running.communicate(timeout=60)
    assert process.running.returncode == 1
    assert f"Port {port}" in said
    assert "--port" in said
    assert "Traceback" not in said


def test_two_started_at_once_on_an_empty_folder_both_serve(start) -> None:
    both = [start(), start()]
    for process in both:
        process.wait_until_it_says_where()
        assert process.ask("GET", "/readyz")[0] == 200
    both[1].token = both[0].pair().token
    both[0].ask("PUT", f"/api/v1/engines/{KEY}", WRITES["engine"])
    assert both[1].ask("GET", f"/api/v1/engines/{KEY}")[1]["name"] == WRITES["engine"]["name"]

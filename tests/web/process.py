"""A real `midspan serve` on a free port, started from the checkout, and how to talk to it."""

import json
import os
import re
import signal
import socket
import ssl
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import psutil

API = Path(__file__).parents[2] / "api"


def request(
    url: str, method: str, body: bytes | None, headers: Mapping[str, str]
) -> tuple[int, dict[str, str], bytes]:
    """Send anything, and take whatever answer comes."""
    sent = urllib.request.Request(url, data=body, method=method, headers=dict(headers))  # noqa: S310
    try:
        with urllib.request.urlopen(sent, timeout=60) as answer:  # noqa: S310
            return answer.status, dict(answer.headers), answer.read()
    except urllib.error.HTTPError as error:
        with error:
            return error.code, dict(error.headers), error.read()


class Process:
    """One `midspan serve`; its standard error goes to a file, which no pipe can block."""

    def __init__(
        self, data: Path, *words: str, port: str = "0", settings: Mapping[str, str] | None = None
    ) -> None:
        env = os.environ | {"MIDSPAN_DATA_DIR": str(data), "PYTHONPATH": str(API)}
        data.mkdir(exist_ok=True)
        self.data = data
        self.log = data / f"{id(self)}.log"
        self.tls: ssl.SSLContext | None = None
        self.address = ""
        self.token = ""
        with self.log.open("wb") as log:
            self.running = subprocess.Popen(
                [sys.executable, "-m", "midspan", "serve", "--port", port, *words],
                env=env | dict(settings or {}), stdout=subprocess.PIPE, stderr=log, text=True,
                start_new_session=True,
            )  # fmt: skip

    def wait_until_it_says_where(self) -> "Process":
        """Read its first line, which names the address."""
        assert self.running.stdout is not None
        line = self.running.stdout.readline()
        found = re.search(r"https?://[\d.]+:\d+", line)
        if found is None:
            raise AssertionError(f"it said {line!r} and {self.kill()}")
        self.address = found[0]
        return self

    def pair(self) -> "Process":
        """Pair by the link in its next line, which it prints while no device is paired."""
        assert self.running.stdout is not None
        code = re.search(r"/#/pair/(\S+)", self.running.stdout.readline())
        assert code is not None
        sent = {"code": code[1], "device_name": "Browser of the check"}
        self.token = self.ask("POST", "/api/v1/pair", sent)[1]["token"]
        return self

    @property
    def host(self) -> tuple[str, int]:
        """Where it listens."""
        host, port = self.address.split("//")[1].split(":")
        return host, int(port)

    def connect(self) -> socket.socket:
        """Open a connection to say anything at all."""
        return socket.create_connection(self.host, timeout=60)

    def ask(self, method: str, path: str, body: Any = None) -> tuple[int, Any]:
        """Send a request and read the JSON of its answer."""
        request = urllib.request.Request(  # noqa: S310
            self.address + path,
            method=method,
            data=None if body is None else json.dumps(body).encode(),
            headers={"Content-Type": "application/json", "Authorization": f"Bearer {self.token}"},
        )
        with urllib.request.urlopen(request, timeout=60, context=self.tls) as answer:  # noqa: S310
            return answer.status, json.load(answer)

    def stop(self) -> int:
        """Ask it to stop and wait until it has; give its exit code."""
        self.running.send_signal(signal.SIGTERM)
        return self.running.wait(timeout=120)

    def kill_workers(self) -> None:
        """End the workers, one of which answers, at once; the service starts others."""
        for worker in psutil.Process(self.running.pid).children():
            worker.kill()

    def kill(self) -> str:
        """End it and its workers at once, as a power cut would; give what it logged."""
        if self.running.poll() is None:
            os.killpg(self.running.pid, signal.SIGKILL)
        self.running.wait()
        return self.log.read_text()

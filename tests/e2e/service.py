"""The real service: the installed `midspan serve`, on loopback, with a data folder of its own."""

import json
import os
import signal
import socket
import sqlite3
import ssl
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path
from typing import Any

from midspan import pairing
from midspan.settings import Settings
from midspan.store import Store, devices
from midspan.store.models import LOCAL_SHOP

START_SECONDS = 60


def free_port() -> int:
    """Return a loopback port that nothing listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


class Service:
    """One data folder and one port; the process can be killed and started again."""

    def __init__(self, data: Path, lan: str = "") -> None:
        self.data = data
        self.lan = lan  # the address for phones in the shop's network, if it has one
        self.port = free_port()
        self.process: subprocess.Popen[bytes] | None = None

    @property
    def url(self) -> str:
        """Address of the app."""
        return f"https://{self.lan}:{self.port}" if self.lan else f"http://127.0.0.1:{self.port}"

    @property
    def authority(self) -> Path:
        """The certificate that a phone of the shop comes to trust."""
        return self.data / "tls" / "authority.crt"

    def start(self) -> None:
        """Start it and wait until it says that it is ready."""
        command = Path(sys.executable).parent / "midspan"
        assert command.exists(), "Midspan is not installed here: run python3 api/start.py test"
        env = {k: v for k, v in os.environ.items() if not k.startswith("MIDSPAN_")}
        env["MIDSPAN_DATA_DIR"] = str(self.data)
        words = ["--lan"] if self.lan else []
        if self.lan:
            env["MIDSPAN_LAN_ADDRESSES"] = self.lan
        self.data.mkdir(exist_ok=True)
        log = (self.data / "service.log").open("ab")
        self.process = subprocess.Popen(
            [command, "serve", "--port", str(self.port), *words],
            cwd=self.data,
            env=env,
            stdout=log,
            stderr=log,
            start_new_session=True,
        )
        log.close()
        end = time.monotonic() + START_SECONDS
        while not self.answers("/readyz"):
            said = (self.data / "service.log").read_text()
            assert self.process.poll() is None, f"the service stopped:\n{said}"
            assert time.monotonic() < end, f"the service is not ready:\n{said}"
            time.sleep(0.1)

    def answers(self, path: str) -> bool:
        """Whether a request reaches the service and is answered with 200."""
        try:
            tls = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT) if self.lan else None
            if tls is not None:
                tls.load_verify_locations(cadata=self.authority.read_bytes())
            with urllib.request.urlopen(self.url + path, timeout=5, context=tls) as answer:  # noqa: S310
                return bool(answer.status == 200)
        except (OSError, urllib.error.URLError):
            return False

    def pairing_link(self, role: str = "owner") -> str:
        """Make a code in its database, as `midspan pair` does, and give the link that uses it."""
        store = Store(Settings(data_dir=self.data).database())
        with store.writing() as session:
            code, _ = devices.open_code(session, LOCAL_SHOP, role)
        store.close()
        return pairing.link(self.url, code)

    def get(self, path: str) -> Any:
        """Ask for JSON as a device of the shop does."""
        return self._as_device("GET", path, None)

    def _as_device(self, method: str, path: str, body: Any) -> Any:
        """Ask as a device that is paired for this and revoked after."""
        code = self.pairing_link().rsplit("/", 1)[1]
        paired = self._ask("POST", "/api/v1/pair", {"code": code, "device_name": "Check"})
        try:
            return self._ask(method, path, body, paired["token"])
        finally:
            me = f"/api/v1/devices/{paired['device']['id']}"
            self._ask("DELETE", me, None, paired["token"])

    def put(self, path: str, body: Any) -> Any:
        """Keep a record as a device of the shop does."""
        return self._as_device("PUT", path, body)

    def calculate(self, calc: str, payload: Any) -> Any:
        """Ask for a calculation, as anyone may."""
        return self._ask("POST", f"/api/v1/calc/{calc}", payload)

    def calculate_lab(self, calc: str, payload: Any) -> Any:
        """Ask for what the service alone works out."""
        return self._as_device("POST", f"/api/v1/lab/{calc}", payload)

    def _ask(self, method: str, path: str, body: Any, token: str = "") -> Any:
        request = urllib.request.Request(  # noqa: S310
            self.url + path,
            method=method,
            data=None if body is None else json.dumps(body).encode(),
            headers={"Content-Type": "application/json", "Authorization": f"Bearer {token}"},
        )
        with urllib.request.urlopen(request, timeout=30) as answer:  # noqa: S310
            return json.load(answer)

    def kill(self) -> None:
        """End it and its workers at once, as a power cut would."""
        if self.process is not None:
            os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait()
            self.process = None

    def rows(self, query: str) -> list[tuple[Any, ...]]:
        """Read the database behind the service's back."""
        files = list(self.data.glob("*.sqlite3"))
        assert len(files) == 1, files
        database = sqlite3.connect(f"file:{files[0]}?mode=ro", uri=True)
        try:
            return database.execute(query).fetchall()
        finally:
            database.close()

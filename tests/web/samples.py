"""Samples run as they stand, each in a shop of its own whose records it finds untouched."""

import contextlib
import io
import itertools
import json
import os
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NamedTuple
from uuid import UUID

import pytest

from midspan.settings import Settings
from midspan.store import Store, sync, tokens
from midspan.store.models import LOCAL_SHOP
from midspan.web.code_samples import READ
from midspan.web.examples import ALL, RECORDS, WRITES
from midspan.web.nouns import NOUNS, Noun, take
from web.pairing import add_shop, paired
from web.process import Process

NOWHERE = "nowhere"
NO_LIMIT = {"MIDSPAN_WORKERS": "1", "MIDSPAN_REQUESTS_PER_MINUTE": "0"}
CURLRC = """silent
show-error
write-out = "%{stderr}%{http_code} %{method} %{url_effective}\\n"
"""
OWN_CURL = f'#!/bin/sh\nexec "{sys.executable}" "{Path(__file__).with_name("curl.py")}" "$@"\n'


@contextlib.contextmanager
def served(data: Path) -> Iterator[Process]:
    """Run a real service that counts no requests, whatever is set outside."""
    with pytest.MonkeyPatch.context() as patch:
        for name in [name for name in os.environ if name.startswith("MIDSPAN_")]:
            patch.delenv(name)
        process = Process(data, settings=NO_LIMIT)
    try:
        yield process.wait_until_it_says_where()
    finally:
        process.kill()


class Ran(NamedTuple):
    """What became of a sample: the last thing it asked and what it was told."""

    asked: str  # method and address
    status: int
    printed: str
    failed: str  # how it ended, if it ended badly


class Shops:
    """A real service, and a new shop in it for each sample."""

    def __init__(self, service: Process, folder: Path) -> None:
        self.service = service
        self.store = Store(Settings(data_dir=service.data).database())
        self.folder = folder
        self.shop = LOCAL_SHOP
        self.untouched: dict[str, str] = {}
        for name, value in ALL.items():
            file = READ.get(name, name.removesuffix("-write") + ".json")
            text = value if isinstance(value, str) else json.dumps(value)
            (folder / file).write_text(text, encoding="utf-8")
        (folder / ".curlrc").write_text(CURLRC)
        self.bin = folder / "bin"
        self.bin.mkdir()
        if not has_curl():
            self.bring_own_curl()

    def bring_own_curl(self) -> None:
        """Put what the samples use of curl before all else of that name."""
        (self.bin / "curl").write_text(OWN_CURL)
        (self.bin / "curl").chmod(0o755)

    def new(self, *, without: str = "") -> dict[str, str]:
        """Open a shop with the example of each kind up to one; give the environment of samples."""
        self.shop = add_shop(self.store, tokens.new_id())
        before = itertools.takewhile(lambda noun: noun.many != without, NOUNS)
        self._apply([_change(noun, UUID(RECORDS[noun.one]["id"])) for noun in before])
        token = paired(self.store, "owner", self.shop)[0]
        return os.environ | {
            "MIDSPAN_ADDRESS": self.service.address, "MIDSPAN_TOKEN": token, "NO_PROXY": "*",
            "CURL_HOME": str(self.folder), "PATH": f"{self.bin}{os.pathsep}{os.environ['PATH']}",
        }  # fmt: skip

    def shared(self) -> dict[str, str]:
        """Give the environment of samples that change nothing: one shop does for all of them."""
        if not self.untouched:
            self.untouched = self.new()
        return self.untouched

    def keep(self, one: str, id: UUID, *, version: int | None = None, **changes: Any) -> None:
        """Keep an example in the shop, or change it, as another device would."""
        (noun,) = [noun for noun in NOUNS if noun.one == one]
        self._apply([_change(noun, id, version, **changes)])

    def _apply(self, changes: list[sync.Change]) -> None:
        with self.store.writing() as session:
            answers = sync.apply(session, self.shop, changes)
        assert all(answer.outcome in sync.DONE for answer in answers), answers

    def close(self) -> None:
        """Let go of the database."""
        self.store.close()


def _change(noun: Noun, id: UUID, version: int | None = None, **changes: Any) -> sync.Change:
    base = sync.NEW if version is None else (version,)
    return sync.Change(noun.model, id, take(noun, WRITES[noun.one] | changes), base)


def has_curl() -> bool:
    """Tell whether there is a curl, and not one too old for a script to notice a refusal."""
    with contextlib.suppress(FileNotFoundError):
        asked = ["curl", "--fail-with-body", "--version"]
        return subprocess.run(asked, capture_output=True).returncode == 0
    return False


def by_curl(source: str, env: dict[str, str], folder: Path) -> Ran:
    """Run a sample in a shell."""
    done = subprocess.run(
        ["sh", "-c", source], capture_output=True, text=True, timeout=60, env=env, cwd=folder
    )
    status, _, asked = done.stderr.strip().rpartition("\n")[2].partition(" ")
    failed = "" if done.returncode == 0 else f"{done.returncode}: {done.stderr}"
    if not status.isdigit():
        return Ran(NOWHERE, 0, done.stdout, done.stderr)
    return Ran(asked, int(status), done.stdout, failed)


def by_python(
    source: str, env: dict[str, str], folder: Path, meanwhile: Callable[[], None] | None = None
) -> Ran:
    """Run a sample as a file of its own would run; something may happen after its first request."""
    told: list[tuple[str, int]] = []
    failed = ""
    with (
        inside(env, folder),
        noted(told, meanwhile),
        contextlib.redirect_stdout(io.StringIO()) as printed,
    ):
        try:
            exec(compile(source, "sample", "exec"), {"__name__": "__main__"})  # noqa: S102
        except (Exception, SystemExit) as error:
            failed = f"{type(error).__name__}: {error}"
    asked, status = told[-1] if told else (NOWHERE, 0)
    return Ran(asked, status, printed.getvalue(), failed)


@contextlib.contextmanager
def inside(env: dict[str, str], folder: Path) -> Iterator[None]:
    """Be in a folder, with another environment."""
    before = dict(os.environ)
    os.environ.update(env)
    try:
        with contextlib.chdir(folder):
            yield
    finally:
        os.environ.clear()
        os.environ.update(before)


@contextlib.contextmanager
def noted(
    told: list[tuple[str, int]], meanwhile: Callable[[], None] | None = None
) -> Iterator[None]:
    """Note what is asked through urllib, and the status of each answer."""
    open_ = urllib.request.urlopen

    def noting(request: urllib.request.Request, *args: Any, **more: Any) -> Any:
        asked = f"{request.get_method()} {request.full_url}"
        try:
            answer = open_(request, *args, **more)
        except urllib.error.HTTPError as error:
            told.append((asked, error.code))
            raise
        told.append((asked, answer.status))
        if meanwhile is not None and len(told) == 1:
            meanwhile()
        return answer

    urllib.request.urlopen = noting  # type: ignore[assignment]
    try:
        yield
    finally:
        urllib.request.urlopen = open_

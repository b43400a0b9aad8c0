"""Every sample of the document, as it stands there, against a real service: curl and Python."""

import contextlib
import io
import json
import os
import shlex
import shutil
import subprocess
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from midspan.web.examples import ALL
from web.document import Document
from web.process import Process, request

KEEPS_NOTHING = True
NO_LIMIT = {"MIDSPAN_WORKERS": "1", "MIDSPAN_REQUESTS_PER_MINUTE": "0"}
# What has to be there comes first; what takes away comes last.
ORDER = ("put", "get", "post", "patch", "delete")


def ordered(document: Document) -> Iterator[tuple[str, str, list[dict[str, str]]]]:
    """Give method, path and samples of every operation, in an order in which they can be asked."""
    found = list(document.operations())
    # What others refer to is kept first and deleted last; the document has parents first.
    found = [one for one in found if one[0] != "delete"] + [
        one for one in reversed(found) if one[0] == "delete"
    ]
    for method, path, operation in sorted(found, key=lambda one: ORDER.index(one[0])):
        yield method, path, operation["x-codeSamples"]


def by_curl(source: str) -> str:
    """Run a sample of curl; where there is no curl, ask what it says by other means."""
    if shutil.which("curl"):
        done = subprocess.run(["sh", "-c", source], capture_output=True, text=True, timeout=60)
        return "" if done.returncode == 0 else f"{done.stdout} {done.stderr}"
    words = [os.path.expandvars(word) for word in shlex.split(source.replace("\\\n", " "))]
    pairs = list(pairwise(words))
    headers = dict(value.split(": ", 1) for flag, value in pairs if flag == "-H")
    body = next((value for flag, value in pairs if flag == "--data-binary"), None)
    sent = Path(body[1:]).read_bytes() if body and body[0] == "@" else body and body.encode()
    status, _, told = request(words[4], words[3], sent or None, headers)
    return "" if status < 300 else told.decode()


def by_python(source: str) -> str:
    """Run a sample of Python, as a file of its own would run."""
    with contextlib.redirect_stdout(io.StringIO()) as printed:
        try:
            exec(compile(source, "sample", "exec"), {"__name__": "__main__"})  # noqa: S102
        except OSError as error:
            return f"{error} {getattr(error, 'read', str)()!r}"
    return "" if printed.getvalue().startswith("20") else printed.getvalue()


RUN = {"Shell": by_curl, "Python": by_python}


@pytest.fixture
def service(start: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Process:
    """A real service, paired, in whose environment the samples run."""
    process: Process = start(settings=NO_LIMIT).wait_until_it_says_where().pair()
    monkeypatch.setenv("MIDSPAN_ADDRESS", process.address)
    monkeypatch.setenv("MIDSPAN_TOKEN", process.token)
    folder = tmp_path / "samples"
    folder.mkdir()
    monkeypatch.chdir(folder)
    for name, value in ALL.items():
        (folder / f"{name}.json").write_text(json.dumps(value), encoding="utf-8")
    return process


def test_every_sample_runs_against_a_real_service(service: Process, document: Document) -> None:
    failed, ran = [], 0
    for method, path, samples in ordered(document):
        assert [sample["lang"] for sample in samples] == list(RUN), (method, path)
        for sample in samples:
            source = sample["source"]
            # These two name a code and a device that only a shop of its own can have.
            if path.endswith("/pair"):
                code = service.ask("POST", "/api/v1/pairing-codes", {"role": "member"})[1]["code"]
                source = source.replace(ALL["pair"]["code"], code)
            if path.endswith("/devices/{id}"):
                devices = service.ask("GET", "/api/v1/devices")[1]["items"]
                source = source.replace(ALL["device"]["id"], devices[-1]["id"])
            trouble = RUN[sample["lang"]](source)
            ran += 1
            if trouble:
                failed.append(f"{method} {path} {sample['lang']}: {trouble[:400]}")
    assert failed == []
    assert ran == 2 * sum(1 for _ in document.operations()) > 120


def test_a_sample_that_is_refused_is_seen(service: Process, document: Document) -> None:
    samples = document.whole["paths"]["/api/v1/calc/slack"]["post"]["x-codeSamples"]
    for sample in samples:
        wrong = sample["source"].replace("readings_mm", "readings_inch")
        assert wrong != sample["source"]
        assert "readings_inch" in RUN[sample["lang"]](wrong)


def test_a_sample_names_no_address_and_no_token(document: Document) -> None:
    for _, _, samples in ordered(document):
        for sample in samples:
            assert "MIDSPAN_ADDRESS" in sample["source"]
            assert "http:" not in sample["source"]

"""The program that api/CLIENTS.md shows, as it stands there, against a real service."""

import email.message
import io
import re
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import func, select

from midspan.core import run
from midspan.store import Engine, Reading, devices, tokens
from web.process import Process
from web.samples import Ran, Shops, by_python, served

KEEPS_NOTHING = True
TEXT = (Path(__file__).parents[2] / "api/CLIENTS.md").read_text(encoding="utf-8")
(PROGRAM,) = re.findall(r"^```python\n(.*?)^```$", TEXT, re.MULTILINE | re.DOTALL)
MEASURED = {
    "method": "inside-and-outside", "pitches": 10, "inside_readings_mm": [89.02, 89.00, 89.02],
    "outside_readings_mm": [101.72, 101.70, 101.72], "pitch_mm": 9.525,
    "roller_diameter_mm": 6.35,
}  # fmt: skip


@pytest.fixture(scope="module")
def service(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Process]:
    """A real service."""
    with served(tmp_path_factory.mktemp("service")) as process:
        yield process


class User:
    """Somebody with the program in a folder, and a code for a shop of their own."""

    def __init__(self, shops: Shops) -> None:
        self.shops = shops
        self.env = shops.new(without="engines")
        with shops.store.writing() as session:
            code, _ = devices.open_code(session, shops.shop, "member")
        self.env["MIDSPAN_CODE"] = str(tokens.tidy_code(code))

    def runs(self, program: str = PROGRAM) -> Ran:
        """Run the program, or another in its place."""
        return by_python(program, self.env, self.shops.folder)

    def kept(self) -> list[int]:
        """Count the engines and the readings of the shop."""
        with self.shops.store.reading() as session:
            return [
                session.scalar(
                    select(func.count()).select_from(kind).where(kind.shop_id == self.shops.shop)
                )
                or 0
                for kind in (Engine, Reading)
            ]


@pytest.fixture
def user(service: Process, tmp_path: Path) -> Iterator[User]:
    """A user who has never run it."""
    shops = Shops(service, tmp_path)
    yield User(shops)
    shops.close()


def test_it_pairs_judges_keeps_and_lists(user: User) -> None:
    ran = user.runs()
    assert ran.failed == "", ran
    verdict: Any = run("elongation", MEASURED)["verdict"]
    assert ran.printed.startswith(f"{verdict['headline']}: {verdict['why']}\n")
    assert f"Limit: {verdict['limit']['label']} (published)" in ran.printed
    assert ran.printed.count(" kept\n") == 2
    assert ran.printed.endswith(f"Z elongation {verdict['headline']}\n")
    assert user.kept() == [1, 1]
    token = user.shops.folder / "midspan-token"
    assert token.stat().st_mode & 0o077 == 0


def test_it_pairs_once_and_lists_every_page(user: User) -> None:
    user.runs()
    user.env["MIDSPAN_CODE"] = "used up"
    assert user.runs().failed == ""
    ran = user.runs(PROGRAM.replace("limit=100", "limit=1"))
    assert ran.failed == ""
    assert "after=" in ran.asked
    assert ran.printed.count("Z elongation ") == 3


def test_it_says_which_field_was_refused(user: User) -> None:
    ran = user.runs(PROGRAM.replace('"pitches": 10', '"pitches": 0'))
    assert "Input refused\npitches: " in ran.failed
    user.env["MIDSPAN_CODE"] = "ABCDE-23456"
    (user.shops.folder / "midspan-token").unlink()
    assert "Pairing code refused" in user.runs().failed


def test_it_says_which_record_of_a_batch_was_refused(user: User) -> None:
    ran = user.runs(PROGRAM.replace('"name": "Made-up engine"', '"nam": "Made-up engine"'))
    assert ran.failed == ""
    assert "Input refused\nnam" in ran.printed
    assert user.kept() == [0, 0]


def lost(_request: urllib.request.Request) -> None:
    raise urllib.error.URLError("cut off")


def busy(request: urllib.request.Request) -> None:
    headers = email.message.Message()
    headers["Retry-After"] = "3"
    raise urllib.error.HTTPError(request.full_url, 503, "busy", headers, io.BytesIO(b"{}"))


@pytest.mark.parametrize(("trouble", "waits"), [(lost, [1, 5]), (busy, [3, 3])])
def test_a_batch_whose_answer_is_lost_is_sent_again_and_kept_once(
    user: User, monkeypatch: pytest.MonkeyPatch, trouble: Any, waits: list[int]
) -> None:
    open_, sent, waited = urllib.request.urlopen, [], []

    def losing(request: urllib.request.Request, *args: Any, **more: Any) -> Any:
        answer = open_(request, *args, **more)
        if request.full_url.endswith("/sync"):
            sent.append(request.headers["Idempotency-key"])
            if len(sent) < 3:
                answer.close()
                trouble(request)
        return answer

    monkeypatch.setattr(urllib.request, "urlopen", losing)
    monkeypatch.setattr(time, "sleep", waited.append)
    ran = user.runs()
    assert ran.failed == ""
    assert len(sent) == 3
    assert len(set(sent)) == 1
    assert waited == waits
    assert user.kept() == [1, 1]


def test_it_gives_up_in_the_end(user: User, monkeypatch: pytest.MonkeyPatch) -> None:
    waited: list[int] = []
    monkeypatch.setattr(urllib.request, "urlopen", lambda request, **_: lost(request))
    monkeypatch.setattr(time, "sleep", waited.append)
    assert "cut off" in user.runs().failed
    assert waited == [1, 5, 25]

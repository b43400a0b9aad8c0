"""Whatever text comes in, an answer goes out: a result or named problems, in JSON proper."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import midspan.core
from core.drives import WORKED, Payload, floats
from midspan.core import CALCS, dispatch

# Anything that JSON can say, with the names the core knows thrown in often enough to get far.
NAMES = st.sampled_from(
    [*WORKED, "drive", "method", "readings_mm", "readings_deg", "pitches", "own_limit", "quantity"]
) | st.text(max_size=8)
LEAVES = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=20)
    | st.sampled_from(["total", "inside", "pin-to-pin", "crank-degrees", "movement_mm", 9.525, 22])
)
ANYTHING = st.recursive(
    LEAVES,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(NAMES, inner, max_size=6),
    max_leaves=25,
)
CALC_NAMES = st.sampled_from([*CALCS, "limits", "glossary", "describe"]) | st.text(max_size=10)


def strict(text: str) -> Any:
    """Parse as JSON proper: NaN and Infinity are not in it."""

    def refuse(word: str) -> None:
        raise AssertionError(f"{word} is no JSON")

    return json.loads(text, parse_constant=refuse)


def check_answer(text: str) -> dict[str, Any]:
    answer = strict(text)
    assert set(answer) in ({"ok", "result"}, {"ok", "problems"})
    if answer["ok"]:
        assert isinstance(answer["result"], dict)
        return answer
    assert answer["problems"]
    for problem in answer["problems"]:
        assert set(problem) == {"code", "field", "got", "need", "text", "next_step"}
        for word in ("code", "need", "text", "next_step"):
            assert isinstance(problem[word], str)
            assert problem[word]
        assert isinstance(problem["field"], str)
    return answer


@settings(max_examples=300)
@given(name=CALC_NAMES, payload=ANYTHING)
def test_dispatch_answers_any_json(name: str, payload: Any) -> None:
    check_answer(dispatch(name, json.dumps(payload)))


@settings(max_examples=150)
@given(
    name=st.sampled_from(list(CALCS)),
    drive=st.dictionaries(st.sampled_from(list(WORKED)), LEAVES, max_size=5),
    rest=st.dictionaries(NAMES, LEAVES | st.lists(LEAVES, max_size=4), max_size=6),
)
def test_dispatch_answers_near_misses(
    name: str, drive: dict[str, Any], rest: dict[str, Any]
) -> None:
    check_answer(dispatch(name, json.dumps({**rest, "drive": {**WORKED, **drive}})))


@settings(max_examples=200)
@given(name=CALC_NAMES, text=st.text(max_size=60))
def test_dispatch_answers_any_text(name: str, text: str) -> None:
    check_answer(dispatch(name, text))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[" * 100_000,
        '{"a":' * 50_000,
        "9" * 6000,
        '{"drive":{"links":' + "9" * 400 + "}}",
        "\ufeff{}",
        '"\\ud800"',
        "NaN",
        "-Infinity",
        "1e999",
        '{"drive": NaN}',
    ],
    ids=lambda text: text[:12],
)
@pytest.mark.parametrize("name", ["slack", "drive", "limits", "nonsense", ""])
def test_dispatch_answers_hostile_text(name: str, text: str) -> None:
    check_answer(dispatch(name, text))


@settings(max_examples=200)
@given(
    drive=st.fixed_dictionaries(
        {
            "pitch_mm": floats(3, 130),
            "crank_teeth": st.integers(9, 150),
            "cam_teeth": st.integers(9, 150),
            "centre_distance_mm": floats(10, 5000),
            "links": st.integers(10, 1000),
            "drive_kind": st.just("general"),
            "centre_distance_error_mm": floats(0, 10),
        }
    ),
    readings=st.lists(floats(0, 20000), min_size=1, max_size=3),
    extras=st.fixed_dictionaries({
        "resolution_mm": floats(0, 25),
        "instrument_error_mm": floats(0, 25),
        "repeatability_mm": floats(0, 25),
    }),
)  # fmt: skip
def test_every_admitted_number_has_an_answer(
    drive: Payload, readings: list[float], extras: dict[str, float]
) -> None:
    """Anywhere in the admitted ranges, corners included: an answer or a named problem, no more."""
    for name, payload in (
        ("drive", {"drive": drive, "curve_points": 3}),
        ("slack", {"drive": drive, "method": "total", "readings_mm": readings, **extras}),
        ("elongation", {"drive": drive, "method": "pin-to-pin", "pitches": 10, **extras,
                        "readings_mm": readings}),
        ("crank-rock", {"drive": drive, "method": "sprocket-movement", "readings_mm": readings,
                        **extras}),
    ):  # fmt: skip
        check_answer(dispatch(name, json.dumps(payload)))


def test_every_calculation_is_in_the_table_and_every_line_of_it_leads_to_one() -> None:
    there = {path.stem for path in Path(midspan.core.__file__).parent.glob("calc_*.py")}
    assert set(CALCS.values()) == there
    assert len(CALCS) == len(there)
    for name in CALCS:
        answer = check_answer(dispatch(name, "{}"))
        assert {problem["code"] for problem in answer["problems"]} >= {"missing"}, name


def test_a_calculation_is_imported_at_its_first_use_and_no_other_with_it() -> None:
    code = """
import sys
from midspan.core import dispatch

def loaded():
    return {name.rpartition(".")[2] for name in sys.modules if ".core.calc_" in name}

assert not loaded(), loaded()
dispatch("describe", "{}")
assert not loaded(), loaded()
dispatch("slack", "{}")
assert loaded() == {"calc_slack"}, loaded()
"""
    source = str(Path(midspan.core.__file__).parents[2])
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False,
        env={"PYTHONPATH": source},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr

"""Every field, given every kind of nonsense: refused by name, with what would be accepted."""

import json
import math
from collections.abc import Iterator
from copy import deepcopy
from typing import Any

import pytest

from core.drives import WORKED, Payload
from core.good_inputs import DRIVE, GOOD
from midspan.core import CALCS, dispatch, glossary_torsion, run
from midspan.core.errors import Refused
from midspan.core.glossary import TERMS

# Inputs of records alone; no calculation takes them.
RECORDED = {
    "distance_run_km", "load_n", "keyway_offsets_crank_deg", "odometer_km", "movement_u_mm",
}  # fmt: skip

NONSENSE: dict[str, tuple[Any, set[str]]] = {
    "NaN": (math.nan, {"not-finite"}),
    "inf": (math.inf, {"not-finite"}),
    "-inf": (-math.inf, {"not-finite"}),
    "text": ("9.525", {"not-a-number"}),
    "empty text": ("", {"not-a-number"}),
    "true": (True, {"not-a-number"}),
    "false": (False, {"not-a-number"}),
    "huge": (1e308, {"out-of-range"}),
    "huge whole": (10**400, {"out-of-range"}),
    "-1": (-1, {"out-of-range"}),
    "list": ([9.525], {"not-a-number"}),
    "object": ({"value": 9.525}, {"not-a-number"}),
    "nested": ([[{"a": [1]}]], {"not-a-number"}),
}


def numeric_fields(payload: Payload, path: str = "") -> Iterator[str]:
    """Dotted paths of every number; of a list one of every make, and its last, stand for all."""
    for name, value in payload.items():
        here = path + name
        if isinstance(value, dict):
            yield from numeric_fields(value, here + ".")
        elif isinstance(value, list):
            made = {tuple(one) if isinstance(one, dict) else (): i for i, one in enumerate(value)}
            for i in sorted({0, *made.values()} if value else ()):
                one = value[i]
                if isinstance(one, dict):
                    yield from numeric_fields(one, f"{here}[{i}].")
                elif not isinstance(one, str):
                    yield f"{here}[{i}]"
        elif not isinstance(value, (str, bool)):
            yield here


def replaced(payload: Payload, path: str, value: Any) -> Payload:
    """The same input with one value changed."""
    changed = deepcopy(payload)
    *parents, last = steps(path)
    holder: Any = changed
    for step in parents:
        holder = holder[step]
    holder[last] = value
    return changed


def steps(path: str) -> list[str | int]:
    """Names and places of a dotted path."""
    found = path.replace("[", ".").replace("]", "").split(".")
    return [int(step) if step.isdigit() else step for step in found]


def refusal(name: str, payload: Any) -> list[dict[str, Any]]:
    with pytest.raises(Refused) as caught:
        run(name, payload)
    return caught.value.problems


FIELDS = [(case, path) for case, (_, good) in GOOD.items() for path in numeric_fields(good)]


@pytest.mark.parametrize("case", GOOD)
def test_the_inputs_are_good_as_they_stand(case: str) -> None:
    name, payload = GOOD[case]
    assert run(name, payload)["calc"] == name


def test_every_input_of_the_glossary_is_tried() -> None:
    tried = {path.split(".")[-1].split("[")[0] for _, path in FIELDS}
    asked = {name for name, term in TERMS.items() if term.low is not None}
    # What the study alone asks is tried with it, in tests/lab/test_torsion.py.
    studied = {term.name for term in glossary_torsion.TERMS}
    assert tried == asked - RECORDED - studied


def term_of(path: str) -> Any:
    return TERMS[path.split(".")[-1].split("[")[0]]


@pytest.mark.parametrize(("case", "path"), FIELDS, ids=[f"{c}:{p}" for c, p in FIELDS])
def test_nonsense_is_refused_by_name(case: str, path: str) -> None:
    name, good = GOOD[case]
    for kind, (value, codes) in NONSENSE.items():
        # Below nothing there are temperatures, and chains shorter than nominal.
        if kind == "-1" and term_of(path).low < 0:
            continue
        problems = refusal(name, replaced(good, path, value))
        named = [p for p in problems if p["field"] == path]
        assert [p["code"] for p in named] == [*codes], (kind, problems)
        for problem in named:
            assert problem["need"], kind
            assert problem["next_step"], kind
            assert problem["need"] in problem["text"], kind
            # What was got comes back, as far as JSON and a screen can carry it.
            if isinstance(value, float) and not math.isfinite(value):
                told = {"nan": "NaN", "inf": "Infinity"}.get(str(value), "-Infinity")
                assert problem["got"] == told, kind
            elif isinstance(value, (str, bool)) or value in (-1, 1e308):
                assert problem["got"] == value, kind
                assert type(problem["got"]) is type(value), kind
        # One thing was wrong, so nothing else is complained of, and the service can send it on.
        assert problems == named, kind
        json.dumps(problems, allow_nan=False)


@pytest.mark.parametrize(("case", "path"), FIELDS, ids=[f"{c}:{p}" for c, p in FIELDS])
def test_just_out_of_range_is_refused_with_the_range(case: str, path: str) -> None:
    name, good = GOOD[case]
    term = term_of(path)
    for bound, away in ((term.low, -math.inf), (term.high, math.inf)):
        value = bound + math.copysign(1, away) if term.whole else math.nextafter(bound, away)
        problems = refusal(name, replaced(good, path, value))
        assert [(p["field"], p["code"]) for p in problems] == [(path, "out-of-range")]
        for end in (term.low, term.high):
            assert str(end) in problems[0]["need"]
        assert term.unit in problems[0]["need"]


WHOLE = [(case, path) for case, path in FIELDS if term_of(path).whole]


@pytest.mark.parametrize(("case", "path"), WHOLE)
def test_part_of_a_tooth_is_refused(case: str, path: str) -> None:
    name, good = GOOD[case]
    problems = refusal(name, replaced(good, path, 21.5))
    assert [(p["field"], p["code"]) for p in problems] == [(path, "not-whole")]


@pytest.mark.parametrize(("case", "path"), WHOLE)
def test_a_whole_number_may_be_written_with_a_point(case: str, path: str) -> None:
    # JSON has one kind of number: 22 and 22.0 are the same.
    name, good = GOOD[case]
    value: Any = good
    for step in steps(path):
        value = value[step]
    assert run(name, replaced(good, path, float(value))) == run(name, good)


@pytest.mark.parametrize("case", GOOD)
def test_an_unknown_field_is_named(case: str) -> None:
    name, good = GOOD[case]
    inner = ("measurements[1].unit", "trials[1].chains", "bench[0].u", "gears[0].gear", "heat.oil")
    for path in ("pitchmm", "drive.teeth", "own_limit.limit", *inner):
        if steps(path)[0] not in good and "." in path:
            continue
        problems = refusal(name, replaced(good, path, 1))
        assert [(p["field"], p["code"]) for p in problems] == [(path, "unknown-field")]


NEEDED = {
    "drive": ["drive", "drive.pitch_mm", "drive.crank_teeth", "drive.links"],
    "pins": ["method", "pitches", "readings_mm", "pitch_mm", "own_limit.source"],
    "jaws": ["inside_readings_mm", "outside_readings_mm", "drive.centre_distance_mm"],
    "slack": ["drive", "method", "readings_mm", "drive.cam_teeth", "own_limit.quantity"],
    "degrees": ["drive", "method", "readings_deg"],
    "arc": ["damper_diameter_mm", "readings_mm"],
    "heat": ["drive", "expansion_source"],
    "bored": ["drive", "new_centre_distance_mm"],
    "over pins": ["method", "pin_diameter_mm", "teeth", "pitch_mm", "readings_mm"],
    "over chain": ["gear", "roller_diameter_mm"],
    "combined": [
        "drive", "measurements", "measurements[0].quantity", "measurements[1].movement_mm",
        "measurements[1].standard_uncertainty_mm", "measurements[2].crank_rock_deg",
    ],
    "fit": [
        "drive", "chains", "gear_sets", "trials", "trials[0].chain", "trials[1].gear_set",
        "trials[0].movement_mm", "trials[1].standard_uncertainty_mm", "bench[0].chain",
        "bench[0].elongation_percent", "gears[0].added_excess_mm", "heat.block_material",
    ],
}  # fmt: skip


@pytest.mark.parametrize(("case", "path"), [(c, p) for c, ps in NEEDED.items() for p in ps])
@pytest.mark.parametrize("how", ["left out", "null"])
def test_what_is_missing_is_named(case: str, path: str, how: str) -> None:
    name, good = GOOD[case]
    changed = replaced(good, path, None)
    if how == "left out":
        *parents, last = steps(path)
        holder: Any = changed
        for step in parents:
            holder = holder[step]
        del holder[last]
    problems = refusal(name, changed)
    assert (path, "missing") in [(p["field"], p["code"]) for p in problems]


@pytest.mark.parametrize(
    ("case", "path", "value", "code"),
    [
        ("slack", "method", "both-ways", "not-a-choice"),
        ("slack", "method", 3, "not-a-choice"),
        ("drive", "drive.drive_kind", "belt", "not-a-choice"),
        ("drive", "drive.centres", ["fixed"], "not-a-choice"),
        ("slack", "readings_mm", 5.5, "not-a-list"),
        ("slack", "readings_mm", {"0": 5.5}, "not-a-list"),
        ("slack", "readings_mm", [], "empty-list"),
        ("slack", "readings_mm", [5.0] * 51, "too-many"),
        ("slack", "drive", [WORKED], "not-an-object"),
        ("slack", "own_limit", "0.5 %", "not-an-object"),
        ("jaws", "pitch_mm", 8.0, "conflict"),
        ("pins", "roller_diameter_mm", 9.525, "conflict"),
        ("drive", "drive.roller_diameter_mm", 9.6, "conflict"),
        ("drive", "drive.centre_distance_mm", 100.0, "gears-collide"),
        ("drive", "drive.cam_teeth", 43, "not-half-speed"),
        ("drive", "drive.links", 56, "chain-too-short"),
        ("heat", "window_upper_mm", 4.0, "conflict"),
        ("heat", "movement_mm", 150.0, "out-of-range"),
        ("heat", "block_material", "bronze", "not-a-choice"),
        ("heat", "expansion_source", "  ", "not-text"),
        ("bored", "window_upper_mm", 5.0, "conflict"),
        ("bored", "new_centre_distance_mm", 100.0, "gears-collide"),
        ("bored", "movement_mm", 150.0, "out-of-range"),
        ("over pins", "method", "over-teeth", "not-a-choice"),
        ("over chain", "gear", "idler", "not-a-choice"),
        ("over chain", "teeth", 44, "conflict"),
        ("over chain", "pitch_mm", 9.525, "conflict"),
        ("combined", "measurements", {"quantity": "movement_mm"}, "not-a-list"),
        ("combined", "measurements", [], "empty-list"),
        ("combined", "measurements[1]", 3, "not-an-object"),
        ("fit", "trials[0]", "a on p", "not-an-object"),
        ("combined", "measurements[1].quantity", "sag_mm", "not-a-choice"),
        ("combined", "measurements[1].movement_mm", 150.0, "out-of-range"),
        ("fit", "chains", "a", "not-a-list"),
        ("fit", "chains", ["a", "b", "a"], "not-a-list"),
        ("fit", "chains", [], "not-a-list"),
        ("fit", "chains", ["a", 3], "not-a-list"),
        ("fit", "chains", [f"c{i}" for i in range(61)], "not-a-list"),
        ("fit", "gear_sets", ["p", "q", ""], "not-a-list"),
        ("fit", "trials", {}, "not-a-list"),
        ("fit", "trials[0].chain", "z", "not-a-choice"),
        ("fit", "trials[1].gear_set", "z", "not-a-choice"),
        ("fit", "trials[1].centre_distance_mm", 100.0, "gears-collide"),
        ("fit", "trials[0].movement_mm", 150.0, "out-of-range"),
        ("fit", "bench[0].chain", "z", "not-a-choice"),
        ("fit", "gears[0].gear_set", 3, "not-a-choice"),
        ("fit", "gears", "none", "not-a-list"),
        ("fit", "heat", "hot", "not-an-object"),
        ("fit", "heat.gear_material", "wood", "not-a-choice"),
    ],
)
def test_what_no_number_shows(case: str, path: str, value: Any, code: str) -> None:
    name, good = GOOD[case]
    problems = refusal(name, replaced(good, path, value))
    assert (path, code) in [(p["field"], p["code"]) for p in problems]


@pytest.mark.parametrize(
    ("case", "path", "most"), [("combined", "measurements", 10), ("fit", "trials", 500)]
)
def test_too_many_are_refused(case: str, path: str, most: int) -> None:
    name, good = GOOD[case]
    many = [good[path][i % len(good[path])] for i in range(most + 1)]
    assert run(name, replaced(good, path, many[:most]))
    problems = refusal(name, replaced(good, path, many))
    assert [(p["field"], p["code"]) for p in problems] == [(path, "too-many")]


@pytest.mark.parametrize("case", ["heat", "bored"])
def test_half_a_window_is_not_held_against_a_figure_never_sent(case: str) -> None:
    """Only "from 7 mm" is given: the complaint must be of that, or of the end that is missing."""
    name, good = GOOD[case]
    half = {field: value for field, value in good.items() if field != "window_upper_mm"}
    for problem in refusal(name, {**half, "window_lower_mm": 7.0}):
        assert problem["code"] == "missing" or problem["field"] in half, problem


@pytest.mark.parametrize("part", ["block", "gear", "chain"])
def test_a_material_and_a_figure_of_ones_own_cannot_both_hold(part: str) -> None:
    name, good = GOOD["heat"]
    problems = refusal(name, {**good, f"{part}_material": "grey-iron"})
    assert {p["code"] for p in problems} == {"conflict"}
    assert {p["field"] for p in problems} <= {f"{part}_material", f"{part}_expansion_ppm"}


def test_all_problems_are_told_at_once() -> None:
    payload = {
        "drive": {**DRIVE, "pitch_mm": "3/8", "links": 58.5},
        "method": "sideways",
        "readings_mm": [5.5, None, -2],
        "note": "hello",
    }
    found = {(p["field"], p["code"]) for p in refusal("slack", payload)}
    assert found == {
        ("drive.pitch_mm", "not-a-number"),
        ("drive.links", "not-whole"),
        ("method", "not-a-choice"),
        ("readings_mm[1]", "not-a-number"),
        ("readings_mm[2]", "out-of-range"),
        ("note", "unknown-field"),
    }


@pytest.mark.parametrize("payload", [None, [], 3, "drive", True, [WORKED]])
@pytest.mark.parametrize("name", [*CALCS, "limits", "materials"])
def test_what_is_no_object_is_refused(name: str, payload: Any) -> None:
    assert "not-an-object" in {p["code"] for p in refusal(name, payload)}


def test_an_unknown_calculation_is_refused() -> None:
    assert [p["code"] for p in refusal("belt", {})] == ["unknown-calc"]
    answer = json.loads(dispatch("slack", "{nonsense"))
    assert [p["code"] for p in answer["problems"]] == ["not-json"]


def test_a_centre_distance_so_uncertain_that_the_gears_may_touch_is_refused() -> None:
    """9 and 18 teeth of 8 mm pitch touch at 34.7 mm; of 40 mm that leaves 5.3, and half of it."""
    drive = {"pitch_mm": 8.0, "crank_teeth": 9, "cam_teeth": 18, "centre_distance_mm": 40.0}
    drive |= {"links": 24, "centre_distance_error_mm": 8.0}
    with pytest.raises(Refused) as caught:
        run("slack", {"drive": drive, "method": "total", "readings_mm": [2.0]})
    assert [p["field"] for p in caught.value.problems] == ["drive.centre_distance_error_mm"]
    drive["centre_distance_error_mm"] = 2.0
    assert run("slack", {"drive": drive, "method": "total", "readings_mm": [2.0]})["state"]

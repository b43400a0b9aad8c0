"""Adjusters: published steps, the nearest of all settings, ties, what is out of reach."""

import itertools
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.drives import Payload, floats
from core.test_bad_input import refusal
from midspan.core import run
from midspan.core.adjuster import crank_degrees_per, tooth_step

INCH = 25.4
VERNIER = {"kind": "vernier", "unit": "crank-deg", "reach": 10, "mark": 2}
TEETH = {"kind": "teeth"}
BUSHINGS = {"kind": "bushings", "unit": "crank-deg", "steps": [0, 2, 4, 6, 8], "ways": "both"}


def adjust(measured: float, target: float, *adjusters: Payload, **more: Any) -> dict[str, Any]:
    asked = {"lobe": "intake", "rotation": "clockwise", "adjusters": list(adjusters)}
    return run("adjust", {**asked, "intake_centreline_deg": measured, "target_deg": target, **more})


def test_one_tooth_and_seven_on_a_20_tooth_drive() -> None:
    # Example 12, restorationmini.com, topic 2399: 129 measured, 103 to 104 wanted, about 25 late.
    # One tooth of 18 (dummett.net, Cam timing) and 7 more.
    found = adjust(129, 104, TEETH, VERNIER, crank_teeth=20)
    assert found["wanted_crank_deg"] == 25
    assert found["tooth_crank_deg"] == 18
    tooth, vernier = found["options"][0]["settings"]
    assert tooth["change"] == 1
    assert vernier["change"] == pytest.approx(7)
    assert vernier["marks"] == pytest.approx(3.5)
    assert found["options"][0]["remainder_deg"] == pytest.approx(0)
    assert "tooth-out" in {one["code"] for one in found["warnings"]}


@pytest.mark.parametrize(
    ("teeth", "crank"),
    # 20: dummett.net, 18 CRANK degrees whichever gear is jumped. The others derived.
    [(18, 20.00), (19, 18.95), (20, 18.00), (21, 17.14), (22, 16.36), (24, 15.00)],
)
def test_degrees_of_a_tooth(teeth: int, crank: float) -> None:
    assert tooth_step(teeth) == pytest.approx(crank, abs=0.006)
    # A tooth of the cam gear is 360 / (2 z) of the cam, which the crank turns twice.
    assert crank_degrees_per("cam-deg", None) * 360 / (2 * teeth) == pytest.approx(
        tooth_step(teeth)
    )


def test_offset_keys_and_dowels() -> None:
    # Derived: 0.010 in at 0.625 in on the crank is 0.917 crank degrees; at 0.750 in on the cam
    # 0.764 cam, 1.528 crank degrees.
    key = crank_degrees_per("mm-at-crank", 0.625 * INCH) * 0.010 * INCH
    dowel = crank_degrees_per("mm-at-cam", 0.750 * INCH) * 0.010 * INCH
    assert key == pytest.approx(0.917, abs=0.0006)
    assert dowel == pytest.approx(1.528, abs=0.0006)


def test_a_vernier_hole_of_one_and_a_half_cam_degrees() -> None:
    # stlaroc.com, Measuring TDC: one vernier hole is 1.5 cam degrees; 1 cam degree is 2 of crank.
    holes = {"kind": "holes", "unit": "cam-deg", "steps": [-3, -1.5, 0, 1.5, 3]}
    best = adjust(110, 107, holes)["options"][0]
    assert best["settings"][0]["position"] == 1.5
    assert (best["move_crank_deg"], best["move_cam_deg"]) == (3, 1.5)


def test_a_three_keyway_gear_is_in_the_unit_stated() -> None:
    # enginebuildermag.com: the cam moves +/-2 CAM degrees, so +/-4 of crank. A forum
    # (chevelles.com) says +/-2 and not of which: the unit is never assumed.
    keyways = {"kind": "keyways", "steps": [-2, 0, 2]}
    assert adjust(110, 106, {**keyways, "unit": "cam-deg"})["verdict"]["outcome"] == "set"
    assert adjust(110, 106, {**keyways, "unit": "crank-deg"})["verdict"]["outcome"] == "short"
    problem = refusal("adjust", {
        "lobe": "intake", "rotation": "clockwise", "intake_centreline_deg": 110,
        "target_deg": 106, "adjusters": [keyways],
    })[0]  # fmt: skip
    assert (problem["field"], problem["code"]) == ("adjusters[0].unit", "missing")
    assert "do not agree" in problem["next_step"]


STEPS = st.lists(st.integers(-12, 12), min_size=1, max_size=5, unique=True)


@given(first=STEPS, second=STEPS, measured=floats(95, 130), target=floats(95, 130))
def test_no_setting_comes_nearer_than_the_best(
    first: list[int], second: list[int], measured: float, target: float
) -> None:
    one = {"kind": "bushings", "unit": "crank-deg", "steps": first, "fitted": first[0]}
    two = {"kind": "keyways", "unit": "cam-deg", "steps": second, "fitted": second[-1]}
    found = adjust(measured, target, one, two)
    left = [
        abs(measured - target - (a - first[0]) - 2 * (b - second[-1]))
        for a, b in itertools.product(first, second)
    ]
    best = found["options"][0]
    assert abs(best["remainder_deg"]) == pytest.approx(min(left), abs=2e-6)
    assert found["tied"] <= sum(x < min(left) + 3e-6 for x in left)
    assert best["move_crank_deg"] + best["remainder_deg"] == pytest.approx(measured - target)


@given(measured=floats(100, 115), target=floats(100, 115), fitted=floats(-5, 5))
def test_a_vernier_reaches_what_is_within_its_reach(
    measured: float, target: float, fitted: float
) -> None:
    one = {"kind": "vernier", "unit": "cam-deg", "reach": 6, "fitted": fitted}
    best = adjust(measured, target, one)["options"][0]
    at = fitted + (measured - target) / 2
    assert best["settings"][0]["position"] == pytest.approx(max(-6, min(6, at)), abs=1e-9)
    assert (abs(best["remainder_deg"]) < 1e-9) == (abs(at) <= 6)


def test_an_exact_tie_is_said() -> None:
    found = adjust(110, 105, BUSHINGS)
    assert found["tied"] == 2
    assert found["verdict"]["outcome"] == "tie"
    positions = {option["settings"][0]["position"] for option in found["options"][:2]}
    assert positions == {4, 6}
    # The smaller move first; both are named.
    assert found["options"][0]["settings"][0]["position"] == 4
    assert "+4" in found["verdict"]["headline"]
    assert "+6" in found["verdict"]["headline"]


def test_what_is_out_of_reach_is_said() -> None:
    found = adjust(130, 104, BUSHINGS)
    assert found["verdict"]["outcome"] == "short"
    assert found["options"][0]["remainder_deg"] == 18
    assert "18.0" in found["verdict"]["headline"]


def test_a_cam_that_is_right_is_left_alone() -> None:
    found = adjust(105.4, 105, BUSHINGS, tolerance_deg=1)
    assert found["verdict"]["outcome"] == "leave"
    assert found["direction"]["move"] == "none"


@pytest.mark.parametrize(
    ("rotation", "cam", "target", "move", "turn"),
    [
        ("clockwise", "same", 105, "advance", "clockwise"),
        ("clockwise", "same", 115, "retard", "anticlockwise"),
        ("anticlockwise", "same", 105, "advance", "anticlockwise"),
        ("clockwise", "opposite", 105, "advance", "anticlockwise"),
        ("anticlockwise", "opposite", 115, "retard", "anticlockwise"),
    ],
)
def test_advance_turns_the_cam_in_its_own_direction(
    rotation: str, cam: str, target: float, move: str, turn: str
) -> None:
    found = adjust(110, target, VERNIER, rotation=rotation, cam_turns=cam)["direction"]
    assert (found["move"], found["turn"]) == (move, turn)
    assert turn in found["words"]


def test_a_vernier_is_named_as_finely_as_it_can_be_read() -> None:
    vernier = {"kind": "vernier", "unit": "cam-deg", "reach": 5.0, "mark": 1.0}
    headline = adjust(104.1667, 108, vernier)["verdict"]["headline"]
    assert headline == "Set vernier at -1.92 cam deg (-1.9 marks)"


def test_the_recheck_follows_the_identities_of_a_pure_advance() -> None:
    # ausmini.com, Valve timing diagrams: 20-60/60-20 advanced 5 is 25-55/65-15.
    found = adjust(
        110, 105, VERNIER, exhaust_centreline_deg=110, intake_duration_deg=260,
        exhaust_duration_deg=260,
    )["recheck"]  # fmt: skip
    assert found["intake_opening_btdc_deg"] == pytest.approx(25)
    assert found["intake_closing_abdc_deg"] == pytest.approx(55)
    assert found["exhaust_opening_bbdc_deg"] == pytest.approx(65)
    assert found["exhaust_closing_atdc_deg"] == pytest.approx(15)
    assert found["exhaust_centreline_deg"] == pytest.approx(115)
    assert found["lobe_separation_cam_deg"] == pytest.approx(110)
    assert found["advance_deg"] == pytest.approx(5)


def test_a_cam_of_its_own_leaves_the_other_where_it_is() -> None:
    # ausmini.com: separation closed by 5 cam degrees, here by the intake cam alone twice as far.
    found = adjust(110, 105, VERNIER, exhaust_centreline_deg=110, cams="two")["recheck"]
    assert found["exhaust_centreline_deg"] == 110
    assert found["lobe_separation_cam_deg"] == pytest.approx(107.5)


def test_an_exhaust_is_advanced_to_a_larger_centreline() -> None:
    asked = {"lobe": "exhaust", "exhaust_centreline_deg": 110, "target_deg": 115}
    given = {"rotation": "clockwise", "adjusters": [VERNIER]}
    found = run("adjust", {**asked, **given})
    assert found["wanted_crank_deg"] == 5
    assert found["recheck"]["exhaust_centreline_deg"] == pytest.approx(115)


def test_tdc_cancels_in_the_recheck() -> None:
    whole = adjust(110, 105, VERNIER, plus_minus_deg=0.5)["recheck_plus_minus_deg"]
    freed = adjust(110, 105, VERNIER, plus_minus_deg=0.5, tdc_plus_minus_deg=0.4)
    assert whole == pytest.approx(0.5 * 2**0.5)
    assert freed["recheck_plus_minus_deg"] == pytest.approx(0.3 * 2**0.5)


@pytest.mark.parametrize(
    ("adjusters", "more", "field", "code"),
    [
        ([], {}, "adjusters", "empty-list"),
        ([VERNIER, VERNIER], {}, "adjusters", "conflict"),
        ([TEETH], {}, "adjusters[0].crank_teeth", "missing"),
        ([{**VERNIER, "fitted": 12}], {}, "adjusters[0].fitted", "conflict"),
        ([{**BUSHINGS, "fitted": 3}], {}, "adjusters[0].fitted", "conflict"),
        ([{**BUSHINGS, "steps": [2, 4], "ways": "as-listed"}], {}, "adjusters[0].fitted", None),
        ([{**BUSHINGS, "unit": "mm-at-cam"}], {}, "adjusters[0].radius_mm", "missing"),
        ([{**BUSHINGS, "unit": "degrees"}], {}, "adjusters[0].unit", "not-a-choice"),
        ([VERNIER], {"target_deg": None}, "target_deg", "missing"),
        ([VERNIER], {"intake_centreline_deg": None}, "intake_centreline_deg", "missing"),
        ([VERNIER], {"intake_centreline_deg": 400}, "intake_centreline_deg", "out-of-range"),
        ([VERNIER], {"rotation": "left"}, "rotation", "not-a-choice"),
        ([{**BUSHINGS, "steps": list(range(50)), "ways": "both"}] * 2, {}, "adjusters", "too-many"),
    ],
)
def test_bad_input_is_refused(
    adjusters: list[Payload], more: Payload, field: str, code: str | None
) -> None:
    asked = {"lobe": "intake", "rotation": "clockwise", "intake_centreline_deg": 110}
    problems = refusal("adjust", {**asked, "target_deg": 105, "adjusters": adjusters, **more})
    assert field in [one["field"] for one in problems]
    assert code is None or code in [one["code"] for one in problems]

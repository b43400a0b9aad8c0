"""True TDC: published examples, the wheel zeroed anywhere, what a stop's flex costs."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.drives import Payload, floats
from core.reference import rows
from core.test_bad_input import refusal
from midspan.core import run
from midspan.core.crank_slider import Slider, drop, drop_rate
from midspan.core.phase import angle_of_arc, degrees, radians

INCH = 25.4
# Stroke 3.48 in, rod 5.70 in: the crank of the derived sensitivities below.
CRANK = Slider(3.48 / 2 * INCH, 5.70 * INCH, 0.0)


def tdc(before: list[float], after: list[float], **more: Any) -> dict[str, Any]:
    given = {"method": "positive-stop", "wheel": "both-ways"}
    sides = {"before_readings_deg": before, "after_readings_deg": after}
    return run("tdc", {**given, **sides, **more})


def test_published_stop_readings() -> None:
    # Example 1: 36.75 one way, 35.25 the other: 36 each side, the wheel is 0.75 off.
    said = {
        row["quantity"]: float(row["value"])
        for row in rows("cam-timing-examples")
        if row["example"] == "1"
    }
    found = tdc([said["before_readings_deg"]], [said["after_readings_deg"]])
    assert found["half_angle_deg"] == said["half_angle_deg"]
    assert found["correction_deg"] == said["correction_deg"]
    assert found["measured"]["value"] == -0.75


@pytest.mark.parametrize("second", [290.0, 300.5, 275.0])
def test_a_wheel_zeroed_at_the_first_stop(second: float) -> None:
    # modernvespa.com, post 1831251: N1 read at the second stop, N2 = 360 - N1, TDC = N1 + N2/2.
    found = tdc([0.0], [second], wheel="0-360-down")
    assert found["measured"]["value"] == pytest.approx(second + (360 - second) / 2)


@given(zero=floats(0, 360), half=floats(5, 80), down=st.booleans())
def test_the_wheel_may_be_zeroed_anywhere(zero: float, half: float, down: bool) -> None:
    sign = -1 if down else 1
    sides = [min((zero + sign * at) % 360, 360.0) for at in (-half, half)]
    found = tdc([sides[0]], [sides[1]], wheel="0-360-down" if down else "0-360-up")
    off = (found["measured"]["value"] - zero + 180) % 360 - 180
    assert off == pytest.approx(0, abs=1e-9)
    assert found["half_angle_deg"] == pytest.approx(half, abs=1e-9)
    # Added to what the crank has turned since the wheel's zero, the correction makes TDC zero.
    turned = sign * found["measured"]["value"] + found["correction_deg"]
    assert (turned + 180) % 360 - 180 == pytest.approx(0, abs=1e-9)


@given(half=floats(10, 60), off=floats(-5, 5))
def test_both_ways_and_round_agree(half: float, off: float) -> None:
    both = tdc([half - off], [half + off])
    rounded = tdc([(off - half) % 360], [(off + half) % 360], wheel="0-360-up")
    for name in ("correction_deg", "half_angle_deg", "drop_mm"):
        assert both[name] == pytest.approx(rounded[name], abs=1e-9)
    one, other = both["measured"], rounded["measured"]
    assert one["expanded_uncertainty"] == pytest.approx(other["expanded_uncertainty"], rel=1e-9)


@pytest.mark.parametrize(
    ("down_in", "angle", "per_degree"),
    # Derived for this crank: how deep a stop stands, its angle, piston travel in inches a degree.
    [(0.050, 12.06, 0.0082), (0.100, 17.11, 0.0116), (0.200, 24.34, 0.0160),
     (0.250, 27.30, 0.0178), (0.500, 39.26, 0.0239)],
)  # fmt: skip
def test_the_weight_of_a_depth_error(down_in: float, angle: float, per_degree: float) -> None:
    at = radians(angle)
    assert drop(CRANK, at) / INCH == pytest.approx(down_in, abs=0.0003)
    assert drop_rate(CRANK, at) * radians(1) / INCH == pytest.approx(per_degree, abs=0.00006)
    found = tdc([angle], [angle], stroke_mm=3.48 * INCH, rod_length_mm=5.70 * INCH)
    assert found["depth_rate_mm_per_deg"] / INCH == pytest.approx(per_degree, abs=0.00006)
    assert found["drop_mm"] / INCH == pytest.approx(down_in, abs=0.0003)


def test_five_degrees_near_tdc_are_nine_thou() -> None:
    # stlaroc.com, Measuring TDC: about 0.009 in.
    found = tdc([5.0], [5.0], stroke_mm=3.48 * INCH, rod_length_mm=5.70 * INCH)
    assert found["drop_mm"] / INCH == pytest.approx(0.009, abs=0.0005)
    assert "shallow" in {one["code"] for one in found["warnings"]}


@pytest.mark.parametrize(
    ("diameter_in", "degrees_off"),
    # Derived: what an eye 0.030 in off the pointer reads wrong.
    [(7, 0.49), (9, 0.38), (11, 0.31), (16, 0.21), (18, 0.19)],
)
def test_parallax_by_wheel_diameter(diameter_in: float, degrees_off: float) -> None:
    assert degrees(angle_of_arc(0.030, diameter_in)) == pytest.approx(degrees_off, abs=0.005)
    wheel = {"wheel_diameter_mm": diameter_in * INCH, "parallax_mm": 0.030 * INCH}
    (line,) = [
        row
        for row in tdc([36.0], [36.0], **wheel)["measured"]["budget"]
        if row["name"] == "pointer parallax"
    ]
    assert line["standard_uncertainty"] == pytest.approx(degrees_off / math.sqrt(6), rel=0.03)


def test_depth_itself_cancels() -> None:
    """A deeper stop reads more on both sides and finds the same TDC."""
    for half in (20, 25, 30, 50):
        assert tdc([half + 0.5], [half - 0.5])["measured"]["value"] == -0.5


@pytest.mark.parametrize(
    ("more", "outcome"),
    [
        ({}, "unsure"),
        ({"resolution_deg": 0.1, "instrument_error_deg": 0.05, "parallax_mm": 0.1}, "correct"),
    ],
)
def test_the_verdict_knows_what_it_cannot_know(more: Payload, outcome: str) -> None:
    coarse = {} if more else {"resolution_deg": 2.0}
    found = tdc([36.75] * 3, [35.25] * 3, **coarse, **more)
    assert found["verdict"]["outcome"] == outcome


def test_a_true_wheel_is_left_alone() -> None:
    assert tdc([36.0, 36.25, 36.0], [36.0] * 3)["verdict"]["outcome"] == "true"


@pytest.mark.parametrize(
    ("before", "after", "wheel", "code"),
    [
        ([36], [324], "0-360-up", "wrong-way-round"),
        ([324], [36], "0-360-down", "wrong-way-round"),
        ([10], [10], "0-360-up", "wrong-way-round"),
        ([324], [36], "both-ways", "out-of-range"),
        ([100], [100], "both-ways", "wrong-way-round"),
        ([361], [36], "0-360-up", "out-of-range"),
        ([-3], [36], "both-ways", "out-of-range"),
        ([36], [36], "0-180", "not-a-choice"),
        ([], [36], "both-ways", "empty-list"),
    ],
)
def test_a_wheel_read_the_wrong_way_is_refused(
    before: list[float], after: list[float], wheel: str, code: str
) -> None:
    sides = {"before_readings_deg": before, "after_readings_deg": after}
    problems = refusal("tdc", {"method": "positive-stop", "wheel": wheel, **sides})
    assert code in {one["code"] for one in problems}
    if code == "wrong-way-round":
        assert "Swap" in problems[0]["next_step"]


def test_a_drop_that_does_not_go_with_the_wheel_is_told() -> None:
    crank = {"stroke_mm": 88.4, "rod_length_mm": 144.8}
    right = tdc([36.0], [36.0], drop_mm=10.8, **crank)
    wrong = tdc([36.0], [36.0], drop_mm=2.5, **crank)
    assert "drop-against-wheel" not in {one["code"] for one in right["warnings"]}
    assert "drop-against-wheel" in {one["code"] for one in wrong["warnings"]}


def test_a_slipped_wheel_shows_in_its_scatter() -> None:
    codes = {one["code"] for one in tdc([36, 36, 39], [35, 35, 35])["warnings"]}
    assert "wheel-slipped" in codes

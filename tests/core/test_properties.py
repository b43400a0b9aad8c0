"""What must hold for any drive and any reading, searched by hypothesis."""

import math
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from core.drives import Payload, cam_drives, floats
from midspan.core import run
from midspan.core.drive import Drive, elongation_of, excess_length, geometry
from midspan.core.movement import (
    excess_from_movement,
    excess_from_sag,
    movement_from_excess,
    sag_from_excess,
)
from midspan.core.phase import cam_retard, degrees, excess_from_rock, radians, rock_from_excess

EXACT = {"resolution_mm": 0, "instrument_error_mm": 0}
EXACT_DEG = {"resolution_deg": 0, "instrument_error_deg": 0}

STRANDS = floats(20, 2000)


@given(strand=STRANDS, share=floats(1e-5, 0.9))
def test_movement_and_excess_round_trip(strand: float, share: float) -> None:
    movement = strand * share
    excess = excess_from_movement(strand, movement)
    assert movement_from_excess(strand, excess) == pytest.approx(movement, rel=1e-12)
    # Pythagoras, in another form, where it keeps its digits.
    if share > 0.01:
        assert (strand + excess) ** 2 - strand**2 == pytest.approx(movement**2, rel=1e-9)


@given(strand=STRANDS, share=floats(1e-5, 0.2))
def test_sag_and_excess_round_trip(strand: float, share: float) -> None:
    excess = excess_from_sag(strand, strand * share)
    assert sag_from_excess(strand, excess) == pytest.approx(strand * share, rel=1e-12)


@given(radius=floats(10, 200), angle=floats(1e-6, 1.5))
def test_lash_and_excess_round_trip(radius: float, angle: float) -> None:
    excess = excess_from_rock(radius, angle)
    assert rock_from_excess(radius, excess) == pytest.approx(angle, rel=1e-12)
    assert radians(degrees(angle)) == pytest.approx(angle, rel=1e-12)


@given(payload=cam_drives(), elongation=floats(-0.005, 0.04))
def test_elongation_and_excess_round_trip(payload: Payload, elongation: float) -> None:
    drive = Drive(*payload.values())
    taut = geometry(drive).taut_length
    excess = excess_length(drive, taut, elongation)
    assert elongation_of(drive, taut, excess) == pytest.approx(elongation, abs=1e-13)


@settings(max_examples=100)
@given(drive=cam_drives(), movement=floats(0.5, 20))
def test_one_state_whichever_way_it_is_read(drive: Payload, movement: float) -> None:
    """movement -> every reading -> each of them measured -> the same state."""
    total = run(
        "slack", {"drive": drive, "method": "total", "readings_mm": [movement] * 3, **EXACT}
    )
    first = {name: at["value"] for name, at in total["state"].items()}
    pitches = 20
    length = drive["pitch_mm"] * pitches * (1 + first["elongation_percent"] / 100)
    others = [
        ("slack", {"method": "one-way", "readings_mm": [movement / 2] * 3, **EXACT}),
        ("slack", {"method": "sag", "readings_mm": [first["sag_mm"]] * 3, **EXACT}),
        (
            "crank-rock",
            {"method": "crank-degrees", "readings_deg": [first["crank_rock_deg"]] * 3, **EXACT_DEG},
        ),
        (
            "crank-rock",
            {"method": "sprocket-movement", "readings_mm": [first["excess_mm"]] * 3, **EXACT},
        ),
        (
            "elongation",
            {"method": "pin-to-pin", "pitches": pitches, "readings_mm": [length] * 3, **EXACT},
        ),
    ]
    for name, payload in others:
        state = run(name, {"drive": drive, **payload})["state"]
        for quantity, value in first.items():
            # A length is the difference of two large ones: 1e-12 of it is what is left of a slack.
            assert state[quantity]["value"] == pytest.approx(value, rel=1e-7, abs=1e-7), (
                payload["method"],
                quantity,
            )


@settings(max_examples=100)
@given(drive=cam_drives(), movements=st.tuples(floats(0, 20), floats(0, 20)))
def test_everything_grows_with_movement(drive: Payload, movements: tuple[float, float]) -> None:
    states = [
        run("slack", {"drive": drive, "method": "total", "readings_mm": [m] * 3, **EXACT})["state"]
        for m in sorted(movements)
    ]
    for name in states[0]:
        assert states[0][name]["value"] <= states[1][name]["value"] + 1e-12, name
    if movements[0] != movements[1] and min(movements) > 0.01:
        grown = states[1]["excess_mm"]["value"] - states[0]["excess_mm"]["value"]
        assert grown > 0 or abs(movements[0] - movements[1]) < 1e-9


@given(payload=cam_drives(), scale=floats(0.5, 3))
def test_scaling_every_length_scales_the_excess_and_leaves_the_angles(
    payload: Payload, scale: float
) -> None:
    drive = Drive(*payload.values())
    larger = Drive(
        scale * drive.pitch,
        drive.crank_teeth,
        drive.cam_teeth,
        scale * drive.centre_distance,
        drive.links,
    )
    small, large = geometry(drive), geometry(larger)
    assert large.angle == pytest.approx(small.angle, rel=1e-12)
    assert large.taut_pitches == pytest.approx(small.taut_pitches, rel=1e-12)
    excesses = [
        excess_length(d, g.taut_length, 0.001) for d, g in ((drive, small), (larger, large))
    ]
    assert excesses[1] == pytest.approx(scale * excesses[0], rel=1e-9, abs=1e-9)
    e = 0.5
    assert movement_from_excess(large.strand, scale * e) == pytest.approx(
        scale * movement_from_excess(small.strand, e), rel=1e-12
    )
    assert rock_from_excess(large.crank_radius, scale * e) == pytest.approx(
        rock_from_excess(small.crank_radius, e), rel=1e-12
    )
    assert cam_retard(large.strand, large.cam_radius, 0.01) == pytest.approx(
        cam_retard(small.strand, small.cam_radius, 0.01), rel=1e-12
    )


@given(
    teeth=st.tuples(st.integers(9, 60), st.integers(9, 60)),
    spare=floats(1, 10),
)
def test_the_drive_is_the_same_seen_from_the_other_gear(
    teeth: tuple[int, int], spare: float
) -> None:
    reach = sum(4.7625 / math.sin(math.pi / z) for z in teeth)
    shapes = [geometry(Drive(9.525, a, b, reach * spare, 100)) for a, b in (teeth, teeth[::-1])]
    assert shapes[0].taut_pitches == pytest.approx(shapes[1].taut_pitches, rel=1e-12)
    assert shapes[0].strand == pytest.approx(shapes[1].strand, rel=1e-12)
    assert shapes[0].angle == pytest.approx(-shapes[1].angle, abs=1e-12)
    assert shapes[0].crank_radius == shapes[1].cam_radius


NEVER_NEGATIVE = ("movement_mm", "sag_mm", "crank_rock_deg")


def check_interval(name: str, at: dict[str, Any]) -> None:
    assert at["low"] <= at["value"] <= at["high"], name
    assert at["standard_uncertainty"] >= 0
    if name in NEVER_NEGATIVE:
        assert at["low"] >= 0, name


@settings(max_examples=200)
@given(
    drive=cam_drives(),
    readings=st.lists(floats(0, 15), min_size=1, max_size=6),
    half=floats(0, 1),
    method=st.sampled_from(("total", "one-way", "sag")),
)
def test_intervals_hold_their_value_slack(
    drive: Payload, readings: list[float], half: float, method: str
) -> None:
    payload = {"drive": {**drive, "centre_distance_error_mm": half}, "method": method}
    found = run("slack", {**payload, "readings_mm": readings})
    check_interval("", found["measured"])
    for name, at in found["state"].items():
        check_interval(name, at)


@settings(max_examples=200)
@given(
    drive=cam_drives(),
    percents=st.lists(floats(-0.5, 3), min_size=1, max_size=6),
    half=floats(0, 1),
)
def test_intervals_hold_their_value_elongation(
    drive: Payload, percents: list[float], half: float
) -> None:
    nominal = drive["pitch_mm"] * 10
    payload = {
        "drive": {**drive, "centre_distance_error_mm": half},
        "method": "pin-to-pin",
        "pitches": 10,
        "readings_mm": [nominal * (1 + x / 100) for x in percents],
    }
    found = run("elongation", payload)
    check_interval("", found["measured"])
    for name, at in found["state"].items():
        check_interval(name, at)


@settings(max_examples=150)
@given(
    drive=cam_drives(),
    percent=floats(-0.1, 1.5),
    scatter=st.lists(floats(-0.05, 0.05), min_size=3, max_size=6),
    half=floats(0, 0.3),
)
@example(
    drive={
        "pitch_mm": 12.7,
        "crank_teeth": 15,
        "cam_teeth": 30,
        "centre_distance_mm": 236.04142720244442,
        "links": 60,
    },
    percent=-0.046875,
    scatter=[0.0, 0.0, 0.046875],
    half=0.0625,
)
def test_the_ends_of_all_readings_are_of_one_excess(
    drive: Payload, percent: float, scatter: list[float], half: float
) -> None:
    """The strand is known only within what the centre distance is: 1.96 half / sqrt(3), at 95 %.
    That it grows with the centre distance while the excess shrinks turns the steepest direction of
    a movement a little away from that of the excess: a second order, under 1 % of what is measured
    with any care.
    """
    length = drive["pitch_mm"] * 10 * (1 + percent / 100)
    payload = {
        "drive": {**drive, "centre_distance_error_mm": half},
        "method": "pin-to-pin",
        "pitches": 10,
        "readings_mm": [length * (1 + x / 100) for x in scatter],
    }
    state = run("elongation", payload)["state"]
    reach = 1.96 * half / math.sqrt(3) + 1e-6
    built = Drive(*drive.values())
    strands = [geometry(built.at(built.centre_distance + x)).strand for x in (-reach, reach)]
    radius = geometry(built).crank_radius
    for end in ("low", "high"):
        excess = max(0.0, state["excess_mm"][end])
        for name, convert in (("movement_mm", movement_from_excess), ("sag_mm", sag_from_excess)):
            least, most = (convert(strand, excess) for strand in strands)
            assert 0.99 * least - 1e-6 <= state[name][end] <= 1.01 * most + 1e-6, (name, end)
        known = degrees(rock_from_excess(radius, excess))
        assert state["crank_rock_deg"][end] == pytest.approx(known, rel=1e-6, abs=1e-6)


@settings(max_examples=100)
@given(
    drive=cam_drives(),
    readings=st.lists(floats(0, 20), min_size=1, max_size=6),
    half=floats(0, 1),
)
def test_intervals_hold_their_value_rock(
    drive: Payload, readings: list[float], half: float
) -> None:
    around = {**drive, "centre_distance_error_mm": half}
    payload = {"drive": around, "method": "crank-degrees", "readings_deg": readings}
    found = run("crank-rock", payload)
    for name, at in found["state"].items():
        check_interval(name, at)


@settings(max_examples=60)
@given(drive=cam_drives(), points=st.integers(0, 400))
def test_the_curve_climbs_from_taut(drive: Payload, points: int) -> None:
    curve = run("drive", {"drive": drive, "curve_points": points})["curve"]
    assert len(curve) == points
    if points < 2:
        return
    assert curve[0]["movement_mm"] == curve[0]["excess_mm"] == 0
    assert curve[-1]["elongation_percent"] == pytest.approx(3.0)
    for name in ("elongation_percent", "excess_mm", "movement_mm", "crank_rock_deg"):
        column = [row[name] for row in curve]
        assert column == sorted(column)
    shape = geometry(Drive(*drive.values()))
    for row in curve:
        assert row["movement_mm"] == pytest.approx(
            math.sqrt((shape.strand + row["excess_mm"]) ** 2 - shape.strand**2), abs=1e-5
        )

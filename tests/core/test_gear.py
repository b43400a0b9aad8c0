"""Worn gears: readings over pins and over the chain, and what the loss adds to slack."""

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats
from shapely import Point, union_all

from core.drives import WORKED, Payload, cam_drives, floats
from core.reference import rows, source
from midspan.core import run
from midspan.core.drive import Drive, geometry, pitch_radius
from midspan.core.errors import Refused
from midspan.core.gear import excess_from_radius_loss, over_pins, pitch_diameter_over_pins

EXACT = {"resolution_mm": 0, "instrument_error_mm": 0}


def gear(*readings: float, **more: Any) -> dict[str, Any]:
    """A gear of 36 teeth of 8 mm, read over a new chain, unless more is said."""
    payload = {"method": "over-chain", "roller_diameter_mm": 5.6, "teeth": 36, "pitch_mm": 8}
    return run("gear", {**payload, "readings_mm": list(readings), **more})


@pytest.mark.parametrize("row", rows("over-pins-from-memory"), ids=lambda row: row["teeth"])
def test_the_recalled_formulas_are_carried_out_as_recalled(row: dict[str, str]) -> None:
    assert source("over-pins-from-memory")["status"] == "from memory, unverified"
    pitch, teeth, pin = float(row["pitch_mm"]), int(row["teeth"]), float(row["pin_diameter_mm"])
    diameter, measured = float(row["pitch_diameter_mm"]), float(row["over_pins_mm"])
    assert 2 * pitch_radius(pitch, teeth) == pytest.approx(diameter, abs=0.0006)
    assert over_pins(2 * pitch_radius(pitch, teeth), teeth, pin) == pytest.approx(
        measured, abs=0.0006
    )
    found = run("gear", {"method": "over-pins", "pin_diameter_mm": pin, "teeth": teeth,
                         "pitch_mm": pitch, "readings_mm": [measured] * 3, **EXACT})  # fmt: skip
    assert found["nominal_pitch_diameter_mm"] == pytest.approx(diameter, abs=0.0006)
    assert found["radius_loss_mm"]["value"] == pytest.approx(0, abs=0.0006)
    told = {w["code"]: w for w in found["warnings"]}
    assert told["formula-from-memory"]["origin"] == "from memory, unverified"


@pytest.mark.parametrize("teeth", range(9, 151))
@pytest.mark.parametrize("pitch", [6.35, 9.525])
def test_pins_on_the_pitch_circle_by_their_coordinates(pitch: float, teeth: int) -> None:
    """Place a pin in every gap; the farthest two are what the caliper finds."""
    r, pin = pitch / 2 / math.sin(math.pi / teeth), pitch * 0.6
    centres = [
        (r * math.cos(2 * math.pi * k / teeth), r * math.sin(2 * math.pi * k / teeth))
        for k in range(teeth)
    ]
    farthest = max(math.dist(centres[0], other) for other in centres)
    assert over_pins(2 * r, teeth, pin) == pytest.approx(farthest + pin, rel=1e-13)


@given(diameter=floats(10, 2000), teeth=st.integers(9, 150), pin=floats(1, 100))
def test_over_pins_and_back(diameter: float, teeth: int, pin: float) -> None:
    measured = over_pins(diameter, teeth, pin)
    assert pitch_diameter_over_pins(measured, teeth, pin) == pytest.approx(diameter, rel=1e-11)
    assert measured <= diameter + pin


MANUAL = rows("service-manual-over-chain")


def test_one_roller_explains_the_manuals_new_figure_and_the_other_gears_limit() -> None:
    # 97.4 new on 36 teeth of 8 mm (catalogue 91.79): a roller of 5.6; then 18 teeth (46.07) read
    # 51.67 when new, and the manual's least of 51.6 lies just below.
    new = next(row for row in MANUAL if row["state"] == "new")
    diameter = next(
        row for row in rows("sprocket-catalogue-pitch-8") if row["teeth"] == new["teeth"]
    )["pitch_diameter_mm"]
    roller = float(new["roller_diameter_mm"])
    assert float(diameter) + roller == pytest.approx(float(new["reading_mm"]), abs=0.05)
    assert over_pins(2 * pitch_radius(8, 36), 36, roller) == pytest.approx(97.4, abs=0.05)
    small = over_pins(2 * pitch_radius(8, 18), 18, roller)
    assert small == pytest.approx(51.68, abs=0.011)
    assert 51.6 < small < 51.7


@pytest.mark.parametrize("row", MANUAL, ids=lambda row: row["reading_mm"])
def test_the_manuals_figures_as_loss_of_radius(row: dict[str, str]) -> None:
    teeth, reading = int(row["teeth"]), float(row["reading_mm"])
    found = gear(reading, reading, reading, teeth=teeth)
    new = 8 / math.sin(math.pi / teeth) + 5.6
    assert found["radius_loss_mm"]["value"] == pytest.approx((new - reading) / 2, abs=1e-9)
    # 97.4 is new; the limits allow 0.05, 0.6 and 0.04 mm.
    assert -0.01 < found["radius_loss_mm"]["value"] < 0.61
    if row["state"] == "least allowed":
        held = [j for j in found["judgements"] if j["limit"]["lower"] == reading]
        assert [j["limit"]["origin"] for j in held] == ["published"]
        assert held[0]["limit_value"] == reading
        assert row["address"].split(",")[0] in held[0]["limit"]["address"]


@pytest.mark.parametrize(
    ("reading", "outcomes", "verdict"),
    # Two in print for this gear, 97.3 and 96.2 least; exact readings.
    [
        (97.4, ("within", "within"), {"within"}),
        (97.3, ("within", "within"), {"within"}),
        (97.0, ("below", "within"), {"limits-disagree"}),
        (96.2, ("below", "within"), {"limits-disagree"}),
        (96.1, ("below", "below"), {"below"}),
    ],
)
def test_limits_that_disagree_are_not_passed_off_as_one(
    reading: float, outcomes: tuple[str, str], verdict: set[str]
) -> None:
    found = gear(reading, reading, reading, **EXACT)
    rows_of = {j["limit"]["lower"]: j["outcome"] for j in found["judgements"]}
    assert (rows_of[97.3], rows_of[96.2]) == outcomes
    assert found["verdict"]["outcome"] in verdict


def test_worn_past_one_and_at_the_edge_of_the_other_is_no_close_thing() -> None:
    """A millimetre under one printed limit and just at the other: not "too close to call"."""
    found = gear(96.2, 96.2, 96.2, resolution_mm=0.02, instrument_error_mm=0.03)
    rows_of = {j["limit"]["lower"]: j["outcome"] for j in found["judgements"]}
    assert rows_of == {97.3: "below", 96.2: "too-close"}
    assert found["verdict"]["outcome"] in ("below", "limits-disagree")


@settings(max_examples=100)
@given(value=floats(96.8, 97.8), half=floats(0.001, 0.4))
def test_the_users_own_limit_rules_with_its_guard_band(value: float, half: float) -> None:
    own = {"quantity": "reading_mm", "lower": 97.3, "source": "manual, p. 4"}
    k = stats.norm.ppf(0.975)
    found = gear(value, own_limit=own, repeatability_mm=half / k, **EXACT)
    edge = 97.3
    if abs(abs(value - edge) - half) < 1e-9:
        return
    known = "too-close" if abs(value - edge) < half else "within" if value > edge else "below"
    assert found["verdict"]["outcome"] == known
    assert found["verdict"]["limit"]["origin"] == "maker's manual, entered by the user"


def test_a_gear_of_no_limit_on_file_says_so() -> None:
    # About what a new gear of each reads over the chain: d + d1.
    for read, change in ((107.5, {"teeth": 40}), (114.8, {"pitch_mm": 9.525}),
                         (60.4, {"teeth": 18, "pitch_mm": 9.525})):  # fmt: skip
        found = gear(read, read, read, **change)
        assert found["judgements"] == []
        assert found["verdict"]["outcome"] == "no-limit"
        assert found["verdict"]["next_step"]
    # Limits for a reading over the chain do not speak of one over pins of any diameter.
    pins = run("gear", {"method": "over-pins", "pin_diameter_mm": 6.0, "teeth": 36, "pitch_mm": 8,
                        "readings_mm": [97.8] * 3})  # fmt: skip
    assert pins["judgements"] == []


@settings(max_examples=60)
@given(
    readings=st.lists(floats(97.0, 97.6), min_size=2, max_size=8),
    teeth=st.sampled_from((35, 36)),
    error=floats(0, 0.1),
    resolution=floats(0, 0.1),
)
def test_uncertainty_by_the_gum_and_scipy(
    readings: list[float], teeth: int, error: float, resolution: float
) -> None:
    found = gear(*readings, teeth=teeth, instrument_error_mm=error, resolution_mm=resolution)[
        "radius_loss_mm"
    ]
    n = len(readings)
    centre = sum(readings) / n
    u_a = math.sqrt(sum((x - centre) ** 2 for x in readings) / (n - 1) / n)
    u = math.sqrt(u_a**2 + error**2 / 3 + resolution**2 / 12)
    # An odd gear hides some of its diameter: what is read counts for 1 / cos(pi / 2 z).
    half = (0.5 / math.cos(math.pi / (2 * teeth))) if teeth % 2 else 0.5
    assert found["standard_uncertainty"] == pytest.approx(half * u, rel=1e-9, abs=1e-12)
    nu = math.inf
    if u_a > 0:
        nu = max(1, math.floor((u / u_a) ** 4 * (n - 1) * (1 + 1e-12)))
    k = stats.t.ppf(0.975, nu if nu <= 1000 else math.inf)
    assert found["high"] - found["value"] == pytest.approx(k * half * u, rel=2e-6, abs=1e-12)
    assert found["value"] - found["low"] == pytest.approx(k * half * u, rel=2e-6, abs=1e-12)


def belt(r1: float, r2: float, centre: float) -> float:
    """A belt on two circles, exactly."""
    b = math.asin((r2 - r1) / centre)
    return 2 * centre * math.cos(b) + r1 * (math.pi - 2 * b) + r2 * (math.pi + 2 * b)


@settings(max_examples=100)
@given(drive=cam_drives(), loss=floats(0.001, 0.3), which=st.sampled_from(("crank", "cam")))
def test_added_slack_is_the_change_of_the_exact_belt(
    drive: Payload, loss: float, which: str
) -> None:
    """The wrap is the belt's slope in the radius; the rest is of second order, (dr)^2 / strand."""
    shape = geometry(Drive(*drive.values()))
    radii = {"crank": shape.crank_radius, "cam": shape.cam_radius}
    centre = drive["centre_distance_mm"]
    whole = belt(radii["crank"], radii["cam"], centre)
    h = 1e-4
    slopes = []
    for shift in (h, -h):
        moved = {**radii, which: radii[which] + shift}
        slopes.append(belt(moved["crank"], moved["cam"], centre))
    wrap = (slopes[0] - slopes[1]) / (2 * h)
    assert excess_from_radius_loss(wrap, loss) == pytest.approx(wrap * loss, rel=1e-12)
    # Through the door: a gear read as worn by that much.
    teeth = drive[f"{which}_teeth"]
    reading = over_pins(2 * (radii[which] - loss), teeth, 5.0)
    found = run("gear", {"drive": drive, "gear": which, "method": "over-pins",
                         "pin_diameter_mm": 5.0, "readings_mm": [reading] * 3})  # fmt: skip
    assert found["radius_loss_mm"]["value"] == pytest.approx(loss, abs=1e-9)
    added = found["added_excess_mm"]
    assert added["value"] == pytest.approx(wrap * loss, rel=1e-6)
    worn = {**radii, which: radii[which] - loss}
    exact = whole - belt(worn["crank"], worn["cam"], centre)
    assert added["value"] == pytest.approx(exact, abs=1.01 * loss**2 / shape.strand + 1e-9)
    assert added["low"] <= added["value"] <= added["high"]


def test_the_worked_cam_gear_by_shapely() -> None:
    """0.05 mm of radius gone from the cam gear: the hull round the circles shrinks by its wrap."""
    shape = geometry(Drive(*WORKED.values()))

    def hull(r2: float) -> float:
        circles = [
            Point(0, 0).buffer(shape.crank_radius, quad_segs=4096),
            Point(0, 114.1).buffer(r2, quad_segs=4096),
        ]
        return float(union_all(circles).convex_hull.length)

    shrunk = hull(shape.cam_radius) - hull(shape.cam_radius - 0.05)
    reading = over_pins(2 * (shape.cam_radius - 0.05), 44, 6.35)
    found = run("gear", {"drive": WORKED, "gear": "cam", "method": "over-pins",
                         "pin_diameter_mm": 6.35, "readings_mm": [reading] * 3})  # fmt: skip
    assert found["added_excess_mm"]["value"] == pytest.approx(shrunk, abs=1e-4)


def test_without_a_drive_there_is_no_slack_to_tell() -> None:
    assert gear(97.3)["added_excess_mm"] is None


def test_the_other_gears_reading_is_refused() -> None:
    """Over pins, 22 teeth read 73.3 mm where 44 teeth are meant: a slip, not wear."""
    payload = {"method": "over-pins", "pin_diameter_mm": 6.35, "teeth": 44, "pitch_mm": 9.525}
    with pytest.raises(Refused) as caught:
        run("gear", payload | {"readings_mm": [73.3]})
    (found,) = caught.value.problems
    assert found["field"] == "readings_mm[0]"
    assert "139.87" in found["need"]  # 133.52 + 6.35

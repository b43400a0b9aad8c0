"""What a chain that heat has made too tight pulls, and what the shafts bear of it."""

import math

import pytest
from hypothesis import given
from scipy.optimize import brentq

from core.drives import Payload, cam_drives, floats
from core.test_heat import DRIVE, heat
from midspan.core.drive import Drive, geometry
from midspan.core.heat import Growth, hot_geometry, loop_stiffness, shaft_load, tension


@given(stiffness=floats(1, 1e6), excess=floats(-2, 2))
def test_tension_is_that_of_a_spring_that_cannot_push(stiffness: float, excess: float) -> None:
    pull = tension(stiffness, excess)
    assert pull >= 0
    assert (pull > 0) == (excess < 0 and stiffness * -excess > 0)
    if excess < 0:
        assert pull == pytest.approx(stiffness * abs(excess))


@given(payload=cam_drives(), stiffness=floats(100, 1e5))
def test_the_shaft_load_is_the_slope_of_the_energy(payload: Payload, stiffness: float) -> None:
    """Push the shafts apart by h: the work done is what the spring 1/2 k e^2 takes up."""
    drive = Drive(*payload.values())
    # A chain just 0.1 mm too short for this centre distance.
    length = geometry(drive).taut_length - 0.1

    def energy(shift: float) -> float:
        e = length - geometry(drive.at(drive.centre_distance + shift)).taut_length
        return 0.5 * stiffness * e * e

    h = 1e-3
    slope = (energy(h) - energy(-h)) / (2 * h)
    shape = geometry(drive)
    load = shaft_load(tension(stiffness, -0.1), shape.angle)
    # The chain line's tangents are the pitch circles', its arcs are z pitches long: the two differ
    # a little, and the slope with them (1 - sin(x)/x of a tooth's half angle: below 0.5 %).
    assert load == pytest.approx(slope, rel=0.005)
    assert load <= 2 * tension(stiffness, -0.1)


def test_interference_is_told_with_its_range_and_only_when_there_is_some() -> None:
    found = heat(movement_mm=4.0)
    tight = found["interference"]
    assert tight["interference_mm"] == -found["hot"]["excess_mm"] > 0
    assert found["hot"]["movement_mm"] == found["hot"]["crank_rock_deg"] == 0
    # No stiffness was given: a wide range, said to be assumed and from memory.
    assert tight["tension_high_n"] > 5 * tight["tension_low_n"] > 0
    told = [a for a in found["assumptions"] if a["field"] == "stiffness_n_per_mm"]
    assert [a["origin"] for a in told] == ["from memory, unverified"]
    b = hot_geometry(DRIVE, Growth(21.5e-6 * 70, 12.3e-6 * 70, 12.3e-6 * 70)).angle
    for end in ("low", "high"):
        assert tight[f"shaft_load_{end}_n"] == pytest.approx(
            2 * math.cos(b) * tight[f"tension_{end}_n"], rel=1e-12
        )
    given_by_user = heat(movement_mm=4.0, stiffness_n_per_mm=4000)
    tight = given_by_user["interference"]
    assert tight["tension_low_n"] == tight["tension_high_n"] == 4000 * tight["interference_mm"]
    assert "stiffness_n_per_mm" not in {a["field"] for a in given_by_user["assumptions"]}
    assert heat(movement_mm=9.0)["interference"] is None


@pytest.mark.parametrize("teeth", [(22, 44), (18, 36), (30, 30)], ids=str)
def test_the_bearing_load_is_the_push_of_the_wrap_on_the_gear(teeth: tuple[int, int]) -> None:
    """A chain of pull T bent round an arc pushes with T for each radian of it, inward. Summed over
    the arc that the chain really lies on (the far side of the cam gear, and of the crank gear), the
    push is along the centre line, each shaft towards the other, alike on both.
    """
    drive = Drive(9.525, *teeth, 125.0, 62)
    b, pull, steps = geometry(drive).angle, 350.0, 20000
    # Crank at the origin, cam at (C, 0); each wrap is centred on the direction away from the other.
    loads = []
    for away, wrap in ((math.pi, math.pi - 2 * b), (0.0, math.pi + 2 * b)):
        x = y = 0.0
        for i in range(steps):
            at = away + wrap * ((i + 0.5) / steps - 0.5)
            x -= pull * wrap / steps * math.cos(at)
            y -= pull * wrap / steps * math.sin(at)
        loads.append((x, y))
    (crank_x, crank_y), (cam_x, cam_y) = loads
    known = shaft_load(pull, b)
    assert crank_x == pytest.approx(known, rel=1e-6)
    assert cam_x == pytest.approx(-known, rel=1e-6)
    assert abs(crank_y) < 1e-6 * pull
    assert abs(cam_y) < 1e-6 * pull


@given(payload=cam_drives(), stiffness=floats(500, 2e4), give=floats(0, 50))
def test_shafts_that_give_way_take_their_part(
    payload: Payload, stiffness: float, give: float
) -> None:
    """Solved apart, by bisection: the pull at which chain stretch and shorter centres together make
    up for what the chain is too short, the taut length by its slope with the centre distance.
    """
    drive, short = Drive(*payload.values()), 0.05
    angle = geometry(drive).angle
    compliance = give * 1e-6

    def left(pull: float) -> float:
        nearer = compliance * 2 * pull * math.cos(angle)
        return short - 2 * math.cos(angle) * nearer - pull / stiffness

    pull = brentq(left, 0, stiffness * short + 1)
    assert tension(loop_stiffness(stiffness, compliance, angle), -short) == pytest.approx(pull)


def test_a_stiffness_comes_with_where_it_is_from() -> None:
    tight = {"movement_mm": 3.0}
    assert heat(**tight)["interference"]["origin"] == "from memory, unverified"
    given_by_user = heat(**tight, stiffness_n_per_mm=4000)["interference"]
    assert (given_by_user["origin"], given_by_user["source"]) == ("given by the user", "")
    named = heat(**tight, stiffness_n_per_mm=4000, stiffness_source="test rig")["interference"]
    assert named["origin"] == "maker's manual, entered by the user"
    assert named["source"] == "test rig"
    softer = heat(**tight, stiffness_n_per_mm=4000, compliance_um_per_kn=20)["interference"]
    assert softer["tension_high_n"] < given_by_user["tension_high_n"]

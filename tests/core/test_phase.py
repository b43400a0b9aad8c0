"""Lash and retard: the same slack and wear, read as angles."""

import math

import pytest

from core.drives import WORKED, Payload
from core.reference import rows
from midspan.core import run
from midspan.core.drive import Drive, geometry
from midspan.core.phase import angle_of_arc, cam_retard, degrees, excess_from_rock, radians

GENERAL = {"drive_kind": "general", "cam_teeth": 22, "centre_distance_mm": 170.0, "links": 58}


def rock(drive: Payload, method: str, readings: list[float], **more: float) -> dict:
    unit = "mm" if method in ("damper-arc", "sprocket-movement") else "deg"
    payload = {"drive": drive, "method": method, f"readings_{unit}": readings, **more}
    return run("crank-rock", payload)


PRINTED = {row["what"]: row for row in rows("cam-and-crank-angles")}


def test_arc_on_an_8_inch_rim() -> None:
    # crankshaftcoalition.com: 10 degrees is about 0.7 in on an 8 in rim (exact 0.698).
    assert degrees(angle_of_arc(0.698132, 8)) == pytest.approx(10, abs=1e-4)
    assert 8 * radians(10) / 2 == pytest.approx(0.7, abs=0.05)
    found = rock(WORKED, "damper-arc", [17.73] * 3, damper_diameter_mm=203.2)
    assert found["measured"]["value"] == pytest.approx(10, abs=0.005)


def test_one_inch_on_a_rim_of_18_inches_round() -> None:
    # cargurus discussion: 1/18 x 360 = 20 degrees.
    assert degrees(angle_of_arc(1, 18 / math.pi)) == pytest.approx(20)


def test_twenty_crank_degrees_are_ten_at_the_rotor() -> None:
    # crankshaftcoalition.com: slack at the crank is twice that at the distributor.
    found = rock(WORKED, "rotor-degrees", [10.0] * 3)
    assert found["measured"]["value"] == pytest.approx(20)


def test_the_printed_angles_are_those_checked() -> None:
    assert [row["printed"] for row in PRINTED.values()] == ["0.7 in", "20 deg", "10 deg"]


@pytest.mark.parametrize(
    ("z1", "pitch", "centre", "cam_deg", "by_pitches"),
    # Derived apart from the program: degrees of cam per 1 % of wear, over the pitch radius and
    # counted in pitches. The strands are 120.89 and 107.60 mm.
    [(21, 9.525, 125.0, 1.087, 1.088), (18, 8.0, 110.0, 1.343, 1.345)],
)
def test_cam_degrees_per_percent(
    z1: int, pitch: float, centre: float, cam_deg: float, by_pitches: float
) -> None:
    shape = geometry(Drive(pitch, z1, 2 * z1, centre, 60))
    found = degrees(cam_retard(shape.strand, shape.cam_radius, 0.01))
    assert found == pytest.approx(cam_deg, abs=0.0006)
    assert 0.01 * shape.strand / pitch * 360 / (2 * z1) == pytest.approx(by_pitches, abs=0.0006)


def test_an_eighth_of_an_inch_at_a_40_tooth_gear() -> None:
    # Derived with the published 1/8 in: 3/8 in pitch, 40 teeth, pitch radius 2.390 in; 1/8 in is
    # 3.00 cam and 5.99 crank degrees, 1 mm is 1.89 crank degrees.
    drive = {**WORKED, "crank_teeth": 20, "cam_teeth": 40, "centre_distance_mm": 119.8, "links": 56}
    shape = geometry(Drive(9.525, 20, 40, 119.8, 56))
    assert shape.cam_radius / 25.4 == pytest.approx(2.390, abs=0.0005)
    cam = math.degrees(3.175 / shape.cam_radius)
    assert cam == pytest.approx(3.00, abs=0.005)
    # A gear's radius is not quite in the ratio of its teeth, so the crank turns a hair over twice.
    found = rock(drive, "sprocket-movement", [3.175] * 3)["measured"]["value"]
    assert found == pytest.approx(5.99, rel=0.01)
    assert rock(drive, "sprocket-movement", [1.0] * 3)["measured"]["value"] == pytest.approx(
        1.89, rel=0.01
    )
    # 0.5 % over a 5 in strand: 0.60 cam degrees.
    assert degrees(cam_retard(127.0, shape.cam_radius, 0.005)) == pytest.approx(0.60, abs=0.005)


def test_four_ways_to_read_the_same_lash() -> None:
    shape = geometry(Drive(9.525, 22, 44, 114.10, 58))
    lash = 3.0
    arc = math.radians(lash) * 160 / 2
    travel = math.radians(lash) * shape.crank_radius
    found = [
        rock(WORKED, "crank-degrees", [lash] * 3),
        rock(WORKED, "rotor-degrees", [lash / 2] * 3),
        rock(WORKED, "damper-arc", [arc] * 3, damper_diameter_mm=160.0),
        rock(WORKED, "sprocket-movement", [travel] * 3),
    ]
    for result in found:
        assert result["measured"]["quantity"] == "crank_rock_deg"
        assert result["measured"]["value"] == pytest.approx(lash)
        assert result["state"]["excess_mm"]["value"] == pytest.approx(travel)
    assert excess_from_rock(shape.crank_radius, math.radians(lash)) == pytest.approx(travel)


def test_cam_degrees_are_half_crank_degrees_on_a_cam_drive() -> None:
    state = rock(WORKED, "crank-degrees", [3.0] * 3)["state"]
    for end in ("value", "low", "high"):
        assert state["cam_retard_crank_deg"][end] == 2 * state["cam_retard_deg"][end]


@pytest.mark.parametrize("z2", [22, 33, 66])
def test_a_general_drive_turns_in_the_ratio_of_its_own_teeth(z2: int) -> None:
    """Only a cam drive runs at half speed: elsewhere a driven degree is z2 / z1 driving ones."""
    drive = {**WORKED, **GENERAL, "cam_teeth": z2, "links": 60 + z2, "centre_distance_mm": 250}
    found = rock(drive, "rotor-degrees", [1.0] * 3)
    assert found["measured"]["value"] == pytest.approx(z2 / 22)
    retard = found["state"]["cam_retard_deg"]["value"]
    assert found["state"]["cam_retard_crank_deg"]["value"] == pytest.approx(retard * z2 / 22)

"""Mid-span movement, sag, and the drive worked by hand."""

import math

import pytest
from scipy.optimize import brentq

from core.drives import WORKED
from core.reference import rows
from midspan.core import run
from midspan.core.drive import Drive, geometry, taut_centre_distance
from midspan.core.movement import (
    excess_from_movement,
    excess_from_sag,
    movement_from_excess,
    sag_from_excess,
)

DRIVE = Drive(9.525, 22, 44, 114.155, 58)


def test_the_worked_drive() -> None:
    # Worked by hand, apart from the program, to the digits given.
    shape = geometry(DRIVE)
    assert shape.crank_radius == pytest.approx(33.465, abs=0.0005)
    assert shape.cam_radius == pytest.approx(66.759, abs=0.0005)
    assert shape.strand == pytest.approx(109.192, abs=0.0005)
    assert taut_centre_distance(DRIVE) == pytest.approx(114.155, abs=0.0005)


@pytest.mark.parametrize(
    ("movement_mm", "excess_mm", "percent", "lash_deg", "crank_retard_deg"),
    [(6.35, 0.184, 0.033, 0.32, None), (25.4, 2.92, 0.53, 5.0, 0.99)],
)
def test_the_worked_readings(
    movement_mm: float,
    excess_mm: float,
    percent: float,
    lash_deg: float,
    crank_retard_deg: float | None,
) -> None:
    # At the taut centre distance, so that all excess is wear; half a digit of each figure.
    drive = {**WORKED, "centre_distance_mm": taut_centre_distance(DRIVE)}
    found = run("slack", {"drive": drive, "method": "total", "readings_mm": [movement_mm] * 3})
    state = {name: at["value"] for name, at in found["state"].items()}
    assert state["movement_mm"] == pytest.approx(movement_mm, rel=1e-12)
    assert state["excess_mm"] == pytest.approx(excess_mm, abs=0.005 if excess_mm > 1 else 0.00051)
    step = 0.005 if percent > 0.1 else 0.0006
    assert state["elongation_percent"] == pytest.approx(percent, abs=step)
    assert state["crank_rock_deg"] == pytest.approx(lash_deg, abs=0.05 if lash_deg > 1 else 0.005)
    if crank_retard_deg is not None:
        assert state["cam_retard_crank_deg"] == pytest.approx(crank_retard_deg, abs=0.005)


@pytest.mark.parametrize("row", rows("slack-sag-and-straights"), ids=lambda r: r["sag_mm"])
def test_the_derived_table_of_slack(row: dict[str, str]) -> None:
    strand, sag = float(row["strand_mm"]), float(row["sag_mm"])
    parabola, straights = float(row["excess_parabola_mm"]), float(row["excess_two_straights_mm"])
    assert excess_from_sag(strand, sag) == pytest.approx(parabola, abs=0.000051)
    # Pulled one way by f, a strand moves 2 f in and out.
    assert excess_from_movement(strand, 2 * sag) == pytest.approx(straights, abs=0.000051)


def test_sag_agrees_with_the_handbook_form() -> None:
    # f = 0.433 sqrt(S^2 - L^2), the 0.433 being sqrt(3)/4 (from memory, unverified): the two agree
    # for a shallow sag; for 40 in 1000 it prints 40.04.
    excess = excess_from_sag(1000, 40)
    handbook = 0.433 * math.sqrt((1000 + excess) ** 2 - 1000**2)
    assert handbook == pytest.approx(40.04, abs=0.005)
    assert sag_from_excess(1000, excess) == pytest.approx(40, rel=1e-12)


def catenary_excess(strand: float, sag: float) -> float:
    """Excess length of a true catenary: a (cosh(L / 2a) - 1) = f, S = 2 a sinh(L / 2a)."""

    def miss(a: float) -> float:
        return a * (math.cosh(strand / 2 / a) - 1) - sag

    a = brentq(miss, strand / 20, strand**2 / sag, xtol=1e-12, rtol=1e-14)
    return 2 * a * math.sinh(strand / 2 / a) - strand


@pytest.mark.parametrize("share", [0.01, 0.02, 0.04, 0.1])
def test_the_parabola_is_near_a_catenary_up_to_a_tenth(share: float) -> None:
    # The validity stated is a sag up to a tenth of the strand.
    exact = catenary_excess(1000, 1000 * share)
    assert excess_from_sag(1000, 1000 * share) == pytest.approx(exact, rel=2.6 * share**2 + 1e-6)


def unwrapped(radius: float, half: float, out: float) -> float:
    """How much longer a strand gets on one side when its middle moves out (below 0: in).

    The gear's centre is at (0, -radius), the strand runs along +x from its tangent point at the
    origin; its middle is pushed to (half, out), and the chain leaves the gear at a new tangent.
    """
    middle = math.hypot(half, radius + out)
    straight = math.sqrt(middle**2 - radius**2)
    turned = math.atan2(half, radius + out) - math.acos(radius / middle)
    return straight + radius * turned - half


@pytest.mark.parametrize("movement_mm", [2.0, 6.35, 12.7, 25.4])
def test_two_straights_are_near_the_unwrapping_chain(movement_mm: float) -> None:
    """The formula keeps the ends of the strand still; a real chain leaves its gears a little sooner
    when pushed out and later when pushed in. In and out together the two nearly cancel: within
    0.4 % at 25 mm on the worked drive. One way alone does not: 3.5 % there.
    """
    shape = geometry(DRIVE)
    half = shape.strand / 2
    excess = excess_from_movement(shape.strand, movement_mm)

    def miss(out: float) -> float:
        longer = unwrapped(shape.crank_radius, half, out) + unwrapped(shape.cam_radius, half, out)
        return longer - excess

    out, inward = brentq(miss, 0, 50), -brentq(miss, -28, 0)
    assert out + inward == pytest.approx(movement_mm, rel=0.004 * (movement_mm / 25.4) ** 2)
    assert out > movement_mm / 2 > inward
    assert out == pytest.approx(movement_mm / 2, rel=0.04 * movement_mm / 25.4)


def test_one_way_is_half_of_in_and_out() -> None:
    total = run("slack", {"drive": WORKED, "method": "total", "readings_mm": [9.0, 9.2, 9.4]})
    half = run("slack", {"drive": WORKED, "method": "one-way", "readings_mm": [4.5, 4.6, 4.7]})
    assert half["measured"]["quantity"] == total["measured"]["quantity"] == "movement_mm"
    assert half["measured"]["value"] == pytest.approx(total["measured"]["value"])
    # The same scale reads half as far, so everything it adds counts twice.
    lines = [{line["name"]: line for line in r["measured"]["budget"]} for r in (total, half)]
    for name in ("resolution", "instrument error"):
        one, two = (line[name]["standard_uncertainty"] for line in lines)
        assert two == pytest.approx(2 * one)


def test_a_sag_is_converted_by_the_parabola_and_judged_as_movement() -> None:
    found = run("slack", {"drive": WORKED, "method": "sag", "readings_mm": [2.5, 2.5, 2.5]})
    strand = geometry(Drive(9.525, 22, 44, 114.10, 58)).strand
    excess = 8 * 2.5**2 / (3 * strand)
    assert found["measured"]["quantity"] == "sag_mm"
    assert found["state"]["excess_mm"]["value"] == pytest.approx(excess)
    movement = math.sqrt((strand + excess) ** 2 - strand**2)
    assert found["state"]["movement_mm"]["value"] == pytest.approx(movement)
    # The two models differ by (8/3)/2: the same chain moves 4/sqrt(3) times its sag, in and out.
    assert movement / 2.5 == pytest.approx(4 / math.sqrt(3), rel=0.001)


def test_a_taut_chain_neither_moves_nor_hangs() -> None:
    assert movement_from_excess(100, 0) == movement_from_excess(100, -1) == 0
    assert sag_from_excess(100, 0) == sag_from_excess(100, -1) == 0
    assert excess_from_movement(100, -1) == excess_from_sag(100, -1) == 0

"""Centre distance changed: against working the whole drive out again."""

import math
from typing import Any

import pytest
from hypothesis import given, settings

from core.drives import WORKED, Payload, cam_drives, floats
from midspan.core import run
from midspan.core.drive import Drive, geometry


def bored(drive: Payload, centre: float, **more: Any) -> dict[str, Any]:
    return run("bored", {"drive": drive, "new_centre_distance_mm": centre, **more})


@settings(max_examples=100)
@given(drive=cam_drives(), shift=floats(-0.6, 0.6))
def test_it_is_the_drive_worked_out_anew(drive: Payload, shift: float) -> None:
    centre = drive["centre_distance_mm"] + shift
    found = bored(drive, centre)
    for name, at in (("before", drive["centre_distance_mm"]), ("after", centre)):
        whole = run("drive", {"drive": {**drive, "centre_distance_mm": at}})
        for quantity in ("excess_mm", "movement_mm", "crank_rock_deg"):
            assert found[name][quantity] == pytest.approx(whole[quantity], abs=1e-9)
        assert found[name]["centre_distance_mm"] == at
    change = found["after"]["excess_mm"] - found["before"]["excess_mm"]
    assert found["excess_change_mm"] == pytest.approx(change, abs=1e-12)


@settings(max_examples=100)
@given(drive=cam_drives(), shift=floats(0.001, 0.2))
def test_slack_goes_by_two_cosines_for_each_mm(drive: Payload, shift: float) -> None:
    b = geometry(Drive(*drive.values())).angle
    nearer = bored(drive, drive["centre_distance_mm"] - shift)["excess_change_mm"]
    farther = bored(drive, drive["centre_distance_mm"] + shift)["excess_change_mm"]
    assert farther < 0 < nearer
    assert (nearer - farther) / (2 * shift) == pytest.approx(2 * math.cos(b), rel=0.005)


def test_a_block_line_bored_by_a_tenth() -> None:
    # By hand: b = asin((66.759 - 33.465) / 114.10) = 16.97 deg, 2 cos b = 1.913 mm for each mm.
    found = bored(WORKED, 114.0, movement_mm=5.5)
    assert found["excess_change_mm"] == pytest.approx(0.1913, abs=0.0002)
    # sqrt(109.13^2 + 5.5^2) - 109.13 = 0.1385 before; 0.3298 after, 8.49 mm of movement.
    assert found["before"]["excess_mm"] == pytest.approx(0.1385, abs=0.0001)
    assert found["after"]["movement_mm"] == pytest.approx(8.49, abs=0.01)


@settings(max_examples=100)
@given(drive=cam_drives(), shift=floats(-0.5, 0.5), movement=floats(1, 12))
def test_a_chain_changed_as_told_lands_on_the_window(
    drive: Payload, shift: float, movement: float
) -> None:
    centre = drive["centre_distance_mm"] + shift
    found = bored(drive, centre, movement_mm=movement)
    needed = found["chain_needed"]
    whole = drive["links"] * drive["pitch_mm"]
    for end, name in (("lower", "low"), ("upper", "high")):
        wanted = needed[f"window_{end}_mm"]
        # By its own length: what the fitted chain lacks or has too much.
        excess = found["after"]["excess_mm"] + needed[f"length_change_{name}_mm"]
        strand = geometry(Drive(*{**drive, "centre_distance_mm": centre}.values())).strand
        assert math.sqrt(max(0.0, (strand + excess) ** 2 - strand**2)) == pytest.approx(
            wanted, abs=1e-4
        )
        # By its elongation over nominal: measured as a chain, it gives that movement.
        percent = needed[f"elongation_{name}_percent"]
        state = run(
            "elongation",
            {
                "method": "pin-to-pin",
                "pitches": drive["links"],
                "readings_mm": [whole * (1 + percent / 100)] * 3,
                "drive": {**drive, "centre_distance_mm": centre},
            },
        )["state"]
        assert state["movement_mm"]["value"] == pytest.approx(wanted, abs=1e-4)


def test_the_same_centre_distance_changes_nothing() -> None:
    found = bored(WORKED, WORKED["centre_distance_mm"], movement_mm=5.5)
    assert found["excess_change_mm"] == 0
    assert found["before"] == found["after"]
    assert found["after"]["movement_mm"] == pytest.approx(5.5)


def test_the_window_is_the_trades_unless_given() -> None:
    needed = bored(WORKED, 114.0)["chain_needed"]
    assert (needed["window_lower_mm"], needed["window_upper_mm"]) == (4.7625, 6.35)
    assert needed["origin"] == "common practice, no source"
    own = bored(WORKED, 114.0, window_lower_mm=3, window_upper_mm=4)["chain_needed"]
    assert own["origin"] == "given by the user"

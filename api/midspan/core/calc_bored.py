"""A block whose shafts moved: line bored, or measured mandrel to mandrel and found off."""

from .build import check_centres, check_movement, take_build
from .drive import Drive, elongation_of, excess_length, geometry
from .fields import Form
from .guard import zone
from .movement import excess_from_movement, movement_from_excess
from .phase import degrees, rock_from_excess
from .state import elongation_of_movement
from .version import VERSION
from .wanted import take_window
from .warnings import cautions, drive_warnings


def calculate(payload: object) -> dict[str, object]:
    """Work out what a changed centre distance does to slack, and how much shorter a chain must be.

    Parameters
    ----------
    payload : drive as it was, new_centre_distance_mm, movement_mm measured before (total, by hand)
        or nothing for the chain at nominal length, window_lower_mm and window_upper_mm wanted

    Returns
    -------
    dict: before, after, excess_change_mm, chain_needed, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Both shafts parallel; nothing else changed.

    Reference
    ---------
    The exact taut length, before and after; about -2 cos b for each mm of centre distance.
    """
    form = Form(payload)
    build = take_build(form)
    centre = form.take_number("new_centre_distance_mm")
    movement = form.take_number("movement_mm", required=False)
    lower, upper, origin = take_window(form)
    form.close()
    if build is not None:
        check_centres(form, "new_centre_distance_mm", centre, build)
        check_movement(form, "movement_mm", movement, build.geometry.strand)
    form.finish()
    assert build is not None  # noqa: S101  (finish raised if it was refused)
    assert centre is not None  # noqa: S101
    elongation = elongation_of_movement(build, movement)
    moved = build.drive.at(centre)
    before, after = _excess(build.drive, elongation), _excess(moved, elongation)
    return {
        "calc": "bored",
        "core_version": VERSION,
        "before": _seen(build.drive, before),
        "after": _seen(moved, after),
        "excess_change_mm": after - before,
        "chain_needed": _chain_needed(moved, elongation, lower, upper, origin),
        "assumptions": build.assumptions,
        "warnings": drive_warnings(build),
        "cautions": cautions("turn-by-hand"),
    }


def _excess(drive: Drive, elongation: float) -> float:
    return excess_length(drive, geometry(drive).taut_length, elongation)


def _seen(drive: Drive, excess: float) -> dict[str, object]:
    shape = geometry(drive)
    movement = movement_from_excess(shape.strand, excess)
    return {
        "centre_distance_mm": drive.centre_distance,
        "excess_mm": excess,
        "movement_mm": movement,
        "crank_rock_deg": degrees(rock_from_excess(shape.crank_radius, excess)),
        "zone": zone(movement),
    }


def _chain_needed(
    drive: Drive, elongation: float, lower: float, upper: float, origin: str
) -> dict[str, object]:
    """Give how much the chain must differ from this one to land in the window, and from nominal."""
    shape = geometry(drive)
    now = _excess(drive, elongation)
    wanted = [excess_from_movement(shape.strand, m) for m in (lower, upper)]
    ends = [elongation_of(drive, shape.taut_length, e) for e in wanted]
    return {
        "window_lower_mm": lower,
        "window_upper_mm": upper,
        "origin": origin,
        "length_change_low_mm": wanted[0] - now,
        "length_change_high_mm": wanted[1] - now,
        "elongation_low_percent": 100 * ends[0],
        "elongation_high_percent": 100 * ends[1],
    }

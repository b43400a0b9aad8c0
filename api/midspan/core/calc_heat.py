"""Slack when the engine is hot: what becomes of a cold fit, and which cold fit to aim at."""

import math

from . import limits
from .build import Build, check_movement, take_build
from .drive import excess_length
from .fields import Form
from .figures import fixed
from .guard import zone
from .heat import (
    Growth,
    elongation_for_hot_excess,
    hot_excess,
    hot_geometry,
    shaft_load,
    tension,
)
from .heating import PARTS, Heating, take_heating
from .instrument import assumption
from .materials import MATERIALS
from .movement import excess_from_movement, movement_from_excess
from .phase import degrees, rock_from_excess
from .state import elongation_of_movement
from .student import coverage_factor
from .trials import excess_of_reading
from .version import VERSION
from .wanted import take_window
from .warnings import cautions, drive_warnings, warning

# Range of the stiffness of the loop where none is given, N/mm. A chain alone is thought to have
# a few to 15 kN/mm a span; shafts, bearings and block give way too. From memory, unverified.
STIFFNESS_N_PER_MM = (1000.0, 15000.0)
# What the hot slack is thought to be good for: standard uncertainty of a movement read by hand,
# and the share of its change with heat that materials and temperatures leave open (95 %). Both
# from memory, unverified.
READING_MM, GROWTH_SHARE = 0.3, 0.2
# Shown beside the chosen block in the chart.
COMPARED = ("grey-iron", "aluminium-356")


def calculate(payload: object) -> dict[str, object]:
    """Work out the slack of a drive at running temperature.

    Parameters
    ----------
    payload : drive, movement_mm measured cold (total, by hand) or nothing for the chain at nominal
        length; block_material, gear_material, chain_material, or the expansion of each with
        expansion_source; temperatures; window_lower_mm and window_upper_mm wanted hot;
        stiffness_n_per_mm; curve_points

    Returns
    -------
    dict: cold, hot, interference, cold_target, curves, materials, assumptions, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Each part at one even temperature; thermal figures near room temperature, carried on.

    Reference
    ---------
    See `heat`; expansion coefficients in `materials`, each with its source.
    """
    form = Form(payload)
    build = take_build(form)
    movement = form.take_number("movement_mm", required=False)
    assumed: list[dict[str, object]] = []
    heating, used = take_heating(form, assumed)
    lower, upper, window_origin = take_window(form)
    given = form.take_number("stiffness_n_per_mm", required=False)
    points = int(form.take_number("curve_points", required=False) or 0)
    form.close()
    if build is not None:
        check_movement(form, "movement_mm", movement, build.geometry.strand)
    form.finish()
    assert build is not None  # noqa: S101  (finish raised if it was refused)
    elongation = elongation_of_movement(build, movement)
    growth = heating.growth()
    shape = hot_geometry(build.drive, growth)
    hot = hot_excess(build.drive, growth, elongation, shape)
    stiffness = STIFFNESS_N_PER_MM if given is None else (given, given)
    if given is None and hot < 0:
        text = "Stiffness of the loop, assumed {} to {} N/mm: none was given."
        text = text.format(fixed(stiffness[0], 0), fixed(stiffness[1], 0))
        assumed.append(assumption("stiffness_n_per_mm", stiffness[1], limits.MEMORY, text))
    return {
        "calc": "heat",
        "core_version": VERSION,
        "cold": _seen(build, Growth(0.0, 0.0, 0.0), elongation),
        "hot": _seen(build, growth, elongation),
        "interference": _interference(shape.angle, hot, stiffness),
        "cold_target": _cold_target(build, growth, lower, upper, window_origin),
        "curves": _curves(build, heating, elongation, points),
        "materials": used,
        "assumptions": assumed + build.assumptions,
        "warnings": _doubts(build, growth, elongation, movement) + drive_warnings(build),
        "cautions": cautions("hot"),
    }


def _seen(build: Build, growth: Growth, elongation: float) -> dict[str, object]:
    """Give what the drive would show at these strains."""
    shape = hot_geometry(build.drive, growth)
    excess = hot_excess(build.drive, growth, elongation, shape)
    movement = movement_from_excess(shape.strand, excess)
    return {
        "excess_mm": excess,
        "movement_mm": movement,
        "crank_rock_deg": degrees(rock_from_excess(shape.crank_radius, excess)),
        "centre_distance_mm": build.drive.centre_distance * (1 + growth.block),
        "zone": zone(movement),
    }


def _doubts(
    build: Build, growth: Growth, elongation: float, movement: float | None
) -> list[dict[str, object]]:
    """Say how sure the hot slack can be at all, and when that leaves its zone open."""
    found = []
    shape = hot_geometry(build.drive, growth)
    cold = excess_length(build.drive, build.geometry.taut_length, elongation)
    hot = hot_excess(build.drive, growth, elongation, shape)
    if movement is None:
        text = "For a chain at nominal length, not measured."
        found.append(warning("not-measured", "drive.links", build.drive.links, text))
        base = coverage_factor(None) * build.taut_uncertainty(build.geometry)
    else:
        strand = build.geometry.strand
        spread = excess_of_reading(strand, movement, READING_MM, movement)[1]
        base = coverage_factor(None) * spread
    half = math.sqrt(base**2 + (GROWTH_SHARE * (hot - cold)) ** 2)
    ends = [movement_from_excess(shape.strand, hot + k * half) for k in (-1, 1)]
    if zone(ends[0]) == zone(ends[1]) and (hot - half) * (hot + half) > 0:
        return found
    text = "With the usual doubt of reading, centre distance, materials and temperatures it may"
    text += " move " + fixed(ends[0], 1) + " to " + fixed(ends[1], 1) + " mm hot."
    found.append(warning("hot-too-close", "excess_mm", hot, text, limits.MEMORY))
    return found


def _interference(
    angle: float, hot: float, stiffness: tuple[float, float]
) -> dict[str, object] | None:
    """Give the tension where the hot chain is too short; None where it is not."""
    if hot >= 0:
        return None
    pulls = [tension(k, hot) for k in stiffness]
    loads = [shaft_load(pull, angle) for pull in pulls]
    return {
        "interference_mm": -hot,
        "tension_low_n": pulls[0],
        "tension_high_n": pulls[1],
        "shaft_load_low_n": loads[0],
        "shaft_load_high_n": loads[1],
    }


def _cold_target(
    build: Build, growth: Growth, lower: float, upper: float, origin: str
) -> dict[str, object]:
    """Give the cold movement that becomes the wanted movement when hot."""
    hot = hot_geometry(build.drive, growth)
    # None where even a chain just taut when cold has more slack than that when hot.
    cold: list[float | None] = []
    for wanted in (lower, upper):
        excess = excess_from_movement(hot.strand, wanted)
        elongation = elongation_for_hot_excess(build.drive, growth, excess)
        at = excess_length(build.drive, build.geometry.taut_length, elongation)
        cold.append(movement_from_excess(build.geometry.strand, at) if at >= 0 else None)
    return {
        "hot_lower_mm": lower,
        "hot_upper_mm": upper,
        "cold_lower_mm": cold[0],
        "cold_upper_mm": cold[1],
        "origin": origin,
    }


def _curves(
    build: Build, heating: Heating, elongation: float, points: int
) -> list[dict[str, object]]:
    """Give slack against temperature for the chosen block and for iron and aluminium."""
    blocks = [("chosen", heating.expansion["block"])]
    blocks += [(m.id, m.expansion) for m in MATERIALS if m.id in COMPARED]
    curves: list[dict[str, object]] = []
    for name, coefficient in blocks if points else []:
        expansion = {part: heating.expansion[part] for part in PARTS}
        expansion["block"] = coefficient
        warming = Heating(expansion, heating.cold, heating.hot)
        rows = []
        for i in range(points):
            share = i / (points - 1) if points > 1 else 0.0
            growth = warming.growth(share)
            shape = hot_geometry(build.drive, growth)
            excess = hot_excess(build.drive, growth, elongation, shape)
            at = heating.cold + share * (heating.hot["block"] - heating.cold)
            rows.append(
                {
                    "block_temperature_c": at,
                    "excess_mm": excess,
                    "movement_mm": movement_from_excess(shape.strand, excess),
                }
            )
        curves.append({"block": name, "points": rows})
    return curves

"""Slack when the engine is hot: what becomes of a cold fit, and which cold fit to aim at."""

from collections import namedtuple

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
    loop_stiffness,
    shaft_load,
    tension,
)
from .heating import PARTS, Heating, take_heating
from .hot import Cold, Hot, hot_state, hot_verdict
from .instrument import assumption, budget_rows, interval_dict
from .materials import MATERIALS
from .movement import READING_MM, excess_from_movement, movement_from_excess
from .phase import degrees, rock_from_excess
from .state import elongation_of_movement
from .trials import excess_of_reading
from .version import VERSION
from .wanted import read_cold, take_window
from .warnings import cautions, drive_warnings, warning

# Range of the stiffness of the loop where none is given, N/mm. A chain alone is thought to have
# a few to 15 kN/mm a span; shafts, bearings and block give way too. From memory, unverified.
STIFFNESS_N_PER_MM = (1000.0, 15000.0)
# Shown beside the chosen block in the chart.
COMPARED = ("grey-iron", "aluminium-356")


def calculate(payload: object) -> dict[str, object]:
    """Work out the slack of a drive at running temperature.

    Parameters
    ----------
    payload : drive, movement_mm measured cold (total, by hand) or nothing for the chain at nominal
        length, its standard_uncertainty_mm; block_material, gear_material, chain_material, or the
        expansion of each with expansion_source, and expansion_error_ppm; temperatures, and
        temperature_error_k, cold_temperature_error_k; window_lower_mm and window_upper_mm wanted
        hot; stiffness_n_per_mm, compliance_um_per_kn, stiffness_source; curve_points

    Returns
    -------
    dict: cold, hot, hot_interval, hot_verdict, budget (of the hot excess length [mm]),
    interference, cold_target, curves, materials, assumptions, warnings, cautions

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
    reading = form.take_number("standard_uncertainty_mm", required=False)
    assumed: list[dict[str, object]] = []
    heating, used = take_heating(form, assumed)
    lower, upper, window_origin = take_window(form)
    # What to aim at is no better known than the temperatures and materials that it rests on.
    aim_origin = limits.MEMORY if heating.guessed else window_origin
    loop = _take_loop(form)
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
    if movement is not None and reading is None:
        text = "Uncertainty of the movement read cold, assumed: none was given."
        assumed.append(assumption("standard_uncertainty_mm", READING_MM, limits.MEMORY, text))
    if loop.assumed and hot < 0:
        text = "Stiffness of the loop, assumed {} to {} N/mm: none was given."
        text = text.format(fixed(loop.soft, 0), fixed(loop.stiff, 0))
        assumed.append(assumption("stiffness_n_per_mm", loop.stiff, limits.MEMORY, text))
    seen = hot_state(build, heating, _cold(build, movement, reading))
    return {
        "calc": "heat",
        "core_version": VERSION,
        "cold": _seen(build, Growth(0.0, 0.0, 0.0), elongation),
        "hot": _seen(build, growth, elongation),
        "hot_interval": {name: interval_dict(at) for name, at in seen.intervals.items()},
        "hot_verdict": hot_verdict(seen, lower, upper),
        "budget": budget_rows(seen.budget),
        "interference": _interference(shape.angle, hot, loop),
        "cold_target": _cold_target(build, growth, lower, upper, aim_origin),
        "curves": _curves(build, heating, elongation, points),
        "materials": used,
        "assumptions": assumed + build.assumptions,
        "warnings": (
            _doubts(build, seen, movement) + read_cold(lower, window_origin) + drive_warnings(build)
        ),
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


def _cold(build: Build, movement: float | None, reading: float | None) -> Cold:
    """Give the cold reading as excess length, with its standard uncertainty."""
    if movement is None:
        return Cold(None, 0.0, limits.MEMORY)
    u, origin = (READING_MM, limits.MEMORY) if reading is None else (reading, limits.GIVEN)
    spread = excess_of_reading(build.geometry.strand, movement, u, movement)[1]
    return Cold(excess_from_movement(build.geometry.strand, movement), spread, origin)


def _doubts(build: Build, seen: Hot, movement: float | None) -> list[dict[str, object]]:
    """Say where the hot slack is for a chain not measured, and when its interval leaves it open."""
    found = []
    if movement is None:
        text = "For a chain at nominal length, not measured."
        found.append(warning("not-measured", "drive.links", build.drive.links, text))
    if hot_verdict(seen, 0.0, 1.0)["outcome"] != "too-close":
        return found
    at = seen.intervals["movement_mm"]
    text = "With the doubt of reading, centre distance, materials and temperatures it may"
    text += " move " + fixed(at.low, 1) + " to " + fixed(at.high, 1) + " mm hot."
    got = seen.intervals["excess_mm"].value
    found.append(warning("hot-too-close", "excess_mm", got, text, limits.MEMORY))
    return found


class Loop(namedtuple("Loop", ("soft", "stiff", "compliance", "origin", "source", "assumed"))):
    """Stiffness of the loop, from and to [N/mm], what shafts, bearings and block give beside it
    [mm/N], where these are from, and whether the stiffness was assumed.
    """

    __slots__ = ()


def _take_loop(form: Form) -> Loop:
    """Read what resists a chain that is too short, or take the usual wide range."""
    given = form.take_number("stiffness_n_per_mm", required=False)
    yielding = form.take_number("compliance_um_per_kn", required=False)
    source = form.take_text("stiffness_source", 200) if form.has("stiffness_source") else None
    soft, stiff = STIFFNESS_N_PER_MM if given is None else (given, given)
    origin = limits.MEMORY if given is None else limits.OWN if source else limits.GIVEN
    return Loop(soft, stiff, (yielding or 0.0) * 1e-6, origin, source or "", given is None)


def _interference(angle: float, hot: float, loop: Loop) -> dict[str, object] | None:
    """Give the tension where the hot chain is too short; None where it is not."""
    if hot >= 0:
        return None
    ends = [loop_stiffness(k, loop.compliance, angle) for k in (loop.soft, loop.stiff)]
    pulls = [tension(k, hot) for k in ends]
    loads = [shaft_load(pull, angle) for pull in pulls]
    return {
        "interference_mm": -hot,
        "tension_low_n": pulls[0],
        "tension_high_n": pulls[1],
        "shaft_load_low_n": loads[0],
        "shaft_load_high_n": loads[1],
        "origin": loop.origin,
        "source": loop.source,
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
        rows = []
        for i in range(points):
            share = i / (points - 1) if points > 1 else 0.0
            growth = heating.growth(share, expansion)
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

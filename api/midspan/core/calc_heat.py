"""Slack when the engine is hot: what becomes of a cold fit, and which cold fit to aim at."""

import math
from collections import namedtuple

from . import glossary, limits
from .build import Build, take_build
from .drive import elongation_of, excess_length
from .fields import Form
from .figures import fixed, short
from .guard import zone
from .heat import (
    Growth,
    elongation_for_hot_excess,
    hot_excess,
    hot_geometry,
    shaft_load,
    tension,
)
from .instrument import assumption
from .materials import MATERIALS, Material, as_dict
from .movement import excess_from_movement, movement_from_excess
from .phase import degrees, rock_from_excess
from .student import coverage_factor
from .trials import excess_of_reading
from .uncertainty import rectangular
from .version import VERSION
from .warnings import cautions, drive_warnings, warning

PARTS = ("block", "gear", "chain")
# Running temperatures where none is given: from memory, unverified.
RUNNING_C = {"block": 90.0, "gear": 100.0, "chain": 100.0}
COLD_C = 20.0
# Range of the stiffness of the loop where none is given, N/mm. A chain alone is thought to have
# a few to 15 kN/mm a span; shafts, bearings and block give way too. From memory, unverified.
STIFFNESS_N_PER_MM = (1000.0, 15000.0)
# What the hot slack is thought to be good for: standard uncertainty of a movement read by hand,
# and the share of its change with heat that materials and temperatures leave open (95 %). Both
# from memory, unverified.
READING_MM, GROWTH_SHARE = 0.3, 0.2
# Shown beside the chosen block in the chart.
COMPARED = ("grey-iron", "aluminium-356")


class Heating(namedtuple("Heating", ("expansion", "cold", "hot"))):
    """Expansion coefficients [1e-6/K] and running temperatures [degC] by part; the cold
    temperature [degC].
    """

    __slots__ = ()

    def growth(self, share: float = 1.0) -> Growth:
        """Give the strains at a share of the way from cold to running."""
        strains = [
            self.expansion[part] * 1e-6 * share * (self.hot[part] - self.cold) for part in PARTS
        ]
        return Growth(strains[0], strains[1], strains[2])


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
    if build is not None and movement is not None and movement > build.geometry.strand:
        need = "at most the free strand, " + fixed(build.geometry.strand, 1) + " mm"
        form.refuse("out-of-range", "movement_mm", movement, need, "Check the unit.")
    form.finish()
    assert build is not None  # noqa: S101  (finish raised if it was refused)
    elongation = 0.0
    if movement is not None:
        excess = excess_from_movement(build.geometry.strand, movement)
        elongation = elongation_of(build.drive, build.geometry.taut_length, excess)
    growth = heating.growth()
    hot = hot_excess(build.drive, growth, elongation)
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
        "interference": _interference(build, growth, hot, stiffness),
        "cold_target": _cold_target(build, growth, lower, upper, window_origin),
        "curves": _curves(build, heating, elongation, points),
        "materials": used,
        "assumptions": assumed + build.assumptions,
        "warnings": _doubts(build, growth, elongation, movement) + drive_warnings(build),
        "cautions": cautions("hot"),
    }


def take_window(form: Form) -> tuple[float, float, str]:
    """Read the wanted movement, or take the trade's; give its origin with it."""
    lower = form.take_number("window_lower_mm", required=False)
    upper = form.take_number("window_upper_mm", required=False)
    origin = limits.PRACTICE if lower is None and upper is None else "given by the user"
    for name, end, other in (
        ("window_lower_mm", lower, upper),
        ("window_upper_mm", upper, lower),
    ):
        if end is None and other is not None and not form.has(name):
            form.refuse("missing", name, None, glossary.need(name), "Give both ends, or neither.")
            return 0.0, 0.0, origin
    lower = limits.WANTED_FROM_MM if lower is None else lower
    upper = limits.WANTED_TO_MM if upper is None else upper
    if lower >= upper:
        need = "more than the lower end, " + short(lower, 6) + " mm"
        form.refuse("conflict", "window_upper_mm", upper, need, "Swap the two.")
    return lower, upper, origin


def take_heating(
    form: Form, assumed: list[dict[str, object]]
) -> tuple[Heating, list[dict[str, object]]]:
    """Read materials and temperatures; say what was assumed and where each figure is from."""
    expansion, hot, used = {}, {}, []
    cold = form.take_number("cold_temperature_c", required=False)
    if cold is None:
        cold = COLD_C
        assumed.append(_assumed_temperature("cold_temperature_c", cold))
    source = form.take_text("expansion_source", 200) if form.has("expansion_source") else None
    by_id = {material.id: material for material in MATERIALS}
    for part in PARTS:
        default = None if part == "block" else "steel-4140"
        field = part + "_expansion_ppm"
        own = form.take_number(field, required=False)
        name = form.take_choice(part + "_material", tuple(sorted(by_id)), default or "grey-iron")
        if own is None and default is not None and not form.has(part + "_material"):
            text = "Alloy steel, assumed for the " + part + ": no material was given."
            alpha = by_id[default].expansion
            assumed.append(assumption(field, alpha, limits.MEMORY, text))
        if own is not None and source is None:
            need = "where the coefficient comes from"
            form.refuse("missing", "expansion_source", None, need, "Name the data sheet or book.")
        if own is not None and form.has(part + "_material"):
            need = "either a material or a figure of your own"
            form.refuse("conflict", field, own, need, "Leave one out.")
        if part == "block" and not form.has(field) and not form.has("block_material"):
            need = "one of " + ", ".join(sorted(by_id))
            form.refuse("missing", "block_material", None, need, "Iron or aluminium decides.")
        material = by_id[name or "grey-iron"]
        if own is not None:
            material = Material("own", "Own figure", own, limits.OWN, source or "", "")
        expansion[part] = material.expansion
        row = as_dict(material)
        row["part"] = part
        used.append(row)
        at = form.take_number(part + "_temperature_c", required=False)
        if at is None:
            at = RUNNING_C[part]
            assumed.append(_assumed_temperature(part + "_temperature_c", at))
        hot[part] = at
    return Heating(expansion, cold, hot), used


def _assumed_temperature(field: str, value: float) -> dict[str, object]:
    return assumption(field, value, limits.MEMORY, "A usual temperature, assumed: none was given.")


def _seen(build: Build, growth: Growth, elongation: float) -> dict[str, object]:
    """Give what the drive would show at these strains."""
    shape = hot_geometry(build.drive, growth)
    excess = hot_excess(build.drive, growth, elongation)
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
    cold = hot_excess(build.drive, Growth(0.0, 0.0, 0.0), elongation)
    hot = hot_excess(build.drive, growth, elongation)
    if movement is None:
        text = "For a chain at nominal length, not measured."
        found.append(warning("not-measured", "drive.links", build.drive.links, text))
        slope = 2 * math.cos(build.geometry.angle)
        base = coverage_factor(None) * slope * rectangular(build.centre_error)
    else:
        strand = build.geometry.strand
        spread = excess_of_reading(strand, movement, READING_MM, movement)[1]
        base = coverage_factor(None) * spread
    half = math.sqrt(base**2 + (GROWTH_SHARE * (hot - cold)) ** 2)
    strand = hot_geometry(build.drive, growth).strand
    ends = [movement_from_excess(strand, hot + k * half) for k in (-1, 1)]
    if zone(ends[0]) == zone(ends[1]) and (hot - half) * (hot + half) > 0:
        return found
    text = "With the usual doubt of reading, centre distance, materials and temperatures it may"
    text += " move " + fixed(ends[0], 1) + " to " + fixed(ends[1], 1) + " mm hot."
    found.append(warning("hot-too-close", "excess_mm", hot, text, limits.MEMORY))
    return found


def _interference(
    build: Build, growth: Growth, hot: float, stiffness: tuple[float, float]
) -> dict[str, object] | None:
    """Give the tension where the hot chain is too short; None where it is not."""
    if hot >= 0:
        return None
    pulls = [tension(k, hot) for k in stiffness]
    loads = [shaft_load(pull, hot_geometry(build.drive, growth).angle) for pull in pulls]
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
            excess = hot_excess(build.drive, growth, elongation)
            strand = hot_geometry(build.drive, growth).strand
            at = heating.cold + share * (heating.hot["block"] - heating.cold)
            rows.append(
                {
                    "block_temperature_c": at,
                    "excess_mm": excess,
                    "movement_mm": movement_from_excess(strand, excess),
                }
            )
        curves.append({"block": name, "points": rows})
    return curves

"""Which chain on which gear set: every combination on the shelf predicted and ranked."""

import math
from collections import namedtuple

from .build import Build, check_centres, check_movement, take_build
from .causes import HIGH, LOW
from .chisquare import consistency, within_normal
from .drive import excess_length, geometry
from .fields import Form
from .heat import Growth, hot_excess, hot_geometry
from .heating import take_heating
from .hot import change_uncertainty
from .instrument import assumption
from .limits import MEMORY
from .movement import excess_from_movement, movement_from_excess
from .observation import Observation
from .shelf import Shelf
from .student import coverage_factor
from .suspects import cause_of_trial, suspects
from .trials import Trial, is_felt, shelf_of
from .version import VERSION
from .wanted import read_cold, take_window
from .warnings import cautions, drive_warnings

MOST_CHAINS, MOST_GEARS, MOST_TRIALS = 60, 30, 500
# The trial worth most is sought among all, for what it would tell of the best few.
BEST_FEW = 10
# Fits that agree less well than one in a hundred by chance are called inconsistent: common
# practice, no source.
SURPRISING = 0.01
# Assumed uncertainty of the next trial's movement, mm; from memory, unverified.
NEXT_TRIAL_MM = 0.3


class Names(namedtuple("Names", ("chains", "gears"))):
    """The user's own ids, in the order they were given."""

    __slots__ = ()


def calculate(payload: object) -> dict[str, object]:
    """Predict and rank every chain on every gear set in this engine.

    Parameters
    ----------
    payload : drive (this engine, nominal chain), chains and gear_sets (lists of ids), trials
        (chain, gear_set, movement_mm, standard_uncertainty_mm, and centre_distance_mm if made in
        another block), bench (chain, elongation_percent, standard_uncertainty_percent), gears
        (gear_set, added_excess_mm of both its gears together, standard_uncertainty_mm),
        window_lower_mm, window_upper_mm, heat (materials and temperatures as for the heat
        calculation)

    Returns
    -------
    dict: combinations ranked, groups, consistency, suspects, next_trial, warnings, cautions

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Offsets small against the chain; readings independent; same pitch, teeth and links throughout.

    Reference
    ---------
    See `shelf`.
    """
    form = Form(payload)
    build = take_build(form)
    names = Names(_take_ids(form, "chains", MOST_CHAINS), _take_ids(form, "gear_sets", MOST_GEARS))
    lower, upper, origin = take_window(form)
    heat = form.take_form("heat")
    assumed: list[dict[str, object]] = []
    growth, doubt = Growth(0.0, 0.0, 0.0), 0.0
    used: list[dict[str, object]] = []
    if heat is not None:
        heating, used = take_heating(heat, assumed)
        heat.close()
        growth = heating.growth()
        doubt = 0.0 if build is None else change_uncertainty(build, heating)
    taken = _take_trials(form, names, build)
    bench = _take_alone(form, "bench", "chain", names.chains)
    gears = _take_alone(form, "gears", "gear_set", names.gears)
    form.close()
    form.finish()
    assert build is not None  # noqa: S101  (finish raised if it was refused)
    trials, blocks, others, unused = _evidence(build, taken, bench, gears)
    try:
        shelf = shelf_of(len(names.chains), len(names.gears), blocks, trials, others)
    except ValueError:
        need = "uncertainties that can be held against each other"
        step = "Some are far too small or far too large: check their units."
        form.refuse("conflict", "trials", str(len(taken)) + " trials", need, step)
        form.finish()
        raise
    ranked, pairs = _combinations(
        build, shelf, names, growth, doubt, lower, upper, heat is not None
    )
    following = _next_trial(build, shelf, names, pairs)
    if following is not None and following["share"] is not None:
        text = "Uncertainty of the next trial's movement, assumed when choosing it."
        assumed.append(assumption("standard_uncertainty_mm", NEXT_TRIAL_MM, MEMORY, text))
    chi_square, dof = shelf.chi_square()
    return {
        "calc": "fit",
        "core_version": VERSION,
        "window": {"lower_mm": lower, "upper_mm": upper, "origin": origin},
        "combinations": ranked,
        "groups": shelf.groups.names(names.chains, names.gears),
        "unused_trials": unused,
        "consistency": consistency(chi_square, dof, SURPRISING),
        "suspects": _suspects(shelf, trials, bench, gears, unused),
        "next_trial": following,
        "materials": used,
        "assumptions": assumed + build.assumptions,
        "warnings": ([] if heat is None else read_cold(lower, origin)) + drive_warnings(build),
        "cautions": cautions("turn-by-hand", "valve-contact"),
    }


def _take_ids(form: Form, name: str, most: int) -> list[str]:
    """Read a list of different ids."""
    need = "a list of 1 to " + str(most) + " different names"
    values = form.payload[name] if form.has(name) else None
    if isinstance(values, list) and 1 <= len(values) <= most:
        ids = [x for x in values if isinstance(x, str) and 0 < len(x) <= 100]
        if len(set(ids)) == len(values):
            return ids
    code = "not-a-list" if form.has(name) else "missing"
    form.refuse(code, name, values, need, "Name each once.")
    return []


def _take_trials(
    form: Form, names: Names, build: Build | None
) -> list[tuple[int, int, float, float, float | None]]:
    taken = []
    chain_places, gear_places = _places(names.chains), _places(names.gears)
    strands: dict[float, float] = {}
    for part in form.take_forms("trials", MOST_TRIALS):
        chain = _take_place(part, "chain", names.chains, chain_places)
        gears = _take_place(part, "gear_set", names.gears, gear_places)
        movement = part.take_number("movement_mm")
        u = part.take_number("standard_uncertainty_mm")
        centre = part.take_number("centre_distance_mm", required=False)
        part.close()
        if build is not None and check_centres(part, "centre_distance_mm", centre, build):
            at = build.drive.centre_distance if centre is None else centre
            if at not in strands:
                strands[at] = geometry(build.drive.at(at)).strand
            check_movement(part, "movement_mm", movement, strands[at])
        if chain is not None and gears is not None and movement is not None and u is not None:
            taken.append((chain, gears, movement, u, centre))
    return taken


def _places(ids: list[str]) -> dict[str, int]:
    return {ids[i]: i for i in range(len(ids))}


def _take_place(form: Form, field: str, ids: list[str], places: dict[str, int]) -> int | None:
    """Read one of the ids as its place; looked up, since a shelf asks hundreds of times."""
    value = form.payload.get(field)
    if isinstance(value, str) and value in places:
        form.seen.add(field)
        return places[value]
    form.take_choice(field, tuple(ids))
    return None


def _take_alone(
    form: Form, field: str, what: str, known: list[str]
) -> list[tuple[int, float, float]]:
    """Read measurements of a chain or a gear set by itself."""
    value_field, u_field = "added_excess_mm", "standard_uncertainty_mm"
    if what == "chain":
        value_field, u_field = "elongation_percent", "standard_uncertainty_percent"
    taken = []
    places = _places(known)
    for part in form.take_forms(field, MOST_TRIALS, required=False):
        one = _take_place(part, what, known, places)
        value = part.take_number(value_field)
        u = part.take_number(u_field)
        part.close()
        if one is not None and value is not None and u is not None:
            taken.append((one, value, u))
    return taken


def _evidence(
    build: Build,
    taken: list[tuple[int, int, float, float, float | None]],
    bench: list[tuple[int, float, float]],
    gears: list[tuple[int, float, float]],
) -> tuple[list[Trial], int, list[Observation], list[int]]:
    """Sort what was read: trials, how many blocks, other observations, trials that tell nothing.

    Block 0 is this engine. All is brought to excess length beyond nominal.
    """
    centres = [build.drive.centre_distance]
    trials, unused = [], []
    shapes = {}
    for k in range(len(taken)):
        chain, gear_set, movement, u, centre = taken[k]
        at = centres[0] if centre is None else centre
        if at not in centres:
            centres.append(at)
        if not is_felt(movement, u):
            unused.append(k)
            continue
        if at not in shapes:
            shape = geometry(build.drive.at(at))
            nominal = excess_length(build.drive, shape.taut_length, 0.0)
            shapes[at] = (centres.index(at), shape.strand, nominal)
        block, strand, nominal = shapes[at]
        trials.append(Trial(chain, gear_set, block, strand, nominal, movement, u))
    whole = build.drive.links * build.drive.pitch / 100
    others = [Observation(i, None, None, x * whole, u * whole) for i, x, u in bench]
    others += [Observation(None, j, None, x, u) for j, x, u in gears]
    for k in range(len(centres)):
        u = max(build.taut_uncertainty(geometry(build.drive.at(centres[k]))), 1e-6)
        others.append(Observation(None, None, k, 0.0, u))
    return trials, len(centres), others, unused


def _combinations(
    build: Build,
    shelf: Shelf,
    names: Names,
    growth: Growth,
    doubt: float,
    lower: float,
    upper: float,
    with_heat: bool,
) -> tuple[list[dict[str, object]], list[tuple[int, int]]]:
    """Predict all, best first: the likeliest to land in the window, hot if heat was given.

    Hot, `doubt` [mm] comes on top: materials and temperatures, the same for every row.
    """
    cold, hot = build.geometry, hot_geometry(build.drive, growth)
    nominal = excess_length(build.drive, cold.taut_length, 0.0)
    shift = hot_excess(build.drive, growth, 0.0, hot) - nominal
    # The window in excess length, the same for every row.
    cold_ends = [excess_from_movement(cold.strand, m) for m in (lower, upper)]
    hot_ends = [excess_from_movement(hot.strand, m) for m in (lower, upper)]
    half_width = coverage_factor(None)
    seen = shelf.predictions(0)
    middle, strand = (lower + upper) / 2, hot.strand if with_heat else cold.strand
    aim = excess_from_movement(strand, middle) - nominal - (shift if with_heat else 0.0)
    # Sorted without a key, which MicroPython would work out anew for every comparison.
    order: list[tuple[float, float, int, int]] = []
    rows: dict[tuple[int, int], dict[str, object]] = {}
    for i in range(len(names.chains)):
        for j in range(len(names.gears)):
            row: dict[str, object] = {
                "chain": names.chains[i], "gear_set": names.gears[j], "determined": False,
                "excess_mm": None, "standard_uncertainty_mm": None, "cold_movement_mm": None,
                "cold_probability": None, "hot_movement_mm": None, "hot_probability": None,
            }  # fmt: skip
            rows[(i, j)] = row
            if (i, j) not in seen:
                order.append((1.0, 0.0, i, j))
                continue
            beyond, u = seen[(i, j)]
            excess, half = nominal + beyond, half_width * u
            row["determined"] = True
            row["excess_mm"] = excess
            row["standard_uncertainty_mm"] = u
            row["cold_movement_mm"] = _movement(cold.strand, excess, half)
            chance = within_normal(cold_ends[0], cold_ends[1], excess, u)
            row["cold_probability"] = chance
            if with_heat:
                u = math.sqrt(u * u + doubt * doubt)
                row["hot_movement_mm"] = _movement(hot.strand, excess + shift, half_width * u)
                chance = within_normal(hot_ends[0], hot_ends[1], excess + shift, u)
                row["hot_probability"] = chance
            # Far from the window every chance is as good as zero: there the nearer comes first.
            order.append((-chance, abs(beyond - aim) / u, i, j))
    order.sort()
    pairs = [(i, j) for _, _, i, j in order]
    return [rows[pair] for pair in pairs], pairs


def _movement(strand: float, excess: float, half: float) -> dict[str, float]:
    return {
        "value": movement_from_excess(strand, excess),
        "low": movement_from_excess(strand, excess - half),
        "high": movement_from_excess(strand, excess + half),
    }


def _suspects(
    shelf: Shelf,
    trials: list[Trial],
    bench: list[tuple[int, float, float]],
    gears: list[tuple[int, float, float]],
    unused: list[int],
) -> list[dict[str, object]]:
    """Give every single reading that would explain why they disagree; none if they agree."""
    chi_square, dof = shelf.chi_square()
    if consistency(chi_square, dof, SURPRISING)["consistent"]:
        return []
    places = [k for k in range(len(trials) + len(unused)) if k not in unused]
    fields = ["trials[" + str(k) + "]" for k in places]
    fields += ["bench[" + str(k) + "]" for k in range(len(bench))]
    fields += ["gears[" + str(k) + "]" for k in range(len(gears))]
    rows: list[dict[str, object]] = []
    for one in suspects(shelf, SURPRISING):
        cause = None
        if one.place < len(trials):
            cause = cause_of_trial(trials[one.place], one)
        elif one.place < len(trials) + len(bench):
            high = shelf.observations[one.place].value > one.expected
            cause = (HIGH if high else LOW)["elongation_percent"]
        field = fields[one.place] if one.place < len(fields) else "drive.centre_distance_mm"
        told = None if cause is None else {"code": cause.code, "text": cause.text}
        rows.append({"field": field, "probability": one.probability, "cause": told})
    return rows


def _next_trial(
    build: Build, shelf: Shelf, names: Names, pairs: list[tuple[int, int]]
) -> dict[str, object] | None:
    """Say which single trial would tell the most.

    Where some combination is not determined, the trial that ties two groups together; else the
    one that takes most from the summed variance of the best few.
    """
    seen = shelf.predictions(0)
    for chain, gears in pairs:
        if (chain, gears) not in seen:
            why = "ties together what was never tried together"
            one, other = names.chains[chain], names.gears[gears]
            return {"chain": one, "gear_set": other, "why": why, "share": None}
    few = pairs[:BEST_FEW]
    parts = [shelf.crossed(chain, gears, 0) for chain, gears in few]
    # What the next trial's own reading adds, at the movement it would likely show.
    strand = build.geometry.strand
    nominal = excess_length(build.drive, build.geometry.taut_length, 0.0)
    least = excess_from_movement(strand, NEXT_TRIAL_MM)
    best, most = pairs[0], -1.0
    for pair in pairs:
        value, u = seen[pair]
        slope = movement_from_excess(strand, nominal + value) / strand
        i, j = pair
        gain = sum([(by_chain[i] + by_gears[j]) ** 2 for by_chain, by_gears in parts])
        drop = gain / (u**2 + max(slope * NEXT_TRIAL_MM, least) ** 2)
        if drop > most:
            best, most = pair, drop
    total = sum([seen[pair][1] ** 2 for pair in few])
    return {
        "chain": names.chains[best[0]],
        "gear_set": names.gears[best[1]],
        "why": "narrows the predictions of the best few most",
        "share": most / total,
    }

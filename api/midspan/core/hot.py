"""What a hot slack is worth: its interval, from the cold reading, the drive, materials and heat."""

from collections import namedtuple

from .build import Build
from .drive import Geometry, elongation_of, geometry
from .guard import judge, zone
from .heat import Growth, hot_excess, hot_geometry
from .heating import PARTS, Heating
from .movement import movement_from_excess
from .phase import degrees, rock_from_excess
from .student import coverage_factor
from .uncertainty import Component, Interval, rectangular, steepest


class Cold(namedtuple("Cold", ("excess", "uncertainty", "origin"))):
    """The cold reading as excess length [mm], its standard uncertainty [mm], and where that is
    from; excess None for a chain taken at nominal length, not measured.
    """

    __slots__ = ()


class Hot(namedtuple("Hot", ("intervals", "budget"))):
    """Intervals by field name (excess_mm, movement_mm, crank_rock_deg), and the budget of the
    excess length, a Component each [mm].
    """

    __slots__ = ()


# How the doubts of heat change the drive, in the order of `doubts`.
NAMES = (
    "expansion of the block", "expansion of the gears", "expansion of the chain",
    "temperature of the block", "temperature of gears and chain", "temperature when measured",
)  # fmt: skip


def doubts(heating: Heating) -> list[float]:
    """Standard uncertainties of what the growth rests on.

    u = a / sqrt(3)

    Parameters
    ----------
    heating : Heating, half-widths [1e-6/K, K]

    Returns
    -------
    of the expansion of block, gears and chain [1e-6/K], the temperature of the block, of gears
    and chain together, and of the cold drive [K]

    Raises
    ------
    none

    Validity
    --------
    Anything within plus or minus the half-width equally likely; coefficients independent of each
    other; gears and chain run in the same oil, so one error serves both.

    Reference
    ---------
    JCGM 100:2008 (GUM), 4.3.7.
    """
    spread = [heating.spread[part] for part in PARTS]
    return [rectangular(a) for a in spread + [heating.error, heating.error, heating.cold_error]]


def growth_off(heating: Heating, off: list[float]) -> Growth:
    """Thermal strains where the materials and temperatures are off by so much.

    g = (alpha + d_alpha) (T + d_T - T0 - d_T0)

    Parameters
    ----------
    heating : Heating [1e-6/K, degC]
    off : departures in the order of `doubts` [1e-6/K, K]

    Returns
    -------
    Growth, strains [1]

    Raises
    ------
    none

    Validity
    --------
    As `doubts`.

    Reference
    ---------
    Definition of the mean linear expansion coefficient.
    """
    warmer = {"block": off[3], "gear": off[4], "chain": off[4]}
    strains = []
    for i in range(len(PARTS)):
        part = PARTS[i]
        rise = heating.hot[part] + warmer[part] - heating.cold - off[5]
        strains.append((heating.expansion[part] + off[i]) * 1e-6 * rise)
    return Growth(strains[0], strains[1], strains[2])


def change_uncertainty(build: Build, heating: Heating) -> float:
    """Standard uncertainty of the change of excess length from cold to hot.

    u^2 = sum (d e' / d x_i)^2 u_i^2, over expansion coefficients and temperatures

    Parameters
    ----------
    build : the drive, lengths in [mm]
    heating : Heating [1e-6/K, degC]

    Returns
    -------
    standard uncertainty [mm]

    Raises
    ------
    ValueError : as `heat.hot_geometry`

    Validity
    --------
    For a chain near nominal length. What the centre distance leaves open cold is not in it; what
    of it the warmth changes is a thousandth of that.

    Reference
    ---------
    JCGM 100:2008 (GUM), 5.1.3 NOTE 2.
    """
    inputs = [(0.0, u, u) for u in doubts(heating)]
    return steepest(
        lambda off: hot_excess(build.drive, growth_off(heating, off), 0.0), inputs
    )[0]  # fmt: skip


def hot_state(build: Build, heating: Heating, cold: Cold) -> Hot:
    """Carry the cold reading and all that heat rests on to the hot slack, with its interval.

    e' = f(e, C, alpha_b, alpha_g, alpha_c, T_b, T_oil, T_0);  u^2 = sum Z_i^2;  U = k u

    Parameters
    ----------
    build : the drive, lengths in [mm]
    heating : Heating [1e-6/K, degC]
    cold : what was read cold, as excess length [mm]

    Returns
    -------
    Hot, in the units the names carry (mm, degrees)

    Raises
    ------
    ValueError : as `heat.hot_geometry`

    Validity
    --------
    As `doubts`. Movement and lash are images of the excess length: their ends lie where its do.

    Reference
    ---------
    JCGM 100:2008 (GUM), 5.1.3 NOTE 2; ends as in `uncertainty.propagate`.
    """
    centre = build.drive.centre_distance

    def at(values: list[float]) -> tuple[float, Geometry]:
        drive = build.drive.at(centre + values[1])
        elongation = 0.0
        if cold.excess is not None:
            taut = geometry(drive).taut_length
            elongation = elongation_of(drive, taut, cold.excess + values[0])
        growth = growth_off(heating, values[2:])
        shape = hot_geometry(drive, growth)
        return hot_excess(drive, growth, elongation, shape), shape

    factor = coverage_factor(None)
    read = 0.0 if cold.excess is None else cold.uncertainty
    us = [read, rectangular(build.centre_error)] + doubts(heating)
    inputs = [(0.0, u, factor * u) for u in us]
    total, steps = steepest(lambda values: at(values)[0], inputs)
    ends = [at([k * step for step in steps]) for k in (0, -1, 1)]
    origins = [cold.origin, build.centre_origin] + list(heating.origins)
    names = ("cold reading", "centre distance") + NAMES
    budget = []
    for i in range(len(us)):
        if us[i] > 0:
            # The share of each in the total is its step over its own expanded uncertainty.
            part = total * abs(steps[i]) / (factor * us[i])
            budget.append(Component(names[i], "B", part, None, origins[i]))

    def interval(name: str, value: float, low: float, high: float) -> Interval:
        u = total if name == "excess_mm" else (high - low) / (2 * factor)
        return Interval(value, low, high, u)

    images = {
        "excess_mm": [e for e, _ in ends],
        "movement_mm": [movement_from_excess(shape.strand, e) for e, shape in ends],
        "crank_rock_deg": [degrees(rock_from_excess(s.crank_radius, e)) for e, s in ends],
    }
    intervals = {name: interval(name, x[0], x[1], x[2]) for name, x in images.items()}
    return Hot(intervals, budget)


def hot_verdict(hot: Hot, lower: float, upper: float) -> dict[str, object]:
    """Judge the hot movement with a guard band as wide as its interval's half.

    Parameters
    ----------
    hot : `hot_state`
    lower, upper : movement wanted hot [mm]

    Returns
    -------
    dict: outcome, a zone of the trade or "too-close"; between, the two zones its interval reaches;
    window, "within", "below", "beyond" or "too-close" of the movement wanted; slack, "some", "none"
    or "too-close"

    Raises
    ------
    none

    Validity
    --------
    As `guard.judge`.

    Reference
    ---------
    As `guard.judge`.
    """
    at, excess = hot.intervals["movement_mm"], hot.intervals["excess_mm"]
    zones = [zone(at.low), zone(at.high)]
    slack = {"within": "some", "below": "none"}.get(judge(excess.low, excess.high, 0.0, None))
    sure = zones[0] == zones[1] and slack is not None
    return {
        "outcome": zones[0] if sure else "too-close",
        "between": None if sure else zones,
        "window": judge(at.low, at.high, lower, upper),
        "slack": slack or "too-close",
    }

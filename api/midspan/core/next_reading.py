"""When the next reading tells most."""

from collections import namedtuple

from .movement import movement_from_excess
from .trials import excess_of_reading
from .wear import elongation_by, slopes
from .wear_fit import Draw, Model
from .wear_prior import wear_at

# A hand-pushed movement, read with a rule three times. From memory, unverified.
MOVEMENT_U_MM = 0.2
STEPS = 24


class Worth(namedtuple("Worth", ("running_h", "share"))):
    """A reading after some running [h], and the share of the variance it takes away [1]."""

    __slots__ = ()


def excess_slopes(model: Model, logs: list[float], running_h: float) -> list[float]:
    """Give how the excess length [mm] then changes with ln a, ln tau, ln w and the fitted length.

    The fitted length that goes with the readings moves against the wear: what is laid to the one
    is not laid to the other.
    """
    wear = wear_at(logs)
    grown = model.fitting.loop / 100
    found = [grown * d for d in slopes(wear, running_h)]
    for gain, seen in zip(model.gain, model.seen):
        own = slopes(wear, seen.running_h)
        for i in range(3):
            found[i] -= gain * grown * own[i]
    return found + [model.fitted_spread]


def covered(one: list[float], two: list[float], covariance: list[list[float]]) -> float:
    """Give the covariance of two values that change so with the unknowns."""
    total = one[3] * two[3]
    for i in range(3):
        for k in range(3):
            total += one[i] * covariance[i][k] * two[k]
    return total


def worth_of_reading(
    model: Model, logs: list[float], covariance: list[list[float]], event_h: float,
    running_h: float, uncertainty: float,
) -> float:  # fmt: skip
    """Share of the variance of an event's time that a reading is expected to take away.

    rho^2 = cov(E(T), E(x))^2 / (var E(T) (var E(x) + u^2))

    Parameters
    ----------
    model : prior, drive and readings so far
    logs, covariance : from `wear_fit.most_likely` [1]
    event_h : expected running until the event, T [h]
    running_h : running at the reading, x [h]
    uncertainty : standard uncertainty of the reading, as excess length [mm]

    Returns
    -------
    share, 0 to 1 [1]

    Raises
    ------
    none

    Validity
    --------
    Straightened at the most likely wear: the time of the event changes with the excess length
    there, over its slope, which falls out.

    Reference
    ---------
    Preposterior variance of a linear normal model; checked by brute force.
    """
    then = excess_slopes(model, logs, event_h)
    now = excess_slopes(model, logs, running_h)
    both = covered(then, now, covariance)
    whole = covered(then, then, covariance) * (covered(now, now, covariance) + uncertainty**2)
    return both * both / whole if whole > 0 else 0.0


def best_readings(
    model: Model, logs: list[float], covariance: list[list[float]], event_h: float,
    first_h: float, last_h: float, strand: float,
) -> list[Worth]:  # fmt: skip
    """Worth of a hand-pushed movement at places between two, denser near the first.

    Parameters
    ----------
    model, logs, covariance, event_h : as for `worth_of_reading` [h]
    first_h, last_h : earliest and latest running at which to read [h]
    strand : free strand of the drive [mm]

    Returns
    -------
    list of Worth: running [h] and share of the variance taken away [1]

    Raises
    ------
    none

    Validity
    --------
    As `worth_of_reading`; a movement too small to be felt tells nothing and is worth nothing.

    Reference
    ---------
    As `worth_of_reading`.
    """
    found = []
    for k in range(STEPS + 1):
        at = first_h + (last_h - first_h) * (k / STEPS) ** 2
        draw = model.draw(logs, 0.0)
        grown = excess_at(model, draw, at)
        moves = movement_from_excess(strand, grown)
        if moves <= 2 * MOVEMENT_U_MM:
            found.append(Worth(at, 0.0))
            continue
        u = excess_of_reading(strand, moves, MOVEMENT_U_MM, moves)[1]
        found.append(Worth(at, worth_of_reading(model, logs, covariance, event_h, at, u)))
    return found


def excess_at(model: Model, draw: Draw, running_h: float) -> float:
    """Give the excess length [mm] of a possible chain after some running."""
    return float(draw.fitted + model.fitting.loop / 100 * elongation_by(draw.wear, running_h))

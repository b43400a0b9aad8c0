"""How far the spark wanders, how surely that is known, and what it costs."""

import math
from collections import namedtuple

from .spread_interval import spread_interval
from .student import coverage_factor
from .variance_ratio import quantile

# Ends of the torque lost by the square of a degree, 1/deg^2. That such regressions exist is
# published; their figures are from memory, unverified.
LOSS_PER_DEG2 = (2e-4, 4e-4)
ALPHA = 0.05
# Scatter of a pull on a common dyno, and pulls a side; from memory, unverified.
PULL_PERCENT, PULLS = 0.5, 3


class Spread(namedtuple("Spread", ("value", "low", "high"))):
    """A standard deviation with its 95 % interval [deg]."""

    __slots__ = ()


def deviation_interval(deviation: float, count: int) -> Spread:
    """Give the 95 % interval of a standard deviation.

    s sqrt((N - 1) / chi2_0.975) to s sqrt((N - 1) / chi2_0.025)

    Parameters
    ----------
    deviation : s of the readings [deg]
    count : N, how many, 2 or more

    Returns
    -------
    Spread [deg]

    Raises
    ------
    none

    Validity
    --------
    Independent normal readings.

    Reference
    ---------
    As `spread_interval.spread_interval`; checked against scipy.
    """
    low, high = spread_interval(deviation, count - 1)
    return Spread(deviation, low, high)


def freed(seen: Spread, resolution: float, count: int) -> Spread:
    """Take out of a spread what reading in steps puts into it.

    q^2 = s^2 - r^2 / 12, and nothing where that is below zero

    Parameters
    ----------
    seen : Spread of the readings [deg]
    resolution : step r that was read to [deg]
    count : how many readings

    Returns
    -------
    Spread of the spark itself [deg]

    Raises
    ------
    none

    Validity
    --------
    Steps not much wider than the spread (Sheppard). Readings all alike may still hide a spread of
    up to `high`: what the steps alone would let through.

    Reference
    ---------
    Sheppard's correction, from memory, unverified; JCGM 100:2008 (GUM), F.2.2.1 for r^2 / 12.
    """
    step = resolution**2 / 12
    least = deviation_interval(math.sqrt(step), count).high
    high = max(seen.high, least)
    return Spread(
        math.sqrt(max(seen.value**2 - step, 0.0)),
        math.sqrt(max(seen.low**2 - step, 0.0)),
        math.sqrt(max(high**2 - step, 0.0)),
    )


def ratio_interval(after: float, after_count: int, before: float, before_count: int) -> Spread:
    """Give the ratio of two standard deviations with its 95 % interval.

    (s_a / s_b) / sqrt(F_0.975) to (s_a / s_b) / sqrt(F_0.025), F with N_a - 1 and N_b - 1

    Parameters
    ----------
    after, before : standard deviations of the readings, before above zero [deg]
    after_count, before_count : how many readings each

    Returns
    -------
    Spread, a ratio [1]

    Raises
    ------
    ZeroDivisionError : no spread before

    Validity
    --------
    As `deviation_interval`.

    Reference
    ---------
    NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.9 (F test), from memory, unverified;
    checked against scipy.
    """
    ratio = after / before
    dofs = (after_count - 1, before_count - 1)
    return Spread(
        ratio,
        ratio / math.sqrt(quantile(1 - ALPHA / 2, dofs[0], dofs[1])),
        ratio / math.sqrt(quantile(ALPHA / 2, dofs[0], dofs[1])),
    )


def mean_loss(away: float, scatter: float, per_deg2: float) -> float:
    """Mean share of torque lost by a spark that is set off the best point and wanders.

    k (x^2 + q^2)

    Parameters
    ----------
    away : setting less best setting, x [deg of the crank]
    scatter : standard deviation q [deg of the crank]
    per_deg2 : k [1/deg^2]

    Returns
    -------
    share of torque [1]

    Raises
    ------
    none

    Validity
    --------
    Within some 15 degrees of the best point. Knock, and cylinders that want another setting, are
    not in it.

    Reference
    ---------
    Mean of k (x + e)^2 with e of mean zero; exact for the square law.
    """
    return per_deg2 * (away**2 + scatter**2)


def detectable(scatter: float, count: int) -> float:
    """Smallest difference of two means that as many runs a side find four times in five.

    (t_0.975 + t_0.8) s sqrt(2 / n), t with 2 n - 2 degrees of freedom

    Parameters
    ----------
    scatter : standard deviation s of one run [any unit]
    count : runs a side, n, 2 or more

    Returns
    -------
    difference [the same unit]

    Raises
    ------
    none

    Validity
    --------
    Two-sided at 5 %, no drift; within 1.2 % of the exact figure from three runs a side on.

    Reference
    ---------
    Sample size for unknown sigma, micquality.com/six_sigma_glossary/sample_size_hypothesis.htm.
    """
    dof = 2 * count - 2
    # One-sided 80 % is two-sided 60 %.
    total = coverage_factor(dof) + coverage_factor(dof, 0.6)
    return total * scatter * math.sqrt(2 / count)

"""Settings compared by least squares, with a steady drift taken out where the order allows it."""

import math
from collections import namedtuple

from .betas import factor_of_t, tail_of_t

# A scatter below this share of the figures is what arithmetic leaves, no scatter.
ROUNDED = 1e-10


class Pull(namedtuple("Pull", ("setting", "place", "value"))):
    """One run as it is compared: setting, place in the session, figure [any unit]."""

    __slots__ = ()


class Fit(
    namedtuple(
        "Fit", ("counts", "places", "levels", "slope", "about", "spread", "dof", "squares", "apart")
    )
):
    """Settings' levels at the middle place, and what they scatter.

    `counts`, `places`, `levels` : by setting: runs, mean place, level at place `about`
    `slope` : drift from one place to the next, None where it is not modelled
    `spread`, `dof` : standard deviation of a run and its degrees of freedom; None and 0 without any
    `squares` : squared places about their setting's mean, what the slope rests on
    `apart` : by setting: own variance and its degrees of freedom, for Welch's test
    """

    __slots__ = ()


class Difference(
    namedtuple(
        "Difference",
        ("value", "uncertainty", "dof", "low", "high", "chance", "ratio", "ratio_uncertainty",
         "ratio_low", "ratio_high", "factor"),
    )
):  # fmt: skip
    """One setting against another; what cannot be told is None.

    `value`, `uncertainty`, `low`, `high` : in the unit of the figures; `chance` : two-sided p
    `ratio` and its own : level over level, the interval by Fieller
    `factor` : standard error over the scatter of a run, None where two scatters are used
    """

    __slots__ = ()


def drift_can_be_told(pulls: list[Pull]) -> bool:
    """Tell whether the order of the runs lets a drift be told from the settings' differences.

    It does where some setting was run at two places: sum of squared places within settings > 0.

    Parameters
    ----------
    pulls : the runs compared

    Returns
    -------
    bool

    Raises
    ------
    none

    Validity
    --------
    Straight drift over the place.

    Reference
    ---------
    NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.3.1.2 (drift elimination by design).
    """
    first: dict[str, int] = {}
    for pull in pulls:
        if first.setdefault(pull.setting, pull.place) != pull.place:
            return True
    return False


def fit(pulls: list[Pull], drift: bool) -> Fit:
    """Fit a level for each setting, and with `drift` one slope over the place.

    value = level of the setting + slope (place - mean place)

    Parameters
    ----------
    pulls : the runs compared, one at least [any unit]
    drift : whether to model a straight drift; `drift_can_be_told` must hold

    Returns
    -------
    Fit, in the unit of the values

    Raises
    ------
    ZeroDivisionError : drift asked for that the order does not tell

    Validity
    --------
    Independent normal scatter of one size about a straight drift.

    Reference
    ---------
    Least squares; NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.3.1.2 for the designs.
    """
    keys = sorted({p.setting for p in pulls})
    about = sum([p.place for p in pulls]) / len(pulls)
    base = pulls[0].value
    counts, places, means = {}, {}, {}
    for key in keys:
        own = [p for p in pulls if p.setting == key]
        counts[key] = len(own)
        places[key] = sum([p.place for p in own]) / len(own)
        means[key] = base + sum([p.value - base for p in own]) / len(own)
    squares = sum([(p.place - places[p.setting]) ** 2 for p in pulls])
    slope = None
    if drift:
        both = [(p.place - places[p.setting]) * (p.value - means[p.setting]) for p in pulls]
        slope = sum(both) / squares
    levels = {key: means[key] - (slope or 0.0) * (places[key] - about) for key in keys}
    left: dict[str, float] = dict.fromkeys(keys, 0.0)
    for p in pulls:
        rest = p.value - levels[p.setting] - (slope or 0.0) * (p.place - about)
        left[p.setting] += rest * rest
    dof = len(pulls) - len(keys) - (1 if drift else 0)
    spread = math.sqrt(sum(left.values()) / dof) if dof > 0 else None
    if spread is not None and spread < ROUNDED * max([abs(p.value) for p in pulls]):
        spread = 0.0
    apart = {}
    if not drift:
        for key in keys:
            n = counts[key] - 1
            apart[key] = (left[key] / n, n) if n else (None, 0)
    return Fit(counts, places, levels, slope, about, spread, max(dof, 0), squares, apart)


def _variances(found: Fit, one: str, other: str) -> tuple[float, float, float, float]:
    """Variance of the levels of two settings, their covariance, and degrees of freedom."""
    a, b = found.counts[one], found.counts[other]
    if found.slope is None:
        own, own_other = found.apart[one], found.apart[other]
        if own[1] and own_other[1] and own[0] + own_other[0] > 0:
            va, vb = own[0] / a, own_other[0] / b
            return va, vb, 0.0, (va + vb) ** 2 / (va * va / own[1] + vb * vb / own_other[1])
        pooled = found.spread**2
        return pooled / a, pooled / b, 0.0, float(found.dof)
    off, off_other = found.places[one] - found.about, found.places[other] - found.about
    s2 = found.spread**2
    return (
        s2 * (1 / a + off * off / found.squares),
        s2 * (1 / b + off_other * off_other / found.squares),
        s2 * off * off_other / found.squares,
        float(found.dof),
    )


def difference(found: Fit, one: str, other: str) -> Difference:
    """Hold a setting against another: `other` minus `one`, and `other` over `one`.

    Without drift: Welch's test, or the pooled scatter where a setting was run once. With drift:
    Student's t from what the runs scatter about it. Ratio: Fieller's interval, which leaves out 1
    exactly where the test finds a difference.

    Parameters
    ----------
    found : levels and scatter [any unit]
    one, other : the settings, from and to

    Returns
    -------
    Difference, in the unit of the figures, ratios [1]

    Raises
    ------
    none

    Validity
    --------
    As `fit`; Welch's needs no equal scatter.

    Reference
    ---------
    NIST/SEMATECH e-Handbook of Statistical Methods, 7.3.1 (Welch-Satterthwaite); Fieller, J. R.
    Stat. Soc. B 16 (1954) 175 (from memory).
    """
    a, b = found.levels[one], found.levels[other]
    value, ratio = b - a, b / a if a else None
    if not found.dof or not found.spread:
        return Difference(value, None, found.dof, None, None, None, ratio, None, None, None, None)
    va, vb, both, dof = _variances(found, one, other)
    u = math.sqrt(max(va + vb - 2 * both, 0.0))
    t = factor_of_t(dof)
    chance = tail_of_t(value / u, dof)
    factor = None if found.slope is None and dof != found.dof else u / found.spread
    low = high = u_ratio = None
    if ratio is not None:
        u_ratio = math.sqrt(max(vb + ratio * ratio * va - 2 * ratio * both, 0.0)) / abs(a)
        low, high = _fieller(a, b, t * t * va, t * t * vb, t * t * both)
    return Difference(
        value, u, dof, value - t * u, value + t * u, chance, ratio, u_ratio, low, high, factor
    )


def _fieller(
    a: float, b: float, va: float, vb: float, both: float
) -> tuple[float | None, float | None]:
    """Bounds of b / a, the variances times t squared; None where they have none."""
    square = a * a - va
    middle = a * b - both
    rest = middle * middle - square * (b * b - vb)
    if square <= 0 or rest < 0:
        return None, None
    root = math.sqrt(rest)
    return (middle - root) / square, (middle + root) / square

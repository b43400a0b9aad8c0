"""How far two sample variances may differ by chance: the F distribution."""

import math

from .betas import incomplete_beta, log_front


def below(ratio: float, upper: int, lower: int) -> float:
    """Probability that F with these degrees of freedom is at most so large.

    P(F <= f) = I_x(nu1 / 2, nu2 / 2), x = nu1 f / (nu1 f + nu2)

    Parameters
    ----------
    ratio : f, 0 or more [1]
    upper, lower : degrees of freedom nu1 and nu2 of numerator and denominator, whole, 1 or more

    Returns
    -------
    probability [1]

    Raises
    ------
    none

    Validity
    --------
    Variances of independent normal readings.

    Reference
    ---------
    Abramowitz and Stegun, Handbook of Mathematical Functions, 26.6.2 and 26.5.8.
    """
    if ratio <= 0:
        return 0.0
    a, b, x, above = _side(ratio, upper, lower)
    value = incomplete_beta(a, b, x)
    return 1 - value if above else value


def quantile(probability: float, upper: int, lower: int) -> float:
    """F that is not exceeded with so much probability: the inverse of `below`.

    Parameters
    ----------
    probability : 0 to 1 exclusive [1]
    upper, lower : degrees of freedom of numerator and denominator, whole, 1 or more

    Returns
    -------
    ratio of two sample variances [1]

    Raises
    ------
    none

    Validity
    --------
    As `below`; to about 1e-13 of itself.

    Reference
    ---------
    Newton's method, kept between ends; checked against scipy.
    """
    low, high = 0.0, 1.0
    while below(high, upper, lower) < probability:
        low, high = high, 4 * high
    at = (low + high) / 2
    for _ in range(200):
        off = below(at, upper, lower) - probability
        if off < 0:
            low = at
        else:
            high = at
        # Newton's step where it stays between the ends, else the middle of them.
        before, slope = at, _slope(at, upper, lower)
        at = at - off / slope if slope > 0 else low
        if not low < at < high:
            at = (low + high) / 2
        if abs(at - before) <= 1e-15 * at or at in (low, high):
            break
    return at


def _slope(ratio: float, upper: int, lower: int) -> float:
    """Density of F."""
    a, b, x, _ = _side(ratio, upper, lower)
    return math.exp(log_front(a, b, x)) / ratio


def _side(ratio: float, upper: int, lower: int) -> tuple[float, float, float, bool]:
    """Give a, b and x of the side of F that keeps its digits, and whether it is the one above."""
    whole = upper * ratio + lower
    a, b, x = upper / 2, lower / 2, upper * ratio / whole
    if x < (a + 1) / (a + b + 2):
        return a, b, x, False
    return b, a, lower / whole, True

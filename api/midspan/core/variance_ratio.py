"""How far two sample variances may differ by chance: the F distribution."""

import math


def _log_gamma_half(twice: int) -> float:
    """Natural logarithm of Gamma(twice / 2), from Gamma(1) = 1 or Gamma(1/2) = sqrt(pi)."""
    at, total = (2, 0.0) if twice % 2 == 0 else (1, 0.5 * math.log(math.pi))
    while at < twice:
        total += math.log(at / 2)
        at += 2
    return total


def _fraction(a: float, b: float, x: float) -> float:
    """Continued fraction of the incomplete beta function (Abramowitz and Stegun, 26.5.8)."""
    tiny = 1e-300
    c, d = 1.0, 1 - (a + b) * x / (a + 1)
    d = 1 / (d if abs(d) > tiny else tiny)
    total = d
    for m in range(1, 400):
        for step in (
            m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)),
            -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)),
        ):
            d = 1 + step * d
            d = 1 / (d if abs(d) > tiny else tiny)
            c = 1 + step / c
            c = c if abs(c) > tiny else tiny
            total *= c * d
        if abs(c * d - 1) < 1e-16:
            break
    return total


def _front(ratio: float, upper: int, lower: int) -> float:
    """Logarithm of ratio times the density of F."""
    whole = upper * ratio + lower
    front = upper / 2 * math.log(upper * ratio / whole) + lower / 2 * math.log(lower / whole)
    return front + (
        _log_gamma_half(upper + lower) - _log_gamma_half(upper) - _log_gamma_half(lower)
    )


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
    x, other = upper * ratio / (upper * ratio + lower), lower / (upper * ratio + lower)
    a, b = upper / 2, lower / 2
    front = _front(ratio, upper, lower)
    if x < (a + 1) / (a + b + 2):
        return math.exp(front) * _fraction(a, b, x) / a
    return 1 - math.exp(front) * _fraction(b, a, other) / b


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
        before, slope = at, math.exp(_front(at, upper, lower)) / at
        at = at - off / slope if slope > 0 else low
        if not low < at < high:
            at = (low + high) / 2
        if abs(at - before) <= 1e-15 * at or at in (low, high):
            break
    return at

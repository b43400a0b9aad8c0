"""The incomplete beta function, and of it Student's distribution and the power of the t test."""

import math

from .student import ENDLESS, coverage_factor

# The continued fraction stops where a step no longer shows.
ENOUGH = 1e-16
TINY = 1e-300


def incomplete_beta(a: float, b: float, x: float) -> float:
    """Regularised incomplete beta function I_x(a, b), by its continued fraction.

    I_x(a, b) = x^a (1-x)^b / (a B(a, b)) / (1 + d1/(1 + d2/(1 + ...)))

    Parameters
    ----------
    a, b : above 0 [1]
    x : 0 to 1 [1]

    Returns
    -------
    probability [1]

    Raises
    ------
    none

    Validity
    --------
    a and b up to some thousands.

    Reference
    ---------
    NIST Digital Library of Mathematical Functions, 8.17.22, with the method of Lentz.
    """
    if x <= 0:
        return 0.0
    if x >= 1:
        return 1.0
    if x > (a + 1) / (a + b + 2):
        return 1 - incomplete_beta(b, a, 1 - x)
    c, d = 1.0, 1 / (1 - (a + b) * x / (a + 1))
    value = d
    for m in range(1, 2000):
        for up in (
            m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)),
            -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)),
        ):
            d = 1 / (1 + up * d or TINY)
            c = 1 + up / c or TINY
            value *= c * d
        if abs(c * d - 1) < ENOUGH:
            break
    return math.exp(log_front(a, b, x)) * value / a


def log_front(a: float, b: float, x: float) -> float:
    """Logarithm of the front of the incomplete beta function, which is x (1 - x) times its slope.

    ln(x^a (1-x)^b / B(a, b))

    Parameters
    ----------
    a, b : above 0 [1]
    x : 0 to 1 exclusive [1]

    Returns
    -------
    natural logarithm [1]

    Raises
    ------
    none

    Validity
    --------
    As `incomplete_beta`.

    Reference
    ---------
    Definition of the beta function.
    """
    beta = math.lgamma(a) + math.lgamma(b) - math.lgamma(a + b)
    return a * math.log(x) + b * math.log(1 - x) - beta


def tail_of_t(t: float, dof: float) -> float:
    """Probability that |T| of Student's distribution is at least as large as |t|.

    p = I_x(nu / 2, 1 / 2), x = nu / (nu + t^2)

    Parameters
    ----------
    t : test value [1]
    dof : degrees of freedom nu, any number above 0 [1]

    Returns
    -------
    two-sided probability [1]

    Raises
    ------
    none

    Validity
    --------
    As `incomplete_beta`.

    Reference
    ---------
    Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.1.
    """
    if t * t < dof:  # dof / (dof + t^2) would lose the digits of a small t
        return 1 - incomplete_beta(0.5, dof / 2, t * t / (dof + t * t))
    return incomplete_beta(dof / 2, 0.5, dof / (dof + t * t))


def factor_of_t(dof: float, coverage: float = 0.95) -> float:
    """Factor t that |T| stays below with the stated probability, for any degrees of freedom.

    Newton's method from the next whole number of degrees of freedom up: the probability is concave,
    so it comes from below and cannot stray.

    Parameters
    ----------
    dof : degrees of freedom nu, 1 or more, whole or not [1]
    coverage : probability within, 0 to 1 exclusive [1]

    Returns
    -------
    t [1]

    Raises
    ------
    none

    Validity
    --------
    As `incomplete_beta`.

    Reference
    ---------
    As `coverage_factor`; degrees of freedom that are not whole as in Welch, Biometrika 34 (1947).
    """
    whole = math.ceil(dof)
    t = coverage_factor(whole, coverage)
    if whole == dof and whole <= ENDLESS:
        return t
    log_scale = math.lgamma((dof + 1) / 2) - math.lgamma(dof / 2) - 0.5 * math.log(dof * math.pi)
    for _ in range(60):
        slope = 2 * math.exp(log_scale - (dof + 1) / 2 * math.log(1 + t * t / dof))
        step = (coverage - 1 + tail_of_t(t, dof)) / slope
        t += step
        if abs(step) < 1e-10 * t:
            break
    return t


def power_of_t(shift: float, dof: float, alpha: float = 0.05) -> float:
    """Probability that a two-sided t test finds a difference that is there.

    1 - sum_j Poisson(j; shift^2 / 2) I_x(j + 1/2, nu / 2), x = t^2 / (t^2 + nu): the tail of the
    non-central t distribution, both sides.

    Parameters
    ----------
    shift : true difference over its standard error, the non-centrality [1]
    dof : degrees of freedom nu, 1 or more [1]
    alpha : chance of a false alarm [1]

    Returns
    -------
    probability [1]

    Raises
    ------
    none

    Validity
    --------
    Normal scatter; shift up to some hundreds.

    Reference
    ---------
    Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions, volume 2, chapter 30 (from
    memory); checked against published power figures and SciPy.
    """
    t = factor_of_t(dof, 1 - alpha)
    x = t * t / (t * t + dof)
    rate = shift * shift / 2
    if rate == 0:
        return alpha
    # The Poisson weights beyond ten standard deviations of their mean add nothing that shows.
    first = int(max(0.0, rate - 10 * math.sqrt(rate) - 10))
    last = int(rate + 10 * math.sqrt(rate) + 30)
    weight = math.exp(first * math.log(rate) - rate - math.lgamma(first + 1))
    a, b = first + 0.5, dof / 2
    within = incomplete_beta(a, b, x)
    step = math.exp(log_front(a, b, x)) / a
    missed = 0.0
    for j in range(first, last):
        missed += weight * within
        weight *= rate / (j + 1)
        within -= step
        step *= x * (a + b) / (a + 1)
        a += 1
    return 1 - missed


def detectable_shift(dof: float, power: float = 0.8, alpha: float = 0.05) -> float:
    """Non-centrality at which a two-sided t test has the wanted power.

    power_of_t(shift, nu, alpha) = power, found by false position (Illinois).

    Parameters
    ----------
    dof : degrees of freedom nu, 1 or more [1]
    power : wanted probability of finding it, above alpha [1]
    alpha : chance of a false alarm [1]

    Returns
    -------
    smallest true difference over its standard error [1]

    Raises
    ------
    none

    Validity
    --------
    As `power_of_t`; power up to 0.999.

    Reference
    ---------
    As `power_of_t`.
    """
    low, at_low = 0.0, alpha - power
    high = 2.0
    at_high = power_of_t(high, dof, alpha) - power
    while at_high < 0:
        low, at_low = high, at_high
        high *= 1.6
        at_high = power_of_t(high, dof, alpha) - power
    shift = high
    for _ in range(60):
        shift = high - at_high * (high - low) / (at_high - at_low)
        at = power_of_t(shift, dof, alpha) - power
        if abs(at) < 1e-12 or abs(high - low) < 1e-12 * high:
            break
        if at * at_high < 0:
            low, at_low = high, at_high
        else:
            at_low /= 2
        high, at_high = shift, at
    return shift

"""The coverage factor: Student's t for a stated coverage."""

import math

COVERAGE = 0.95
# What `coverage_factor` gives for infinite degrees of freedom.
NORMAL_95 = 1.959963984540054
# Beyond this many degrees of freedom t differs from the normal factor by under 0.13 %.
ENDLESS = 1000
# Newton's step squares the error each time, so a step this small leaves none that shows.
SMALL = 1e-9


def coverage_within(theta: float, dof: int) -> float:
    """Probability that |T| stays below t = sqrt(nu) tan(theta), T of Student's distribution.

    The finite sums in sin and cos of theta, one for odd and one for even degrees of freedom.

    Parameters
    ----------
    theta : atan(t / sqrt(nu)) [rad], 0 to pi/2
    dof : degrees of freedom nu, a whole number, 1 or more

    Returns
    -------
    probability [1]

    Raises
    ------
    none

    Validity
    --------
    Exact for whole degrees of freedom.

    Reference
    ---------
    Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4.
    """
    sine, square = math.sin(theta), math.cos(theta) ** 2
    if dof % 2:
        term = math.cos(theta)
        total = term if dof > 1 else 0.0
        for j in range(2, dof - 1, 2):
            term *= square * j / (j + 1)
            total += term
        return (theta + sine * total) * 2 / math.pi
    term = 1.0
    total = 1.0
    for j in range(1, dof - 2, 2):
        term *= square * j / (j + 1)
        total += term
    return sine * total


# Factors that were asked for, by degrees of freedom and coverage: the same few, again and again.
_known: dict[tuple[int, float], float] = {}
_MOST_KNOWN = 2000


def coverage_factor(dof: int | None, coverage: float = COVERAGE) -> float:
    """Factor k that widens a standard uncertainty to the stated coverage.

    k = t_p(nu), found by Newton's method; the probability is concave, so it cannot stray.

    Parameters
    ----------
    dof : degrees of freedom nu, whole, 1 or more; None is infinite (normal distribution)
    coverage : probability between the limits, 0 to 1 exclusive [1]

    Returns
    -------
    coverage factor [1]

    Raises
    ------
    none

    Validity
    --------
    Degrees of freedom beyond 1000 count as infinite.

    Reference
    ---------
    JCGM 100:2008 (GUM), G.3 and Table G.2.
    """
    asked = (ENDLESS + 1 if dof is None or dof > ENDLESS else dof, coverage)
    found = _known.get(asked)
    if found is None:
        if len(_known) >= _MOST_KNOWN:
            _known.clear()
        found = _known[asked] = _worked_out(asked[0], coverage)
    return found


def _worked_out(dof: int, coverage: float) -> float:
    z = 0.0
    for _ in range(60):
        slope = math.sqrt(2 / math.pi) * math.exp(-z * z / 2)
        step = (coverage - math.erf(z / math.sqrt(2))) / slope
        z += step
        if abs(step) < SMALL:
            break
    if dof > ENDLESS:
        return z
    theta = math.atan(_first_guess(z, dof) / math.sqrt(dof))
    scale = 2 * math.exp(math.lgamma((dof + 1) / 2) - math.lgamma(dof / 2)) / math.sqrt(math.pi)
    for _ in range(60):
        slope = scale * math.cos(theta) ** (dof - 1)
        step = (coverage - coverage_within(theta, dof)) / slope
        theta += step
        if abs(step) < SMALL:
            break
    return math.sqrt(dof) * math.tan(theta)


def _first_guess(z: float, dof: int) -> float:
    """Give t to a few digits from the normal factor, so that a step or two of Newton's suffice.

    Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5, its first two terms.
    """
    return z + (z**3 + z) / (4 * dof) + (5 * z**5 + 16 * z**3 + 3 * z) / (96 * dof**2)

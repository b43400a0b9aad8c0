"""How surprising a sum of squared deviations is: the tail of the chi-square distribution."""

import math


def tail(chi_square: float, dof: int) -> float:
    """Probability that chi-square with these degrees of freedom is at least this large.

    Finite sums, one for even and one for odd degrees of freedom.

    Parameters
    ----------
    chi_square : weighted sum of squares, 0 or more [1]
    dof : degrees of freedom, a whole number, 1 or more

    Returns
    -------
    probability [1]

    Raises
    ------
    none

    Validity
    --------
    Deviations of normal readings whose uncertainties are known.

    Reference
    ---------
    Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.4 and 26.4.5.
    """
    # So little makes no difference to 1, and parts of it may be too little for a logarithm.
    if chi_square < 1e-300:
        return 1.0
    half = chi_square / 2
    # Each term is carried as its logarithm: with hundreds of degrees of freedom exp(-half) alone
    # is below the smallest number there is, though the sum is not.
    if dof % 2:
        total = math.erfc(math.sqrt(half))
        log_term = math.log(2 * math.sqrt(half / math.pi)) - half
        for r in range(1, (dof - 1) // 2 + 1):
            total += math.exp(log_term)
            log_term += math.log(chi_square / (2 * r + 1))
        return total
    log_term = -half
    total = math.exp(log_term)
    for r in range(1, dof // 2):
        log_term += math.log(half / r)
        total += math.exp(log_term)
    return total


def consistency(chi_square: float, dof: int, surprising: float) -> dict[str, object]:
    """Tell whether readings agree, in the form of the result; with nothing to test they do.

    Parameters
    ----------
    chi_square : weighted sum of squared residuals [1]
    dof : its degrees of freedom
    surprising : probability below which agreement is no longer believed [1]

    Returns
    -------
    dict with chi_square, degrees_of_freedom, probability (None without any) and consistent

    Raises
    ------
    none

    Validity
    --------
    As `tail`.

    Reference
    ---------
    As `tail`.
    """
    chance = tail(chi_square, dof) if dof > 0 else None
    return {
        "chi_square": chi_square,
        "degrees_of_freedom": dof,
        "probability": chance,
        "consistent": chance is None or chance >= surprising,
    }


def quantile(probability: float, dof: int) -> float:
    """Chi-square that is exceeded with so much probability less than one: inverse of `tail`.

    1 - tail(x, nu) = p, by halving where x may lie

    Parameters
    ----------
    probability : p, that chi-square is at most this large, 0 to 1 exclusive [1]
    dof : degrees of freedom nu, a whole number, 1 or more

    Returns
    -------
    chi-square [1]

    Raises
    ------
    none

    Validity
    --------
    As `tail`; to 1e-14 of itself.

    Reference
    ---------
    Definition; checked against scipy.
    """
    low, high = 0.0, float(dof)
    while 1 - tail(high, dof) < probability:
        low, high = high, 2 * high
    for _ in range(100):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        if 1 - tail(middle, dof) < probability:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def within_normal(low: float, high: float, value: float, uncertainty: float) -> float:
    """Probability that a normal quantity lies between two bounds.

    Phi((high - value) / u) - Phi((low - value) / u)

    Parameters
    ----------
    low, high : bounds [any unit]
    value, uncertainty : estimate and standard uncertainty [same unit], uncertainty above zero

    Returns
    -------
    probability [1]

    Raises
    ------
    none

    Validity
    --------
    Normal distribution.

    Reference
    ---------
    Definition of the normal distribution function; JCGM 106:2012, 7.4.
    """
    scale = uncertainty * math.sqrt(2)
    return 0.5 * (math.erf((high - value) / scale) - math.erf((low - value) / scale))

"""How well a standard deviation is known: its interval from the chi-square distribution."""

import math

from .chisquare import tail


def chi_square_at(chance: float, dof: int) -> float:
    """Chi-square that is exceeded with the stated probability, by bisection.

    Parameters
    ----------
    chance : probability of more, 0 to 1 exclusive [1]
    dof : degrees of freedom, whole, 1 or more

    Returns
    -------
    chi-square [1]

    Raises
    ------
    none

    Validity
    --------
    As `chisquare.tail`.

    Reference
    ---------
    As `chisquare.tail`.
    """
    low, high = 0.0, dof + 1.0
    while tail(high, dof) > chance:
        low, high = high, 2 * high
    for _ in range(200):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        if tail(middle, dof) > chance:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def spread_interval(spread: float, dof: int, coverage: float = 0.95) -> tuple[float, float]:
    """Interval of a standard deviation.

    s sqrt(nu / chi^2)

    Parameters
    ----------
    spread : standard deviation s found [any unit]
    dof : degrees of freedom nu, whole, 1 or more
    coverage : probability between the ends, each side the same [1]

    Returns
    -------
    low and high end [the same unit]

    Raises
    ------
    none

    Validity
    --------
    Independent normal scatter.

    Reference
    ---------
    NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.3 (confidence limits of a standard
    deviation, from memory).
    """
    beyond = (1 - coverage) / 2
    low = spread * math.sqrt(dof / chi_square_at(beyond, dof))
    return low, spread * math.sqrt(dof / chi_square_at(1 - beyond, dof))

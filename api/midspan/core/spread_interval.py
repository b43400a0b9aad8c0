"""How well a standard deviation is known: its interval from the chi-square distribution."""

import math

from .chisquare import quantile


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
    low = spread * math.sqrt(dof / quantile(1 - beyond, dof))
    return low, spread * math.sqrt(dof / quantile(beyond, dof))

"""What a session could have shown, and how many pulls more would decide."""

import math

from .betas import detectable_shift, power_of_t
from .drift_fit import Difference, Fit

POWER = 0.8
MOST_FURTHER = 60
# Below this shift no test of these sizes has the wanted power: t is above 1.96, and 0.84 beyond it.
LEAST_SHIFT = 2.8


def detectable(found: Difference, power: float = POWER) -> float | None:
    """Smallest true difference that a session like this one finds with the stated power.

    shift times standard error, the shift by the non-central t distribution

    Parameters
    ----------
    found : the difference with its standard error [any unit]
    power : probability of finding it [1]

    Returns
    -------
    difference [the same unit], None without any degrees of freedom

    Raises
    ------
    none

    Validity
    --------
    The scatter found is taken for the true one.

    Reference
    ---------
    See `betas.power_of_t`.
    """
    if found.uncertainty is None:
        return None
    return float(detectable_shift(found.dof, power) * found.uncertainty)


def further_pulls(fit: Fit, one: str, other: str, last: int, size: float) -> list[str] | None:
    """Pulls to add, each of the setting that narrows the difference most, until `size` is shown.

    Standard error with drift: s sqrt(1/n1 + 1/n2 + (x1 - x2)^2 / Sxx), x mean places.

    Parameters
    ----------
    fit : the session so far [any unit]
    one, other : the settings compared
    last : place of the last run
    size : true difference that should be found four times in five [the same unit]

    Returns
    -------
    settings of the further pulls, in order; None if more than MOST_FURTHER are needed

    Raises
    ------
    none

    Validity
    --------
    The scatter found is taken for the true one, alike in both settings.

    Reference
    ---------
    See `betas.power_of_t`.
    """
    counts, places = dict(fit.counts), dict(fit.places)
    squares, dof = fit.squares, fit.dof
    order: list[str] = []
    drift = fit.slope is not None
    if not fit.spread or size == 0:
        return None
    while len(order) < MOST_FURTHER:
        place = last + 1 + len(order)
        best: tuple[float, str, float] | None = None
        for key in (one, other):
            error, gained = _error(counts, places, squares, drift, key, place, one, other)
            if best is None or error < best[0] * (1 - 1e-12):
                best = (error, key, gained)
        assert best is not None  # noqa: S101
        error, key, gained = best
        n = counts[key]
        places[key] += (place - places[key]) / (n + 1)
        counts[key] = n + 1
        squares += gained
        dof += 1
        order.append(key)
        shift = abs(size) / (fit.spread * error)
        if shift >= LEAST_SHIFT and power_of_t(shift, dof) >= POWER:
            return order
    return None


def _error(
    counts: dict[str, int], places: dict[str, float], squares: float, drift: bool, key: str,
    place: int, one: str, other: str,
) -> tuple[float, float]:  # fmt: skip
    """Standard error over scatter with one pull more, and what it adds to the squares."""
    n = counts[key]
    gained = n / (n + 1) * (place - places[key]) ** 2
    left = dict(counts)
    left[key] = n + 1
    square = 1 / left[one] + 1 / left[other]
    if drift:
        at = dict(places)
        at[key] += (place - places[key]) / (n + 1)
        square += (at[one] - at[other]) ** 2 / (squares + gained)
    return math.sqrt(square), gained

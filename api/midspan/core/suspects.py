"""Of readings that disagree: every single one without which the others would agree, and why."""

import math
from collections import namedtuple

from .causes import CAUSES, EXPLAINED, HIGH, LOW, Cause
from .chisquare import tail
from .shelf import Shelf
from .trials import Trial, excess_of_reading


class Suspect(namedtuple("Suspect", ("place", "probability", "expected", "uncertainty"))):
    """A reading by its place among the observations; the probability of the others, without it,
    by chance; what they expect it to read beyond nominal, and how well [mm of excess length].
    """

    __slots__ = ()


def suspects(shelf: Shelf, surprising: float) -> list[Suspect]:
    """Find every reading without which the others agree, the best agreement first.

    X_i = X - r_i^2 / (1 - h_i);  h_i = u_fit^2 / u_i^2

    Parameters
    ----------
    shelf : the estimate from all readings
    surprising : probability below which agreement is not believed [1]

    Returns
    -------
    list of Suspect

    Raises
    ------
    none

    Validity
    --------
    One reading is wrong. One that nothing else checks is never among them.

    Reference
    ---------
    Leave-one-out of least squares by the leverages; checked against fitting anew.
    """
    whole, dof = shelf.chi_square()
    found: list[Suspect] = []
    if dof < 2:
        return found
    residuals = shelf.residuals()
    for i in range(len(residuals)):
        seen = shelf.observations[i]
        free = 1 - shelf.fitted_variance(seen) / seen.uncertainty**2
        if free < 1e-6:
            continue
        chance = tail(whole - residuals[i] ** 2 / free, dof - 1)
        if chance >= surprising:
            off = residuals[i] * seen.uncertainty / free
            spread = seen.uncertainty * math.sqrt((1 - free) / free)
            found.append(Suspect(i, chance, seen.value - off, spread))
    order = sorted([(-one.probability, one.place) for one in found])
    by_place = {one.place: one for one in found}
    return [by_place[place] for _, place in order]


def cause_of_trial(trial: Trial, suspect: Suspect) -> Cause:
    """Name the slip that would explain a movement, else what pulls it that way.

    Parameters
    ----------
    trial : the reading [mm]
    suspect : what the others expect of it [mm]

    Returns
    -------
    Cause

    Raises
    ------
    none

    Validity
    --------
    As `suspects`.

    Reference
    ---------
    Common practice, no source.
    """
    for cause in CAUSES["movement_mm"]:
        u = trial.uncertainty * cause.factor
        value, spread = excess_of_reading(
            trial.strand, trial.movement * cause.factor, u, trial.movement * cause.factor
        )
        off = value - trial.nominal - suspect.expected
        chance = math.erfc(abs(off) / math.sqrt(2 * (spread**2 + suspect.uncertainty**2)))
        if chance >= EXPLAINED:
            return cause
    value, _ = excess_of_reading(trial.strand, trial.movement, trial.uncertainty, trial.movement)
    return (HIGH if value - trial.nominal > suspect.expected else LOW)["movement_mm"]

"""Trial fits as evidence: what a noisy movement tells of excess length, and a shelf from it."""

import math
from collections import namedtuple

from .movement import excess_from_movement, movement_from_excess
from .observation import Observation
from .shelf import Shelf

# A movement within this many standard uncertainties of zero cannot be told from none: the chain
# may as well be too tight, by nobody knows how much.
FELT = 2


class Trial(
    namedtuple("Trial", ("chain", "gears", "block", "strand", "nominal", "movement", "uncertainty"))
):
    """A trial fit: indices of chain, gear set and block; free strand and nominal excess length
    there, total movement read and its standard uncertainty [mm].
    """

    __slots__ = ()


def is_felt(reading: float, uncertainty: float) -> bool:
    """Tell whether a movement or a lash can be told from none at all.

    x > 2 u

    Parameters
    ----------
    reading : movement or lash x [any unit]
    uncertainty : its standard uncertainty u [the same unit]

    Returns
    -------
    True or False

    Raises
    ------
    none

    Validity
    --------
    Normal readings.

    Reference
    ---------
    Two standard uncertainties, the usual bound of about 95 %.
    """
    return reading > FELT * uncertainty


def excess_of_reading(
    strand: float, movement: float, uncertainty: float, about: float
) -> tuple[float, float]:
    """Excess length from a noisy movement, freed of the bias its square has, and its spread.

    e = sqrt(s^2 + m^2) - s - u^2 / (2 s);  u_e = sqrt((m0 u)^2 + u^4 / 2) / sqrt(s^2 + m0^2)

    Parameters
    ----------
    strand : free strand s [mm]
    movement : total movement read, m [mm]
    uncertainty : its standard uncertainty u [mm]
    about : best knowledge of the true movement, m0 [mm]; the reading itself if there is no better

    Returns
    -------
    excess length and its standard uncertainty [mm]

    Raises
    ------
    none

    Validity
    --------
    Movement short against the strand. With the reading itself for m0, readings that came out low
    weigh too much; so give m0 where other readings tell it.

    Reference
    ---------
    Mean and variance of the square of a normal reading: E[m^2] = m0^2 + u^2,
    Var[m^2] = 4 m0^2 u^2 + 2 u^4; derived.
    """
    value = excess_from_movement(strand, movement) - uncertainty**2 / (2 * strand)
    spread = math.sqrt((about * uncertainty) ** 2 + uncertainty**4 / 2)
    return value, spread / math.sqrt(strand * strand + about * about)


def shelf_of(
    chains: int, gears: int, blocks: int, trials: list[Trial], others: list[Observation]
) -> Shelf:
    """Estimate a shelf from trial fits and what else was observed.

    Twice: how well a movement tells the excess length depends on the true movement, which the
    first pass tells better than the reading does.

    Parameters
    ----------
    chains, gears, blocks : how many of each
    trials : trial fits whose movement was felt
    others : bench lengths, gear readings and what each centre distance is worth

    Returns
    -------
    Shelf

    Raises
    ------
    none

    Validity
    --------
    As `shelf.Shelf` and `excess_of_reading`; a third pass would change nothing that shows.

    Reference
    ---------
    Iteratively reweighted least squares.
    """
    first = Shelf(chains, gears, blocks, [_seen(t, t.movement) for t in trials] + others)
    again = []
    for t in trials:
        excess = t.nominal + first.value(t.chain, t.gears, t.block)
        again.append(_seen(t, movement_from_excess(t.strand, excess)))
    return Shelf(chains, gears, blocks, again + others, first.groups)


def _seen(trial: Trial, about: float) -> Observation:
    value, spread = excess_of_reading(trial.strand, trial.movement, trial.uncertainty, about)
    return Observation(trial.chain, trial.gears, trial.block, value - trial.nominal, spread)

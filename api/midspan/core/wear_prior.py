"""What is known of a chain's wear before it is measured, by oil; and where each figure is from.

Wide on purpose: no wear rate of a timing chain in per cent an hour was found in print, and no
source gives a factor for one oil against another. So the oil moves only how long bedding takes,
and that by what the trade says.
"""

import math
from collections import namedtuple

from .limits import MEMORY, PRACTICE
from .running_figures import DERIVED
from .wear import Wear

PARAMETERS = ("first", "tau", "steady")
POOLED = "this shop's own records"

_GUIDE = "The complete guide to chain, 2.2.4"
_GUIDE_AT = "chain-guide.com/basics/2-2-4-wear-of-working-parts.html"


class Row(
    namedtuple("Row", ("parameter", "median", "log_sd", "origin", "text", "source", "address"))
):
    """A lognormal prior: its median [% or h or %/h], standard deviation of its logarithm, origin
    of the median (the width is from memory, unverified), why, source and address.
    """

    __slots__ = ()


class Prior(namedtuple("Prior", ("rows", "engines", "made_at"))):
    """Three Rows in the order of PARAMETERS, how many engines of the shop are behind them (0 for
    the wide prior) and when those were gathered ("" for the wide prior).
    """

    __slots__ = ()

    @property
    def means(self) -> list[float]:
        """Means of ln a, ln tau and ln w."""
        return [math.log(row.median) for row in self.rows]

    @property
    def spreads(self) -> list[float]:
        """Standard deviations of ln a, ln tau and ln w."""
        return [float(row.log_sd) for row in self.rows]


_FIRST = Row(
    "first", 0.04, 0.6, DERIVED,
    "First wear is less than 0.1 % on general roller chains; so 0.1 % is near the upper end here. "
    "No figure for a timing chain was found.",
    _GUIDE, _GUIDE_AT,
)  # fmt: skip
_STEADY = Row(
    "steady", 1e-4, 1.0, DERIVED,
    "A general roller chain: 1.5 to 2 % less the first 0.1 % over 15,000 h is some 0.0001 % an "
    "hour. The two figures are from different books: an order of magnitude. No source gives a "
    "factor between oils.",
    _GUIDE + "; a chain maker's selection procedure (15,000 h)",
    _GUIDE_AT + "; ja.scribd.com/document/52463061",
)  # fmt: skip
_CEASES = "First wear ceases within 20 h on general roller chains; taken as 98 % done, about 5 h."
_BY_OIL = {
    "mineral": Row("tau", 5.0, 1.0, DERIVED, _CEASES, _GUIDE, _GUIDE_AT),
    "running-in": Row(
        "tau", 5.0, 1.0, DERIVED,
        _CEASES + " That this oil lets a chain bed in as quickly is from memory, unverified.",
        _GUIDE, _GUIDE_AT,
    ),
    "conventional": Row(
        "tau", 20.0, 1.3, MEMORY,
        "Between 5 h (general roller chains) and 80 h (today's oils); nobody has measured it.",
        "", "",
    ),
    "synthetic": Row(
        "tau", 80.0, 1.4, PRACTICE,
        "The trade counts some 10,000 miles for a chain to bed in with today's oils: at 50 km/h "
        "some 320 h, taken as 98 % done.",
        "", "",
    ),
}  # fmt: skip
_UNKNOWN = Row(
    "tau", 20.0, 1.6, MEMORY, "The oil is not known: from 1 h to 500 h is possible.", "", "",
)  # fmt: skip


def wide(oil: str | None) -> Prior:
    """Give the prior by oil that stands where no engine of the shop is known.

    Parameters
    ----------
    oil : one of `oil_categories.OILS`, or None where it is not known

    Returns
    -------
    Prior; medians of a [%], tau [h] and w [%/h]

    Raises
    ------
    none

    Validity
    --------
    Orders of magnitude for short cam drives; each Row says what it rests on.

    Reference
    ---------
    In each Row.
    """
    return Prior([_FIRST, _UNKNOWN if oil is None else _BY_OIL[oil], _STEADY], 0, "")


def pooled(means: list[float], spreads: list[float], engines: int, made_at: str) -> Prior:
    """Give the prior that the shop's own engines left.

    Parameters
    ----------
    means, spreads : of ln a, ln tau and ln w, with a in % and tau in h [1]
    engines : how many engines are behind it
    made_at : when it was made, as RFC 3339 text

    Returns
    -------
    Prior; medians of a [%], tau [h] and w [%/h]

    Raises
    ------
    none

    Validity
    --------
    Two engines or more; of fewer the wide prior is to be kept.

    Reference
    ---------
    Normal random effects between engines; see the service.
    """
    said = "How chains of this pitch wore on this oil in " + str(engines) + " engines of this shop."
    rows = [
        Row(PARAMETERS[i], math.exp(means[i]), spreads[i], POOLED, said, "", "") for i in range(3)
    ]
    return Prior(rows, engines, made_at)


def wear_at(logs: list[float]) -> Wear:
    """Give the Wear [%, h, %/h] of three logarithms."""
    return Wear(math.exp(logs[0]), math.exp(logs[1]), math.exp(logs[2]))

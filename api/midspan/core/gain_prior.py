"""What too little and too much slack are thought to cost, before anything was measured.

A rule of thumb of the trade, common practice, no source: hardly any movement costs in the order of
2 per cent of peak power, far too much about half a per cent, the wanted window nothing. How wide
that is taken, and how it rises between, is from memory, unverified.
"""

import math
from collections import namedtuple

from .limits import MEMORY, PRACTICE, TOO_LOOSE_MM, TOO_TIGHT_MM, WANTED_FROM_MM, WANTED_TO_MM

# How far below and above the window the two losses are told: at hardly any and at far too much.
TIGHT_MM = WANTED_FROM_MM - TOO_TIGHT_MM
LOOSE_MM = TOO_LOOSE_MM - WANTED_TO_MM

Row = namedtuple("Row", ("parameter", "label", "unit", "median", "common", "between", "origin"))
# Medians with the standard deviations of their logarithms: what is not known of all engines in
# common, and what differs from engine to engine.
ROWS = (
    Row("tight", "Lost with hardly any movement", "%", 2.0, 0.5, 0.4, PRACTICE),
    Row("loose", "Lost with far too much movement", "%", 0.5, 0.5, 0.4, PRACTICE),
    Row("from", "The window begins at", "mm", WANTED_FROM_MM, 0.12, 0.1, PRACTICE),
    Row("width", "The window is wide", "mm", WANTED_TO_MM - WANTED_FROM_MM, 0.4, 0.3, PRACTICE),
)
WIDTH_ORIGIN = MEMORY
MEANS = [math.log(row.median) for row in ROWS]
COMMON = [row.common for row in ROWS]
BETWEEN = [row.between for row in ROWS]


def rise(reach: float) -> float:
    """Give how a loss grows beyond the window, as a share of the loss at reach 1.

    2 t^2 / (1 + t^2), and nothing within the window

    Parameters
    ----------
    reach : t, how far beyond the window, over how far its loss is told [1]

    Returns
    -------
    share [1]

    Raises
    ------
    none

    Validity
    --------
    The form is ours: smooth, level in the window, and levelling off where nobody has looked.

    Reference
    ---------
    From memory, unverified; its spread is in the prior.
    """
    return 2 * reach * reach / (1 + reach * reach) if reach > 0 else 0.0


def _steepness(reach: float) -> float:
    return 4 * reach / (1 + reach * reach) ** 2 if reach > 0 else 0.0


def loss(logs: list[float], movement: float) -> float:
    """Give the share of peak power lost at a movement.

    L = A rise((W1 - m) / d1) + B rise((m - W2) / d2), W2 = W1 + width

    Parameters
    ----------
    logs : natural logarithms of A [%], B [%], W1 [mm] and the width [mm]
    movement : m, mid-span, cold [mm]

    Returns
    -------
    loss of peak power [%]

    Raises
    ------
    none

    Validity
    --------
    Short cam drives without a tensioner; beyond half an inch nothing is known.

    Reference
    ---------
    Rule of thumb: common practice, no source. Form: `rise`.
    """
    start = math.exp(logs[2])
    if movement < start:
        return math.exp(logs[0]) * rise((start - movement) / TIGHT_MM)
    return math.exp(logs[1]) * rise((movement - start - math.exp(logs[3])) / LOOSE_MM)


def loss_slopes(logs: list[float], movement: float) -> list[float]:
    """Give how the loss changes with each of the four logarithms.

    Parameters
    ----------
    logs : as for `loss`
    movement : m [mm]

    Returns
    -------
    the four derivatives [%]

    Raises
    ------
    none

    Validity
    --------
    As `loss`.

    Reference
    ---------
    Derivatives of `loss`; checked against differences.
    """
    start, width = math.exp(logs[2]), math.exp(logs[3])
    below, above = (start - movement) / TIGHT_MM, (movement - start - width) / LOOSE_MM
    most, least = math.exp(logs[0]), math.exp(logs[1])
    steep = least * _steepness(above) / LOOSE_MM
    return [
        most * rise(below),
        least * rise(above),
        start * (most * _steepness(below) / TIGHT_MM - steep),
        -width * steep,
    ]


def gain_of(logs: list[float], start: float, end: float) -> float:
    """Give the gain of peak power from one movement to another.

    L(m1) - L(m2)

    Parameters
    ----------
    logs : as for `loss`
    start, end : movements m1 and m2 [mm]

    Returns
    -------
    gain of peak power [%]; nothing where the two are the same, and with its sign turned where they
    change places

    Raises
    ------
    none

    Validity
    --------
    As `loss`.

    Reference
    ---------
    As `loss`.
    """
    return loss(logs, start) - loss(logs, end)

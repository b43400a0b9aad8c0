"""Which steps of several adjusters together come nearest to a wanted move of the cam."""

from collections import namedtuple

from .adjuster import SAME, Adjuster

# Settings whose remainders differ by less than this [crank deg] come equally near.
EQUAL_DEG = 1e-6
MOST_SETTINGS = 4000


class Setting(namedtuple("Setting", ("positions", "move", "remainder", "moved"))):
    """Where to set each adjuster, the move that it makes and what of the wanted one is left
    [crank deg], and how many adjusters it changes.
    """

    __slots__ = ()


def count_settings(adjusters: list[Adjuster]) -> int:
    """How many settings there are, a vernier without steps counted once."""
    total = 1
    for one in adjusters:
        total *= 1 if one.steps is None else len(one.steps)
    return total


def settings_for(adjusters: list[Adjuster], wanted: float) -> list[Setting]:
    """Every setting of the adjusters, nearest to the wanted move first.

    |wanted - sum f_i (x_i - x_i fitted)| least; of equals, the one that moves fewest parts, then
    the one that moves them least

    Parameters
    ----------
    adjusters : at most one of them without steps
    wanted : move of the cam, advance positive [crank deg]

    Returns
    -------
    list of Setting [crank deg], each combination of steps once, a vernier set as near as it reaches

    Raises
    ------
    none

    Validity
    --------
    Each adjuster moves the cam by its own step alone, whatever the others do.

    Reference
    ---------
    Every combination is tried, so none nearer is missed.
    """
    combined: list[tuple[float, ...]] = [()]
    for one in adjusters:
        choices = (one.fitted,) if one.steps is None else one.steps
        combined = [had + (x,) for had in combined for x in choices]
    found = []
    for positions in combined:
        move = sum([one.factor * (x - one.fitted) for one, x in zip(adjusters, positions)])
        for i in range(len(adjusters)):
            if adjusters[i].steps is None:
                at = _reached(adjusters[i], wanted - move)
                move += adjusters[i].factor * (at - adjusters[i].fitted)
                positions = positions[:i] + (at,) + positions[i + 1 :]
        moved = len([1 for one, x in zip(adjusters, positions) if abs(x - one.fitted) > SAME])
        found.append(Setting(positions, move, wanted - move, moved))
    return sorted(found, key=_rank)


def _reached(one: Adjuster, rest: float) -> float:
    """Set a vernier for what is left, as far as it goes."""
    at = one.fitted + rest / one.factor
    return float(max(-one.reach, min(one.reach, at)))


def _rank(one: Setting) -> tuple[int, int, float, tuple[float, ...]]:
    # The positions last, so that no two settings are equal: not every interpreter sorts stably.
    return (int(abs(one.remainder) / EQUAL_DEG + 0.5), one.moved, abs(one.move), one.positions)


def ties(found: list[Setting]) -> list[Setting]:
    """Give the settings that come as near as the first and move as many parts, the first included.

    Parameters
    ----------
    found : as `settings_for` gives them

    Returns
    -------
    list of Setting, one or more [crank deg]

    Raises
    ------
    IndexError : no setting at all

    Validity
    --------
    As `settings_for`.

    Reference
    ---------
    none
    """
    first = found[0]
    return [
        one
        for one in found
        if abs(abs(one.remainder) - abs(first.remainder)) < EQUAL_DEG and one.moved == first.moved
    ]

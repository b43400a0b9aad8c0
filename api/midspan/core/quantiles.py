"""Quantiles of draws, some of which may never happen."""

LEVELS = (("median", 0.5), ("low_80", 0.1), ("high_80", 0.9), ("low_95", 0.025),
          ("high_95", 0.975))  # fmt: skip


def quantile(ordered: list[float | None], level: float) -> float | None:
    """Quantile of ordered draws, straight between two of them.

    Parameters
    ----------
    ordered : one or more, rising; None at the end for those beyond the horizon [any unit]
    level : 0 to 1 [1]

    Returns
    -------
    the quantile, or None where it is beyond the horizon [the unit of the draws]

    Raises
    ------
    none

    Validity
    --------
    Equally weighted draws.

    Reference
    ---------
    Definition 7 of Hyndman and Fan, American Statistician 50 (1996) 361, from memory, unverified;
    checked against numpy.
    """
    place = level * (len(ordered) - 1)
    below = min(int(place), len(ordered) - 1)
    above = min(below + 1, len(ordered) - 1)
    low, high = ordered[below], ordered[above]
    if low is None or (high is None and place > below):
        return None
    return low if high is None else low + (high - low) * (place - below)


def spread_of(draws: list[float | None]) -> dict[str, float | None]:
    """Give median, 80 % and 95 % interval of draws; None stands for beyond the horizon."""
    ordered: list[float | None] = []
    ordered.extend(sorted([x for x in draws if x is not None]))
    ordered.extend([None] * (len(draws) - len(ordered)))
    return {name: quantile(ordered, level) for name, level in LEVELS}


def scaled(spread: dict[str, float | None], factor: float) -> dict[str, float | None]:
    """Give the same intervals in another unit."""
    return {name: None if x is None else x * factor for name, x in spread.items()}

"""The first wear of a chain: how much of it some hours of running do."""

import math

# A chain guide has first wear cease within 20 h; taken as 98 % done, that is a time constant of
# about 5 h: 20 / ln 50 = 5.1. Derived from that published figure for general roller chains.
TIME_CONSTANT_H = 5.0


def bedding_share(running_h: float) -> float:
    """Give the share of a chain's first wear that is done after some running.

    1 - exp(-t / tau)

    Parameters
    ----------
    running_h : running since new [h]

    Returns
    -------
    share [1], 0 to 1

    Raises
    ------
    none

    Validity
    --------
    General roller chains, an order of magnitude: no timing chain was measured, and with today's
    oils the trade counts in thousands of miles (common practice, no source).

    Reference
    ---------
    Derived: The complete guide to chain, 2.2.4 (first wear ceases within 20 h), 98 % taken as
    done; the exponential form is the usual one (Queener, Smith and Mitchell, Wear 8 (1965) 391,
    from memory, unverified).
    """
    return 1 - math.exp(-running_h / TIME_CONSTANT_H)

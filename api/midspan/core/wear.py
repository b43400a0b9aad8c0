"""How a chain wears: first bedding, then steady wear."""

import math
from collections import namedtuple


class Wear(namedtuple("Wear", ("first", "tau", "steady"))):
    """First wear in all [%], its time constant [h], steady wear [%/h]."""

    __slots__ = ()


def elongation_by(wear: Wear, running_h: float) -> float:
    """Give the elongation by wear after some running.

    a (1 - exp(-t / tau)) + w t

    Parameters
    ----------
    wear : a, tau, w
    running_h : running since new, t [h]

    Returns
    -------
    elongation by wear [%]

    Raises
    ------
    none

    Validity
    --------
    One oil and one kind of use throughout; not the quick wear at the end of a chain's life.

    Reference
    ---------
    First and steady wear: The complete guide to chain, 2.2.4. The form: Queener, Smith and
    Mitchell, Wear 8 (1965) 391, from memory, unverified.
    """
    return float(wear.first * (1 - math.exp(-running_h / wear.tau)) + wear.steady * running_h)


def slopes(wear: Wear, running_h: float) -> tuple[float, float, float]:
    """Give how the elongation by wear changes with ln a, ln tau and ln w.

    d/d ln a = a (1 - exp(-r)); d/d ln tau = -a r exp(-r); d/d ln w = w t; r = t / tau

    Parameters
    ----------
    wear : a, tau, w
    running_h : running since new, t [h]

    Returns
    -------
    the three derivatives [%]

    Raises
    ------
    none

    Validity
    --------
    As `elongation_by`.

    Reference
    ---------
    Derivatives of `elongation_by`; checked against differences.
    """
    r = running_h / wear.tau
    left = math.exp(-r)
    return wear.first * (1 - left), -wear.first * r * left, wear.steady * running_h


def hours_until(wear: Wear, percent: float, horizon_h: float) -> float | None:
    """Give the running after which wear has elongated the chain so far.

    Newton's method on `elongation_by`, which rises and bends down, from the left of the root,
    where every step stays left of it.

    Parameters
    ----------
    wear : a, tau, w
    percent : elongation by wear [%]; nothing or less is there at once
    horizon_h : where to give up [h]

    Returns
    -------
    running since new [h], or None where it is beyond the horizon

    Raises
    ------
    none

    Validity
    --------
    As `elongation_by`.

    Reference
    ---------
    Newton's method on a concave function.
    """
    if percent <= 0:
        return 0.0
    if elongation_by(wear, horizon_h) < percent:
        return None
    at = max((percent - wear.first) / wear.steady, 0.0)
    for _ in range(60):
        left = math.exp(-at / wear.tau)
        worn = wear.first * (1 - left) + wear.steady * at
        step = (percent - worn) / (wear.first * left / wear.tau + wear.steady)
        at += step
        if abs(step) <= 1e-13 * at:
            break
    return float(min(at, horizon_h))

"""From one state to a verdict: every limit that applies, the one that rules, what to do next."""

import math
from collections import namedtuple

from . import limits
from .build import Build
from .fields import MOST_READINGS, Form
from .figures import short
from .guard import judge, misfit
from .limits import Limit
from .phase import degrees
from .uncertainty import Component, Estimate, Interval, combine


class Subject(namedtuple("Subject", ("at", "factor", "unit"))):
    """What a limit of some quantity is held against: an Interval, the factor that turns the
    limit's figure into the Interval's unit, and that unit.
    """

    __slots__ = ()


def subjects(state: dict[str, Interval] | None, build: Build | None) -> dict[str, Subject]:
    """Give for every limited quantity the part of the state that it is held against.

    Parameters
    ----------
    state : Intervals by field name, or None without a drive
    build : the drive, or None

    Returns
    -------
    dict of Subject by the limit's quantity

    Raises
    ------
    none

    Validity
    --------
    Movement at the cam gear is the excess length at its pitch circle; it is judged as the
    crank angle that the same excess gives.

    Reference
    ---------
    phase.rock_from_excess.
    """
    if state is None or build is None:
        return {}
    per_mm = degrees(1 / build.geometry.crank_radius)
    return {
        "elongation_percent": Subject(state["elongation_percent"], 1.0, "%"),
        "movement_mm": Subject(state["movement_mm"], 1.0, "mm"),
        "movement_percent_of_centres": Subject(
            state["movement_mm"], build.drive.centre_distance / 100, "mm"
        ),
        "crank_rock_deg": Subject(state["crank_rock_deg"], 1.0, "deg"),
        "sprocket_movement_mm": Subject(state["crank_rock_deg"], per_mm, "deg"),
    }


def take_own_limit(form: Form, allowed: tuple[str, ...], least_only: bool = False) -> Limit | None:
    """Read the limit that the user found in the maker's manual, if one is given; least_only where
    nothing but a least figure above zero says what is enough.
    """
    part = form.take_form("own_limit")
    if part is None:
        return None
    quantity = part.take_choice("quantity", allowed)
    lower = part.take_number("lower", required=False)
    upper = part.take_number("upper", required=False)
    source = part.take_text("source", 200)
    if least_only and not part.problems:
        step = "Copy the least figure over, or leave your own limit out."
        if lower is None or lower <= 0:
            part.refuse("missing", "lower", lower, "a least figure above 0", step)
        elif upper is not None:
            part.refuse("conflict", "upper", upper, "no upper limit here", step)
    elif lower is None and upper is None and not part.problems:
        part.refuse("missing", "upper", None, "an upper or a lower limit", "Copy it over.")
    if lower is not None and upper is not None and lower > upper:
        need = "at least the lower limit, " + short(lower, 6)
        part.refuse("conflict", "upper", upper, need, "Swap the two.")
    part.close()
    return limits.own_limit(quantity or "", lower, upper, source or "")


class Judgement(
    namedtuple("Judgement", ("limit", "outcome", "lower", "upper", "upper_to", "unit"))
):
    """A limit, what came of holding the state against it, and its ends in the judged unit."""

    __slots__ = ()

    def nearest_end(self, value: float) -> float:
        """Give the end of the limit that lies nearest to a value in the judged unit."""
        ends = [x for x in (self.lower, self.upper, self.upper_to) if x is not None]
        if len(ends) == 1:
            return float(ends[0])
        return float(min(ends, key=lambda x: abs(x - value)))

    def in_printed_range(self, value: float) -> bool:
        """Tell whether a value lies inside an upper limit that is printed as a range."""
        return self.upper_to is not None and self.upper <= value <= self.upper_to


class Verdict(
    namedtuple("Verdict", ("outcome", "headline", "why", "next_step", "limit", "between"))
):
    """What to tell the user: outcome word, headline, reason, next step, the Limit it rests on
    (None if on none), and the two zones it lies between (None if in one).
    """

    __slots__ = ()


def judgements(found: list[Limit], by: dict[str, Subject], teeth: int | None) -> list[Judgement]:
    """Hold the state against every limit found, in the order of the table.

    Parameters
    ----------
    found : limits that apply
    by : Subject by quantity; limits of other quantities are left out
    teeth : cam gear teeth, for a limit that depends on them

    Returns
    -------
    list of Judgement, ends in the unit of the Subject

    Raises
    ------
    none

    Validity
    --------
    As `guard.judge`.

    Reference
    ---------
    As `guard.judge`.
    """
    rows = []
    for limit in found:
        if limit.quantity in by:
            at, factor, unit = by[limit.quantity]
            lower, upper, upper_to = limit.lower, limits.upper_of(limit, teeth), limit.upper_to
            lower = None if lower is None else lower * factor
            upper = None if upper is None else upper * factor
            upper_to = None if upper_to is None else upper_to * factor
            outcome = judge(at.low, at.high, lower, upper, upper_to)
            rows.append(Judgement(limit, outcome, lower, upper, upper_to, unit))
    return rows


def ruling(rows: list[Judgement], quantities: tuple[str, ...]) -> list[Judgement]:
    """Choose the judgements a verdict may rest on: the user's own alone, if there is one."""
    own = [row for row in rows if row.limit.origin == limits.OWN]
    return own or [r for r in rows if r.limit.governs and r.limit.quantity in quantities]


def fit_rules(judged: Verdict, moves: Interval) -> Verdict:
    """Let the fit rule over a limit on wear or lash that the chain meets, or may meet.

    A cam drive on fixed centres is too loose long before its chain is worn out or its lash past
    the limits in print. What is beyond a limit stays so: that alone forbids the chain.

    Parameters
    ----------
    judged : the verdict by the limits alone
    moves : what the same chain moves at mid-span on this cam drive [mm]
    """
    end = misfit(moves.low, moves.high)
    if end is None or judged.outcome == "beyond":
        return judged
    # However near to its own limit: that it is unfit here is not too close to call.
    headline = "Close to the limit" if judged.outcome == "too-close" else judged.headline
    headline += ", yet " + end.replace("-", " ") + " here"
    step = "Measure the slack on the engine before you decide; the fit rules here."
    return Verdict("limits-disagree", headline, judged.why, step, judged.limit, None)


def readings_needed(components: list[Component], count: int, target: float) -> int | None:
    """How many readings of each kind would bring the expanded uncertainty down to a target.

    Parameters
    ----------
    components : lines of the budget as it stands; the first are of the readings' scatter
    count : readings taken so far, of the kind with fewest
    target : expanded uncertainty wanted [unit of the budget]

    Returns
    -------
    number of readings, or None where fifty would not do

    Raises
    ------
    none

    Validity
    --------
    If the readings to come scatter as those so far.

    Reference
    ---------
    JCGM 100:2008 (GUM), 4.2.3 and G.4.1, turned round.
    """

    def expanded(total: int) -> float:
        tried = []
        for c in components:
            if c.name.startswith("repeat"):
                # A single reading's scatter is assumed and has no degrees of freedom.
                own = 1 if c.dof is None else c.dof + 1
                new = max(own, total)
                shrunk = c.uncertainty * math.sqrt(own / new)
                c = Component(c.name, "A", shrunk, new - 1, c.origin)
            tried.append(c)
        return float(combine(0.0, tried).expanded)

    least, most = max(count + 1, 3), MOST_READINGS
    if least > most or expanded(most) > target:
        return None
    while least < most:  # more readings never widen the interval, so halve the range
        middle = (least + most) // 2
        if expanded(middle) <= target:
            most = middle
        else:
            least = middle + 1
    return least


def settle(
    estimate: Estimate, components: list[Component], count: int, at: Interval, edge: float,
    otherwise: str,
) -> str:  # fmt: skip
    """Say what would settle a verdict that is too close to call.

    Parameters
    ----------
    estimate : the measured value
    components : its budget
    count : readings so far
    at : the judged interval
    edge : the limit it is too close to, in the unit of `at`
    otherwise : what to do where more readings alone cannot settle it
    """
    # Not the interval itself: its low end may have been cut at zero.
    half = at.uncertainty * estimate.factor
    share = abs(at.value - edge) / half if half > 0 else 0.0
    total = readings_needed(components, count, share * estimate.expanded)
    if total is None:
        return "More readings alone will not settle it. " + otherwise
    more = total - count
    word = "reading" if more == 1 else "readings"
    return "Take {} more {}, gauge set anew each time; that should settle it.".format(more, word)

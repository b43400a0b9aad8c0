"""What to say of a clearance. A setting that would touch is stopped, whatever a limit says."""

from .figures import fixed, short
from .uncertainty import Interval
from .verdict import Judgement, Verdict, ruling

WOULD_TOUCH = "would-touch"
_QUANTITY = ("valve_clearance_mm",)
OUTCOMES = (WOULD_TOUCH, "below", "too-close", "limits-disagree", "within")
_HEADLINES = {
    WOULD_TOUCH: "Stop: valve and piston would touch",
    "below": "Too little clearance",
    "within": "Enough clearance",
    "too-close": "Too close to call",
    "limits-disagree": "Between the limits in print",
}
_STEPS = {
    WOULD_TOUCH: "Do not turn the engine at this setting, not by hand either. Go back to a setting "
    "that clears; then deeper pockets, another cam or another rocker.",
    "below": "Do not run it so: move the cam the other way, or have the pockets cut deeper.",
    "within": "Check every cylinder, and again after any change of cam, rocker, gasket or lash.",
    "too-close": "Measure again, with a dial at several angles; or give it more clearance.",
    "limits-disagree": "The limits in print disagree here. Keep to the larger, or to the maker's.",
}


def outcome_of(at: Interval, rows: list[Judgement], faulty: bool = False) -> str:
    """Put the judgements of one clearance into one word.

    Parameters
    ----------
    at : the clearance with its 95 % interval [mm]
    rows : judgements on the limits that apply
    faulty : whether the lift table that it rests on shows a fault

    Returns
    -------
    one of OUTCOMES: that it would touch if the interval reaches nothing; else by the user's own
    limit alone, if there is one; else what all the published agree on, or that they do not; from a
    faulty table never that it is enough

    Raises
    ------
    none

    Validity
    --------
    No limit turns a touch into anything else.

    Reference
    ---------
    JCGM 106:2012, 8.3: contact is ruled out only if the whole interval is clear of it.
    """
    if at.low <= 0:
        return WOULD_TOUCH
    said = {row.outcome for row in ruling(rows, _QUANTITY)}
    if faulty and said == {"within"}:
        return "too-close"
    if len(said) == 1:
        return str(said.pop())
    return "too-close" if "too-close" in said else "limits-disagree"


def verdict_of(at: Interval, angle: float, rows: list[Judgement], faulty: bool = False) -> Verdict:
    """Say what a clearance comes to.

    Parameters
    ----------
    at : the clearance with its 95 % interval [mm]
    angle : crank angle at which it is least, after TDC [deg]
    rows : judgements on the limits that apply
    faulty : whether the lift table that it rests on shows a fault

    Returns
    -------
    Verdict; its sentences in mm, rounded [by field name]

    Raises
    ------
    none

    Validity
    --------
    As `outcome_of`.

    Reference
    ---------
    As `outcome_of`.
    """
    outcome = outcome_of(at, rows, faulty)
    told = ruling(rows, _QUANTITY)
    side = "after" if angle >= 0 else "before"
    why = "Least {} mm, 95 % interval {} to {} mm, {} degrees {} TDC".format(
        fixed(at.value, 2), fixed(at.low, 2), fixed(at.high, 2), fixed(abs(angle), 1), side
    )
    if told:
        ends = ["{} mm ({})".format(short(x.lower, 4), x.limit.label) for x in told if x.lower]
        why += "; wanted at least " + ", ".join(ends)
    if outcome == WOULD_TOUCH:
        why += ". The interval reaches contact, so contact is not ruled out"
    headline, step = _HEADLINES[outcome], _STEPS[outcome]
    if faulty and outcome != WOULD_TOUCH:
        why += ". The lift table it rests on shows a fault"
        step = "Mend the lift table first: with its fault this figure is worth little."
        if outcome == "too-close":
            headline = "The lift table has a fault"
    # The strictest is the one it rests on.
    strict = max(told, key=lambda row: row.lower or 0.0).limit if told else None
    return Verdict(outcome, headline, why + ".", step, strict, None)

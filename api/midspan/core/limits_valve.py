"""Least clearance between piston and valve: what is in print, all of it, side by side."""

from .limits import MM_PER_INCH, PUBLISHED, Limit

_CLEARANCE, _RADIAL = "valve_clearance_mm", "radial_clearance_mm"


def _row(
    id: str, quantity: str, inch: float, where: dict[str, object], label: str, source: str,
    address: str, note: str = "",
) -> Limit:  # fmt: skip
    return Limit(
        id, quantity, inch * MM_PER_INCH, None, None, None, where, quantity == _CLEARANCE, label,
        PUBLISHED, source, address, note,
    )  # fmt: skip


_INTAKE: dict[str, object] = {"valve": "intake"}
_EXHAUST: dict[str, object] = {"valve": "exhaust"}
_MAGAZINE = "Magazine guide, piston to valve clearance"
_MAGAZINE_AT = "fordmuscle.com/fundamentals/pistontovalve/index.shtml"
VALVE = (
    _row(
        "valve-intake-080", _CLEARANCE, 0.080, _INTAKE, "Intake: 0.080 in", _MAGAZINE, _MAGAZINE_AT,
        "More with aluminium rods; it does not say how much.",
    ),
    _row(
        "valve-exhaust-100", _CLEARANCE, 0.100, _EXHAUST, "Exhaust: 0.100 in", _MAGAZINE,
        _MAGAZINE_AT, "More with aluminium rods; it does not say how much.",
    ),
    _row(
        "valve-most-080", _CLEARANCE, 0.080, {}, "Most engines: 0.080 in",
        "Engine parts supplier, valve to piston clearances",
        "lcengineering.com/engine-valve-to-piston-clearances",
        "Does not tell intake from exhaust; for the exhaust it conflicts with 0.100 in.",
    ),
    _row(
        "valve-radial-050", _RADIAL, 0.050, {}, "Round the valve head: 0.050 in",
        "Course forum, measuring piston to valve clearance",
        "hpacademy.com/forum/how-to-degree-a-cam-7/show/measuring-piston-to-valve-clearance-3",
        "Between the valve's edge and the side of its pocket.",
    ),
)  # fmt: skip

# The rule that starts from the deck clearance, in inches: added for the intake, times for the
# exhaust, and added for aluminium rods.
DECK_ADDS, DECK_TIMES, ALUMINIUM_ADDS = (0.010, 0.015), (2.0, 2.5), 0.030
_DECK_SOURCE = "Cam maker's advice, piston to valve clearance"
_DECK_AT = "racingheadservice.com/piston-to-valve-clearance"


def deck_rule(deck: float, valve: str, aluminium: bool) -> Limit:
    """Work out the rule that starts from the deck clearance; it takes the larger of its range.

    Parameters
    ----------
    deck : deck clearance [mm]
    valve : "intake" or "exhaust"
    aluminium : whether the rods are of aluminium

    Returns
    -------
    Limit, its lower end [mm]

    Raises
    ------
    none

    Validity
    --------
    As printed; a range is taken at its strict end.

    Reference
    ---------
    racingheadservice.com/piston-to-valve-clearance: intake = deck clearance + 0.010 to 0.015 in,
    exhaust 2 to 2.5 times that, 0.030 in more at least for aluminium rods.
    """
    least = deck / MM_PER_INCH + DECK_ADDS[1]
    label = "From deck clearance: 0.010 to 0.015 in more"
    if valve == "exhaust":
        least *= DECK_TIMES[1]
        label = "From deck clearance: 2 to 2.5 times the intake's"
    if aluminium:
        least += ALUMINIUM_ADDS
        label += ", 0.030 in more for aluminium rods"
    note = "Worked out from the deck clearance entered, at the strict end of its range."
    return _row(
        "valve-deck", _CLEARANCE, least, {"valve": valve}, label, _DECK_SOURCE, _DECK_AT, note
    )


def applying(valve: str, deck: float | None, aluminium: bool) -> list[Limit]:
    """Give every limit in print for a valve, those of the clearance first."""
    found = [one for one in VALVE if one.where.get("valve", valve) == valve]
    if deck is not None:
        found.insert(len(found) - 1, deck_rule(deck, valve, aluminium))
    return found

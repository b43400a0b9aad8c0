"""A cam as measured against its data sheet: what differs, by how much, and whether it matters."""

from collections import namedtuple

from .cam_card import AT_HEIGHT, Card
from .figures import fixed
from .guard import judge
from .instrument import interval_dict
from .setting import shown_setting
from .uncertainty import Component, Estimate, Interval, interval_of
from .valve_events import Doubt, Quantity, estimate
from .verdict import settle

# How a figure grows when the cam is late: an intake closes later, and opens less far before TDC.
LATER = {
    "intake_opening_btdc_deg": -1, "intake_closing_abdc_deg": 1, "intake_centreline_deg": 1,
    "exhaust_opening_bbdc_deg": -1, "exhaust_closing_atdc_deg": 1, "exhaust_centreline_deg": -1,
    "advance_deg": -1,
}  # fmt: skip
MORE = {
    "intake_duration_deg": ("longer", "shorter"),
    "exhaust_duration_deg": ("longer", "shorter"),
    "lobe_separation_cam_deg": ("wider", "narrower"),
    "overlap_deg": ("more", "less"),
}
SENSES = ("late", "early", "longer", "shorter", "wider", "narrower", "more", "less", "none")
ROW_OUTCOMES = ("within", "off", "too-close")


class Comparison(namedtuple("Comparison", ("name", "card", "difference", "outcome", "tolerance"))):
    """A figure's name, what the sheet says, measured less sheet as an Interval, what came of it."""

    __slots__ = ()

    def sense(self) -> str:
        """Say which way it differs."""
        if self.difference.value == 0:
            return "none"
        if self.name in LATER:
            return "late" if self.difference.value * LATER[self.name] > 0 else "early"
        more, less = MORE[self.name]
        return more if self.difference.value > 0 else less

    def late(self) -> Interval:
        """Give how late it is, of a figure in LATER, in crank degrees; early is negative."""
        at: Interval = self.difference
        if LATER[self.name] > 0:
            return at
        return Interval(-at.value, -at.high, -at.low, at.uncertainty)


def compare(card: Card | None, quantities: list[Quantity], doubt: Doubt) -> list[Comparison]:
    """Hold every figure measured against the data sheet, where it says the same thing.

    Parameters
    ----------
    card : the data sheet, or None
    quantities : the figures measured [deg]
    doubt : what makes their events uncertain

    Returns
    -------
    list of Comparison [deg], in the order of the figures

    Raises
    ------
    none

    Validity
    --------
    Events and durations only at the sheet's own checking height; a sheet's figure has no
    uncertainty of its own beyond its tolerance.

    Reference
    ---------
    As `guard.judge`: JCGM 106:2012, guarded acceptance.
    """
    if card is None:
        return []
    rows = []
    for quantity in quantities:
        said = card.figures.get(quantity.name)
        at_height = quantity.name in AT_HEIGHT or quantity.name == "overlap_deg"
        if said is None or (at_height and not card.same_height):
            continue
        at, _ = estimate(quantity, doubt)
        off = interval_of(Estimate(at.value - said, at.uncertainty, at.dof, at.factor, at.expanded))
        found = judge(off.low, off.high, -card.tolerance, card.tolerance)
        outcome = found if found in ("within", "too-close") else "off"
        rows.append(Comparison(quantity.name, said, off, outcome, card.tolerance))
    return rows


def late_by(rows: list[Comparison], name: str) -> Interval | None:
    """Give how late the cam is by the figure named [crank deg], None if it is not compared."""
    for row in rows:
        if row.name == name:
            return row.late()
    return None


def shown_comparison(row: Comparison) -> dict[str, object]:
    """Give a comparison in the form of the result."""
    return {
        "quantity": row.name,
        "card_value": row.card,
        "difference": interval_dict(row.difference),
        "tolerance_deg": row.tolerance,
        "sense": row.sense(),
        "outcome": row.outcome,
    }


def verdict_of(
    card: Card | None,
    rows: list[Comparison],
    main: Quantity,
    at: Estimate,
    lines: list[Component],
    count: int,
) -> dict[str, object]:
    """Say whether the cam stands where its data sheet wants it."""
    name = main.name.replace("_deg", "").replace("_", " ")
    name = name.replace(" btdc", "").replace(" abdc", "").replace(" bbdc", "").replace(" atdc", "")
    why = "{} {}, plus or minus {} crank degrees.".format(
        name[0].upper() + name[1:], fixed(at.value, 1), fixed(at.expanded, 1)
    )
    found = [row for row in rows if row.name == main.name]
    if not found:
        step = "Enter the cam's data sheet to compare with."
        if card is not None:
            step = "The data sheet says nothing of it: enter its centreline."
        return shown_setting("no-limit", "Nothing to compare with", why, step)
    row = found[0]
    late = row.late()
    why += " The data sheet says {}, plus or minus {}.".format(
        fixed(row.card, 1), fixed(row.tolerance, 1)
    )
    size = fixed(abs(late.value), 1)
    if row.outcome == "within":
        step = "Leave it. Write the setting down, and check the other lobe."
        return shown_setting("within", "The cam is on its data sheet", why, step)
    if row.outcome == "too-close":
        edge = row.tolerance if late.value > 0 else -row.tolerance
        finer = "Find TDC better: its error moves every event alike."
        step = settle(at, lines, count, late, edge, finer)
        return shown_setting("too-close", "Too close to call", why, step)
    word, turn = ("late", "Advance") if late.value > 0 else ("early", "Retard")
    step = "{} it by {} crank degrees, {} cam degrees: choose the step on the adjuster bench."
    step = step.format(turn, size, fixed(abs(late.value) / 2, 1))
    return shown_setting(word, "{} by {} crank degrees".format(_capital(word), size), why, step)


def _capital(word: str) -> str:
    return word[0].upper() + word[1:]

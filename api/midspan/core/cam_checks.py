"""What the readings of a cam cannot be, and what they most likely are instead."""

from collections import namedtuple

from . import limits
from .cam_card import Card
from .cam_compare import Comparison
from .fields import Form
from .figures import fixed
from .lobe_timing import BELIEVED_DEG, SHORTEST_DEG, SLIPS, USUAL_DEG, LobeTiming, likely_slip
from .valve_events import LOBES, Event
from .warnings import warning
from .wheel import SPREAD_DEG

# No lobe lasts longer; from memory, unverified.
LONGEST_DEG = 540.0


class Pair(namedtuple("Pair", ("lobe", "first", "last", "least"))):
    """Two Events of equal lift on either side of a lobe's nose, and the least between them [deg]:
    0 near the nose.
    """

    __slots__ = ()

    def centre(self) -> float:
        """Give the centreline as the trade counts it [deg]."""
        middle = (self.first.at + self.last.at) / 2
        return float(middle if self.lobe == "intake" else -middle)

    def slip(self, card: Card | None) -> str:
        """Say in words what would explain the two readings; "" where they need none."""
        about = None if card is None else card.figures[self.lobe + "_centreline_deg"]
        slip = likely_slip(self.lobe, self.first.at, self.last.at, about, self.least)
        return SLIPS.get(slip, "")


def pairs(events: dict[str, Event]) -> list[Pair]:
    """Give every pair of events that was read, from the flanks and near the nose."""
    found = []
    for lobe in LOBES:
        for first, last, least in (
            ("-opens", "-closes", SHORTEST_DEG),
            ("-rising", "-falling", 0.0),
        ):
            if lobe + first in events and lobe + last in events:
                found.append(Pair(lobe, events[lobe + first], events[lobe + last], least))
    return found


def check_events(form: Form, events: dict[str, Event], card: Card | None) -> None:
    """Refuse what no lobe can be."""
    for lobe in LOBES:
        for one, other in (("-rising", "-falling"), ("-falling", "-rising")):
            if lobe + one in events and lobe + other not in events:
                need = "the point of equal lift on the other side of the nose as well"
                form.refuse("missing", "events", lobe + one, need, "Go over the nose and read it.")
    for pair in pairs(events):
        apart = pair.last.at - pair.first.at
        if not 0 < apart < LONGEST_DEG:
            hint = pair.slip(card)
            step = "Check which reading is which, and the way the wheel was read."
            if hint:
                step = "It would make sense " + hint + "."
            need = "closing after opening, up to 540 degrees of crank later"
            form.refuse("wrong-way-round", "events", apart, need, step)


def slip_warnings(events: dict[str, Event], card: Card | None) -> list[dict[str, object]]:
    """Say what looks like a slip of the reader or of the wheel."""
    found = []
    for pair in pairs(events):
        hint, centre = pair.slip(card), pair.centre()
        if hint:
            text = "As read, the {} centreline is {}: that would make more sense {}."
            text = text.format(pair.lobe, fixed(centre, 1), hint)
            found.append(warning("likely-slip", "events", centre, text, limits.MEMORY))
        elif not BELIEVED_DEG[0] <= centre <= BELIEVED_DEG[1]:
            text = "The {} centreline is {}; usual is {} to {}. A tooth out, or the wheel misread?"
            low, high = USUAL_DEG
            text = text.format(pair.lobe, fixed(centre, 1), fixed(low, 0), fixed(high, 0))
            source = "Cam timing, dummett.net"
            found.append(
                warning("unusual-centreline", "events", centre, text, limits.PUBLISHED, source)
            )
    for name in sorted(events):
        angles = events[name].angles
        spread = max(angles) - min(angles)
        if spread > SPREAD_DEG:
            text = "Readings of {} differ by {} degrees: has the wheel or the pointer slipped, or "
            text += "was one approached backward?"
            text = text.format(name.replace("-", " "), fixed(spread, 1))
            found.append(warning("wheel-slipped", "events", spread, text, limits.MEMORY))
    return found


def sheet_warnings(
    timings: dict[str, LobeTiming | None], card: Card | None
) -> list[dict[str, object]]:
    """Say where a centre near the nose is held against the middle of the data sheet's events."""
    found = []
    for timing in timings.values():
        if timing is None or card is None or timing.by != "near-nose":
            continue
        if card.by_events(timing.lobe):
            text = "The data sheet gives no {} centreline: it was worked out from its events, at "
            text += "mid-duration. An asymmetric lobe has another near its nose: read its opening "
            text += "and closing too."
            text = text.format(timing.lobe)
            found.append(warning("sheet-by-events", "centreline_by", 1.0, text))
    return found


def separation_warnings(
    timings: dict[str, LobeTiming | None], rows: list[Comparison], cams: str | None
) -> list[dict[str, object]]:
    """Say where the two lobes were not read alike, or do not stand to each other as they should."""
    found = []
    intake, exhaust = timings["intake"], timings["exhaust"]
    if intake is not None and exhaust is not None and intake.by != exhaust.by:
        text = "The two centrelines were found in different ways, so their separation is less sure."
        found.append(warning("mixed-centrelines", "centreline_by", 2.0, text))
    for row in rows:
        if row.name == "lobe_separation_cam_deg" and row.outcome == "off":
            text = "The lobe separation is {} cam degrees {} than on the data sheet. "
            text += {
                "one": "Both lobes are on one cam, so no setting puts both right: read them again.",
                "two": "Set each cam for itself.",
            }[cams or "one"]
            size = row.difference.value
            text = text.format(fixed(abs(size), 1), row.sense())
            found.append(warning("separation-off", "card.lobe_separation_cam_deg", size, text))
    return found

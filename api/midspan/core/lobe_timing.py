"""From events to the figures of a cam: events, durations, centrelines, separation, overlap."""

from collections import namedtuple

from .cam_card import EVENT_FIELDS, Card, event_figure
from .timing import middle
from .valve_events import LOBES, Event, Quantity, angle_of, linear

# Which two points a lobe's centreline rests on.
BY = ("near-nose", "mid-duration", "data-sheet-duration")
_KINDS = {"opening": "opens", "closing": "closes"}
# A centreline the trade calls usual, what may still be believed, and the least and the most between
# two events of a lobe; the first is published (dummett.net, Cam timing), the rest from memory,
# unverified.
USUAL_DEG = (100.0, 120.0)
BELIEVED_DEG = (85.0, 135.0)
SHORTEST_DEG, LONGEST_DEG = 120.0, 360.0
# Further from the data sheet than a slip of one tooth; from memory, unverified.
ASTRAY_DEG = 30.0
SLIPS = {
    "swapped": "with opening and closing swapped",
    "wrong-way": "with the wheel read the other way round",
    "opening-side": "with the first reading on the other side of its dead centre",
    "closing-side": "with the second reading on the other side of its dead centre",
    "half-turn": "with top and bottom dead centre swapped",
}


class LobeTiming(namedtuple("LobeTiming", ("lobe", "by", "used", "nose", "middle", "asymmetry"))):
    """A lobe's centrelines as the trade counts them: which one is used, by what, and each found;
    None where it cannot be told.
    """

    __slots__ = ()


def lobe_timing(
    lobe: str, events: dict[str, Event], wanted: str | None, card: Card | None
) -> LobeTiming | None:
    """Find every centreline of a lobe that its events give; None where they give none.

    Parameters
    ----------
    lobe : "intake" or "exhaust"
    events : Event by name
    wanted : "near-nose" or "mid-duration", None for whichever there is, the nose first, unless the
        data sheet's own centreline follows from its events: like is compared with like
    card : the data sheet, whose duration serves where one event alone was read
    """
    centre = lobe + "_centreline_deg"
    near = _between(events, lobe + "-rising", lobe + "-falling", centre)
    half = _between(events, lobe + "-opens", lobe + "-closes", centre)
    apart = None
    if near is not None and half is not None:
        apart = linear("asymmetry_deg", 0.0, [(half, 1.0), (near, -1.0)])
    if wanted is None and card is not None and card.same_height and card.by_events(lobe):
        wanted = "mid-duration"
    by, used = None, None
    if near is not None and (wanted != "mid-duration" or half is None):
        by, used = "near-nose", near
    elif half is not None:
        by, used = "mid-duration", half
    elif card is not None and card.same_height:
        by, used = "data-sheet-duration", _by_card(events, lobe, card)
    if used is None:
        return None
    return LobeTiming(lobe, by, used, near, half, apart)


def _between(events: dict[str, Event], first: str, last: str, name: str) -> Quantity | None:
    if first not in events or last not in events:
        return None
    sign = 0.5 if name.startswith("intake") else -0.5
    return linear(name, 0.0, [(angle_of(events[first]), sign), (angle_of(events[last]), sign)])


def _by_card(events: dict[str, Event], lobe: str, card: Card) -> Quantity | None:
    """One event and the sheet's duration: the other event is taken to follow."""
    lasting = card.figures[lobe + "_duration_deg"]
    if lasting is None:
        return None
    sign = 1.0 if lobe == "intake" else -1.0
    for kind, towards in (("-opens", lasting / 2), ("-closes", -lasting / 2)):
        if lobe + kind in events:
            at = angle_of(events[lobe + kind])
            return linear(lobe + "_centreline_deg", sign * towards, [(at, sign)])
    return None


def figures(events: dict[str, Event], timings: dict[str, LobeTiming | None]) -> list[Quantity]:
    """Work out every figure of the trade that the events give, in the order they are shown."""
    found = []
    for name, _, lobe in EVENT_FIELDS:
        event = events.get(lobe + "-" + _KINDS[name.split("_")[1]])
        if event is not None:
            zero = event_figure(name, 0.0)
            sign = event_figure(name, 1.0) - zero
            found.append(linear(name, zero, [(angle_of(event), sign)]))
    for lobe in LOBES:
        first, last = events.get(lobe + "-opens"), events.get(lobe + "-closes")
        if first is not None and last is not None:
            parts = [(angle_of(last), 1.0), (angle_of(first), -1.0)]
            found.append(linear(lobe + "_duration_deg", 0.0, parts))
        timing = timings[lobe]
        if timing is not None:
            found.append(timing.used)
    intake, exhaust = timings["intake"], timings["exhaust"]
    if intake is not None and exhaust is not None:
        both = [(intake.used, 0.5), (exhaust.used, 0.5)]
        found.append(linear("lobe_separation_cam_deg", 0.0, both))
        found.append(linear("advance_deg", 0.0, [(exhaust.used, 0.5), (intake.used, -0.5)]))
    opens, closes = events.get("intake-opens"), events.get("exhaust-closes")
    if opens is not None and closes is not None:
        parts = [(angle_of(closes), 1.0), (angle_of(opens), -1.0)]
        found.append(linear("overlap_deg", 0.0, parts))
    return found


def likely_slip(
    lobe: str, opening: float, closing: float, about: float | None, least: float
) -> str:
    """Name the slip that would explain a centreline nobody would expect; "" where none would.

    Parameters
    ----------
    lobe : "intake" or "exhaust"
    opening, closing : two points of equal lift of the lobe [deg after TDC]
    about : centreline by the data sheet [deg], None where there is none
    least : the shortest that lies between two such points [deg]

    Returns
    -------
    one of SLIPS, or ""

    Raises
    ------
    none

    Validity
    --------
    A hint, no more: cams outside the believed range do exist.

    Reference
    ---------
    Usual full-lift range 100 to 120: dummett.net, Cam timing. The rest from memory, unverified.
    """
    if lobe == "exhaust":  # its mirror image is an intake
        opening, closing = -closing, -opening
    low, high = BELIEVED_DEG if about is None else (about - ASTRAY_DEG, about + ASTRAY_DEG)

    def believable(first: float, last: float) -> bool:
        return low <= middle(first, last) <= high and least <= last - first <= LONGEST_DEG

    if believable(opening, closing):
        return ""
    for name, first, last in (
        ("swapped", 180 - closing, 180 - opening),
        ("wrong-way", -opening, 360 - closing),
        ("opening-side", -opening, closing),
        ("closing-side", opening, 360 - closing),
        ("half-turn", opening - 180, closing + 180),
        ("half-turn", opening + 180, closing - 180),
    ):
        if believable(first, last):
            return name
    return ""

"""A cam's data sheet, typed in by the user: what it says, and what follows from it."""

from collections import namedtuple

from .fields import Form
from .figures import fixed
from .instrument import assumption
from .limits import MEMORY, OWN
from .timing import (
    advance,
    after_tdc,
    duration,
    lobe_separation,
    middle,
    opening_of,
    overlap,
)
from .warnings import warning

# As the trade names the events, with dead centre and lobe.
EVENT_FIELDS = (
    ("intake_opening_btdc_deg", "btdc", "intake"),
    ("intake_closing_abdc_deg", "abdc", "intake"),
    ("exhaust_opening_bbdc_deg", "bbdc", "exhaust"),
    ("exhaust_closing_atdc_deg", "atdc", "exhaust"),
)
AT_HEIGHT = tuple([row[0] for row in EVENT_FIELDS]) + (
    "intake_duration_deg",
    "exhaust_duration_deg",
)
FIELDS = AT_HEIGHT + (
    "intake_centreline_deg",
    "exhaust_centreline_deg",
    "lobe_separation_cam_deg",
    "advance_deg",
)
HEIGHTS_AT = ("tappet", "valve")
# Where the sheet gives none: from memory, unverified.
TOLERANCE_DEG = 1.0
# Figures of one sheet that agree to its last digit are closer than this, heights that are the same
# closer than that; from memory, unverified.
ROUNDING_DEG = 0.75
SAME_HEIGHT_MM = 0.005


class Card(namedtuple("Card", ("source", "figures", "stated", "tolerance", "same_height"))):
    """A data sheet: where it is from, every figure by name [deg, or cam deg], the names of those
    that it states itself, its tolerance [deg], whether it is for the checking height used.
    """

    __slots__ = ()

    def by_events(self, lobe: str) -> bool:
        """Whether its centreline of a lobe is none of its own but the middle of its events."""
        names = [name for name in AT_HEIGHT if name.startswith(lobe) and name in self.stated]
        return len(names) >= 2 and lobe + "_centreline_deg" not in self.stated

    def shown(self) -> dict[str, object]:
        """Give the sheet in the form of the result."""
        return {"source": self.source, "origin": OWN, "tolerance_deg": self.tolerance}


class Height(namedtuple("Height", ("lift", "at"))):
    """A checking height [mm] and where it is read: at the tappet or at the valve."""

    __slots__ = ()

    def words(self) -> str:
        """Say it."""
        if self.lift == 0:
            return "the seat"
        return "{} mm at the {}".format(fixed(self.lift, 2), self.at)


def take_height(form: Form, required: bool) -> Height | None:
    """Read the checking height, which nothing can be compared without."""
    if not required and not form.has("checking_height_mm"):
        form.has("checking_at")
        return None
    lift = form.take_number("checking_height_mm")
    at = form.take_choice("checking_at", HEIGHTS_AT)
    return None if lift is None or at is None else Height(lift, at)


def take_card(
    form: Form,
    height: Height | None,
    assumed: list[dict[str, object]],
    warned: list[dict[str, object]],
) -> Card | None:
    """Read the data sheet and work out what follows from it; None if none was given.

    Parameters
    ----------
    form : the input being read
    height : the checking height of the readings, None if no event was read
    assumed, warned : lists that what was assumed, or looks odd, is added to
    """
    part = form.take_form("card")
    if part is None:
        return None
    before = len(form.problems)
    source = part.take_text("source", 200)
    given = {name: part.take_number(name, required=False) for name in FIELDS}
    stated = [name for name in FIELDS if given[name] is not None]
    own = take_height(part, any([name in AT_HEIGHT for name in stated]))
    tolerance = part.take_number("tolerance_deg", required=False)
    part.close()
    if not stated and len(form.problems) == before:
        need = "at least one figure of the data sheet"
        part.refuse("missing", "intake_centreline_deg", None, need, "Copy it over.")
    if len(form.problems) > before:
        return None
    if tolerance is None:
        tolerance = TOLERANCE_DEG
        text = "Plus or minus on the data sheet's angles, assumed: none was given."
        assumed.append(assumption("tolerance_deg", tolerance, MEMORY, text))
    same = height is not None and own is not None and _same(height, own)
    if own is not None and height is not None and not same:
        text = "The data sheet is at {}, the readings at {}: events and durations cannot be "
        text += "compared, centrelines can."
        text = text.format(own.words(), height.words())
        warned.append(warning("other-height", "card.checking_height_mm", own.lift, text))
    figures = _followed(given, warned)
    return Card(source or "", figures, tuple(stated), tolerance, same)


def _same(one: Height, other: Height) -> bool:
    return bool(one.at == other.at and abs(one.lift - other.lift) <= SAME_HEIGHT_MM)


def _followed(
    given: dict[str, float | None], warned: list[dict[str, object]]
) -> dict[str, float | None]:
    """Work out what the figures given leave to be worked out; say where they disagree."""
    found = dict(given)
    for lobe, first, last in (
        ("intake", "intake_opening_btdc_deg", "intake_closing_abdc_deg"),
        ("exhaust", "exhaust_opening_bbdc_deg", "exhaust_closing_atdc_deg"),
    ):
        lasts, centre = lobe + "_duration_deg", lobe + "_centreline_deg"
        sign = 1.0 if lobe == "intake" else -1.0
        opening, closing = _event(found, first), _event(found, last)
        if opening is not None and closing is not None:
            _fill(found, lasts, duration(opening, closing), warned)
            _fill(found, centre, sign * middle(opening, closing), warned)
        if found[centre] is None:
            _fill(found, centre, _by_separation(found, sign), warned)
        whole, about = found[lasts], found[centre]
        if whole is None:
            continue
        if opening is None and closing is None and about is not None:
            opening = opening_of(sign * about, whole)
        if opening is None and closing is not None:
            opening = closing - whole
        if opening is not None:
            closing = opening + whole
            _put_event(found, first, opening)
            _put_event(found, last, closing)
            _fill(found, centre, sign * middle(opening, closing), [])
    icl, ecl = found["intake_centreline_deg"], found["exhaust_centreline_deg"]
    if icl is not None and ecl is not None:
        _fill(found, "lobe_separation_cam_deg", lobe_separation(icl, ecl), warned)
        _fill(found, "advance_deg", advance(icl, ecl), warned)
    opening = _event(found, "intake_opening_btdc_deg")
    closing = _event(found, "exhaust_closing_atdc_deg")
    found["overlap_deg"] = None
    if opening is not None and closing is not None:
        found["overlap_deg"] = overlap(opening, closing)
    return found


def _by_separation(found: dict[str, float | None], sign: float) -> float | None:
    """Centreline from lobe separation and advance: ICL = LSA - adv, ECL = LSA + adv."""
    between, ahead = found["lobe_separation_cam_deg"], found["advance_deg"]
    return None if between is None or ahead is None else between - sign * ahead


def _fill(
    found: dict[str, float | None],
    name: str,
    value: float | None,
    warned: list[dict[str, object]],
) -> None:
    """Put in what follows, or say that it does not agree with what is stated."""
    if value is None:
        return
    stated = found[name]
    if stated is None:
        found[name] = value
    elif abs(stated - value) > ROUNDING_DEG:
        text = "The sheet says {}, its other figures mean {}: look for a slip in typing, "
        text += "or the lobe is not symmetric."
        text = text.format(fixed(stated, 1), fixed(value, 1))
        warned.append(warning("card-disagrees", "card." + name, stated, text))


def event_angle(name: str, value: float) -> float:
    """Give the crank angle after TDC [deg] of an event as the trade names it [deg]."""
    reference, lobe = next((r, at) for n, r, at in EVENT_FIELDS if n == name)
    return after_tdc(reference, value, 180.0 if lobe == "intake" else -180.0)


def event_figure(name: str, angle: float) -> float:
    """Give an event as the trade names it [deg]: the inverse of `event_angle`."""
    zero = event_angle(name, 0.0)
    return zero - angle if name.split("_")[2] in ("btdc", "bbdc") else angle - zero


def _event(found: dict[str, float | None], name: str) -> float | None:
    value = found[name]
    return None if value is None else event_angle(name, value)


def _put_event(found: dict[str, float | None], name: str, angle: float) -> None:
    if found[name] is None:
        found[name] = event_figure(name, angle)

"""Valve events as read from the wheel: put right for true TDC, and each with its own doubt."""

import math
from collections import namedtuple

from .fields import Form
from .timing import after_tdc, unwrap
from .uncertainty import Component, Estimate, combine, mean, rectangular, repeat_component
from .wheel import Wheel, wheel_lines

LOBES = ("intake", "exhaust")
KINDS = ("opens", "closes", "rising", "falling")
EVENTS = tuple([lobe + "-" + kind for lobe in LOBES for kind in KINDS])
REFERENCES = ("btdc", "atdc", "bbdc", "abdc")
# The turn, after TDC, in which an event of any engine lies: a wheel shows no more than a turn.
_LEAST = {
    "intake-opens": -180.0, "intake-closes": 0.0, "intake-rising": -90.0, "intake-falling": 0.0,
    "exhaust-opens": -360.0, "exhaust-closes": -180.0,
    "exhaust-rising": -360.0, "exhaust-falling": -270.0,
}  # fmt: skip


class Event(namedtuple("Event", ("name", "angles", "at"))):
    """An event: its name, every reading and their mean [deg after true TDC]."""

    __slots__ = ()


class Doubt(namedtuple("Doubt", ("wheel", "tdc", "tdc_origin", "dial", "dial_origin"))):
    """What makes an event uncertain: the Wheel, standard uncertainty of TDC [deg], half-width of
    the dial's error as a crank angle [deg] by event, and the origins of the two.
    """

    __slots__ = ()


class Quantity(namedtuple("Quantity", ("name", "value", "weights"))):
    """A figure that is linear in the events: its name, its value and (Event, weight) of each."""

    __slots__ = ()


def linear(name: str, constant: float, parts: "list[tuple[Quantity, float]]") -> Quantity:
    """Make a figure of other figures: a constant and so much of each, events counted once.

    y = c + sum f_i y_i

    Parameters
    ----------
    name : of the new figure
    constant : c [deg]
    parts : figures y_i [deg] with their factors f_i

    Returns
    -------
    Quantity [deg]

    Raises
    ------
    none

    Validity
    --------
    Any figures that are linear in the events.

    Reference
    ---------
    none
    """
    value = constant
    weights: list[tuple[Event, float]] = []
    for quantity, factor in parts:
        value += factor * quantity.value
        for event, weight in quantity.weights:
            had = [w for e, w in weights if e.name == event.name]
            weights = [(e, w) for e, w in weights if e.name != event.name]
            weights.append((event, factor * weight + sum(had)))
    return Quantity(name, value, tuple(weights))


def angle_of(event: Event) -> Quantity:
    """Give an event's own crank angle as a figure [deg after TDC]."""
    return Quantity(event.name, event.at, ((event, 1.0),))


def take_events(form: Form, wheel: Wheel, tdc: float) -> dict[str, Event]:
    """Read the events, each once, and put them into degrees after true TDC.

    Parameters
    ----------
    form : the input being read
    wheel : the wheel; nothing is read if its scale was refused
    tdc : what the wheel shows at true TDC [deg]
    """
    found: dict[str, Event] = {}
    parts = form.take_forms("events", len(EVENTS))
    if form.has("events") and not parts:
        need = "at least one event that was read"
        form.refuse("empty-list", "events", form.payload["events"], need, "Read one.")
    for part in parts:
        name = part.take_choice("event", EVENTS)
        round_wheel = wheel.scale is not None and wheel.scale != "both-ways"
        reference = None
        if round_wheel and part.has("reference"):
            need = "nothing: a wheel round to 360 is read as it stands"
            step = "Leave it out, or choose the wheel counted both ways."
            part.refuse("conflict", "reference", part.payload["reference"], need, step)
        elif not round_wheel:
            reference = part.take_choice("reference", REFERENCES)
        values = part.take_numbers("angles_deg")
        part.close()
        if name in found:
            need = "each event once, with all of its readings"
            part.refuse("conflict", "event", name, need, "Put the readings in one list.")
        if name is None or values is None or wheel.scale is None:
            continue
        angles = _angles(part, wheel, name, reference, values, tdc)
        if angles:
            found[name] = Event(name, angles, mean(angles))
    return found


def has_single(form: Form) -> bool:
    """Tell whether any event was read once only, before the events are read."""
    events = form.payload.get("events")
    for one in events if isinstance(events, list) else []:
        angles = one.get("angles_deg") if isinstance(one, dict) else None
        if isinstance(angles, list) and len(angles) == 1:
            return True
    return False


def _angles(
    part: Form, wheel: Wheel, name: str, reference: str | None, values: list[float], tdc: float
) -> list[float]:
    """Put the readings of one event into degrees after true TDC, or note what is wrong."""
    if wheel.scale == "both-ways":
        if reference is None:
            return []
        for i, value in enumerate(values):
            if value > 180:
                need = "at most 180 from the dead centre named"
                step = "If it is read off a wheel round to 360, choose how its numbers run."
                part.refuse("out-of-range", "angles_deg[" + str(i) + "]", value, need, step)
                return []
        bottom = 180.0 if name.startswith("intake") else -180.0
        # What the wheel shows at TDC is by how much its zero comes too early.
        return [after_tdc(reference, value, bottom) - tdc for value in values]
    for i, value in enumerate(values):
        if value < 0:
            need = "0 to 360, as the wheel shows it"
            step = "A wheel round to 360 has no numbers below zero."
            part.refuse("out-of-range", "angles_deg[" + str(i) + "]", value, need, step)
            return []
    start = wheel.turned(tdc)
    first = unwrap(wheel.turned(values[0]) - start, _LEAST[name])
    # The others lie near the first, also where the turn begins.
    return [first] + [unwrap(wheel.turned(x) - start, first - 180) for x in values[1:]]


def estimate(quantity: Quantity, doubt: Doubt) -> tuple[Estimate, list[Component]]:
    """Carry the doubt of the events and of TDC into a figure made of them.

    u^2 = sum (w_i u_i)^2 + (sum w_i)^2 u_TDC^2: an error of TDC moves every event alike, so that a
    duration, whose weights cancel, knows nothing of it, while a centreline bears it whole.

    Parameters
    ----------
    quantity : the figure [deg]
    doubt : what makes its events uncertain

    Returns
    -------
    Estimate [deg] and the lines of its budget

    Raises
    ------
    none

    Validity
    --------
    Linear figures, so exact; each event read at its own mark and with its own look.

    Reference
    ---------
    JCGM 100:2008 (GUM), 5.1.2 and F.1.2.3: a common cause is one line of the budget.
    """
    instrument = doubt.wheel.instrument
    lines = []
    for event, weight in quantity.weights:
        name = "repeat " + event.name.replace("-", " ")
        origin = instrument.origins["repeatability"]
        lines.append(
            repeat_component(event.angles, instrument.repeatability, origin, name, abs(weight))
        )
    together = math.sqrt(sum([weight**2 for _, weight in quantity.weights]))
    lines += wheel_lines(doubt.wheel, together)
    off = math.sqrt(sum([(w * doubt.dial[event.name]) ** 2 for event, w in quantity.weights]))
    lines.append(Component("dial indicator", "B", rectangular(off), None, doubt.dial_origin))
    common = abs(sum([weight for _, weight in quantity.weights]))
    lines.append(Component("true TDC", "B", common * doubt.tdc, None, doubt.tdc_origin))
    return combine(quantity.value, lines), lines

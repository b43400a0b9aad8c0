"""What a running-in plan is made for: oil, engine, chain and use, read from the input."""

from collections import namedtuple

from . import j300, oil_categories
from .fields import Form
from .guard import judge
from .instrument import assumption
from .limits import GIVEN, MEMORY, OWN
from .running_figures import BY_ID
from .wanted import take_window

FOLLOWERS = ("flat", "roller")
RINGS = ("new", "kept")
# What turns hours into distance where the user counts in the other; from memory, unverified.
AVERAGE_SPEED_KM_PER_H = 50.0
# An average that no vehicle keeps is a slip in one of the two; from memory, unverified.
MOST_KM_PER_H = 200.0

Oil = namedtuple("Oil", ("kind", "grade", "category", "phosphorus", "zinc"))
# Outcome of holding the movement against the window, None where it was not measured.
Chain = namedtuple("Chain", ("movement", "low", "high", "lower", "upper", "origin", "outcome"))
# Per week [km], [h] (either None), average speed [km/h] and its origin, drain interval [km] and
# its origin.
Use = namedtuple("Use", ("km", "hours", "speed", "speed_origin", "drain_km", "drain_origin"))
Asked = namedtuple("Asked", ("oil", "follower", "rings", "springs", "chain", "use", "assumptions"))


def with_oil(asked: Asked, oil: Oil) -> Asked:
    """Give the same question with another oil."""
    return Asked(
        oil, asked.follower, asked.rings, asked.springs, asked.chain, asked.use, asked.assumptions
    )


def take_oil(form: Form) -> Oil | None:
    """Read the "oil" field; None where it is missing or refused."""
    part = form.take_form("oil")
    if part is None:
        form.refuse("missing", "oil", None, "the oil", "Say at least which kind it is.")
        return None
    kind = part.take_choice("kind", oil_categories.OILS)
    grade = None
    if part.has("grade"):
        text = part.take_text("grade", 12)
        grade = None if text is None else j300.grade_of(text)
        if text is not None and grade is None:
            step = "Read it off the can; a gear oil's grade is another."
            part.refuse("no-such-grade", "grade", text, j300.NEED, step)
    ids = tuple([row.id for row in oil_categories.CATEGORIES])
    category = part.take_choice("category", ids) if part.has("category") else None
    phosphorus = part.take_number("phosphorus_mg_per_kg", required=False)
    zinc = part.take_number("zinc_mg_per_kg", required=False)
    part.close()
    return None if kind is None else Oil(kind, grade, category, phosphorus, zinc)


def take_asked(form: Form) -> Asked:
    """Read every field of a plan's input; what is refused is noted in the form.

    Parameters
    ----------
    form : the input being read

    Returns
    -------
    Asked; of no use before `finish` was called
    """
    assumed: list[dict[str, object]] = []
    oil = take_oil(form)
    follower = form.take_choice("follower", FOLLOWERS)
    rings = form.take_choice("rings", RINGS)
    load = form.take_number("spring_open_load_n", required=False)
    springs = "strong" if load is not None and load > BY_ID["springs-light"].lower else "usual"
    chain = _take_chain(form)
    return Asked(oil, follower, rings, springs, chain, _take_use(form, assumed), assumed)


def take_plan(form: Form) -> Asked | None:
    """Read the "plan" field, the whole input of a plan that goes on; None where it is missing."""
    part = form.take_form("plan")
    if part is None:
        form.refuse("missing", "plan", None, "the input of the plan", "Send what it was made of.")
        return None
    asked = take_asked(part)
    part.close()
    return asked


def _take_chain(form: Form) -> Chain:
    movement = form.take_number("movement_mm", required=False)
    spread = form.take_number("expanded_uncertainty_mm", required=False)
    lower, upper, origin = take_window(form)
    if movement is None:
        return Chain(None, None, None, lower, upper, origin, None)
    low = max(0.0, movement - (spread or 0.0))
    high = movement + (spread or 0.0)
    return Chain(movement, low, high, lower, upper, origin, judge(low, high, lower, upper))


def _take_use(form: Form, assumed: list[dict[str, object]]) -> Use:
    km = form.take_number("distance_per_week_km", required=False)
    hours = form.take_number("running_per_week_h", required=False)
    speed = form.take_number("average_speed_km_per_h", required=False)
    drain = form.take_number("drain_interval_km", required=False)
    if km is not None and hours is not None:
        speed = km / hours
        if speed > MOST_KM_PER_H:
            need = "no more than 200 km for each hour of running"
            form.refuse("conflict", "distance_per_week_km", km, need, "Give one of the two.")
    speed_origin = GIVEN
    if speed is None:
        speed_origin = MEMORY
        speed = AVERAGE_SPEED_KM_PER_H
        text = "Average speed, assumed, to turn hours into distance: none was given."
        assumed.append(assumption("average_speed_km_per_h", speed, MEMORY, text))
    if drain is None:
        normal = BY_ID["drain-normal"]
        text = "Normal drain interval, assumed: none was given. The maker's manual decides."
        assumed.append(assumption("drain_interval_km", normal.upper, MEMORY, text))
        return Use(km, hours, speed, speed_origin, normal.upper, MEMORY)
    return Use(km, hours, speed, speed_origin, drain, OWN)

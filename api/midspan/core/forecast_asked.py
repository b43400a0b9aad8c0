"""What a forecast is asked from: drive, oil, readings with their running, window, limit, prior."""

import math
from collections import namedtuple

from . import wear_prior
from .build import Build, take_build
from .elongation import NEW_CHAIN_PERCENT
from .fields import Form
from .figures import short
from .instrument import assumption
from .limits import MEMORY, MOVEMENT, Limit
from .measurement import is_told, part_of, take_measurement
from .oil_categories import OILS
from .plan_asked import AVERAGE_SPEED_KM_PER_H
from .uncertainty import rectangular
from .verdict import take_own_limit
from .wanted import take_window
from .wear_fit import Fitting, Seen
from .wear_prior import Prior

MOST = 50
# Some 300,000 km at 50 km/h: longer than any such chain is asked to last. From memory, unverified.
HORIZON_H = 6000.0
# Beyond these a length is a slip; from memory, unverified.
CHAIN_PERCENT = (-2.0, 10.0)
LIMITED = ("movement_mm", "elongation_percent", "crank_rock_deg")
_TOO_LOOSE = next(limit for limit in MOVEMENT if limit.id == "slack-too-loose")

Taken = namedtuple("Taken", ("quantity", "value", "uncertainty", "running_h"))
Asked = namedtuple(
    "Asked",
    ("build", "oil", "taken", "speed", "window", "limit", "horizon", "prior", "assumptions"),
)


def take_forecast(form: Form) -> Asked:
    """Read every field of a forecast's input; what is refused is noted in the form.

    Parameters
    ----------
    form : the input being read

    Returns
    -------
    Asked; of no use before `finish` was called
    """
    assumed: list[dict[str, object]] = []
    build = take_build(form)
    oil = form.take_choice("oil_kind", OILS) if form.has("oil_kind") else None
    speed = form.take_number("average_speed_km_per_h", required=False)
    if speed is None:
        speed = AVERAGE_SPEED_KM_PER_H
        text = "Average speed, assumed, to turn hours into distance: none was given."
        assumed.append(assumption("average_speed_km_per_h", speed, MEMORY, text))
    taken = _take_readings(form, build, speed)
    window = take_window(form)
    limit = take_own_limit(form, LIMITED)
    if limit is not None and limit.upper is None and not form.problems:
        need = "an upper limit: wear only makes it looser"
        form.refuse("missing", "own_limit.upper", None, need, "Copy it over.")
    horizon = form.take_number("horizon_h", required=False)
    if horizon is None:
        horizon = HORIZON_H
        text = "Nothing is forecast beyond this running, assumed: none was given."
        assumed.append(assumption("horizon_h", horizon, MEMORY, text))
    prior = _take_prior(form) or wear_prior.wide(oil)
    return Asked(
        build, oil, taken, speed, window, limit or _TOO_LOOSE, horizon, prior, assumed
    )  # fmt: skip


def _take_readings(form: Form, build: Build | None, speed: float) -> list[Taken]:
    strand = math.inf if build is None else build.geometry.strand
    found = []
    for part in form.take_forms("readings", MOST):
        hours = part.take_number("running_since_start_h", required=False)
        km = part.take_number("distance_since_start_km", required=False)
        if not part.has("running_since_start_h") and not part.has("distance_since_start_km"):
            need = "the distance or the running since the first start"
            step = "0 for a reading on fitting."
            part.refuse("missing", "distance_since_start_km", None, need, step)
        if hours is None and km is not None:
            hours = km / speed
        reading = take_measurement(part, strand)
        if reading is not None and build is not None:
            _check_length(part, build, reading[0], reading[1])
        if reading is not None and hours is not None:
            found.append(Taken(reading[0], reading[1], reading[2], hours))
    return found


def _check_length(part: Form, build: Build, kind: str, value: float) -> None:
    """Refuse a length that no chain of these links has, whatever its wear."""
    nominal = build.drive.links * build.drive.pitch
    percent = 100 * (value / nominal - 1) if kind == "chain_length_mm" else value
    least, most = CHAIN_PERCENT
    if kind in ("chain_length_mm", "elongation_percent") and not least <= percent <= most:
        need = "a chain from " + short(least, 2) + " to " + short(most, 2) + " % over nominal, "
        need += short(nominal, 6) + " mm"
        part.refuse("out-of-range", kind, value, need, "Check the unit, the pitch and the links.")


def _take_prior(form: Form) -> Prior | None:
    part = form.take_form("prior")
    if part is None:
        return None
    before = len(part.problems)
    medians = [
        part.take_number(name)
        for name in ("first_wear_percent", "time_constant_h", "steady_wear_percent_per_h")
    ]
    spreads = [
        part.take_number(name)
        for name in ("first_wear_log_sd", "time_constant_log_sd", "steady_wear_log_sd")
    ]
    engines = part.take_number("engines")
    made_at = part.take_text("made_at", 40)
    part.close()
    if len(part.problems) > before:
        return None
    means = [math.log(x) for x in medians if x is not None]
    sized = [s for s in spreads if s is not None]
    return wear_prior.pooled(means, sized, int(engines or 0), made_at or "")


def as_new(build: Build) -> Fitting:
    """Give what the drive says before any reading: a new chain, 0 to 0.15 % over nominal."""
    loop = float(build.drive.links * build.drive.pitch)
    middle = NEW_CHAIN_PERCENT / 2
    return Fitting(
        loop,
        loop * (1 + middle / 100) - float(build.geometry.taut_length),
        loop * rectangular(middle) / 100,
        build.taut_uncertainty(build.geometry),
    )


def told(asked: Asked) -> list[Seen | None]:
    """Give every reading as excess length, or None where it cannot be told from a taut chain."""
    found: list[Seen | None] = []
    for t in asked.taken:
        if not is_told((t.quantity, t.value, t.uncertainty)):
            found.append(None)
            continue
        part = part_of(asked.build, t.quantity, t.value, t.uncertainty)
        found.append(Seen(t.running_h, part.excess, part.uncertainty, part.on_centre))
    return found


def limit_excess(asked: Asked, limit: Limit) -> float:
    """Give the excess length [mm] at which a limit is reached."""
    return float(part_of(asked.build, limit.quantity, limit.upper, 0.0).excess)

"""From possible chains to what is said of them: when, how sure, the fan."""

from .figures import short
from .forecast_asked import Asked, limit_excess
from .limits import as_dict
from .movement import excess_from_movement, movement_from_excess
from .next_reading import excess_at
from .quantiles import scaled, spread_of
from .student import NORMAL_95
from .wear import hours_until
from .wear_fit import Draw, Model, Seen
from .wear_prior import Prior

EVENTS = ("enters-window", "leaves-window", "reaches-limit")
FAN_STEPS = 24
LABELS = {
    "first": "First wear in all",
    "tau": "Time constant of the first wear",
    "steady": "Steady wear",
}
UNITS = {"first": "%", "tau": "h", "steady": "%/h"}
_HAPPENS = {
    "enters-window": "The slack enters the window",
    "leaves-window": "The slack leaves the window",
    "reaches-limit": "The slack reaches the limit",
}


def events(asked: Asked, model: Model, draws: list[Draw], now_h: float) -> list[dict[str, object]]:
    """Give for each event when it is expected, with intervals, in hours and distance."""
    strand = asked.build.geometry.strand
    levels = (
        excess_from_movement(strand, asked.window[0]),
        excess_from_movement(strand, asked.window[1]),
        limit_excess(asked, asked.limit),
    )
    return [_event(asked, model, draws, now_h, name, level) for name, level in zip(EVENTS, levels)]


def _event(
    asked: Asked, model: Model, draws: list[Draw], now_h: float, name: str, level: float
) -> dict[str, object]:
    grown = model.fitting.loop / 100
    times = [hours_until(d.wear, (level - d.fitted) / grown, asked.horizon) for d in draws]
    when = spread_of(times)
    past = len([t for t in times if t is not None and t <= now_h]) / len(times)
    beyond = len([t for t in times if t is None]) / len(times)
    return {
        "event": name,
        "movement_mm": movement_from_excess(asked.build.geometry.strand, level),
        "at_running_h": when,
        "at_distance_km": scaled(when, asked.speed),
        "probability_by_now": past,
        "probability_beyond": beyond,
        "text": _said(name, past, beyond, now_h, asked.horizon),
    }


def _said(name: str, past: float, beyond: float, now_h: float, horizon_h: float) -> str:
    """Say plainly what no interval shows: that it is over, or too far off."""
    by = "by now" if now_h > 0 else "on fitting"
    parts = []
    if past >= 0.005:
        parts.append(_percent(past) + " that it has happened " + by)
    if beyond >= 0.005:
        far = "not within the horizon of " + short(horizon_h, 4) + " h of running"
        parts.append(_percent(beyond) + " that it is " + far)
    ahead = 1 - past - beyond
    if not parts:
        return _HAPPENS[name] + " within the horizon, as far as this can tell."
    if ahead >= 0.005:
        parts.append(_percent(ahead) + " that it is still ahead, within the horizon")
    return _HAPPENS[name] + ": " + ", ".join(parts) + "."


def _percent(share: float) -> str:
    if share > 0.995:
        return "over 99 %"
    return short(100 * share, 2) + " %"


def fan(asked: Asked, model: Model, draws: list[Draw], until_h: float) -> list[dict[str, object]]:
    """Give the intervals of the movement against running, denser at the start."""
    strand = asked.build.geometry.strand
    rows: list[dict[str, object]] = []
    for k in range(FAN_STEPS + 1):
        at = until_h * (k / FAN_STEPS) ** 2
        of_excess = spread_of([excess_at(model, draw, at) for draw in draws])
        moves = {
            name: None if x is None else movement_from_excess(strand, x)
            for name, x in of_excess.items()
        }
        rows.append({"at_running_h": at, "at_distance_km": at * asked.speed, "movement_mm": moves})
    return rows


def points(asked: Asked, seen: list[Seen | None]) -> list[dict[str, object]]:
    """Give the readings as movement, with their 95 % intervals, for the chart."""
    strand = asked.build.geometry.strand
    rows: list[dict[str, object]] = []
    for taken, s in zip(asked.taken, seen):
        at = None
        if s is not None:
            half = NORMAL_95 * s.uncertainty
            ends = [movement_from_excess(strand, s.excess + k * half) for k in (0, -1, 1)]
            at = {"value": ends[0], "low": ends[1], "high": ends[2]}
        rows.append(
            {"quantity": taken.quantity, "value": taken.value, "at_running_h": taken.running_h,
             "at_distance_km": taken.running_h * asked.speed, "used": s is not None,
             "movement_mm": at}
        )  # fmt: skip
    return rows


def wear_rows(prior: Prior, draws: list[Draw]) -> list[dict[str, object]]:
    """Give each unknown of the wear before and after the readings, with the prior's origin."""
    found: list[dict[str, object]] = []
    for i in range(3):
        row = prior.rows[i]
        values = [draw.wear[i] for draw in draws]
        found.append(
            {"parameter": row.parameter, "label": LABELS[row.parameter],
             "unit": UNITS[row.parameter],
             "prior": {"median": row.median, "log_sd": row.log_sd, "origin": row.origin,
                       "text": row.text, "source": row.source, "address": row.address},
             "found": spread_of(values)}
        )  # fmt: skip
    return found


def how_little(model: Model, prior: Prior) -> list[str]:
    """Say what the forecast rests on, and how little that is."""
    said = []
    count = len(model.seen)
    if count == 0:
        said.append("Nothing was measured: this is what is known of any such chain, which is "
                    "little. Measure, and it narrows.")  # fmt: skip
    elif count == 1:
        said.append("One reading tells where the chain stands, and nothing yet of how it wears.")
    if prior.engines:
        said.append("Before its readings it rests on " + str(prior.engines)
                    + " engines of this shop.")  # fmt: skip
    else:
        said.append("Before its readings it rests on orders of magnitude from general roller "
                    "chains and the trade: none was measured on a timing chain.")  # fmt: skip
    return said


def reach_of_fan(asked: Asked, told: list[dict[str, object]], now_h: float) -> float:
    """Give how far the fan is drawn [h]: past the last reading and what is expected next."""
    far = [now_h * 1.5, 20.0]
    for event in told:
        when = event["at_running_h"]
        assert isinstance(when, dict)  # noqa: S101
        if event["event"] == "reaches-limit":
            far.append(asked.horizon if when["median"] is None else 1.2 * when["median"])
    return min(max(far), asked.horizon) if now_h < asked.horizon else now_h


def limit_told(asked: Asked) -> dict[str, object]:
    """Give the limit that the forecast runs to."""
    return as_dict(asked.limit, asked.build.drive.cam_teeth)

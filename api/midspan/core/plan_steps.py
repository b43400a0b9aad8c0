"""The steps of a plan fitted to one engine: which apply, how long, how fast, and when."""

from . import running_cautions
from .limits import MEMORY, PRACTICE, PUBLISHED
from .plan_asked import Asked, Use
from .running_figures import BY_ID, DERIVED, FIGURES, Figure, as_dict
from .running_steps import STEPS, Template

# Oils whose life is the running in: a tight chain is worth their longest published stay.
FOR_RUNNING_IN = ("mineral", "running-in")
TIGHT = "below"


class Step:
    """One step of a plan and how far it has come.

    Parameters
    ----------
    template : what it is
    key : name in the plan and the log
    minutes : how long it is to run [min], None where a clock does not end it
    km : distance since the first start at which it is due [km], None where that does not end it
    """

    def __init__(
        self,
        template: Template,
        key: str = "",
        minutes: float | None = None,
        km: float | None = None,
    ) -> None:
        """Start as not begun."""
        self.template = template
        self.key = key or template.key
        self.minutes = minutes
        self.km = km
        self.status = "to-do"
        self.run_min: float | None = None
        self.title = template.title
        # A step put in by what happened is told apart from those of the plan.
        self.added = False
        # Counts the parts of a step that was cut short, from 1.
        self.turn = 1

    def as_dict(self, use: Use) -> dict[str, object]:
        """Give the step as the API and the screen show it."""
        at = self.template
        hours = None if self.km is None else self.km / use.speed
        named = [as_dict(BY_ID[name]) for name in at.figures]
        if self.template.key == "normal-drain":
            named = [row for row in named if use.drain_origin == MEMORY]
        return {
            "key": self.key,
            "phase": at.phase,
            "title": self.title,
            "ends": at.ends,
            "status": self.status,
            "added": self.added,
            "speed": band(at.speed),
            "time": band(at.time),
            "duration_min": self.minutes,
            "run_min": self.run_min,
            "at_distance_km": self.km,
            "at_running_h": hours,
            "due_origin": _due_origin(at.key, use),
            "after_weeks": after_weeks(use, self.km),
            "engine_load": at.load or None,
            "oil": at.oil or None,
            "measures": at.measures,
            "figures": named,
            "look_at": [{"text": text, "origin": origin} for text, origin in at.look_at],
            "stop_when": [{"text": text, "origin": origin} for text, origin in at.stop_when],
            "cautions": [running_cautions.as_dict(code) for code in at.cautions],
        }


def band(start: str) -> dict[str, object] | None:
    """Give the range that the sources span, and what all of them admit.

    Parameters
    ----------
    start : start of the ids of the figures; "" for none

    Returns
    -------
    dict: lower, upper of all published figures (of the others if none is published), the part
    that every one of these admits (None if they exclude each other), the unit and every figure
    """
    if not start:
        return None
    rows = [figure for figure in FIGURES if figure.id.startswith(start)]
    counted = [row for row in rows if row.origin == PUBLISHED] or rows
    lows = [row.lower for row in counted if row.lower is not None]
    highs = [row.upper for row in counted if row.upper is not None]
    agree = max(lows) <= min(highs)
    return {
        "lower": min(lows),
        "upper": max(highs),
        "common_lower": max(lows) if agree else None,
        "common_upper": min(highs) if agree else None,
        "unit": as_dict(rows[0])["unit"],
        "origin": counted[0].origin,
        "figures": [as_dict(row) for row in rows],
    }


def after_weeks(use: Use, km: float | None) -> float | None:
    """Give the weeks of use until a distance [weeks], None where no use was given."""
    if km is None:
        return None
    if use.km is not None:
        return float(km / use.km)
    if use.hours is not None:
        return float(km / use.speed / use.hours)
    return None


def applies(template: Template, asked: Asked) -> bool:
    """Tell whether a step is for this engine."""
    known = {"follower": asked.follower, "rings": asked.rings, "springs": asked.springs}
    return all([known[name] == wanted for name, wanted in template.where.items()])


def base_steps(asked: Asked) -> list[Step]:
    """Give the steps of an engine whose log is empty, in their order."""
    steps = []
    for template in STEPS:
        if applies(template, asked):
            steps.append(
                Step(template, minutes=_minutes(template), km=_distance(template.key, asked))
            )
    return in_order(steps)


def in_order(steps: list[Step]) -> list[Step]:
    """Put those due at a distance in the order of it, after all others; ties stay as they are."""
    near = [step for step in steps if step.km is None]
    # MicroPython's sort keeps no order of ties, so the place decides them.
    far = [(steps[i].km or 0.0, i) for i in range(len(steps)) if steps[i].km is not None]
    return near + [steps[i] for _, i in sorted(far)]


def _minutes(template: Template) -> float | None:
    """The longest that is published serves every source; of nothing published, the longest."""
    found = band(template.time)
    return None if found is None else _number(found["upper"])


def _distance(key: str, asked: Asked) -> float | None:
    if key == "early-drain":
        return early_drain_km(asked)
    if key == "slack-first":
        return float(_upper(BY_ID["chain-20-h"]) * asked.use.speed)
    if key == "normal-drain":
        return max(float(asked.use.drain_km), early_drain_km(asked))
    if key == "slack-bedded":
        return _upper(BY_ID["chain-10000-miles"])
    return None


def early_drain_km(asked: Asked) -> float:
    """Give the distance of the running-in fill's drain [km]: its longest for a tight chain."""
    longer = asked.chain.outcome == TIGHT and asked.oil.kind in FOR_RUNNING_IN
    return _upper(BY_ID["drain-never-over" if longer else "drain-miles"])


def _due_origin(key: str, use: Use) -> str | None:
    """Say how well the distance of a step is founded: by the weakest figure in it."""
    hours = MEMORY if use.speed_origin == MEMORY else DERIVED
    found = {
        "early-drain": PUBLISHED,
        "slack-first": hours,
        "normal-drain": use.drain_origin,
        "slack-bedded": PRACTICE,
        # From a forecast, whose prior is as wide as is remembered.
        "slack-next": MEMORY,
    }
    return found.get(key)


def _upper(figure: Figure) -> float:
    return float(figure.upper)


def _number(value: object) -> float:
    assert isinstance(value, float)  # noqa: S101  (a band has numbers)
    return value

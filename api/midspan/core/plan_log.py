"""What happened beside the engine, and what it makes of the plan: plan and log give the new plan.

Pure: the phone and the service come to the same plan by the same log.
"""

from collections import namedtuple

from .days import take_moment
from .fields import Form
from .figures import fixed, short
from .plan_asked import Asked, Oil, take_oil, with_oil
from .plan_steps import Step, base_steps, in_order
from .running_steps import BY_KEY

EVENTS = (
    "started", "paused", "resumed", "done", "cut-short", "skipped", "value", "note", "distance",
    "oil-changed", "clock", "re-check", "taken-back",
)  # fmt: skip
REASONS = (
    "oil-pressure", "temperature", "noise", "leak", "smoke", "gas", "fuel", "time", "other",
)  # fmt: skip
# Nothing was wrong with the engine: the rest may follow without looking for a cause.
HARMLESS = ("fuel", "time")
# A reason that does not say by its name alone what was the matter.
IN_WORDS = {"fuel": "out of fuel", "time": "no time"}
# A clock read by eye is no nearer than this.
SHORT_BY_MIN = 1 / 60
MOST_EVENTS = 2000
# One more reading of the slack, where a forecast says that it tells most.
RECHECK = "slack-next"
# What stays in the sump is drained after so much of its own life.
FILL_DRAINS = ("early-drain", "normal-drain")

ENDING = ("done", "cut-short", "skipped")
# What can be taken back, and what is told of it: both events stay in the log.
TAKEN_BACK = {
    "started": "Timer started, then taken back: ",
    "done": "Done, then taken back: ",
    "cut-short": "Cut short, then taken back: ",
    "skipped": "Left out, then taken back: ",
}

# Events that mean nothing without one; of these a re-check is ahead, the others were passed.
AT_DISTANCE = ("distance", "oil-changed", "re-check")

Event = namedtuple(
    "Event",
    ("kind", "step", "at", "minutes", "reason", "text", "label", "value", "unit", "oil", "km"),
)


def take_log(form: Form) -> list[Event]:
    """Read the list of events in the field "log"."""
    return [_take_event(part) for part in form.take_forms("log", MOST_EVENTS, required=False)]


def _take_event(part: Form) -> Event:
    kind = part.take_choice("kind", EVENTS)
    at = take_moment(part, "at")
    step = part.take_text("step", 80) if part.has("step") else None
    minutes = part.take_number("run_min", required=kind == "cut-short")
    reason = None
    if part.has("reason") or kind == "cut-short":
        reason = part.take_choice("reason", REASONS)
    text = part.take_text("text", 1000) if part.has("text") else None
    label = part.take_text("label", 60) if part.has("label") or kind == "value" else None
    value = part.take_number("value_read", required=kind == "value")
    unit = part.take_text("unit", 20) if part.has("unit") else None
    oil: Oil | None = None
    if part.has("oil") or kind == "oil-changed":
        oil = take_oil(part)
    km = part.take_number("distance_since_start_km", required=kind in AT_DISTANCE)
    if (kind in ENDING or kind == "taken-back") and step is None:
        part.refuse("missing", "step", None, "the key of a step", "Say which step it was.")
    part.close()
    return Event(kind, step, at, minutes, reason, text, label, value, unit, oil, km)


class Run(namedtuple("Run", ("asked", "steps", "deviations", "distance"))):
    """A plan after its log: the question as it stands now, the steps, what deviated, how far."""

    __slots__ = ()


def adapt(asked: Asked, log: list[Event]) -> Run:
    """Work a log into a plan.

    Parameters
    ----------
    asked : what the plan was made for
    log : what happened, in order

    Returns
    -------
    Run; with an empty log, the plan itself

    Raises
    ------
    none

    Validity
    --------
    An event of a step that is not in the plan changes nothing but is told as a deviation.

    Reference
    ---------
    Own rule: what a step was cut short by is put in right after it, behind a look for the cause
    unless nothing was wrong; a new oil's life counts from its change. Neither shortens what
    follows. What was taken back has no effect and is told.
    """
    steps = base_steps(asked)
    deviations: list[dict[str, object]] = []
    distance = 0.0
    taken = taken_back(log)
    undone = {i for found in taken.values() for i in found}
    for place, event in enumerate(log):
        if place in undone:
            continue
        if place in taken:
            text = TAKEN_BACK[log[taken[place][-1]].kind] + _title(steps, event.step) + "."
            deviations.append(_deviation(event, text))
        if event.kind == "re-check":
            steps = _with_recheck(steps, event.km)
        elif event.km is not None:
            distance = max(distance, event.km)
        if event.kind == "oil-changed":
            asked = with_oil(asked, event.oil)
            steps = _with_fresh(steps, base_steps(asked), event.km)
            text = "Oil changed after " + short(event.km, 6) + " km to " + event.oil.kind + " oil."
            deviations.append(_deviation(event, text))
        elif event.kind in ENDING:
            _finish(steps, event, deviations)
        elif event.kind == "clock":
            deviations.append(_deviation(event, event.text or "The phone's clock jumped."))
        elif event.kind == "note" and event.text:
            deviations.append(_deviation(event, event.text))
    return Run(asked, steps, deviations, distance)


def taken_back(log: list[Event]) -> dict[int, list[int]]:
    """Give by the place of each event that takes back the places of what it takes back.

    That is what was told last of its step: its end, however often told, or its timer's start.
    """
    found: dict[int, list[int]] = {}
    undone: set[int] = set()
    for place, event in enumerate(log):
        if event.kind != "taken-back":
            continue
        own = []
        for i in range(place):
            if i not in undone and log[i].step == event.step and log[i].kind in TAKEN_BACK:
                own.append(i)
        ends = bool(own) and log[own[-1]].kind in ENDING
        same = [i for i in own if (log[i].kind in ENDING) == ends]
        if same:
            found[place] = same
            undone.update(same)
    return found


def _title(steps: list[Step], key: str) -> str:
    named = [step.title for step in steps if step.key == key]
    return named[0] if named else key


def _deviation(event: Event, text: str) -> dict[str, object]:
    return {"step": event.step, "at": event.at, "text": text}


def _finish(steps: list[Step], event: Event, deviations: list[dict[str, object]]) -> None:
    place = [i for i in range(len(steps)) if steps[i].key == event.step]
    if not place:
        deviations.append(_deviation(event, "A step that is not in this plan: " + event.step + "."))
        return
    step = steps[place[0]]
    if step.status != "to-do":
        return  # told twice, as by a phone that was killed while saving
    if event.kind == "skipped":
        step.status = "skipped"
        deviations.append(_deviation(event, "Not done: " + step.title + "." + _said(event)))
        return
    step.status = "done"
    if step.minutes is None:
        return
    step.run_min = step.minutes if event.minutes is None else event.minutes
    missing = step.minutes - step.run_min
    if missing < SHORT_BY_MIN:
        return
    step.status = "cut-short"
    text = step.title + ": " + fixed(step.run_min, 1) + " of " + fixed(step.minutes, 1) + " min."
    deviations.append(_deviation(event, text + _said(event)))
    for one in reversed(_rest(step, missing, event.reason or "other")):
        steps.insert(place[0] + 1, one)


def _said(event: Event) -> str:
    said = [word for word in (_worded(event.reason), event.text) if word]
    return " " + ": ".join(said) if said else ""


def _worded(reason: str | None) -> str:
    return IN_WORDS.get(reason or "", (reason or "").replace("-", " "))


def _rest(step: Step, missing: float, reason: str) -> list[Step]:
    """Give what makes up for a step cut short: a look for the cause, then the rest of it."""
    made = []
    turn = step.turn + 1
    key = step.template.key + "-" + str(turn)
    if reason not in HARMLESS:
        cause = Step(BY_KEY["cool"], key + "-cause")
        cause.title = "Find and mend the cause: " + _worded(reason)
        made.append(cause)
    rest = Step(step.template, key, minutes=missing)
    rest.turn = turn
    rest.title = step.template.title + ", the rest of it"
    made.append(rest)
    for one in made:
        one.added = True
    return made


def _with_recheck(steps: list[Step], km: float) -> list[Step]:
    """Put one more reading of the slack in; it takes the place of one that is still ahead."""
    kept = [s for s in steps if s.template.key != RECHECK or s.status != "to-do"]
    turn = 1 + len([s for s in kept if s.template.key == RECHECK])
    one = Step(BY_KEY[RECHECK], RECHECK + "-" + str(turn), km=km)
    one.added = True
    return in_order(kept + [one])


def _with_fresh(steps: list[Step], fresh: list[Step], km: float) -> list[Step]:
    """Keep what was passed or put in; take the rest from the new oil's plan, never sooner."""
    before = {step.key: step for step in steps}
    kept = []
    for step in steps:
        if step.status != "to-do" or step.km is None or step.template.key == RECHECK:
            kept.append(step)
    for step in fresh:
        old = before.get(step.key)
        if step.km is None or (old is not None and old.status != "to-do"):
            continue
        due = step.km + km if step.key in FILL_DRAINS else step.km
        step.km = max(due, (old.km or 0.0) if old is not None else 0.0)
        kept.append(step)
    return in_order(kept)

"""The drains and re-checks of a plan on their days, as an iCalendar text."""

from . import days
from .calendar_text import calendar
from .fields import Form
from .figures import fixed
from .plan_asked import take_plan
from .plan_log import Event, Run, adapt, take_log
from .plan_steps import Step
from .running_figures import MILE_KM
from .version import VERSION
from .warnings import cautions

# A reminder ten years off is of no use, and a slip in the use per week would make one.
MOST_WEEKS = 520


def calculate(payload: object) -> dict[str, object]:
    """Give every drain and re-check still due its day, and all of them as one calendar.

    Parameters
    ----------
    payload : plan and log as for the adapted plan, started_on (day of the first start), made_at
        (now, UTC), title (of the engine), id (of the plan, for the events' own ids)

    Returns
    -------
    dict: events with their days, undated (keys of steps without one), text (RFC 5545)

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Days follow from the use per week, so they are as good as that; within ten years.

    Reference
    ---------
    RFC 5545.
    """
    form = Form(payload)
    asked = take_plan(form)
    log = take_log(form)
    started = days.take_day(form, "started_on")
    made_at = days.take_moment(form, "made_at")
    title = form.take_text("title", 200)
    id = form.take_text("id", 100)
    form.close()
    form.finish()
    assert asked is not None and started is not None  # noqa: S101, PT018  (finish raised)
    assert made_at is not None and title is not None and id is not None  # noqa: S101, PT018
    run = adapt(asked, log)
    events, undated = _events(run, log, started)
    entries = [
        (id + "-" + e["key"], e["day"], title + ": " + e["title"], e["text"]) for e in events
    ]
    return {
        "calc": "plan-calendar",
        "core_version": VERSION,
        "events": events,
        "undated": undated,
        "text": calendar(title, entries, made_at),
        "assumptions": asked.assumptions,
        "warnings": [],
        "cautions": cautions("hot"),
    }


def _events(run: Run, log: list[Event], started: int) -> tuple[list[dict[str, str]], list[str]]:
    """Give each step due at a distance its day, counted from the last distance that was noted."""
    use = run.asked.use
    rate = use.km
    if rate is None and use.hours is not None:
        rate = use.hours * use.speed
    day, km = float(started), 0.0
    for event in log:
        passed = event.km is not None and event.kind != "re-check"
        seen = None if not passed else days.number_of(event.at.split("T")[0])
        if seen is not None and event.km >= km:
            day, km = float(seen), event.km
    events, undated = [], []
    for step in run.steps:
        if step.km is None or step.status != "to-do":
            continue
        weeks = None if rate is None else max(0.0, step.km - km) / rate
        if weeks is None or weeks > MOST_WEEKS:
            undated.append(step.key)
            continue
        events.append(
            {
                "key": step.key,
                "title": step.title,
                "day": days.text_of(int(day + 7 * weeks)),
                "text": _text(step),
            }
        )
    return events, undated


def _text(step: Step) -> str:
    at = "At " + fixed(step.km or 0.0, 0) + " km (" + fixed((step.km or 0.0) / MILE_KM, 0)
    at += " miles) since the first start. " + step.template.oil
    return str(at.strip()) + " The maker's manual comes first."

"""The running-in plan of an engine, and the same plan after what happened."""

from .fields import Form
from .plan_asked import take_asked
from .plan_log import Run, adapt
from .plan_said import chain_said, oil_findings
from .version import VERSION
from .warnings import cautions


def calculate(payload: object) -> dict[str, object]:
    """Give the steps of running in: before the first start, first start, load, road.

    Parameters
    ----------
    payload : oil (kind, grade, category, phosphorus_mg_per_kg, zinc_mg_per_kg), follower, rings,
        spring_open_load_n, movement_mm with expanded_uncertainty_mm, window_lower_mm,
        window_upper_mm, distance_per_week_km or running_per_week_h, average_speed_km_per_h,
        drain_interval_km

    Returns
    -------
    dict: steps in order, what is said of oil and chain, progress, deviations, next

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Four-stroke engines with a chain-driven cam; the maker's manual comes first.

    Reference
    ---------
    Every figure carries its own; see `running_figures`, `j300`, `running_cautions`.
    """
    form = Form(payload)
    asked = take_asked(form)
    form.close()
    form.finish()
    return result("plan", adapt(asked, []))


def result(calc: str, run: Run) -> dict[str, object]:
    """Give a plan, as it stands after its log, in the form of the result."""
    asked, steps = run.asked, run.steps
    timed = [step for step in steps if step.minutes is not None]
    # A step that was cut short counts by what it ran: its rest is a step of its own.
    length = [_length(step.minutes, step.run_min, step.status) for step in timed]
    done = [step for step in steps if step.status != "to-do"]
    following = [step.key for step in steps if step.status == "to-do"]
    return {
        "calc": calc,
        "core_version": VERSION,
        "steps": [step.as_dict(asked.use) for step in steps],
        "next": following[0] if following else None,
        "progress": {
            "steps_done": len(done),
            "steps_total": len(steps),
            "run_min": sum([step.run_min or 0.0 for step in timed]),
            "duration_min": sum(length),
            "distance_since_start_km": run.distance,
        },
        "deviations": run.deviations,
        "oil": {
            "kind": asked.oil.kind,
            "category": asked.oil.category,
            "phosphorus_mg_per_kg": asked.oil.phosphorus,
            "zinc_mg_per_kg": asked.oil.zinc,
            "grade": asked.oil.grade,
            "findings": oil_findings(asked),
        },
        "chain": chain_said(asked, sum(length)),
        "assumptions": asked.assumptions,
        "warnings": [],
        "cautions": cautions("hot", "turn-by-hand", "valve-contact"),
    }


def _length(planned: float, run: float | None, status: str) -> float:
    if status == "skipped":
        return 0.0
    return planned if run is None else run

"""A running-in plan after what happened beside the engine."""

from .calc_plan import result
from .fields import Form
from .plan_asked import take_plan
from .plan_log import adapt, take_log


def calculate(payload: object) -> dict[str, object]:
    """Work the log of a run into its plan.

    Parameters
    ----------
    payload : plan (the input of the calculation "plan"), log (what happened, in order: kind, at,
        step, run_min, reason, text, label, value_read, unit, oil, distance_since_start_km)

    Returns
    -------
    dict as of the plan, its steps with their status and what was put in

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    As the plan; with an empty log it is the plan.

    Reference
    ---------
    See `plan_log.adapt`.
    """
    form = Form(payload)
    asked = take_plan(form)
    log = take_log(form)
    form.close()
    form.finish()
    assert asked is not None  # noqa: S101  (finish raised if it was refused)
    return result("plan-adapted", adapt(asked, log))

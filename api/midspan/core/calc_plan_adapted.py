"""A running-in plan after what happened beside the engine."""

from .calc_plan import result
from .fields import Form
from .plan_asked import take_asked
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
    part = form.take_form("plan")
    if part is None:
        form.refuse("missing", "plan", None, "the input of the plan", "Send what it was made of.")
    else:
        asked = take_asked(part)
        part.close()
    log = take_log(form)
    form.close()
    form.finish()
    return result("plan-adapted", adapt(asked, log))

"""The one door to the core: a name and JSON text in, JSON text out."""

import json

from .errors import Refused, problem
from .fields import Form
from .version import VERSION

# The module of each calculation, imported at its first use: a phone that measures slack never pays
# for the shelf.
CALCS = {
    "drive": "calc_drive",
    "elongation": "calc_elongation",
    "slack": "calc_slack",
    "crank-rock": "calc_rock",
    "heat": "calc_heat",
    "bored": "calc_bored",
    "gear": "calc_gear",
    "combined": "calc_combined",
    "fit": "calc_fit",
    "plan": "calc_plan",
    "plan-adapted": "calc_plan_adapted",
    "plan-calendar": "calc_calendar",
    "tdc": "calc_tdc",
    "cam": "calc_cam",
    "adjust": "calc_adjust",
    "forecast": "calc_forecast",
    "lift": "calc_lift",
    "rockers": "calc_rockers",
    "matrix": "calc_matrix",
    "clearance": "calc_clearance",
    "compression": "calc_compression",
    "spark": "calc_spark",
    "gain": "calc_gain",
    "correction": "calc_correction",
    "compare": "calc_compare",
    "pulls-needed": "calc_pulls",
}

# What a screen needs beside the calculations; the service has it on a route of its own.
TOOLS = {"dyno-table": "dyno_table", "gain-evidence": "gain_evidence"}


def _limits(payload: object) -> dict[str, object]:
    """Give every limit on file."""
    from . import limits, limits_valve

    form = Form(payload)
    form.close()
    form.finish()
    return {"limits": [limits.as_dict(limit) for limit in limits.LIMITS + limits_valve.VALVE]}


def _glossary(payload: object) -> dict[str, object]:
    """Give every term of the glossary."""
    from . import glossary

    form = Form(payload)
    form.close()
    form.finish()
    fields = ("symbol", "unit", "label", "meaning", "low", "high", "whole")
    terms = {}
    for name, term in glossary.TERMS.items():
        terms[name] = {field: getattr(term, field) for field in fields}
    return {"terms": terms}


def _materials(payload: object) -> dict[str, object]:
    """Give every material on file with its expansion coefficient."""
    from . import materials

    form = Form(payload)
    form.close()
    form.finish()
    return {"materials": [materials.as_dict(m) for m in materials.MATERIALS]}


def _describe(payload: object) -> dict[str, object]:
    """Tell the version, the calculations and the instrument figures assumed."""
    from . import instrument

    form = Form(payload)
    form.close()
    form.finish()
    return {"version": VERSION, "calcs": sorted(CALCS), "defaults": instrument.DEFAULTS}


def _methods(payload: object) -> dict[str, object]:
    """Give every published check value beside ours, by subject; on the phone loaded when wanted."""
    from . import methods

    form = Form(payload)
    form.close()
    form.finish()
    return methods.table()


TABLES = {
    "limits": _limits,
    "materials": _materials,
    "glossary": _glossary,
    "describe": _describe,
    "methods": _methods,
}


def run(name: str, payload: object) -> dict[str, object]:
    """Run one calculation.

    Parameters
    ----------
    name : one of CALCS or TOOLS, or of TABLES for what is on file
    payload : the input, as read from JSON

    Returns
    -------
    dict, every number unrounded

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    See the calculation.

    Reference
    ---------
    See the calculation.
    """
    where = CALCS.get(name) or TOOLS.get(name)
    if where:
        # MicroPython has no importlib.
        module = __import__(where, globals(), None, ("calculate",), 1)
        result: dict[str, object] = module.calculate(payload)
        return result
    if name in TABLES:
        return TABLES[name](payload)
    need = "one of " + ", ".join(sorted(CALCS) + sorted(TABLES))
    raise Refused([problem("unknown-calc", "calc", name, need, "Choose one of these.")])


def dispatch(name: str, payload_json: str) -> str:
    """Run one calculation from JSON text to JSON text; bad input is answered, never raised.

    Parameters
    ----------
    name : as for `run`
    payload_json : the input as JSON text

    Returns
    -------
    JSON text: {"ok": true, "result": ...} or {"ok": false, "problems": [...]}

    Raises
    ------
    none

    Validity
    --------
    As `run`.

    Reference
    ---------
    none
    """
    try:
        payload = json.loads(payload_json)
    except (ValueError, RuntimeError):  # RuntimeError: nested too deep
        found = [problem("not-json", "", "text", "JSON text", "Send one JSON object.")]
        return json.dumps({"ok": False, "problems": found})
    try:
        return '{"ok": true, "result": ' + _text(run(name, payload)) + "}"
    except Refused as refused:
        return json.dumps({"ok": False, "problems": refused.problems})


def _text(result: dict[str, object]) -> str:
    """JSON text, written row by row: MicroPython's writer slows with the square of its length."""
    members = []
    for name, value in result.items():
        if isinstance(value, list):
            text = "[" + ", ".join([json.dumps(row) for row in value]) + "]"
        else:
            text = json.dumps(value)
        members.append(json.dumps(name) + ": " + text)
    return "{" + ", ".join(members) + "}"

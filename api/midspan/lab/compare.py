"""Dyno curves of several settings: bands at every speed, and a model of refitted settings."""

from typing import TYPE_CHECKING, Any

from midspan.core import run
from midspan.core.compare_asked import Asked, Run, take_compare
from midspan.core.design_words import recognise
from midspan.core.drift_fit import Pull
from midspan.core.fields import Form
from midspan.core.figures import fixed, short

from .bands import banded

if TYPE_CHECKING:
    import numpy as np

    Array = np.ndarray[Any, np.dtype[np.float64]]

SPEEDS = 61
# With fewer fittings than this beyond what is fitted, Student's t makes the interval very wide.
FITTINGS_TO_SPARE = 4
# The fit gives zero, or what rounding leaves of it, where runs differ no less than fittings do.
UNSEEN_PERCENT = 1e-4


def compare(payload: object) -> dict[str, Any]:
    """Compare settings as the phone does, and over the whole curve; and allow for refitting.

    Parameters
    ----------
    payload : as for the core's "compare"; curves of the runs that are compared

    Returns
    -------
    dict: compare (the phone's answer), curves (or None without any), curves_text, refitting (or
    None where no setting was fitted twice), refitting_text

    Raises
    ------
    Refused : as the core's "compare"
    """
    answer = run("compare", payload)
    asked = take_compare(Form(payload))  # in order: the line above has refused all else
    kept = [one for one in asked.runs if not one.left_out]
    drift = answer["drift"]["used"] == "linear"  # type: ignore[index]
    curves, said = _curves(asked, kept, drift)
    refitting, told = _refitting(asked, kept, drift)
    return {
        "calc": "compare-curves",
        "core_version": answer["core_version"],
        "compare": answer,
        "curves": curves,
        "curves_text": said,
        "refitting": refitting,
        "refitting_text": told,
    }


def _fixed(asked: Asked, runs: list[Run], drift: bool) -> tuple[list[str], "Array"]:
    """Give the settings and the fixed effects: a level of each, and the drift about the middle."""
    import numpy as np

    keys = sorted({one.setting for one in runs})
    columns = [[float(one.setting == key) for one in runs] for key in keys]
    if drift:
        middle = sum(one.place for one in runs) / len(runs)
        columns.append([one.place - middle for one in runs])
    return keys, np.array(columns).T


def _curves(asked: Asked, kept: list[Run], drift: bool) -> tuple[dict[str, Any] | None, str]:
    import numpy as np

    runs = [one for one in kept if one.curve is not None]
    settings = {one.setting for one in kept}
    if {one.setting for one in runs} != settings:
        return None, "No curves: some setting has none among its runs."
    drift = drift and len({one.setting for one in runs}) < len(runs)
    keys, design = _fixed(asked, runs, drift)
    if np.linalg.matrix_rank(design) < design.shape[1]:
        return None, "No bands: too few runs have a curve."
    low = max(one.curve[0][0] for one in runs)
    high = min(one.curve[0][-1] for one in runs)
    if low >= high:
        return None, "No curves: the runs share no range of speed."
    speeds = np.linspace(low, high, SPEEDS)
    # A factor is one for a whole run: the air it was made in.
    lines = np.array([np.interp(speeds, *one.curve) * (one.value / one.raw) for one in runs])
    found = banded(lines, design, keys, asked.reference)
    found["speed_rpm"] = [float(x) for x in speeds]
    found["runs_with_curve"] = len(runs)
    dof = found["degrees_of_freedom"]
    if not dof:
        return found, "Mean curves without bands: too few runs tell the scatter."
    text = "Pointwise band: at any one speed it holds the truth 95 times in 100. The wider band "
    text += "holds it at all speeds at once, about 95 times in 100: look at that one before "
    text += "pointing at a bump."
    return found, text


def _refitting(asked: Asked, kept: list[Run], drift: bool) -> tuple[dict[str, Any] | None, str]:
    """Allow every fitting of a setting an offset of its own, where one was fitted twice."""
    import numpy as np
    from scipy.stats import t as student

    from .mixed import contrast, fit_mixed

    design = recognise([Pull(r.setting, r.place, r.value) for r in kept], asked.reference)
    if len(design.blocks) == len(design.fitted):
        return None, "No setting was fitted twice, so nothing tells what refitting alone does."
    keys, effects = _fixed(asked, kept, drift)
    groups = np.repeat(np.arange(len(design.blocks)), [count for _, count in design.blocks])
    spare = len(kept) - effects.shape[1]
    if spare < 2 or len(design.blocks) == len(kept):
        return None, "Too few runs of one fitting to tell refitting from scatter."
    figures = np.array([one.value for one in kept])
    scale = abs(float(figures.mean()))
    found = fit_mixed(figures / scale, effects, groups)
    least = len(design.blocks) - effects.shape[1]
    level = float(found.effects[keys.index(asked.reference)])
    rows = []
    for key in keys:
        if key == asked.reference:
            continue
        weights = np.zeros(effects.shape[1])
        weights[keys.index(key)] = 1.0
        weights[keys.index(asked.reference)] = -1.0
        value, u, dof = contrast(found, weights, least)
        gain, error = 100 * value / level, 100 * u / level
        reach = float(student.ppf(0.975, dof)) * error
        rows.append({
            "from_setting": asked.reference, "to_setting": key,
            "gain_percent": {
                "value": gain, "standard_uncertainty": error, "degrees_of_freedom": dof,
                "lower_95": gain - reach, "upper_95": gain + reach,
            },
            "text": _row_text(key, asked.reference, gain, reach),
        })  # fmt: skip
    between, within = 100 * found.of_fitting**0.5 / level, 100 * found.of_run**0.5 / level
    if between < UNSEEN_PERCENT:
        text = "What refitting alone does is too small for these pulls to tell, a pull moves the "
        text += "figure by " + short(within, 2) + " % (standard deviation). "
    else:
        text = "Refitting alone moves the figure by some " + short(between, 2) + " % (standard "
        text += "deviation), a pull by " + short(within, 2) + " %. "
    if least < FITTINGS_TO_SPARE:
        text += (
            "Only " + str(len(design.blocks)) + " fittings tell it, so this interval is far wider "
        )
        text += "than that of the pulls alone: fit each setting again to narrow it. "
    text += "Method: linear mixed model (REML, Satterthwaite)."
    return {
        "fittings": len(design.blocks),
        "refitting_scatter_percent": between,
        "scatter_percent": within,
        "differences": rows,
    }, text


def _row_text(key: str, reference: str, gain: float, reach: float) -> str:
    text = key + " against " + reference + ", refitting allowed for: " + fixed(gain, 2) + " %, "
    text += "95 % interval " + fixed(gain - reach, 2) + " to " + fixed(gain + reach, 2) + " %: "
    return text + ("shown." if abs(gain) > reach else "not shown.")

"""Was the gain shown? Dyno runs of several settings, compared with their scatter and drift."""

from . import left_out
from .betas import factor_of_t
from .calc_correction import dyno_cautions
from .compare_asked import QUANTITIES, Asked, Run, take_compare
from .compare_said import ALPHA, hangs, judge
from .correction_standards import BY_ID, OBSERVED
from .design_words import NAMES, Design, order_text, recognise
from .drift_fit import Difference, Fit, Pull, difference, fit
from .fields import Form
from .figures import fixed, short
from .further import detectable, further_pulls
from .limits import MEMORY
from .spread_interval import spread_interval
from .version import VERSION
from .warnings import warning

# A difference in oil temperature between runs that is worth a word; from memory, unverified.
OIL_K = 10.0


def calculate(payload: object) -> dict[str, object]:
    """Compare the settings of a dyno session by one figure of each run.

    Parameters
    ----------
    payload : standard, quantity, band_lower_rpm and band_upper_rpm for a band, reference, drift,
        runs (each with setting, place, conditions, figures_are, peaks, curve, left_out)

    Returns
    -------
    dict: design, drift, scatter, settings, runs, differences with verdict, left_out

    Raises
    ------
    Refused : input that cannot be used; figures of mixed standards without their conditions

    Validity
    --------
    Runs scatter normally and alike about a drift that is straight over their places.

    Reference
    ---------
    See `drift_fit` and `betas`.
    """
    form = Form(payload)
    asked = take_compare(form)
    form.close()
    form.finish()
    pulls = [Pull(run.setting, run.place, run.value) for run in asked.runs if not run.left_out]
    every = [Pull(run.setting, run.place, run.value) for run in asked.runs if run.value is not None]
    design = recognise(pulls, asked.reference)
    drift = design.told if asked.drift == "auto" else asked.drift == "linear"
    if drift and not design.told:
        need = "an order that tells a drift from the change: some setting run at two places"
        form.refuse("cannot-tell", "drift", "linear", need, "Run a setting again later.")
        form.finish()
    found = fit(pulls, drift)
    others = [key for key in sorted(found.counts) if key != asked.reference]
    best = left_out.only_best(asked.runs)
    with_all = fit(every, drift) if len(every) > len(pulls) else None
    label, unit = QUANTITIES[asked.quantity]
    return {
        "calc": "compare",
        "core_version": VERSION,
        "standard": asked.standard,
        "standard_label": "observed" if asked.standard == OBSERVED else BY_ID[asked.standard].label,
        "quantity": asked.quantity,
        "quantity_text": label,
        "unit": unit,
        "band_lower_rpm": asked.lower if asked.quantity.startswith("band") else None,
        "band_upper_rpm": asked.upper if asked.quantity.startswith("band") else None,
        "reference": asked.reference,
        "design": _design(design),
        "drift": _drift(asked, design, found),
        "scatter": _scatter(found, asked.reference),
        "settings": [_setting(asked.runs, found, key, design) for key in sorted(found.counts)],
        "runs": [_run(run, found) for run in asked.runs],
        "differences": [
            _difference(asked, design, found, with_all, key, len(others), best) for key in others
        ],
        "left_out": left_out.listed(asked.runs),
        "left_out_text": left_out.told(asked.runs),
        "assumptions": [],
        "warnings": _warned(asked, design, found, len(others)),
        "cautions": dyno_cautions(),
    }


def _design(design: Design) -> dict[str, object]:
    changes = len(design.blocks) - 1
    text = NAMES[design.name] + ". " + order_text(design.blocks) + "."
    return {
        "name": design.name,
        "text": text,
        "blocks": [{"setting": key, "pulls": count} for key, count in design.blocks],
        "changes": changes,
    }


def _interval(value: float, u: float | None, dof: float, factor: float) -> dict[str, object]:
    return {
        "value": value,
        "standard_uncertainty": u,
        "degrees_of_freedom": dof,
        "lower_95": None if u is None else value - factor * u,
        "upper_95": None if u is None else value + factor * u,
    }


def _drift(asked: Asked, design: Design, found: Fit) -> dict[str, object]:
    """Say what was done of drift, and how large it was."""
    if found.slope is None:
        text = "No drift is taken out"
        if asked.drift == "none":
            text += ": you say that the engine had settled."
        else:
            text += ": each setting was run once, so a drift looks just like the change."
        return {"asked": asked.drift, "used": "none", "change_per_pull_percent": None, "text": text}
    scale = 100 / abs(found.levels[asked.reference])
    value = float(found.slope * scale)
    u = None if not found.dof else scale * found.spread / found.squares**0.5
    factor = factor_of_t(found.dof) if found.dof else 0.0
    text = "A steady drift of " + short(value, 2) + " % a pull is taken out, found by least squares"
    text += " from settings run again later."
    if design.name == "a-b":
        text += " With one change and no return that costs much: going back tells more."
    return {
        "asked": asked.drift,
        "used": "linear",
        "change_per_pull_percent": _interval(value, u, found.dof, factor),
        "text": text,
    }


def _spread(spread: float | None, dof: int, level: float) -> dict[str, object]:
    """Give a scatter in percent of a level, with its own interval."""
    low = high = share = None
    if spread is not None:
        share = 100 * spread / abs(level)
        if dof and spread:
            low, high = [100 * end / abs(level) for end in spread_interval(spread, dof)]
    return {
        "scatter_percent": share, "lower_95": low, "upper_95": high, "degrees_of_freedom": dof,
    }  # fmt: skip


def _scatter(found: Fit, reference: str) -> dict[str, object]:
    told = _spread(found.spread, found.dof, found.levels[reference])
    if found.spread is None:
        told["text"] = "Nothing tells the scatter: too few pulls."
        return told
    level = abs(found.levels[reference])
    text = "A pull scatters by " + short(100 * found.spread / level, 2) + " % (standard deviation)"
    if found.spread:
        low, high = [100 * end / level for end in spread_interval(found.spread, found.dof)]
        text += "; it may be " + short(low, 2) + " to " + short(high, 2) + " %"
    told["text"] = text + "."
    return told


def _setting(runs: list[Run], found: Fit, key: str, design: Design) -> dict[str, object]:
    """Give a setting: its level at the middle of the session and what its runs scatter."""
    slope = found.slope or 0.0
    kept = [run for run in runs if run.setting == key and not run.left_out]
    rests = [run.value - slope * (run.place - found.about) - found.levels[key] for run in kept]
    n = len(kept)
    own = (sum([r * r for r in rests]) / (n - 1)) ** 0.5 if n > 1 else None
    row = _spread(own, n - 1, found.levels[key])
    row["setting"] = key
    row["count"] = n
    row["left_out_count"] = len([run for run in runs if run.setting == key and run.left_out])
    row["times_fitted"] = design.fitted[key]
    row["level"] = found.levels[key]
    return row


def _run(run: Run, found: Fit) -> dict[str, object]:
    """Give a run by the standard, with the drift taken out, for the strip."""
    steady = rest = None
    if run.value is not None:
        steady = run.value - (found.slope or 0.0) * (run.place - found.about)
        if run.setting in found.levels:
            rest = 100 * (steady - found.levels[run.setting]) / abs(found.levels[run.setting])
    factor = None if run.value is None else run.value / run.raw
    return {
        "place": run.place,
        "setting": run.setting,
        "value": run.value,
        "without_drift": steady,
        "residual_percent": rest,
        "factor": factor,
        "figures_are": run.figures_are,
        "left_out": run.left_out,
    }


def _gain(found: Difference) -> dict[str, object]:
    """Give a difference as gain in percent, by Fieller's interval."""
    known = found.ratio_low is not None and found.ratio_high is not None
    u = found.ratio_uncertainty
    return {
        "value": 100 * (found.ratio - 1),
        "standard_uncertainty": None if u is None else 100 * u,
        "degrees_of_freedom": found.dof,
        "lower_95": 100 * (found.ratio_low - 1) if known else None,
        "upper_95": 100 * (found.ratio_high - 1) if known else None,
    }


def _difference(
    asked: Asked, design: Design, found: Fit, with_all: Fit | None, key: str, tests: int,
    best: list[str],
) -> dict[str, object]:  # fmt: skip
    """Hold a setting against the reference, and judge it."""
    reference = asked.reference
    told = difference(found, reference, key)
    able = detectable(told)
    able = None if able is None else 100 * able / abs(found.levels[reference])
    last = max([run.place for run in asked.runs])
    more = further_pulls(found, reference, key, last, told.value)
    drift = found.slope is not None
    verdict = judge(told, design, key, drift, tests, best, reference, able, more)
    factor = factor_of_t(told.dof) if told.dof else 0.0
    every = None if with_all is None else difference(with_all, reference, key)
    return {
        "from_setting": reference,
        "to_setting": key,
        "difference": _interval(told.value, told.uncertainty, told.dof, factor),
        "gain_percent": _gain(told),
        "gain_with_all_percent": None if every is None else _gain(every),
        "p_value": told.chance,
        "outcome": verdict.outcome,
        "headline": verdict.headline,
        "why": verdict.why + hangs(verdict, every, ALPHA / tests),
        "next_step": verdict.next_step,
        "detectable_percent": able,
        "further_pulls": None if more is None else len(more),
        "further_order": more,
    }


def _warned(asked: Asked, design: Design, found: Fit, tests: int) -> list[dict[str, object]]:
    warned = []
    if asked.standard == OBSERVED:
        text = "Figures as observed: a change of the air counts as drift, or as gain."
        warned.append(warning("not-corrected", "standard", len(asked.runs), text))
    oils = [run.oil for run in asked.runs if not run.left_out and run.oil is not None]
    if len(oils) > 1 and max(oils) - min(oils) > OIL_K:
        text = "Oil temperature at the start differs by " + fixed(max(oils) - min(oils), 0) + " K "
        text += "between runs; no correction takes account of it."
        warned.append(warning("oil-differs", "oil_temperature_c", max(oils), text, MEMORY))
    once = [key for key in sorted(design.fitted) if design.fitted[key] == 1]
    if once:
        text = "Fitted once only: " + ", ".join(once) + ". What refitting alone changes cannot be "
        text += "told from the setting."
        warned.append(warning("fitted-once", "times_fitted", len(once), text))
    if tests > 1:
        text = "With " + str(tests) + " differences, each is called shown only at a chance of 1 in "
        text += short(tests / ALPHA, 3) + ", so that any false one stays below 1 in 20."
        warned.append(warning("several", "runs", tests, text))
    out = len([run for run in asked.runs if run.left_out])
    if out:
        warned.append(warning("left-out", "left_out_count", out, left_out.told(asked.runs)))
    return warned

"""What a corrected slack may be worth, before the work: a range, and how little it rests on."""

from .algebra import triangle
from .fields import Form
from .gain_asked import Asked, take_gain
from .gain_fit import Learnt, learn, spread_points
from .gain_told import (
    curve,
    drawn,
    evidence_told,
    friction_told,
    how_thin,
    parameters,
    rest_told,
)
from .guard import zone
from .limits import MEMORY, PRACTICE, WANTED_FROM_MM, WANTED_TO_MM
from .normal_points import kept_points
from .quantiles import scaled, spread_of
from .spark import PULL_PERCENT, PULLS, detectable
from .version import VERSION
from .warnings import cautions, drive_warnings, warning

METHODS = {"laplace": "Laplace approximation", "full": "full posterior"}
DRAWS = 128
# The band needs fewer than the answer: the first of them, as every other one would lie to one side.
BAND_DRAWS = 64


def calculate(payload: object) -> dict[str, object]:
    """Tell what range of gain to expect from another slack.

    Parameters
    ----------
    payload : drive, movement_mm now (cold), peak_power_kw, peak_speed_rpm; and optionally its
        standard_uncertainty_mm, window_lower_mm with window_upper_mm wanted, heat (as for "fit"),
        pin_friction, bearing_friction, chain_pin_mm, crank_journal_mm, cam_journal_mm,
        stiffness_n_per_mm with friction_source, evidence (comparisons on the dyno), engine,
        curve_points

    Returns
    -------
    dict: gain_percent and gain_kw as intervals, friction, rest_kw, curve, evidence, parameters,
    consistency, said

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    Short two-gear cam drives without a tensioner. The rule of thumb has no source; each comparison
    on the dyno narrows or widens what it says.

    Reference
    ---------
    See `gain_prior`, `gain_fit` and `gain_friction`.
    """
    asked = asked_of(payload)
    learnt = learn(asked.rows, asked.engine)
    sets = spread_points(learnt, triangle(learnt.covariance), kept_points(DRAWS))
    return answer(asked, learnt, sets, "laplace")


def asked_of(payload: object) -> Asked:
    """Read the question, or refuse it."""
    form = Form(payload)
    asked = take_gain(form)
    form.close()
    form.finish()
    return asked


def answer(asked: Asked, learnt: Learnt, sets: list[list[float]], method: str) -> dict[str, object]:
    """Give the result from possible loss curves, whichever method drew them.

    Parameters
    ----------
    asked : the question
    learnt : the most likely curve, and whether the evidence agrees
    sets : equally likely logarithms of the loss curve
    method : one of METHODS
    """
    found = drawn(asked, sets)
    band = sets[:BAND_DRAWS] if method == "laplace" else sets
    least = detectable(PULL_PERCENT, PULLS)
    gain = spread_of(found.gains)
    better = sum([1 for g in found.gains if g > 0]) / len(found.gains)
    return {
        "calc": "gain",
        "core_version": VERSION,
        "method": method,
        "method_text": METHODS[method],
        "movement_mm": asked.movement,
        "standard_uncertainty_mm": asked.uncertainty,
        "zone": zone(asked.movement),
        "window": {
            "lower_mm": asked.window[0], "upper_mm": asked.window[1], "origin": asked.window[2],
        },
        "peak_power_kw": asked.power,
        "peak_speed_rpm": asked.speed,
        "gain_percent": gain,
        "gain_kw": scaled(gain, asked.power / 100),
        "probability": better,
        "friction": friction_told(asked, found),
        "rest_kw": rest_told(asked, found),
        "detectable_percent": least,
        "pulls": PULLS,
        "engines_counted": len({row.engine for row in asked.rows}),
        "comparisons_used": len(asked.rows),
        "evidence": evidence_told(asked, learnt.logs),
        "consistency": learnt.consistency,
        "parameters": parameters(sets),
        "curve": curve(asked, band),
        "said": how_thin(asked, gain),
        "origin": PRACTICE,
        "assumptions": asked.assumptions,
        "warnings": _warned(asked, learnt) + drive_warnings(asked.build),
        "cautions": cautions("turn-by-hand", "hot"),
    }  # fmt: skip


def _warned(asked: Asked, learnt: Learnt) -> list[dict[str, object]]:
    found = []
    lower, upper = asked.window[0], asked.window[1]
    if lower <= asked.movement <= upper:
        text = "The slack is where it is wanted already: no gain is to be expected."
        found.append(warning("in-window", "movement_mm", asked.movement, text))
    if upper < WANTED_FROM_MM or lower > WANTED_TO_MM:
        text = "The movement wanted is not the trade's: the rule of thumb counts it as a loss."
        found.append(warning("other-window", "window_lower_mm", lower, text, PRACTICE))
    if not learnt.consistency["consistent"]:
        text = "The comparisons do not go with the rule of thumb, or with each other. Check which "
        text += "settings were compared; the range may be too narrow."
        count = len(asked.rows)
        found.append(warning("evidence-against-rule", "evidence", count, text, MEMORY))
    return found

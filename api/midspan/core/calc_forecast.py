"""When the slack of a chain will be where: the wear forecast from its readings."""

import math

from . import next_reading
from .chisquare import tail
from .elongation import NEW_CHAIN_PERCENT, NEW_CHAIN_SOURCE
from .fields import Form
from .figures import fixed, short
from .forecast_asked import Asked, as_new, take_forecast, told
from .forecast_told import (
    events,
    fan,
    how_little,
    limit_told,
    points,
    reach_of_fan,
    wear_rows,
)
from .instrument import assumption
from .limits import MEMORY, PUBLISHED
from .normal_points import kept_points
from .quantiles import spread_of
from .version import VERSION
from .warnings import cautions, drive_warnings, warning
from .wear_fit import Draw, Model, laplace_draws, most_likely

METHODS = {"laplace": "Laplace approximation, reweighted", "full": "full posterior"}
DRAWS = 512
# Below this effective share the approximation is called poor: common practice, no source.
POOR = 0.2
# Readings that fit any wear worse than one time in a hundred by chance are questioned: common
# practice, no source.
SURPRISING = 0.01


def calculate(payload: object) -> dict[str, object]:
    """Forecast the slack of a chain from the readings taken of it so far.

    Parameters
    ----------
    payload : drive, readings (each a measurement with running_since_start_h or
        distance_since_start_km; the list may be empty), and optionally oil_kind,
        average_speed_km_per_h, window_lower_mm with window_upper_mm, own_limit, horizon_h, prior

    Returns
    -------
    dict: events with intervals, fan, run_in_share, next_reading, wear, prior, quality

    Raises
    ------
    Refused : input that cannot be used, with every problem in it

    Validity
    --------
    One chain on one drive, one oil, one kind of use; cold readings; the gears' own wear is taken
    as the chain's. Laplace approximation with its shape put right: quantiles are typically off by
    less than 0.05 as a probability, and `quality` tells where it is poor.

    Reference
    ---------
    See `wear`, `wear_prior` and `wear_fit`.
    """
    form = Form(payload)
    asked = take_forecast(form)
    form.close()
    form.finish()
    model = model_of(asked)
    logs, covariance = most_likely(model)
    spread = kept_points(DRAWS)
    draws, share = laplace_draws(model, logs, covariance, spread)
    return answer(asked, model, logs, covariance, draws, "laplace", share, share < POOR)


def model_of(asked: Asked) -> Model:
    """Put prior, drive and readings of an input together."""
    seen = [s for s in told(asked) if s is not None]
    return Model(asked.prior, as_new(asked.build), seen)


def answer(
    asked: Asked, model: Model, logs: list[float], covariance: list[list[float]],
    draws: list[Draw], method: str, share: float, poor: bool,
) -> dict[str, object]:  # fmt: skip
    """Give the result from possible chains, whichever method drew them.

    Parameters
    ----------
    asked, model : the question
    logs, covariance : most likely wear and its spread, for what a next reading is worth
    draws : equally likely chains
    method : one of METHODS
    share : effective share of the points that the method works with [1]
    poor : whether that is too little for what the intervals claim
    """
    now = max([t.running_h for t in asked.taken] + [0.0])
    seen = told(asked)
    found = events(asked, model, draws, now)
    done = spread_of([1 - math.exp(-now / draw.wear.tau) for draw in draws])
    return {
        "calc": "forecast",
        "core_version": VERSION,
        "method": method,
        "method_text": METHODS[method],
        "oil_kind": asked.oil,
        "readings_used": len(model.seen),
        "at_running_h": now,
        "at_distance_km": now * asked.speed,
        "average_speed_km_per_h": asked.speed,
        "horizon_h": asked.horizon,
        "window": {
            "lower_mm": asked.window[0], "upper_mm": asked.window[1], "origin": asked.window[2],
        },
        "limit": limit_told(asked),
        "events": found,
        "run_in_share": done,
        "fan": fan(asked, model, draws, reach_of_fan(asked, found, now)),
        "points": points(asked, seen),
        "next_reading": _next(asked, model, logs, covariance, found, now),
        "wear": wear_rows(asked.prior, draws),
        "prior": {"engines_behind": asked.prior.engines, "made_at": asked.prior.made_at},
        "quality": {"effective_share": share, "poor": poor},
        "said": how_little(model, asked.prior),
        "assumptions": asked.build.assumptions + asked.assumptions + _assumed(),
        "warnings": drive_warnings(asked.build) + _warned(asked, model, logs, method, share, poor),
        "cautions": cautions("turn-by-hand", "valve-contact"),
    }  # fmt: skip


def _next(
    asked: Asked, model: Model, logs: list[float], covariance: list[list[float]],
    found: list[dict[str, object]], now: float,
) -> dict[str, object] | None:  # fmt: skip
    """Choose when to read next: for the window while it is ahead, then for the limit."""
    pending = [e for e in (found[0], found[2]) if _share(e["probability_by_now"]) < 0.5]
    if not pending:
        return None
    event = pending[0]
    when = event["at_running_h"]
    assert isinstance(when, dict)  # noqa: S101
    median = asked.horizon if when["median"] is None else when["median"]
    # Before the window a reading at the likely time is in time; before a limit it must not be late.
    last = median if event is found[0] else when["low_95"]
    last = asked.horizon if last is None else last
    rows = next_reading.best_readings(
        model, logs, covariance, median, now, max(last, now), asked.build.geometry.strand
    )
    best = rows[0]
    for row in rows:
        if row.share > best.share:
            best = row
    if best.share <= 0:
        return None
    text = "It should take some " + short(100 * best.share, 2) + " % off the variance of when "
    text += "the slack enters the window." if event is found[0] else "the limit is reached."
    if best.running_h == now:
        text += " The sooner the better: measure now."
    elif best is rows[-1] and event is not found[0]:
        text += " Later would tell more, but by then the limit may be reached (1 in 40)."
    return {
        "event": event["event"],
        "at_running_h": best.running_h,
        "at_distance_km": best.running_h * asked.speed,
        "variance_share": best.share,
        "text": text,
        "tried": [
            {"at_running_h": row.running_h, "at_distance_km": row.running_h * asked.speed,
             "variance_share": row.share}
            for row in rows
        ],
    }  # fmt: skip


def _share(value: object) -> float:
    assert isinstance(value, float)  # noqa: S101
    return value


def _assumed() -> list[dict[str, object]]:
    """Say what is assumed of the next reading and of a new chain."""
    u = next_reading.MOVEMENT_U_MM
    text = "Standard uncertainty of the next movement by hand, assumed for what it is worth."
    new = "A new chain is taken to be 0 to 0.15 % over nominal: " + NEW_CHAIN_SOURCE + "."
    return [
        assumption("standard_uncertainty_mm", u, MEMORY, text),
        assumption("elongation_percent", NEW_CHAIN_PERCENT, PUBLISHED, new),
    ]


def _warned(
    asked: Asked, model: Model, logs: list[float], method: str, share: float, poor: bool
) -> list[dict[str, object]]:
    found = []
    unfelt = len(asked.taken) - len(model.seen)
    if unfelt:
        text = "Readings that cannot be told from a taut chain, left out: " + str(unfelt) + "."
        found.append(warning("not-felt", "readings", unfelt, text))
    count = len(model.seen)
    if count and tail(2 * model.cost(logs), count) < SURPRISING:
        text = "The readings do not go with any likely wear, or with each other. Check distances, "
        text += "and that it is one chain on one drive."
        found.append(warning("readings-against-wear", "readings", count, text))
    if poor:
        text = "The approximation is poor here (effective share " + fixed(share, 2) + "): "
        if method == "laplace":
            text += "the intervals are rough. Ask the service for the full posterior."
        else:
            text = "The full posterior rests on few points here: the intervals are rough."
        found.append(warning("rough-intervals", "readings", share, text, MEMORY))
    return found

"""The wear forecast by the full posterior. The form of the answer is the core's."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from midspan.core.calc_forecast import answer, model_of
from midspan.core.errors import Refused
from midspan.core.fields import Form
from midspan.core.forecast_asked import Asked, take_forecast
from midspan.core.wear_fit import Draw, Model, most_likely
from midspan.core.wear_prior import Prior, wide

from .pooling import pooled_prior

if TYPE_CHECKING:
    import numpy as np

    Array = np.ndarray[Any, np.dtype[np.float64]]

# The input of a forecast as it was kept, and the oil of the plan of its build.
Engine = tuple[dict[str, Any], str | None]
Answer = dict[str, object]

SAME_PITCH_MM = 0.01
# One reading tells where a chain stands, not how it wears.
FEWEST_READINGS = 2
POINTS = 2**14
DRAWS = 2048
SEED = 606
# Fewer effective points than this, and the answer says that its intervals are rough.
ENOUGH = 400
# Degrees of freedom of the heavy-tailed proposal, and the share of points from the prior.
HEAVY = 4
FROM_PRIOR = 0.25
PASSES = 3


def forecast(payload: object, history: Sequence[Engine] = (), made_at: str = "") -> Answer:
    """Forecast as the core's "forecast" does, from the full posterior and the shop's history.

    Parameters
    ----------
    payload : as for the core; a prior in it stands before the history
    history : for each other engine of the shop the input of its forecast, and the oil of its plan
    made_at : when, as RFC 3339 text

    Returns
    -------
    dict as of the core, its method "full"; and "history": the prior it left (as the core takes
    one, None if fewer than two engines serve), engines_used, and why others were not used

    Raises
    ------
    Refused : input that cannot be used, with every problem in it
    """
    asked = _asked(payload)
    serving, passed = _serving(asked, history)
    if asked.prior.engines == 0:
        asked = asked._replace(prior=pooled_prior(asked.oil, serving, made_at))
    model = model_of(asked)
    logs, covariance = most_likely(model)
    draws, share = posterior_draws(model, logs, covariance)
    poor = share * POINTS < ENOUGH
    found = answer(asked, model, logs, covariance, draws, "full", share, poor)
    return found | {
        "history": {"engines_used": len(serving), **passed, "prior": _sent(asked.prior)}
    }


def _asked(payload: object) -> Asked:
    form = Form(payload)
    asked: Asked = take_forecast(form)
    form.close()
    form.finish()
    return asked


def _serving(asked: Asked, history: Sequence[Engine]) -> tuple[list[Model], dict[str, int]]:
    """Give the engines with a chain of the same pitch on the same oil, and count the others."""
    serving: list[Model] = []
    passed = {"without_oil": 0, "of_other_kind": 0, "without_readings": 0}
    for sent, planned_oil in history:
        try:
            other = _asked({**sent, "prior": None})
        except Refused:  # kept by another version of the core, which took it
            passed["of_other_kind"] += 1
            continue
        oil = other.oil or planned_oil
        pitch = other.build.drive.pitch - asked.build.drive.pitch
        if oil is None or asked.oil is None:
            passed["without_oil"] += 1
        elif oil != asked.oil or abs(pitch) > SAME_PITCH_MM:
            passed["of_other_kind"] += 1
        else:
            model = model_of(other._replace(prior=wide(oil)))
            if len(model.seen) < FEWEST_READINGS:
                passed["without_readings"] += 1
            else:
                serving.append(model)
    return serving, passed


def _sent(prior: Prior) -> dict[str, object] | None:
    """Give a pooled prior as the core takes it, so that a phone can keep it."""
    if prior.engines == 0:
        return None
    found: dict[str, object] = {"engines": prior.engines, "made_at": prior.made_at}
    names = (
        ("first_wear_percent", "first_wear_log_sd"),
        ("time_constant_h", "time_constant_log_sd"),
        ("steady_wear_percent_per_h", "steady_wear_log_sd"),
    )
    for row, (median, spread) in zip(prior.rows, names, strict=True):
        found |= {median: row.median, spread: row.log_sd}
    return found


def posterior_draws(
    model: Model, logs: list[float], covariance: list[list[float]]
) -> tuple[list[Draw], float]:
    """Draw equally likely chains by importance sampling, the same each time.

    The proposal is a Student t where the posterior was found to lie, with the prior mixed in.

    Parameters
    ----------
    model : prior, drive and readings
    logs, covariance : where to look first, from `wear_fit.most_likely`

    Returns
    -------
    list of Draw, and the effective share of the points
    """
    # Not at the start of the service: these take longer than all else of it.
    import numpy as np
    from scipy.special import ndtri
    from scipy.stats import chi2, multivariate_t, qmc

    means, spreads = np.array(model.means), np.array(model.spreads)
    even = qmc.Sobol(6, seed=SEED).random(POINTS)
    even = np.clip(even, 1e-12, 1 - 1e-12)
    normal = ndtri(even[:, :3])
    stretch = np.sqrt(HEAVY / chi2(HEAVY).ppf(even[:, 3]))
    of_prior = even[:, 4] < FROM_PRIOR
    middle, shape = np.array(logs), np.array(covariance)
    for _ in range(PASSES):
        lower = np.linalg.cholesky(shape)
        near = middle + (normal * stretch[:, None]) @ lower.T
        at = np.where(of_prior[:, None], means + spreads * normal, near)
        heavy = multivariate_t(middle, shape, df=HEAVY).logpdf(at)
        broad = -0.5 * (((at - means) / spreads) ** 2).sum(axis=1)
        broad -= np.log(spreads).sum() + 1.5 * np.log(2 * np.pi)
        proposed = np.logaddexp(np.log(1 - FROM_PRIOR) + heavy, np.log(FROM_PRIOR) + broad)
        height = -_costs(model, at) - proposed
        weight = np.exp(height - height.max())
        weight /= weight.sum()
        middle = weight @ at
        off = at - middle
        shape = (off * weight[:, None]).T @ off + 0.05 * shape
    share = float(1 / (weight**2).sum() / POINTS)
    places = np.searchsorted(np.cumsum(weight), (np.arange(DRAWS) + 0.5) / DRAWS)
    places = np.minimum(places, POINTS - 1)
    # Even, and in no step with the order of the points.
    fitted = ndtri(np.random.default_rng(SEED).permutation((np.arange(DRAWS) + 0.5) / DRAWS))
    draws = [
        model.draw([float(x) for x in at[k]], float(z)) for k, z in zip(places, fitted, strict=True)
    ]
    return draws, share


def _costs(model: Model, at: "Array") -> "Array":
    """Give `Model.cost` of many points at once."""
    import numpy as np

    total: Array = (((at - np.array(model.means)) / np.array(model.spreads)) ** 2).sum(axis=1)
    if model.seen:
        first, tau, steady = np.exp(at).T
        times = np.array([s.running_h for s in model.seen])[:, None]
        grown = first * (1 - np.exp(-times / tau)) + steady * times
        excess = np.array([s.excess for s in model.seen])[:, None]
        off = excess - model.fitting.excess - model.fitting.loop / 100 * grown
        total = total + np.einsum("ip,ij,jp->p", off, np.array(model.weights), off)
    return total / 2

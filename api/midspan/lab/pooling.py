"""What a shop's own engines tell of the next one: partial pooling of their wear."""

from typing import TYPE_CHECKING, Any

from midspan.core.wear_fit import Model, most_likely
from midspan.core.wear_prior import Prior, pooled, wide

if TYPE_CHECKING:
    import numpy as np

    Array = np.ndarray[Any, np.dtype[np.float64]]

# Of one engine nothing can be told about how engines differ.
FEWEST = 2
# How much of the wide prior's variance lies between engines of one shop; the rest is what the
# shop has in common. Weighed by how well each goes with the histories.
SHARES = tuple((k + 0.5) / 20 for k in range(20))


def pooled_prior(oil: str | None, histories: list[Model], made_at: str) -> Prior:
    """Give the prior for another engine of the shop.

    ln a, ln tau and ln w of an engine are normal about the shop's own; the shop's own are normal
    about the wide prior. The two variances add up to the wide prior's, in a share that the
    histories tell.

    Parameters
    ----------
    oil : one of `oil_categories.OILS`, or None
    histories : one model for each engine, each with the wide prior of that oil
    made_at : when, as RFC 3339 text

    Returns
    -------
    Prior: the wide one with fewer than two histories
    """
    before = wide(oil)
    if len(histories) < FEWEST:
        return before
    import numpy as np

    mean, total = np.array(before.means), np.diag(np.square(before.spreads))
    told = [_told(one) for one in histories]
    heights, means, spreads = [], [], []
    for share in SHARES:
        common, own = (1 - share) * total, share * total
        weight, towards = np.linalg.inv(common), np.zeros(3)
        height: Any = 0.0
        for information, pull in told:
            # What an engine tells of the shop: its own information, blurred by its own share.
            # With J = I + own J0 it is J^-T J0, which needs no inverse of J0.
            blurred = np.linalg.solve(np.eye(3) + information @ own, information)
            moved = np.linalg.solve(np.eye(3) + information @ own, pull)
            weight = weight + blurred
            towards = towards + moved
            height -= 0.5 * np.linalg.slogdet(np.eye(3) + information @ own)[1]
            height += 0.5 * pull @ own @ moved
        covariance = np.linalg.inv(weight)
        height += 0.5 * towards @ covariance @ towards
        height += 0.5 * (np.linalg.slogdet(covariance)[1] - np.linalg.slogdet(common)[1])
        heights.append(height)
        means.append(mean + covariance @ towards)
        spreads.append(np.diag(covariance + own))
    weights = np.exp(np.array(heights) - max(heights))
    weights /= weights.sum()
    middle = weights @ np.array(means)
    variance = weights @ (np.array(spreads) + np.square(np.array(means) - middle))
    return pooled(
        [float(x) for x in middle], [float(x) for x in np.sqrt(variance)], len(histories), made_at
    )


def _told(history: Model) -> tuple["Array", "Array"]:
    """Give what the readings of an engine alone tell: information, and its pull from the mean.

    The likelihood is taken as exp(pull x - x information x / 2), x the logarithms less the wide
    prior's means, straightened at the most likely wear.
    """
    import numpy as np

    logs, _ = most_likely(history)
    _, _, flat = history.bend(logs)
    prior = np.diag(1 / np.square(history.spreads))
    information: Array = np.array(flat) - prior
    off = np.array(logs) - np.array(history.means)
    # At the most likely wear the readings pull as hard as the prior holds.
    pull: Array = information @ off + prior @ off
    return information, pull

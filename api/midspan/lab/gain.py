"""The expected gain by the full posterior. The form of the answer is the core's."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, Any

from midspan.core.calc_gain import answer, asked_of
from midspan.core.gain_fit import Compared, learn
from midspan.core.gain_prior import BETWEEN, COMMON, LOOSE_MM, MEANS, TIGHT_MM

if TYPE_CHECKING:
    import numpy as np

    Array = np.ndarray[Any, np.dtype[Any]]

SEED = 607
CHAINS = 256
# Sweeps before the first that is kept, and how many apart the kept ones are.
SETTLE, KEPT, APART = 60, 8, 5
# How far engines differ is not known either: the logarithm of the factor on it has this spread.
# From memory, unverified.
SCALE_LOG_SD = 0.4


def gain(payload: object) -> dict[str, object]:
    """Tell the range of gain as the core's "gain" does, from the full posterior.

    The phone takes the loss curve for straight about the likeliest, and how far engines differ as
    known; here neither is.

    Parameters
    ----------
    payload : as for the core

    Returns
    -------
    dict as of the core, its method "full"

    Raises
    ------
    Refused : input that cannot be used, with every problem in it
    """
    asked = asked_of(payload)
    sets = posterior_sets(asked.rows, asked.engine)
    return answer(asked, learn(asked.rows, asked.engine), sets, "full")


def posterior_sets(rows: list[Compared], engine: str | None) -> list[list[float]]:
    """Draw equally likely logarithms for one engine, the same each time.

    Many chains side by side, each in turn moving what all engines have in common, what each has
    for itself (both by elliptical slices, so that nothing need be tuned), and how far they differ.

    Parameters
    ----------
    rows : comparisons; may be empty
    engine : which engine is asked about; None for one that was never compared
    """
    import numpy as np

    rng = np.random.default_rng(SEED)
    # Told apart by name and in the order of what they say: their order must not matter.
    rows = sorted(rows)
    names = sorted({row.engine for row in rows})
    of = np.array([names.index(row.engine) for row in rows], dtype=int)
    start, end, seen, noise = (
        np.array([float(row[k]) for row in rows]) for k in range(1, len(Compared._fields))
    )
    means, common, between = np.array(MEANS), np.array(COMMON), np.array(BETWEEN)

    def misfit(logs: "Array") -> "Array":
        """Give minus twice the log likelihood of each row for logs by engine and chain."""
        here = logs[of]
        told = _losses(here, start[:, None]) - _losses(here, end[:, None])
        off: Array = ((seen[:, None] - told) / noise[:, None]) ** 2
        return off

    def by_engine(logs: "Array") -> "Array":
        total = np.zeros((len(names), CHAINS))
        np.add.at(total, of, -misfit(logs) / 2)
        return total

    def of_shared(own: "Array", at: "Array") -> "Array":
        height: Array = by_engine(means + at + own).sum(axis=0)
        return height

    def of_own(shared: "Array", at: "Array") -> "Array":
        return by_engine(means + shared + at)

    shared = rng.normal(size=(CHAINS, 4)) * common
    own = rng.normal(size=(len(names), CHAINS, 4)) * between
    scale = np.ones(CHAINS)
    kept: list[Array] = []
    for sweep in range(SETTLE + KEPT * APART):
        if names:
            shared = _slice(
                rng, shared, rng.normal(size=shared.shape) * common,
                partial(of_shared, own),
            )  # fmt: skip
            wide = between * scale[:, None]
            own = _slice(
                rng, own, rng.normal(size=own.shape) * wide,
                partial(of_own, shared),
            )  # fmt: skip
            # What an engine stands at is kept, and what all have in common drawn anew under it.
            stands = shared + own
            weight = 1 / common**2 + len(names) / wide**2
            middle = stands.sum(axis=0) / wide**2 / weight
            shared = middle + rng.normal(size=shared.shape) / np.sqrt(weight)
            own = stands - shared
        scale = _scales(rng, own / between)
        if sweep >= SETTLE and (sweep - SETTLE) % APART == 0:
            fresh = rng.normal(size=(CHAINS, 4)) * between * scale[:, None]
            mine = own[names.index(engine)] if engine in names else fresh
            kept.append(means + shared + mine)
    return [[float(x) for x in row] for row in np.concatenate(kept)]


def _losses(logs: "Array", movement: "Array") -> "Array":
    """Give `gain_prior.loss` of many at once [% of peak power]."""
    import numpy as np

    begins = np.exp(logs[..., 2])
    below = np.maximum((begins - movement) / TIGHT_MM, 0) ** 2
    above = np.maximum((movement - begins - np.exp(logs[..., 3])) / LOOSE_MM, 0) ** 2
    total: Array = np.exp(logs[..., 0]) * 2 * below / (1 + below)
    total += np.exp(logs[..., 1]) * 2 * above / (1 + above)
    return total


def _slice(
    rng: "np.random.Generator", now: "Array", other: "Array", height: "Callable[[Array], Array]"
) -> "Array":
    """Move along the ellipse through `now` and a fresh draw of the prior, in every chain at once.

    Murray, Adams and MacKay, Elliptical slice sampling, AISTATS 2010, from memory, unverified;
    checked by coverage.
    """
    import numpy as np

    least = height(now)
    least = least + np.log(rng.uniform(size=least.shape))
    angle = rng.uniform(0, 2 * np.pi, size=least.shape)
    low, high = angle - 2 * np.pi, angle.copy()
    while True:
        found: Array = now * np.cos(angle)[..., None] + other * np.sin(angle)[..., None]
        out = height(found) < least
        if not out.any():
            return found
        low = np.where(out & (angle < 0), angle, low)
        high = np.where(out & (angle >= 0), angle, high)
        angle = np.where(out, rng.uniform(low, high), angle)


def _scales(rng: "np.random.Generator", own: "Array") -> "Array":
    """Draw how far engines differ, over what is thought, for each chain; from a grid."""
    import numpy as np

    grid = np.linspace(-3, 3, 25) * SCALE_LOG_SD
    squares = (own**2).sum(axis=(0, 2))[:, None]
    count = own.shape[0] * own.shape[2]
    height = -0.5 * (grid / SCALE_LOG_SD) ** 2 - count * grid - 0.5 * squares * np.exp(-2 * grid)
    weight = np.cumsum(np.exp(height - height.max(axis=1, keepdims=True)), axis=1)
    at = (weight < rng.uniform(size=(weight.shape[0], 1)) * weight[:, -1:]).sum(axis=1)
    found: Array = np.exp(grid[at])
    return found

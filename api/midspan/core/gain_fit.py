"""The rule of thumb put right by comparisons on the dyno: engines of one kind, each a little apart.

The logarithms of an engine's four figures are normal about those of all engines, which are normal
about the rule of thumb. A comparison tells the difference of the loss at two movements, with noise.
"""

from collections import namedtuple

from .algebra import inverse, times
from .chisquare import consistency
from .gain_prior import BETWEEN, COMMON, MEANS, gain_of, loss_slopes

MOST_STEPS = 60
SMALL = 1e-11
# A step in a logarithm longer than this leaves the reach of a straight line.
LONGEST = 0.7
# Comparisons that agree less well than one in a hundred by chance are called inconsistent: common
# practice, no source.
SURPRISING = 0.01


class Compared(namedtuple("Compared", ("engine", "start", "end", "gain", "uncertainty"))):
    """A comparison on the dyno: engine, movements before and after [mm], gain with its standard
    uncertainty [% of peak power].
    """

    __slots__ = ()


class Learnt(namedtuple("Learnt", ("logs", "covariance", "consistency"))):
    """The four logarithms of the engine asked about, their covariance [1], and whether the
    comparisons go with the rule of thumb and each other.
    """

    __slots__ = ()


def _shared(same: bool) -> list[float]:
    """Variances that two engines have in common, or an engine with itself."""
    return [c * c + (b * b if same else 0.0) for c, b in zip(COMMON, BETWEEN)]


def learn(rows: list[Compared], engine: str | None) -> Learnt:
    """Work comparisons into the rule of thumb for one engine.

    Gauss-Newton steps: each comparison is straightened where its engine is thought to be, which
    makes all of it normal; the spread is that of the last straight line (Laplace).

    Parameters
    ----------
    rows : comparisons, in any order; may be empty
    engine : which engine is asked about; None for one that was never compared

    Returns
    -------
    Learnt [1]

    Raises
    ------
    none

    Validity
    --------
    Noise of comparisons independent; few engines, so how far they differ is taken as given.

    Reference
    ---------
    Normal random effects; Laplace approximation, from memory, unverified. Checked against the full
    posterior and by coverage.
    """
    names = sorted({row.engine for row in rows})
    at = {name: list(MEANS) for name in names}
    weights: list[list[float]] = []
    pulls: list[float] = []
    slopes: list[list[float]] = []
    rest: list[float] = []
    for count in range(MOST_STEPS + 1):
        slopes, rest = [], []
        for row in rows:
            here = at[row.engine]
            steep = [
                a - b
                for a, b in zip(loss_slopes(here, row.start), loss_slopes(here, row.end))
            ]  # fmt: skip
            slopes.append(steep)
            moved = sum([g * (x - m) for g, x, m in zip(steep, here, MEANS)])
            rest.append(row.gain - gain_of(here, row.start, row.end) + moved)
        weights = inverse(_spread(rows, slopes))
        pulls = times(weights, rest)
        if count == MOST_STEPS:
            break
        size = 0.0
        for name in names:
            found = _moved(rows, slopes, pulls, name)
            step = [x - y for x, y in zip(found, at[name])]
            longest = max([abs(x) for x in step])
            size = max(size, longest)
            # Later steps are halved: two lines that answer each other would else go on for ever.
            part = (1.0 if count < MOST_STEPS // 3 else 0.5) * min(1.0, LONGEST / (longest or 1.0))
            at[name] = [y + part * x for x, y in zip(step, at[name])]
        if size < SMALL:
            break
    logs = _moved(rows, slopes, pulls, engine)
    shared = [
        [g * v for g, v in zip(steep, _shared(row.engine == engine))]
        for row, steep in zip(rows, slopes)
    ]
    whole = _shared(True)
    covariance = [[whole[i] if i == k else 0.0 for k in range(4)] for i in range(4)]
    for k in range(4):
        column = times(weights, [row[k] for row in shared])
        for i in range(4):
            covariance[i][k] -= sum([row[i] * c for row, c in zip(shared, column)])
    for i in range(4):
        for k in range(i):
            covariance[i][k] = covariance[k][i]
    chi = 0.0 + sum([p * r for p, r in zip(pulls, rest)])
    return Learnt(logs, covariance, consistency(chi, len(rows), SURPRISING))


def _spread(rows: list[Compared], slopes: list[list[float]]) -> list[list[float]]:
    """Covariance of all comparisons: what engines share, what is their own, and the noise."""
    found = []
    for i in range(len(rows)):
        line = []
        for k in range(len(rows)):
            shared = _shared(rows[i].engine == rows[k].engine)
            total = sum([a * b * v for a, b, v in zip(slopes[i], slopes[k], shared)])
            line.append(total + (rows[i].uncertainty ** 2 if i == k else 0.0))
        found.append(line)
    return found


def _moved(
    rows: list[Compared], slopes: list[list[float]], pulls: list[float], engine: str | None
) -> list[float]:
    """Where the comparisons draw the logarithms of an engine."""
    found = list(MEANS)
    for row, steep, pull in zip(rows, slopes, pulls):
        shared = _shared(row.engine == engine)
        found = [x + pull * g * v for x, g, v in zip(found, steep, shared)]
    return found


def spread_points(learnt: Learnt, lower: list[list[float]], points: list[list[float]]) -> (
    list[list[float]]
):  # fmt: skip
    """Give equally likely sets of logarithms from standard normal points.

    x = mean + L z

    Parameters
    ----------
    learnt : from `learn`
    lower : triangle L of its covariance [1]
    points : standard normal points in four dimensions [1]

    Returns
    -------
    list of four logarithms each [1]

    Raises
    ------
    none

    Validity
    --------
    As `learn`.

    Reference
    ---------
    Definition of the multivariate normal.
    """
    return [
        [learnt.logs[i] + sum([lower[i][j] * z[j] for j in range(i + 1)]) for i in range(4)]
        for z in points
    ]

"""Wear learned from readings: the most likely wear, and a normal spread round it in logarithms."""

import math
from collections import namedtuple

from .algebra import inverse, times, triangle
from .wear import Wear, elongation_by, slopes
from .wear_prior import Prior, wear_at

# Seating, oil and dirt in the joints: no reading of a fitted chain says more. From memory,
# unverified.
LEAST_MM = 0.005
MOST_STEPS = 200
# The normal is spread so much wider than it is, so that its points reach longer tails.
WIDER = 1.2
PASSES = 2
# Of every eleven points three are spread over the whole prior; a share by 2, 3, 5 or 7 would go
# with the digits that make the points.
EVERY, OF_PRIOR = 11, 3
FROM_PRIOR = OF_PRIOR / EVERY


class Seen(namedtuple("Seen", ("running_h", "excess", "uncertainty", "on_centre"))):
    """A reading: running since the chain was fitted [h], excess length with its standard
    uncertainty [mm], and whether it was worked out with the stated centre distance.
    """

    __slots__ = ()


class Fitting(namedtuple("Fitting", ("loop", "excess", "spread", "centre_spread"))):
    """What the drive says before any reading: nominal chain length [mm], excess length of a new
    chain at the stated centre distance, its standard uncertainty by the chain's tolerance, and
    that of the taut length by the centre distance [mm].
    """

    __slots__ = ()


class Draw(namedtuple("Draw", ("wear", "fitted"))):
    """One possible chain: its Wear, and its excess length as fitted [mm]."""

    __slots__ = ()


class Model:
    """Prior, drive and readings together.

    Two errors that all readings share are normal and enter straight: that of the new chain's
    length, and that of the centre distance, which only readings of length feel. They are
    integrated out; what is left are three logarithms.

    Parameters
    ----------
    prior : Prior of the wear
    fitting : Fitting of the drive
    seen : readings, in any order; may be empty
    """

    def __init__(self, prior: Prior, fitting: Fitting, seen: list[Seen]) -> None:
        """Work out what does not depend on the wear."""
        self.prior, self.fitting, self.seen = prior, fitting, seen
        self.means, self.spreads = prior.means, prior.spreads
        length, centre = fitting.spread**2, fitting.centre_spread**2
        shared = [
            [length + (0.0 if one.on_centre or two.on_centre else centre) for two in seen]
            for one in seen
        ]
        for i in range(len(seen)):
            shared[i][i] += max(seen[i].uncertainty, LEAST_MM) ** 2
        self.weights = inverse(shared)
        towards = [length + (0.0 if one.on_centre else centre) for one in seen]
        self.gain = times(self.weights, towards)
        variance = length + centre - sum([g * t for g, t in zip(self.gain, towards)])
        self.fitted_spread = math.sqrt(max(variance, 0.0))

    def residuals(self, wear: Wear) -> list[float]:
        """Give readings less what this wear on a new chain of mean length would show [mm]."""
        grown = self.fitting.loop / 100
        start = self.fitting.excess
        return [s.excess - start - grown * elongation_by(wear, s.running_h) for s in self.seen]

    def cost(self, logs: list[float]) -> float:
        """Give minus the logarithm of the posterior density, up to a constant."""
        off = self.residuals(wear_at(logs))
        total = sum([a * b for a, b in zip(off, times(self.weights, off))])
        for x, mean, spread in zip(logs, self.means, self.spreads):
            total += ((x - mean) / spread) ** 2
        return total / 2

    def draw(self, logs: list[float], normal: float) -> Draw:
        """Give the chain with this wear, and its excess length as fitted for a standard normal."""
        wear = wear_at(logs)
        off = self.residuals(wear)
        mean = self.fitting.excess + sum([g * r for g, r in zip(self.gain, off)])
        return Draw(wear, mean + self.fitted_spread * normal)

    def bend(self, logs: list[float]) -> tuple[list[float], list[list[float]], list[list[float]]]:
        """Give gradient of `cost`, its second derivatives, and these without the readings' own
        bend, which are positive definite anywhere.
        """
        wear = wear_at(logs)
        grown = self.fitting.loop / 100
        pull = times(self.weights, self.residuals(wear))
        steep = [[grown * d for d in slopes(wear, s.running_h)] for s in self.seen]
        means, spreads = self.means, self.spreads
        gradient = [(logs[i] - means[i]) / spreads[i] ** 2 for i in range(3)]
        flat = [[(1 / spreads[i] ** 2 if i == k else 0.0) for k in range(3)] for i in range(3)]
        for i in range(3):
            column = [row[i] for row in steep]
            gradient[i] -= sum([c * p for c, p in zip(column, pull)])
            weighed = times(self.weights, column)
            for k in range(3):
                flat[i][k] += sum([w * row[k] for w, row in zip(weighed, steep)])
        full = [list(row) for row in flat]
        for s, row, p in zip(self.seen, steep, pull):
            r = s.running_h / wear.tau
            full[0][0] -= p * row[0]
            full[2][2] -= p * row[2]
            full[0][1] -= p * row[1]
            full[1][0] -= p * row[1]
            full[1][1] += p * row[1] * (1 - r)
        return gradient, full, flat


def most_likely(model: Model) -> tuple[list[float], list[list[float]]]:
    """Find the most likely wear, and the normal spread that the posterior has there.

    Newton's method with halved steps on minus the logarithm of the posterior density of
    ln a, ln tau, ln w; the spread is the inverse of its second derivatives (Laplace).

    Parameters
    ----------
    model : prior, drive and readings

    Returns
    -------
    the three logarithms and their covariance [1]

    Raises
    ------
    none

    Validity
    --------
    One peak; `laplace_draws` tells how far it has the shape of a normal.

    Reference
    ---------
    Tierney and Kadane, J. Amer. Statist. Assoc. 81 (1986) 82, from memory, unverified.
    """
    logs = list(model.means)
    cost = model.cost(logs)
    for _ in range(MOST_STEPS):
        gradient, full, flat = model.bend(logs)
        step = times(_inverse(full, flat), [-g for g in gradient])
        size = max([abs(x) for x in step])
        if size > 2:
            step = [x * 2 / size for x in step]
        if size < 1e-4:
            # Here the steps shrink by themselves, and costs differ by less than rounding.
            logs = [x + s for x, s in zip(logs, step)]
            if size < 1e-9:
                break
            cost = model.cost(logs)
            continue
        for _halving in range(40):
            tried = [x + s for x, s in zip(logs, step)]
            found = model.cost(tried)
            if found < cost:
                break
            step = [x / 2 for x in step]
        logs, cost = tried, found
    _, full, flat = model.bend(logs)
    return logs, _inverse(full, flat)


def _inverse(full: list[list[float]], flat: list[list[float]]) -> list[list[float]]:
    """Invert the second derivatives, with as little of the flat ones as makes them positive."""
    for part in (0.0, 0.03, 0.1, 0.3):
        mixed = [[(1 - part) * a + part * b for a, b in zip(*rows)] for rows in zip(full, flat)]
        try:
            return inverse(mixed)
        except ValueError:
            continue
    return inverse(flat)


def laplace_draws(
    model: Model, logs: list[float], covariance: list[list[float]], points: list[list[float]]
) -> tuple[list[Draw], float]:
    """Spread possible chains over the normal approximation, and put its shape right.

    w = posterior density over the normal's; as many chains as points, drawn evenly by w;
    effective share (sum w)^2 / (n sum w^2)

    Parameters
    ----------
    model : prior, drive and readings
    logs, covariance : from `most_likely` [1]
    points : standard normal points in four dimensions [1]

    Returns
    -------
    list of equally likely Draw: wear [%, h, %/h] and excess length as fitted [mm]; and the
    effective share of the points [1], 1 where the posterior is normal

    Raises
    ------
    none

    Validity
    --------
    As `most_likely`; a tail that no point reaches goes unseen.

    Reference
    ---------
    Importance weights and their effective sample size: Kong, Liu and Wong, J. Amer. Statist.
    Assoc. 89 (1994) 278, from memory, unverified.
    """
    if model.seen:
        # Once to see where the posterior truly lies, then there.
        for _ in range(PASSES):
            spread, weights = _weighed(model, logs, covariance, points[: len(points) // 2])
            logs, covariance = _moments(spread, weights, covariance)
    spread, weights = _weighed(model, logs, covariance, points)
    total = sum(weights)
    share = total**2 / (len(weights) * sum([w * w for w in weights]))
    draws, reached, at = [], weights[0], 0
    step = total / len(points)
    for k in range(len(points)):
        while reached < (k + 0.5) * step and at < len(points) - 1:
            at += 1
            reached += weights[at]
        # The fitted length has its own even spread: points that are taken twice differ in it.
        draws.append(model.draw(spread[at], points[k][3]))
    return draws, share


def _weighed(
    model: Model, logs: list[float], covariance: list[list[float]], points: list[list[float]]
) -> tuple[list[list[float]], list[float]]:
    """Spread points over a normal and some over the prior, where another peak or a long
    tail may lie; each with the posterior's density over that of the two together.
    """
    lower = triangle(covariance)
    if model.seen:
        lower = [[WIDER * x for x in row] for row in lower]
    mostly = math.log((1 - FROM_PRIOR) / (lower[0][0] * lower[1][1] * lower[2][2]))
    rarely = math.log(FROM_PRIOR / (model.spreads[0] * model.spreads[1] * model.spreads[2]))
    spread, heights = [], []
    for k in range(len(points)):
        point = points[k]
        if k % EVERY < OF_PRIOR:
            found = [model.means[i] + model.spreads[i] * point[i] for i in range(3)]
        else:
            found = [
                logs[i] + sum([lower[i][j] * point[j] for j in range(i + 1)]) for i in range(3)
            ]
        near, far = mostly, rarely
        solved: list[float] = []
        for i in range(3):
            left = found[i] - logs[i] - sum([lower[i][j] * solved[j] for j in range(i)])
            solved.append(left / lower[i][i])
            near -= solved[i] ** 2 / 2
            far -= ((found[i] - model.means[i]) / model.spreads[i]) ** 2 / 2
        above = max(near, far)
        density = above + math.log(math.exp(near - above) + math.exp(far - above))
        spread.append(found)
        heights.append(-model.cost(found) - density)
    top = max(heights)
    return spread, [math.exp(x - top) for x in heights]


def _moments(
    spread: list[list[float]], weights: list[float], floor: list[list[float]]
) -> tuple[list[float], list[list[float]]]:
    """Give mean and covariance of weighted points, never much narrower than they were spread."""
    total = sum(weights)
    mean = [sum([w * x[i] for w, x in zip(weights, spread)]) / total for i in range(3)]
    found = [[0.1 * floor[i][k] for k in range(3)] for i in range(3)]
    for w, x in zip(weights, spread):
        off = [x[i] - mean[i] for i in range(3)]
        for i in range(3):
            for k in range(3):
                found[i][k] += w / total * off[i] * off[k]
    return mean, found

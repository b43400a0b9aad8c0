"""Invented wear histories, and their posterior by plain quadrature, apart from the program."""

import math

import numpy as np

from midspan.core.wear_fit import Fitting, Model, Seen
from midspan.core.wear_prior import Prior

# The worked drive: 58 links of 9.525 mm.
LOOP, NEW, TOLERANCE, CENTRE = 552.45, 0.5, 0.24, 0.05
FITTING = Fitting(LOOP, NEW, TOLERANCE, CENTRE)


class Chain:
    """A chain drawn from a prior, and its true excess length at any running."""

    def __init__(self, rng: np.random.Generator, means: list[float], spreads: list[float]) -> None:
        self.first, self.tau, self.steady = np.exp(rng.normal(means, spreads))
        self.off_centre = rng.normal(0, CENTRE)
        self.fitted = rng.normal(NEW, TOLERANCE) - self.off_centre

    def excess(self, t: float) -> float:
        worn = self.first * (1 - math.exp(-t / self.tau)) + self.steady * t
        return float(self.fitted + LOOP * worn / 100)

    def read(self, rng: np.random.Generator, t: float, u: float, of_length: bool = False) -> Seen:
        shift = self.off_centre if of_length else 0.0
        return Seen(t, self.excess(t) + shift + rng.normal(0, u), u, of_length)


class Quadrature:
    """The posterior on a plain grid, each error written out in one covariance matrix."""

    def __init__(self, prior: Prior, seen: list[Seen], points: int = 81, reach: float = 4.5):
        axes = [
            np.linspace(mean - reach * spread, mean + reach * spread, points)
            for mean, spread in zip(prior.means, prior.spreads, strict=True)
        ]
        logs = np.array(np.meshgrid(*axes, indexing="ij")).reshape(3, -1)
        self.first, self.tau, self.steady = np.exp(logs)
        times = np.array([s.running_h for s in seen])
        # Errors: new length, centre distance, then one for each reading.
        shared = np.array([[1.0, 0.0 if s.on_centre else -1.0] for s in seen]).reshape(-1, 2)
        errors = np.diag([TOLERANCE**2, CENTRE**2])
        cov = shared @ errors @ shared.T + np.diag([s.uncertainty**2 for s in seen])
        off = np.array([s.excess for s in seen])[:, None] - NEW - self.grown(times[:, None])
        weight = np.linalg.inv(cov) if seen else np.zeros((0, 0))
        log = -0.5 * np.einsum("ip,ij,jp->p", off, weight, off)
        for axis, mean, spread in zip(logs, prior.means, prior.spreads, strict=True):
            log -= 0.5 * ((axis - mean) / spread) ** 2
        self.mass = np.exp(log - log.max())
        self.mass /= self.mass.sum()
        towards = errors @ shared.T
        fitted = np.array([1.0, -1.0])
        gain = fitted @ towards @ weight
        self.mean = NEW + gain @ off
        self.spread = math.sqrt(fitted @ errors @ fitted - gain @ towards.T @ fitted)

    def grown(self, t):
        return LOOP / 100 * (self.first * (1 - np.exp(-t / self.tau)) + self.steady * t)

    def below(self, t: float, excess: float) -> float:
        """Probability that the excess length is less after so long."""
        z = (excess - self.mean - self.grown(t)) / self.spread
        return float(self.mass @ _phi(z))


def _phi(z):
    from scipy.special import ndtr

    return ndtr(z)


def model(prior: Prior, seen: list[Seen]) -> Model:
    return Model(prior, FITTING, seen)

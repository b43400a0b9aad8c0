"""Lobes whose lift is known in closed form, read with and without noise."""

import math
from collections.abc import Callable
from typing import Any

import numpy as np
from scipy.optimize import brentq

Payload = dict[str, Any]
Lift = Callable[[np.ndarray], np.ndarray]


def polynomial(height: float, half: float) -> Lift:
    """The 3-4-5 polynomial, up and down, `half` crank degrees each."""

    def lift(off: np.ndarray) -> np.ndarray:
        x = np.clip(1 - np.abs(np.asarray(off, float)) / half, 0, 1)
        return height * (10 * x**3 - 15 * x**4 + 6 * x**5)

    return lift


def cycloid(height: float, half: float) -> Lift:
    """The cycloidal rise, up and down."""

    def lift(off: np.ndarray) -> np.ndarray:
        x = np.clip(1 - np.abs(np.asarray(off, float)) / half, 0, 1)
        return height * (x - np.sin(2 * math.pi * x) / (2 * math.pi))

    return lift


def duration(lift: Lift, half: float, height: float) -> float:
    """Exact duration at a height."""
    return 2 * brentq(lambda off: float(lift(np.array(off))) - height, 0.0, half)


def read(
    lift: Lift, centre: float, half: float, step: float, seed: int | None = None,
    dial: float = 0.01, wheel: float = 0.0,
) -> Payload:  # fmt: skip
    """A table read over the lobe; without a seed exact."""
    angles = np.arange(centre - half - 30, centre + half + 30.1, step)
    if seed is None:
        lifts = lift(angles - centre)
    else:
        rng = np.random.default_rng(seed)
        seen = angles + rng.normal(0, wheel, len(angles))
        lifts = np.round(lift(seen - centre) + rng.normal(0, dial, len(angles)), 2)
    return {
        "table_angles_deg": [float(a) for a in angles],
        "table_lifts_mm": [float(x) for x in lifts],
        "angle_of": "crank",
        "lift_of": "lobe",
    }


# Figures of an instrument that adds nothing.
PERFECT = {
    "resolution_mm": 0.0, "instrument_error_mm": 0.0, "repeatability_mm": 0.0,
    "resolution_deg": 0.0, "instrument_error_deg": 0.0, "repeatability_deg": 0.0,
}  # fmt: skip

"""The full posterior of the gain, against plain weighing of the prior and by coverage."""

import math

import numpy as np
import pytest

from core.drives import WORKED
from core.good_gain import EVIDENCE
from midspan.core import run
from midspan.core.gain_fit import Compared
from midspan.core.gain_prior import BETWEEN, COMMON, LOOSE_MM, MEANS, TIGHT_MM
from midspan.core.quantiles import LEVELS, spread_of
from midspan.lab.gain import SCALE_LOG_SD, gain, posterior_sets

ASKED = {
    "drive": WORKED, "movement_mm": 2.0, "peak_power_kw": 300.0, "peak_speed_rpm": 6000.0,
}  # fmt: skip


def losses(logs: np.ndarray, movement: float) -> np.ndarray:
    """The loss curve written a second time."""
    tight, loose, begins, width = np.exp(logs).T
    t = np.clip((begins - movement) / TIGHT_MM, 0, None)
    u = np.clip((movement - begins - width) / LOOSE_MM, 0, None)
    return tight * 2 * t**2 / (1 + t**2) + loose * 2 * u**2 / (1 + u**2)


@pytest.mark.parametrize("known", [True, False])
def test_full_posterior_is_that_of_a_weighed_prior(known: bool) -> None:
    """Two engines, three comparisons: 300,000 draws of the prior, weighed by the likelihood."""
    rows = [
        Compared("A", 1.6, 5.5, 1.1, 0.4), Compared("A", 12.0, 5.5, 0.9, 0.4),
        Compared("B", 2.5, 6.0, 0.2, 0.5),
    ]  # fmt: skip
    rng = np.random.default_rng(7)
    count = 300_000
    shop = np.array(MEANS) + rng.normal(size=(count, 4)) * COMMON
    scale = np.exp(np.clip(rng.normal(size=(count, 1)), -3, 3) * SCALE_LOG_SD)
    engines = [shop + rng.normal(size=(count, 4)) * BETWEEN * scale for _ in range(3)]
    off = 0.0
    for row in rows:
        at = engines["AB".index(row.engine)]
        off = (
            off + ((row.gain - losses(at, row.start) + losses(at, row.end)) / row.uncertainty) ** 2
        )
    weight = np.exp(-off / 2)
    weight /= weight.sum()
    mine = engines[0] if known else engines[2]
    truth = losses(mine, 2.0) - losses(mine, 5.5)
    found = np.array(posterior_sets(rows, "A" if known else None))
    told = spread_of([float(x) for x in losses(found, 2.0) - losses(found, 5.5)])
    off_by = [float(weight[truth <= told[name]].sum()) - level for name, level in LEVELS]
    assert max(map(abs, off_by)) < 0.045
    assert math.sqrt(np.mean(np.square(off_by))) < 0.03


def test_with_nothing_seen_it_is_the_rule_of_thumb() -> None:
    full = gain(ASKED)
    phone = run("gain", ASKED)
    assert full.keys() == phone.keys()
    assert (full["method"], phone["method"]) == ("full", "laplace")
    for name in ("low_80", "median", "high_80"):
        assert full["gain_percent"][name] == pytest.approx(phone["gain_percent"][name], rel=0.2)


def test_it_is_the_same_each_time_and_in_any_order() -> None:
    one, two = (gain(ASKED | {"evidence": e}) for e in (EVIDENCE, EVIDENCE[::-1]))
    assert one["gain_percent"] == two["gain_percent"]
    assert one["gain_kw"]["high_80"] < gain(ASKED)["gain_kw"]["high_80"]

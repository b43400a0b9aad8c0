"""What the shop's own engines add: nothing from none or one, and never too much."""

import math

import numpy as np
import pytest

from core.wear_histories import LOOP, Chain, model
from midspan.core.normal_points import kept_points
from midspan.core.quantiles import spread_of
from midspan.core.wear import elongation_by
from midspan.core.wear_fit import laplace_draws, most_likely
from midspan.core.wear_prior import wide
from midspan.lab.pooling import pooled_prior

OIL = "synthetic"
TIMES = (0.0, 20.0, 100.0, 600.0)
SHOPS = 250
NEXT = 8


def shop(rng: np.random.Generator, share: float) -> tuple[np.ndarray, list[float]]:
    """Means and spreads of the logarithms in one shop, drawn from the wide prior."""
    prior = wide(OIL)
    spread = np.array(prior.spreads)
    means = rng.normal(prior.means, spread * math.sqrt(1 - share))
    return means, [float(s) for s in spread * math.sqrt(share)]


def history(rng: np.random.Generator, means, spreads, u: float = 0.03):
    chain = Chain(rng, means, spreads)
    return model(wide(OIL), [chain.read(rng, t, u) for t in TIMES])


@pytest.mark.parametrize("count", [0, 1])
def test_with_none_or_one_it_is_the_wide_prior(count: int) -> None:
    rng = np.random.default_rng(1)
    histories = [history(rng, *shop(rng, 0.3)) for _ in range(count)]
    assert pooled_prior(OIL, histories, "now") == wide(OIL)


def test_many_alike_sharpen_it_about_what_they_share() -> None:
    rng = np.random.default_rng(2)
    means = [math.log(0.03), math.log(60.0), math.log(5e-5)]
    histories = [history(rng, means, [0.05, 0.05, 0.05], u=0.003) for _ in range(12)]
    found = pooled_prior(OIL, histories, "2026-02-03T10:00:00Z")
    assert found.engines == 12
    assert found.means == pytest.approx(means, abs=0.25)
    assert all(s < 0.5 * w for s, w in zip(found.spreads, wide(OIL).spreads, strict=True))


def test_engines_that_tell_nothing_change_nothing() -> None:
    rng = np.random.default_rng(3)
    histories = [history(rng, *shop(rng, 0.3), u=100.0) for _ in range(5)]
    found = pooled_prior(OIL, histories, "now")
    assert found.means == pytest.approx(wide(OIL).means, abs=0.01)
    assert found.spreads == pytest.approx(wide(OIL).spreads, rel=0.01)


def test_engines_far_apart_leave_it_wide() -> None:
    rng = np.random.default_rng(4)
    alike = [history(rng, wide(OIL).means, [0.05] * 3, u=0.003) for _ in range(8)]
    apart = [history(rng, wide(OIL).means, wide(OIL).spreads, u=0.003) for _ in range(8)]
    assert (
        pooled_prior(OIL, apart, "now").spreads[2] > 2 * pooled_prior(OIL, alike, "now").spreads[2]
    )


def test_eighty_in_a_hundred_with_pooling(capsys: pytest.CaptureFixture[str]) -> None:
    """2,000 next engines of 250 shops, each with six engines before, read once so far."""
    rng = np.random.default_rng(81)
    spread = kept_points(300)
    hits, widths = 0, []
    for _ in range(SHOPS):
        means, spreads = shop(rng, rng.uniform(0.05, 0.95))
        prior = pooled_prior(OIL, [history(rng, means, spreads) for _ in range(6)], "now")
        widths.append(prior.spreads[2])
        for _ in range(NEXT):
            chain = Chain(rng, means, spreads)
            found = model(prior, [chain.read(rng, t, 0.03) for t in (0.0, 40.0)])
            draws, _ = laplace_draws(found, *most_likely(found), spread)
            at = spread_of([d.fitted + LOOP / 100 * elongation_by(d.wear, 1000.0) for d in draws])
            hits += at["low_80"] <= chain.excess(1000.0) <= at["high_80"]
    share = hits / (SHOPS * NEXT)
    with capsys.disabled():
        narrowed = np.mean(widths) / wide(OIL).spreads[2]
        print(
            f"\n80 % intervals with pooling: {share}; spread of ln w at {narrowed:.2f} of the wide"
        )
    assert 0.76 <= share <= 0.84
    assert narrowed < 0.9

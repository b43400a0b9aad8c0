"""Does an 80 % interval hold the truth 80 times in 100? Wear histories drawn from the prior.

2,000 histories: the share of hits has a standard deviation of 0.9 %, so 76 to 84 % is four of them.
"""

import math

import numpy as np
import pytest

from core.wear_histories import LOOP, Chain, model
from midspan.core.normal_points import kept_points
from midspan.core.quantiles import spread_of
from midspan.core.wear import elongation_by, hours_until
from midspan.core.wear_fit import laplace_draws, most_likely
from midspan.core.wear_prior import wide

HISTORIES = 2000
LIMIT_MM = 2.9
# So far off that a history practically always gets there: what is beyond counts as no miss.
FAR_H = 1e7
TIMES = {"mineral": (0.0, 20.0, 200.0), "synthetic": (0.0, 40.0, 400.0)}


def test_eighty_in_a_hundred(capsys: pytest.CaptureFixture[str]) -> None:
    rng = np.random.default_rng(80)
    priors = {oil: wide(oil) for oil in TIMES}
    spread = kept_points(300)
    hits = dict.fromkeys(("limit", "slack"), 0)
    for number in range(HISTORIES):
        oil = ("mineral", "synthetic")[number % 2]
        prior = priors[oil]
        chain = Chain(rng, prior.means, prior.spreads)
        found = model(prior, [chain.read(rng, t, 0.03) for t in TIMES[oil]])
        draws, _ = laplace_draws(found, *most_likely(found), spread)
        wear = draws[0].wear._replace(first=chain.first, tau=chain.tau, steady=chain.steady)
        truths = {
            "limit": hours_until(wear, (LIMIT_MM - chain.fitted) / LOOP * 100, FAR_H),
            "slack": chain.excess(1000.0),
        }
        drawn = {
            "limit": [hours_until(d.wear, (LIMIT_MM - d.fitted) / LOOP * 100, FAR_H)
                      for d in draws],
            "slack": [d.fitted + LOOP / 100 * elongation_by(d.wear, 1000.0) for d in draws],
        }  # fmt: skip
        for name, truth in truths.items():
            at = spread_of(drawn[name])
            assert truth is not None
            assert at["low_80"] is not None
            hits[name] += at["low_80"] <= truth <= (at["high_80"] or math.inf)
    shares = {name: count / HISTORIES for name, count in hits.items()}
    with capsys.disabled():
        print(f"\n80 % intervals by the Laplace approximation: {shares}")
    assert all(0.76 <= share <= 0.84 for share in shares.values()), shares

"""The fit of a shelf against weighted least squares by statsmodels."""

import itertools

import numpy as np
import pytest
import statsmodels.api as sm

from core.shelves import contrast, seen
from midspan.core.observation import Observation
from midspan.core.shelf import Shelf


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("shape", [(3, 2, 1), (6, 4, 2), (30, 10, 3)], ids=str)
def test_statsmodels_says_the_same(shape: tuple[int, int, int], seed: int) -> None:
    chains, gears, blocks = shape
    rng = np.random.default_rng(seed)
    rows = []
    for _ in range(3 * (chains + gears)):
        chain, gear_set = int(rng.integers(chains)), int(rng.integers(gears))
        rows.append((chain, gear_set, int(rng.integers(blocks))))
    rows += [(int(rng.integers(chains)), None, None) for _ in range(3)]
    rows += [(None, int(rng.integers(gears)), None) for _ in range(2)]
    rows += [(None, None, k) for k in range(blocks)]
    observations = [
        (*row, float(rng.normal(0, 0.2)), float(rng.uniform(0.005, 0.1))) for row in rows
    ]
    shelf = Shelf(chains, gears, blocks, [Observation(*row) for row in observations])
    data = seen(chains, gears, blocks, observations)
    fitted = sm.WLS(data.values, data.matrix, weights=data.uncertainties**-2.0).fit(
        # The uncertainties are known, not scaled to what is left over.
        method="pinv", cov_type="fixed scale", cov_kwds={"scale": 1.0}
    )  # fmt: skip
    found = shelf.predictions(0)
    assert found
    for pair in itertools.product(range(chains), range(gears)):
        if pair not in found:
            continue
        told = fitted.t_test(contrast(chains, gears, blocks, *pair))
        assert found[pair][0] == pytest.approx(told.effect.item(), abs=1e-9)
        assert found[pair][1] == pytest.approx(told.sd.item(), rel=1e-8)
    chi_square, dof = shelf.chi_square()
    assert chi_square == pytest.approx(float(fitted.ssr), rel=1e-9)
    assert dof == fitted.df_resid

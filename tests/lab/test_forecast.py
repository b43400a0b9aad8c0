"""The full posterior, against plain quadrature and against the phone's approximation."""

import math
import subprocess
import sys

import numpy as np
import pytest

from core.drives import WORKED
from core.wear_histories import LOOP, Chain, Quadrature, model
from midspan.core import run
from midspan.core.errors import Refused
from midspan.core.quantiles import LEVELS, spread_of
from midspan.core.wear import elongation_by
from midspan.core.wear_fit import most_likely
from midspan.core.wear_prior import wide
from midspan.lab.forecast import forecast, posterior_draws

ASKED = {
    "drive": WORKED,
    "oil_kind": "mineral",
    "readings": [
        {"quantity": "movement_mm", "movement_mm": m, "standard_uncertainty_mm": 0.2,
         "distance_since_start_km": km}
        for km, m in ((0, 4.0), (1000, 5.5), (10000, 7.0))
    ],
}  # fmt: skip


@pytest.mark.parametrize("oil", ["mineral", "synthetic"])
def test_full_posterior_is_that_of_quadrature(oil: str) -> None:
    rng = np.random.default_rng(80)
    prior = wide(oil)
    off = []
    for _ in range(6):
        chain = Chain(rng, prior.means, prior.spreads)
        seen = [chain.read(rng, t, 0.03, of_length=t == 0) for t in (0.0, 20.0, 200.0)]
        found = model(prior, seen)
        draws, _ = posterior_draws(found, *most_likely(found))
        truth = Quadrature(prior, seen)
        for t in (30.0, 1000.0):
            ends = spread_of([d.fitted + LOOP / 100 * elongation_by(d.wear, t) for d in draws])
            off += [truth.below(t, ends[name]) - level for name, level in LEVELS]
    assert math.sqrt(np.mean(np.square(off))) < 0.015
    assert max(map(abs, off)) < 0.06


def test_the_answer_has_the_form_of_the_phones() -> None:
    full, phone = forecast(ASKED), run("forecast", ASKED)
    assert full.keys() == {*phone.keys(), "history"}
    assert (full["method"], phone["method"]) == ("full", "laplace")
    assert full["method_text"] == "full posterior"
    assert full == forecast(ASKED), "drawn anew"
    for one, other in zip(full["events"], phone["events"], strict=True):
        at, near = one["at_running_h"], other["at_running_h"]
        assert near["median"] == pytest.approx(at["median"], rel=0.25)


def test_bad_input_is_refused_as_by_the_core() -> None:
    with pytest.raises(Refused) as refused:
        forecast({**ASKED, "oil_kind": "olive"})
    assert refused.value.problems[0]["field"] == "oil_kind"


def test_the_libraries_are_not_loaded_with_the_service() -> None:
    code = "import sys, midspan.web.app; sys.exit('scipy' in sys.modules or 'numpy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0

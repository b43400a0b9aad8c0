"""Sessions made up by the thousand: intervals hold as often as they say, and drift is no gain."""

import math
import random

import pytest

from midspan.core.drift_fit import Pull, difference, fit

TRIALS = 2000
GAIN = 4.0
# Setting's scatter, and the drift from one pull to the next, both against a gain of 4.
CASES = {
    "Welch, 4 and 6 pulls, scatters 1 and 3": ("AAAABBBBBB", {"A": 1.0, "B": 3.0}, 0.0, False),
    "Welch, 8 and 4 pulls, scatters 3 and 1": ("AAAAAAAABBBB", {"A": 3.0, "B": 1.0}, 0.0, False),
    "A/B/A with drift": ("AABBAA", {"A": 1.0, "B": 1.0}, 0.8, True),
    "A/B/B/A with drift": ("AABBBBAA", {"A": 1.0, "B": 1.0}, -2.0, True),
    "A/B with drift": ("AAABBB", {"A": 1.0, "B": 1.0}, 1.5, True),
}


@pytest.mark.parametrize("case", CASES)
def test_intervals_cover_what_they_say(case: str) -> None:
    """Of 2,000 intervals 95 % hold the truth, give or take 0.49 % (binomial): 93 to 97 % is four
    of those either way.
    """
    order, scatter, drift, modelled = CASES[case]
    rng = random.Random(case)  # noqa: S311
    held = held_ratio = 0
    for _ in range(TRIALS):
        pulls = [
            Pull(key, i + 1, 300.0 + GAIN * (key == "B") + drift * i + rng.gauss(0, scatter[key]))
            for i, key in enumerate(order)
        ]
        middle = 300.0 + (drift * (len(order) - 1) / 2 if modelled else 0.0)
        found = difference(fit(pulls, modelled), "A", "B")
        held += found.low <= GAIN <= found.high
        held_ratio += found.ratio_low <= 1 + GAIN / middle <= found.ratio_high
    assert 0.93 <= held / TRIALS <= 0.97
    assert 0.93 <= held_ratio / TRIALS <= 0.97


@pytest.mark.parametrize("order", ["AABBAA", "AAABBBAAA", "AABBBBAA", "AAABBB"])
def test_no_gain_is_shown_where_there_is_only_drift(order: str) -> None:
    """At most 1 in 20 may be called shown. 2,000 sessions of exactly 5 % give more than 131 (6.6 %)
    once in a thousand such checks, so that is where it fails; drift is unlike in every session.
    """
    rng = random.Random(order)  # noqa: S311
    shown = naive = 0
    for _ in range(TRIALS):
        drift = rng.uniform(-3, 3)
        pulls = [
            Pull(key, i + 1, 300.0 + drift * i + rng.gauss(0, 1)) for i, key in enumerate(order)
        ]
        shown += difference(fit(pulls, True), "A", "B").chance < 0.05
        naive += difference(fit(pulls, False), "A", "B").chance < 0.05
    limit = TRIALS * 0.05 + 3.1 * math.sqrt(TRIALS * 0.05 * 0.95)
    assert shown <= limit
    # The check can fail: where nobody goes back, ignoring the drift does.
    if order == "AAABBB":
        assert naive > limit

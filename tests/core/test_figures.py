"""Numbers in sentences: rounded rightly, and never dressed up."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.drives import floats
from midspan.core.figures import fixed, short


@given(value=floats(-1e6, 1e6), decimals=st.integers(0, 4))
def test_a_fixed_figure_is_the_nearest_of_its_kind(value: float, decimals: int) -> None:
    text = fixed(value, decimals)
    assert re.fullmatch(r"-?\d+" + (rf"\.\d{{{decimals}}}" if decimals else ""), text)
    assert abs(float(text) - value) <= 0.5 * 10.0**-decimals * (1 + 1e-6)
    assert not re.fullmatch(r"-0\.?0*", text), "nothing is minus nothing"


@given(value=floats(1e-5, 1e5), sign=st.sampled_from((1, -1)), digits=st.integers(1, 9))
def test_a_short_figure_is_right_to_its_digits(value: float, sign: int, digits: int) -> None:
    text = short(sign * value, digits)
    step = 10.0 ** (len(str(int(value))) - digits) if value >= 1 else value * 10.0 ** (1 - digits)
    assert abs(float(text) - sign * value) <= 0.51 * max(step, 10.0**-12)
    assert not text.endswith(".")
    if "." in text:
        assert not text.endswith("0")
    significant = text.lstrip("-").replace(".", "").lstrip("0")
    assert len(significant) <= max(digits + 1, len(str(int(value))))


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    # Ties away from zero, in binary exact, so that no interpreter's own rule shows.
    [
        (6.25, 1, "6.3"),
        (6.75, 1, "6.8"),
        (-6.25, 1, "-6.3"),
        (0.125, 2, "0.13"),
        (0.5, 0, "1"),
        (0.0, 1, "0.0"),
        (-0.01, 1, "0.0"),
        (9.96, 1, "10.0"),
        (0.05, 2, "0.05"),
    ],
)
def test_ties_and_edges(value: float, decimals: int, text: str) -> None:
    assert fixed(value, decimals) == text


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (9.525, 6, "9.525"),
        (22.0, 6, "22"),
        (0.0, 3, "0"),
        (0.03345, 3, "0.0335"),
        (9.996, 3, "10"),
        (1234.5, 3, "1235"),
        (100.0, 3, "100"),
    ],
)
def test_short_figures(value: float, digits: int, text: str) -> None:
    assert short(value, digits) == text


@pytest.mark.parametrize("value", [1e9, 1e308, -1e40, 5e-324, -1e-7])
def test_a_size_nobody_measures_is_said_in_words(value: float) -> None:
    assert re.fullmatch(r"a number [a-z ]+", short(value, 9))

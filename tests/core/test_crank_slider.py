"""Piston position and dynamic compression against published figures, scipy and differences."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from core.drives import floats
from midspan.core import run
from midspan.core.crank_slider import (
    Slider,
    bottom,
    compression_from,
    drop,
    drop_rate,
)

# The engine of the published examples, in inches: the relation knows no unit.
INCH = Slider(3.48 / 2, 5.70, 0.0)
SLIDERS = st.builds(Slider, floats(20, 60), floats(100, 250), floats(-3, 3))


@given(slider=SLIDERS, angle=floats(-7, 7))
def test_without_offset_it_is_the_published_relation(slider: Slider, angle: float) -> None:
    """x = r cos A + sqrt(L^2 - r^2 sin^2 A): rcuniverse.com/forum/7112617-post20.html."""
    r, length = slider.throw, slider.rod
    pin = r * math.cos(angle) + math.sqrt(length**2 - (r * math.sin(angle)) ** 2)
    assert drop(Slider(r, length, 0.0), angle) == pytest.approx(r + length - pin, abs=1e-9)


@given(slider=SLIDERS, angle=floats(-6, 6))
def test_the_rate_is_the_derivative(slider: Slider, angle: float) -> None:
    area = quad(lambda a: drop_rate(slider, a), 0, angle)[0]
    assert drop(slider, angle) == pytest.approx(area, abs=1e-6)
    near = (drop(slider, angle + 1e-5) - drop(slider, angle - 1e-5)) / 2e-5
    assert drop_rate(slider, angle) == pytest.approx(near, abs=1e-4)


@given(slider=SLIDERS)
def test_the_dead_centres_are_where_the_piston_turns(slider: Slider) -> None:
    assert drop_rate(slider, 0.0) == pytest.approx(0, abs=1e-9)
    assert drop_rate(slider, bottom(slider)) == pytest.approx(0, abs=1e-9)
    r, rod, e = slider
    stroke = math.sqrt((rod + r) ** 2 - e**2) - math.sqrt((rod - r) ** 2 - e**2)
    assert drop(slider, bottom(slider)) == pytest.approx(stroke, rel=1e-12)


def test_compression_is_the_volume_shut_in_over_the_clearance_volume() -> None:
    """By hand: the volumes themselves, the height found by a root finder of scipy's."""
    for static, closing in ((10, 50), (10, 62), (9, 70), (11, 76)):
        angle = math.radians(180 + closing)
        # Rod and throw close a triangle with the pin's height: law of cosines, solved anew.
        height = brentq(
            lambda h, a=angle: h**2 + 1.74**2 - 2 * h * 1.74 * math.cos(a) - 5.70**2, 1, 9
        )
        left = 1.74 + 5.70 - height
        volume = 3.48 / (static - 1)
        assert compression_from(INCH, angle, static) == pytest.approx((left + volume) / volume)


@pytest.mark.parametrize(
    ("swept", "clearance", "ratio"),
    # fordsixperformanceforum.github.io/CompressionR.html
    [(450, 50, 10.0), (450, 40, 12.25), (450, 60, 8.5)],
)
def test_closed_at_bottom_it_is_the_published_static_ratio(swept, clearance, ratio) -> None:
    static = (swept + clearance) / clearance
    assert static == ratio
    assert compression_from(INCH, bottom(INCH), static) == pytest.approx(ratio)


ENGINE = {"stroke_mm": 88.392, "rod_length_mm": 144.78, "static_ratio": 10.0}


@given(closing=floats(20, 100), advance=floats(0.5, 8))
def test_an_earlier_cam_compresses_more(closing: float, advance: float) -> None:
    found = run("compression", {**ENGINE, "intake_closing_abdc_deg": closing,
                                "settings_deg": [0.0, advance]})  # fmt: skip
    now, earlier = found["settings"]
    assert now["ratio"] == pytest.approx(found["dynamic_ratio"]["value"])
    assert earlier["ratio"] > now["ratio"]
    assert earlier["intake_closing_abdc_deg"] == pytest.approx(closing - advance)
    at = found["dynamic_ratio"]
    assert at["low"] < at["value"] < at["high"] < 10.0


def test_the_unit_and_the_opening_height_are_questioned() -> None:
    found = run("compression", {**ENGINE, "intake_closing_abdc_deg": 38.0})
    assert [w["code"] for w in found["warnings"]] == ["early-closing"]
    origins = {a["field"]: a["origin"] for a in found["assumptions"]}
    assert origins == {
        "closing_plus_minus_deg": "from memory, unverified",
        "exponent": "published",
        "inlet_pressure_kpa": "published",
    }

"""What TDC's error does, and does not do: against `uncertainties` and against simulation."""

import math
import random
import statistics
from typing import Any

import pytest
from uncertainties import ufloat

from core.test_cam import cam, card, event, four
from midspan.core.uncertainty import rectangular

U_TDC = 0.4
PLUS_MINUS = 1.959963984540054 * U_TDC
# One error a reading: its repeatability. All else is set to nothing.
BARE = {
    "resolution_deg": 0, "instrument_error_deg": 0, "parallax_mm": 0, "dial_error_mm": 0,
    "repeatability_deg": 0.3, "tdc_plus_minus_deg": PLUS_MINUS,
}  # fmt: skip
READ = (20.0, 60.0, 62.0, 18.0)


def uncertain(found: dict[str, Any]) -> dict[str, float]:
    return {
        name: at["standard_uncertainty"] for name, at in found["figures"].items() if at is not None
    }


def test_against_uncertainties() -> None:
    tdc = ufloat(0, U_TDC)
    io, ic, eo, ec = (ufloat(value, 0.3) for value in READ)
    # A wheel that shows `tdc` at TDC shows an intake opening that much too small.
    io, ic, eo, ec = io + tdc, ic - tdc, eo + tdc, ec - tdc
    icl, ecl = (180 + ic - io) / 2, (180 + eo - ec) / 2
    known = {
        "intake_opening_btdc_deg": io, "intake_closing_abdc_deg": ic,
        "exhaust_opening_bbdc_deg": eo, "exhaust_closing_atdc_deg": ec,
        "intake_duration_deg": io + 180 + ic, "exhaust_duration_deg": eo + 180 + ec,
        "intake_centreline_deg": icl, "exhaust_centreline_deg": ecl,
        "lobe_separation_cam_deg": (icl + ecl) / 2, "advance_deg": (ecl - icl) / 2,
        "overlap_deg": io + ec,
    }  # fmt: skip
    found = cam(four(*READ), **BARE)
    assert {n: at["value"] for n, at in found["figures"].items()} == pytest.approx(
        {name: value.n for name, value in known.items()}
    )
    assert uncertain(found) == pytest.approx({name: value.s for name, value in known.items()})


def test_durations_do_not_suffer_from_tdc_but_centrelines_do() -> None:
    sure = uncertain(cam(four(*READ), **{**BARE, "tdc_plus_minus_deg": 0}))
    unsure = uncertain(cam(four(*READ), **BARE))
    free = {"intake_duration_deg", "exhaust_duration_deg", "overlap_deg", "lobe_separation_cam_deg"}
    for name, u in unsure.items():
        rise = math.sqrt(u**2 - sure[name] ** 2) if u > sure[name] else 0.0
        assert rise == pytest.approx(0 if name in free else U_TDC, abs=1e-9), name


def test_against_simulation() -> None:
    """Every kind of error drawn from its own distribution, 20,000 times."""
    rng = random.Random(5)  # noqa: S311 - a fixed sequence is the point
    given = {
        "resolution_deg": 1.0, "instrument_error_deg": 0.5, "wheel_diameter_mm": 200.0,
        "parallax_mm": 1.0, "repeatability_deg": 0.2, "tdc_plus_minus_deg": PLUS_MINUS,
        "dial_error_mm": 0,
    }  # fmt: skip
    widths = (0.5, 0.5, math.degrees(2 * 1.0 / 200.0))
    true = {"intake-opens": -20.0, "intake-closes": 240.0, "exhaust-closes": 18.0}
    drawn: dict[str, list[float]] = {"duration": [], "centreline": [], "overlap": []}
    for _ in range(20_000):
        tdc = rng.gauss(0, U_TDC)
        read = {
            name: at + tdc + rng.gauss(0, 0.2) + sum(rng.uniform(-w, w) for w in widths)
            for name, at in true.items()
        }
        drawn["duration"].append(read["intake-closes"] - read["intake-opens"])
        drawn["centreline"].append((read["intake-closes"] + read["intake-opens"]) / 2)
        drawn["overlap"].append(read["exhaust-closes"] - read["intake-opens"])
    events = [event("intake-opens", "btdc", 20), event("intake-closes", "abdc", 60)]
    events.append(event("exhaust-closes", "atdc", 18))
    found = uncertain(cam(events, **given))
    for name, field in (
        ("duration", "intake_duration_deg"),
        ("centreline", "intake_centreline_deg"),
        ("overlap", "overlap_deg"),
    ):
        # The deviation of 20,000 draws is itself known to half a percent.
        assert statistics.stdev(drawn[name]) == pytest.approx(found[field], rel=0.03), name


def test_repeats_narrow_what_they_can() -> None:
    once = uncertain(cam(four(*READ), **BARE))
    scattered = [
        event(one["event"], one["reference"], *[one["angles_deg"][0] + x for x in (-0.3, 0, 0.3)])
        for one in four(*READ)
    ]
    thrice = uncertain(cam(scattered, **BARE))
    assert thrice["intake_duration_deg"] == pytest.approx(once["intake_duration_deg"] / 3**0.5)
    assert thrice["intake_centreline_deg"] > U_TDC


def test_a_dial_error_matters_more_near_the_nose_than_on_the_flank() -> None:
    only = {**BARE, "repeatability_deg": 0, "tdc_plus_minus_deg": 0, "dial_error_mm": 0.02}
    flank = uncertain(cam(four(*READ)[:2], **only))["intake_centreline_deg"]
    assert flank == pytest.approx(rectangular(0.02 / 0.12) / 2**0.5)
    nose = [event("intake-rising", "atdc", 80), event("intake-falling", "atdc", 140)]
    near = uncertain(cam(nose, nose_drop_mm=0.5, **only))["intake_centreline_deg"]
    # Half-angle 30 at 0.5 mm down: lift changes by 2 x 0.5 / 30 mm a degree.
    assert near == pytest.approx(rectangular(0.02 * 30 / (2 * 0.5)) / 2**0.5)


def test_a_comparison_bears_the_uncertainty_of_its_figure() -> None:
    found = cam(four(*READ), card=card(intake_centreline_deg=105), **BARE)
    (row,) = [r for r in found["comparisons"] if r["quantity"] == "intake_centreline_deg"]
    u = found["figures"]["intake_centreline_deg"]["standard_uncertainty"]
    assert row["difference"]["standard_uncertainty"] == u
    assert found["measured"]["standard_uncertainty"] == u

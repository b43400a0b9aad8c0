"""Spark and Gain without a signal: what the screen shows is what the core says."""

import re

from playwright.sync_api import expect

from core.drives import WORKED
from e2e.browser import Phone
from e2e.flow import enter_drive, go, measure, open_app, wait_for_verdict, wait_until_offline_ready
from e2e.service import Service
from midspan.core import run

BEFORE, AFTER = (10.0, 12.0, 9.0, 11.0, 10.0), (10.0, 10.5, 10.0, 10.5, 10.0)
HP = 0.7456998715822702


def test_spark_and_gain_without_a_signal(phone: Phone, service: Service) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    measure(page, "1/16 in", "too-close")
    wait_until_offline_ready(page)
    phone.lose_network()

    go(page, "spark")
    expect(page.get_by_text("The engine runs. Hands, sleeves")).to_be_visible()
    for label, readings in (("Before the work", BEFORE), ("After the work", AFTER)):
        for reading in readings:
            page.get_by_role("textbox", name=label, exact=True).fill(f"{reading:g}")
            page.get_by_role("button", name=f"Add to {label}").click()
    page.get_by_label("Read to", exact=True).fill("0.5")
    wait_for_verdict(page, "narrower")
    asked = {"idle_before_deg": [*BEFORE], "idle_after_deg": [*AFTER], "resolution_deg": 0.5}
    found = run("spark", asked)
    shown = float(page.get_by_test_id("hero-value").inner_text())
    assert shown == found["spreads"][1]["range_deg"]
    ratio = found["changes"][0]["ratio_of_deviations"]["value"]
    row = page.get_by_role("row", name=re.compile("^Scatter after over before"))
    expect(row).to_contain_text(f"{ratio:.2f}")
    page.get_by_role("button", name="Save this comparison").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()

    # The slack saved last, with its own uncertainty; the power in the unit chosen.
    go(page, "gain")
    page.get_by_role("button", name=re.compile("^Use the last reading")).click()
    page.get_by_role("button", name="hp", exact=True).click()
    page.get_by_role("textbox", name="Peak power", exact=True).fill("485")
    page.get_by_role("textbox", name="Speed at peak power", exact=True).fill("6000")
    wait_for_verdict(page, "range")
    expect(page.get_by_text("0 engines: only a rule of thumb").first).to_be_visible()
    expect(page.get_by_role("img", name=re.compile("of peak power is lost"))).to_be_visible()
    slack = run("slack", {"drive": WORKED, "method": "total", "readings_mm": [25.4 / 16]})
    told = run("gain", {
        "drive": WORKED, "movement_mm": round(25.4 / 16, 3),
        "standard_uncertainty_mm": slack["state"]["movement_mm"]["standard_uncertainty"],
        "peak_power_kw": 485 * HP, "peak_speed_rpm": 6000,
    })["gain_kw"]  # fmt: skip
    ends = [float(x) for x in page.get_by_test_id("hero-value").inner_text().split("–")]
    for end, exact in zip(ends, (told["low_80"], told["high_80"]), strict=True):
        assert abs(end - exact / HP) < (0.06 if end < 10 else 0.6)

    # The same in kilowatts.
    page.get_by_role("textbox", name="Peak power", exact=True).fill("485 hp")
    page.get_by_role("button", name="kW", exact=True).click()
    expect(page.get_by_test_id("hero-value")).to_have_text(
        re.compile(f"^{told['low_80']:.1f}–"), timeout=30_000
    )

    # A comparison moves the range, and is counted.
    page.get_by_text("Comparisons on the dyno").click()
    page.get_by_role("button", name="Add a comparison").click()
    for label, typed in (
        ("Engine", "Shop engine"), ("Movement before", "3/32"), ("Movement after", "7/32"),
        ("Gain of peak power", "1.1"), ("Its standard uncertainty", "0.4"),
    ):  # fmt: skip
        page.get_by_role("textbox", name=label, exact=True).fill(typed)
    expect(page.get_by_text("1 engine, 1 comparison: still mostly")).to_be_visible()
    page.get_by_role("button", name="Save this estimate").click()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()

"""A session of the shop on a phone without a signal: verdict, customer's page, evidence."""

import io
import re
from typing import Any
from uuid import UUID

from playwright.sync_api import expect
from pypdf import PdfReader

from e2e.browser import PHONE, Phone
from e2e.flow import enter_drive, go, open_app, wait_for_verdict, wait_until_offline_ready
from e2e.service import Service
from e2e.test_screens import SMALL_TARGETS, STICKS_OUT, TARGET_PX, resize, violations
from midspan.core import run

AIR = {"air_temperature_c": 24.0, "station_pressure_kpa": 98.6, "relative_humidity_percent": 40.0}
POWERS = [("A", 350.1), ("B", 358.4), ("B", 357.9), ("A", 350.9), ("A", 350.4), ("B", 358.8)]
LABEL = "Tight against right"
SESSION = str(UUID(f"01923f5e-8c00-7000-8000-{1:012x}"))
SPEEDS = [3000.0 + 250 * i for i in range(15)]


def runs() -> list[dict[str, Any]]:
    """Six pulls in the order A B B A A B, made up."""
    found = []
    for place, (setting, power) in enumerate(POWERS, start=1):
        torque = [power * (1.55 - ((n - 4500) / 6000) ** 2) for n in SPEEDS]
        found.append({
            "session_id": SESSION, "setting": setting, "place": place,
            "taken_at": f"2026-02-03T1{place}:00:00Z", "conditions": AIR,
            "figures_are": "observed", "peaks": {"power_kw": power, "power_speed_rpm": 6200.0},
            "curve": {"speed_rpm": SPEEDS, "torque_nm": torque}, "source": None, "note": None,
            "core_version": "0.1.0", "created_at": "2026-02-03T18:00:00Z",
        })  # fmt: skip
    return found


def put_session(service: Service) -> None:
    """Keep the session at the service, as another device of the shop would."""
    engine = service.get("/api/v1/engines")["items"][0]["id"]
    session = {
        "engine_id": engine, "build_id": None, "label": LABEL, "at": "2026-02-03T10:00:00Z",
        "standard": "j1349-1990", "note": None, "invented": False,
        "settings": [{"key": "A", "label": "as found", "movement_mm": 1.6},
                     {"key": "B", "label": "chain C-2", "movement_mm": 5.5}],
        "created_at": "2026-02-03T10:00:00Z",
    }  # fmt: skip
    service.put(f"/api/v1/sessions/{SESSION}", session)
    for number, one in enumerate(runs(), start=100):
        service.put(f"/api/v1/runs/{UUID(f'01923f5e-8c00-7000-8000-{number:012x}')}", one)


def test_a_gain_is_proved_printed_and_joins_the_evidence(service: Service, phone: Phone) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    expect(page.get_by_test_id("sync-state")).to_have_attribute("data-state", "server")
    put_session(service)
    page.reload()
    wait_until_offline_ready(page)
    go(page, "sessions")
    expect(page.get_by_role("link", name=LABEL)).to_be_visible()
    page.close()
    service.kill()
    phone.lose_network()

    page = open_app(phone, service)
    go(page, "sessions")
    page.get_by_role("link", name=LABEL).click()
    page.locator(f"a[href='#/sessions/{SESSION}/compare']").click()
    names = ("setting", "place", "conditions", "figures_are", "peaks", "curve")
    told = run("compare", {
        "standard": "j1349-1990", "quantity": "peak-power", "reference": "A", "drift": "auto",
        "runs": [{name: one[name] for name in names} for one in runs()],
    })["differences"][0]  # fmt: skip
    assert told["outcome"] == "shown"
    expect(page.get_by_text(told["headline"]).first).to_be_visible()
    expect(page.get_by_text(told["why"]).first).to_be_visible()
    for width in (PHONE["width"], 320, 1280):
        resize(page, {"width": width, "height": 844})
        assert page.evaluate(STICKS_OUT) == [], width
    resize(page, PHONE)
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        assert violations(page) == [], scheme
    assert page.evaluate(SMALL_TARGETS, TARGET_PX) == []

    # The page for the customer, on either paper.
    page.locator(f"a[href='#/sessions/{SESSION}/page']").click()
    expect(page.get_by_role("button", name=re.compile("^Print"))).to_be_visible()
    expect(page.get_by_text(told["why"]).first).to_be_visible()
    for paper in ("A4", "Letter"):
        pages = PdfReader(io.BytesIO(page.pdf(format=paper, print_background=True))).pages
        assert len(pages) == 1, paper
        printed = re.sub(r"\s+", "", pages[0].extract_text())
        for wanted in (LABEL, told["headline"], "SAE J1349", "as found"):
            assert re.sub(r"\s+", "", wanted) in printed, wanted

    # The expected gain counts it, without anything typed.
    go(page, "gain")
    page.get_by_label("Movement now, cold", exact=True).fill("1.6 mm")
    page.get_by_role("textbox", name="Peak power", exact=True).fill("350 kW")
    page.get_by_role("textbox", name="Speed at peak power", exact=True).fill("6200")
    wait_for_verdict(page, "range")
    expect(page.get_by_text("moved by 1 engine", exact=False).first).to_be_visible()
    page.get_by_text("Comparisons on the dyno (1)").click()
    page.get_by_role("checkbox", name=re.compile("^Count what the dyno sessions")).uncheck()
    expect(page.get_by_text("0 engines: only a rule of thumb").first).to_be_visible()

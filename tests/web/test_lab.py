"""The full forecast over HTTP, and the shop's own history in it."""

from typing import Any
from uuid import UUID

import pytest

from midspan.core import VERSION, run
from midspan.store.histories import of_shop
from midspan.store.models import LOCAL_SHOP
from midspan.web.examples import INPUTS, WRITES
from web.document import Document
from web.pairing import OTHER_SHOP, add_shop, client_of, paired

PATH = "/api/v1/lab/forecast"
ASKED = INPUTS["forecast"]


def ident(number: int) -> str:
    return str(UUID(f"01923f5e-8c00-7000-8000-{number:012x}"))


def put(client, many: str, id: str, values: dict[str, Any]) -> None:
    answer = client.put(f"/api/v1/{many}/{id}", json=values)
    assert answer.status_code == 201, answer.get_json()


def keep(client, number: int, sent: dict[str, Any]) -> str:
    """Keep an engine's forecast as a phone would, with engine and build."""
    engine, build = ident(1000 + number), ident(2000 + number)
    put(client, "engines", engine, WRITES["engine"])
    of_build = {key: WRITES["build"][key] for key in ("label", "started_at", "created_at")}
    put(client, "builds", build, of_build | {"engine_id": engine})
    reading = {
        "engine_id": engine, "build_id": build, "calc": "forecast", "input": sent,
        "taken_at": "2026-02-03T10:00:00Z", "result": run("forecast", sent),
        "core_version": VERSION, "limit": None,
    }  # fmt: skip
    put(client, "readings", ident(3000 + number), reading)
    return build


def test_without_history_it_is_the_wide_prior(client, document: Document) -> None:
    found = document.expect(client.post(PATH, json=ASKED), "post", PATH)
    assert found["method"] == "full", found
    assert found["history"] == {"engines_used": 0, "without_oil": 0, "of_other_kind": 0,
                                "without_readings": 0, "prior": None}  # fmt: skip


def test_engines_on_the_same_oil_sharpen_it(client, document: Document) -> None:
    builds = [keep(client, n, ASKED) for n in range(3)]
    keep(client, 3, ASKED | {"oil_kind": "mineral"})
    keep(client, 4, {key: ASKED[key] for key in ("drive", "readings")})
    keep(client, 5, ASKED | {"readings": []})
    found = document.expect(client.post(PATH, json=ASKED), "post", PATH)
    assert found["history"]["engines_used"] == found["prior"]["engines_behind"] == 3
    counts = [found["history"][n] for n in ("of_other_kind", "without_oil", "without_readings")]
    assert counts == [1, 1, 1]
    assert "3 engines of this shop" in " ".join(found["said"])
    # What comes back goes into the phone's own calculation.
    again = run("forecast", ASKED | {"prior": found["history"]["prior"]})
    assert again["prior"]["engines_behind"] == 3
    own = client.post(f"{PATH}?build_id={builds[0]}", json=ASKED).get_json()
    assert own["history"]["engines_used"] == 2


def run_in(client, number: int, readings: list[dict[str, Any]], oil: str | None) -> None:
    """Keep an engine whose slack was read at distances, and the plan that names its oil."""
    engine, build = ident(1000 + number), ident(2000 + number)
    put(client, "engines", engine, WRITES["engine"])
    of_build = {key: WRITES["build"][key] for key in ("label", "started_at", "created_at")}
    of_build |= {"engine_id": engine, "odometer_km": 5000.0}
    put(client, "builds", build, of_build)
    if oil is not None:
        plan = WRITES["plan"] | {"engine_id": engine, "build_id": build}
        plan |= {"input": plan["input"] | {"oil": {"kind": oil}}, "log": []}
        put(client, "plans", ident(4000 + number), plan)
    for place, noted in enumerate(readings):
        reading = WRITES["reading"] | {"engine_id": engine, "build_id": build}
        reading |= {"taken_at": f"2026-02-0{place + 1}T10:00:00Z", "distance_since_start_km": None}
        put(client, "readings", ident(10 * number + 5000 + place), reading | noted)


def test_ordinary_readings_with_their_distances_are_history_too(client) -> None:
    oil = ASKED["oil_kind"]
    ways = [{"distance_since_start_km": 0.0}, {"running_since_start_h": 40.0},
            {"odometer_km": 9000.0}]  # fmt: skip
    run_in(client, 0, ways, oil)
    run_in(client, 1, ways, oil)
    run_in(client, 2, ways, "mineral" if oil != "mineral" else "synthetic")
    run_in(client, 3, ways, None)
    run_in(client, 4, [{}, {}, {"odometer_km": 100.0}], oil)  # nothing known of how far they ran
    found = client.post(PATH, json=ASKED).get_json()["history"]
    assert (found["engines_used"], found["of_other_kind"], found["without_oil"]) == (2, 1, 1)


def test_whichever_is_newer_counts_the_readings_or_the_forecast(app, client) -> None:
    build = UUID(keep(client, 0, ASKED))  # at 10 on the 3rd
    later = WRITES["reading"] | {"engine_id": ident(1000), "build_id": str(build)}
    with app.extensions["midspan"].reading() as session:
        assert of_shop(session, LOCAL_SHOP, None)[0].input == ASKED
    put(client, "readings", ident(9000), later | {"taken_at": "2026-02-02T10:00:00Z"})
    with app.extensions["midspan"].reading() as session:
        assert of_shop(session, LOCAL_SHOP, None)[0].input == ASKED
    put(client, "readings", ident(9001), later | {"taken_at": "2026-02-04T10:00:00Z"})
    with app.extensions["midspan"].reading() as session:
        (kept,) = of_shop(session, LOCAL_SHOP, None)
        measured = later["result"]["measured"]
        assert kept.input["drive"] == later["input"]["drive"]
        assert kept.input["readings"] == 2 * [{
            "quantity": "movement_mm", "movement_mm": measured["value"],
            "standard_uncertainty_mm": measured["standard_uncertainty"],
            "distance_since_start_km": later["distance_since_start_km"],
        }]  # fmt: skip
        assert of_shop(session, LOCAL_SHOP, build) == []


def test_the_oil_filled_last_is_the_one_it_wore_on(app, client) -> None:
    run_in(client, 0, [{"distance_since_start_km": 0.0}], "running-in")
    path = f"/api/v1/plans/{ident(4000)}"
    plan = client.get(path)
    changed = {"kind": "oil-changed", "at": "2026-02-03T10:00:00Z", "oil": {"kind": "synthetic"},
               "distance_since_start_km": 800.0}  # fmt: skip
    sent = {key: plan.get_json()[key] for key in WRITES["plan"] | {"build_id": 0}}
    etag = {"If-Match": plan.headers["ETag"]}
    assert client.put(path, json=sent | {"log": [changed]}, headers=etag).status_code == 200
    with app.extensions["midspan"].reading() as session:
        assert of_shop(session, LOCAL_SHOP, None)[0].planned_oil == "synthetic"


def test_another_shops_engines_are_nobodys_business(app, client) -> None:
    store = app.extensions["midspan"]
    add_shop(store, OTHER_SHOP)
    other = client_of(app, paired(store, shop=OTHER_SHOP)[0])
    for number in range(3):
        keep(other, number, ASKED)
    assert client.post(PATH, json=ASKED).get_json()["history"]["engines_used"] == 0
    assert other.post(PATH, json=ASKED).get_json()["history"]["engines_used"] == 3


@pytest.mark.parametrize("change", [{"oil_kind": "olive"}, {"readings": "none"}])
def test_bad_input_is_refused_as_by_the_calculation(client, change: dict[str, Any]) -> None:
    answer = client.post(PATH, json=ASKED | change)
    plain = client.post("/api/v1/calc/forecast", json=ASKED | change)
    assert answer.status_code == plain.status_code == 422
    assert answer.get_json()["errors"] == plain.get_json()["errors"]


def test_it_takes_a_token(bare_client) -> None:
    assert bare_client.post(PATH, json=ASKED).status_code == 401


TORSION = "/api/v1/lab/torsion"
STUDY = {"drive": ASKED["drive"], "movements": 2, "speeds": 3, "lowest_speed_rpm": 5000.0}


def test_the_torsional_study_is_a_map_that_says_what_it_is(client, document: Document) -> None:
    found = document.expect(client.post(TORSION, json=STUDY), "post", TORSION)
    assert "not a measurement" in found["said"]
    assert [len(row) for row in found["phase_scatter_deg"]] == [3, 3]


@pytest.mark.parametrize("change", [{"speeds": 16}, {"lowest_speed_rpm": 9000.0}, {"odd": 1}])
def test_a_study_that_cannot_be_is_refused_by_field(client, change: dict[str, Any]) -> None:
    answer = client.post(TORSION, json=STUDY | change)
    assert answer.status_code == 422
    assert answer.mimetype == "application/problem+json"
    (error,) = answer.get_json()["errors"]
    named = "highest_speed_rpm" if "lowest_speed_rpm" in change else next(iter(change))
    assert error["field"] == named


def test_the_study_takes_a_token(bare_client) -> None:
    assert bare_client.post(TORSION, json=STUDY).status_code == 401


def test_the_shops_own_sessions_are_evidence_and_no_other_shops(
    client, app, document: Document
) -> None:
    session, runs = ident(4000), (("A", 300.1), ("B", 305.4), ("B", 305.0), ("A", 300.3))
    settings = [{"key": "A", "label": "tight", "movement_mm": 1.6},
                {"key": "B", "label": "right", "movement_mm": 5.5}]  # fmt: skip
    put(client, "engines", ident(4999), WRITES["engine"])
    own = {"engine_id": ident(4999), "build_id": None, "settings": settings, "standard": "j607"}
    put(client, "sessions", session, WRITES["session"] | own | {"invented": False})
    for place, (setting, power) in enumerate(runs, start=1):
        one = {"session_id": session, "setting": setting, "place": place, "conditions": None,
               "figures_are": "j607", "peaks": {"power_kw": power}, "curve": None}  # fmt: skip
        put(client, "runs", ident(4000 + place), WRITES["run"] | one)
    path = "/api/v1/lab/gain-evidence"
    found = document.expect(client.get(path), "get", path)
    assert found["passed"] == []
    (row,) = found["rows"]
    assert (row["engine"], row["from_movement_mm"]) == (WRITES["engine"]["name"], 1.6)
    assert row["gain_percent"] == pytest.approx(100 * 5 / 300.2, rel=0.01)
    sent = {key: row[key] for key in row if key != "session"}
    told = client.post("/api/v1/lab/gain", json=INPUTS["gain"] | {"evidence": [sent]}).get_json()
    assert (told["method"], told["engines_counted"]) == ("full", 1)
    # A run set aside no longer counts: one run of a setting tells of no scatter.
    client.delete(f"/api/v1/runs/{ident(4004)}", headers={"If-Match": '"1"'})
    assert client.get(path).get_json()["rows"] == []
    store = app.extensions["midspan"]
    add_shop(store, OTHER_SHOP)
    other = client_of(app, paired(store, shop=OTHER_SHOP)[0])
    assert other.get(path).get_json()["rows"] == []

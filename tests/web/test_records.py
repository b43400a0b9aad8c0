"""Keeping records over HTTP, and explaining an old verdict."""

import json
from typing import Any

import pytest

from midspan.core import VERSION, run
from midspan.web.examples import INPUTS, RESULTS, WRITES
from midspan.web.schemas.records import CALCS, LONGEST_INPUT, LONGEST_RESULT
from web.document import Document
from web.shelf import BUILD, Shelf, key

NOUNS = ("engine", "drive", "chain", "gear-set", "build", "entry", "plan", "reading")


@pytest.mark.parametrize("noun", NOUNS)
def test_a_record_is_kept_as_sent(shelf: Shelf, noun: str) -> None:
    sent = WRITES[noun]
    kept = shelf.put(noun, 2, sent, 201)
    assert kept == shelf.get(noun, 2) == shelf.put(noun, 2, sent, 200)
    assert {name: kept[name] for name in sent} == sent
    assert (kept["id"], kept["version"]) == (key(2), 1)
    assert kept in shelf.page(noun)["items"]
    # What comes back can be sent again, less what the store added.
    added = ("id", "version", "received_at", "deleted_at")
    shelf.put(noun, 2, {k: v for k, v in kept.items() if k not in added}, 200)


@pytest.mark.parametrize("noun", ["engine", "drive", "chain", "gear-set", "build"])
def test_a_change_replaces_what_was_kept(shelf: Shelf, noun: str) -> None:
    shelf.put(noun, 2, WRITES[noun], 201)
    field = "name" if noun == "engine" else "label"
    changed = shelf.put(noun, 2, WRITES[noun] | {field: "Other"}, 200, '"1"')
    assert (changed[field], changed["version"]) == ("Other", 2)
    assert shelf.get(noun, 2) == changed


@pytest.mark.parametrize(
    "change",
    [
        {"note": "other"},
        {"taken_at": "2026-01-31T12:00:00.000001Z"},
        {"input": {}},
        {"result": WRITES["reading"]["result"] | {"calc": "sla"}},
        {"limit": None},
        {"engine_id": None},
        {"load_n": 100},
    ],
    ids=str,
)
def test_another_reading_under_its_id_is_refused_and_the_first_stays(
    shelf: Shelf, change: dict[str, Any]
) -> None:
    first = shelf.put("reading", 2, WRITES["reading"], 201)
    problem = shelf.put("reading", 2, WRITES["reading"] | change, 409)
    assert problem["type"] == "/problems/reading-exists"
    assert shelf.get("reading", 2) == first


FIGURE = {"label": "Peak torque", "value": 402, "unit": "N m"}
BAD = [
    ("engine", {"name": None}, "name", "missing"),
    ("engine", {"name": ""}, "name", "missing"),
    ("engine", {"name": "  "}, "name", "missing"),
    ("engine", {"name": 5}, "name", "not-text"),
    ("engine", {"name": "x" * 201}, "name", "too-long"),
    ("engine", {"name": "a\x00b"}, "name", "not-text"),
    ("engine", {"name": "\ud800"}, "name", "not-text"),
    ("engine", {"note": []}, "note", "not-text"),
    ("engine", {"invented": "yes"}, "invented", "not-a-choice"),
    ("engine", {"invented": 1}, "invented", "not-a-choice"),
    ("engine", {"created_at": "yesterday"}, "created_at", "not-a-time"),
    ("engine", {"created_at": "2026-13-01T00:00:00Z"}, "created_at", "not-a-time"),
    ("engine", {"created_at": "2026-01-01T00:00:00"}, "created_at", "not-a-time"),
    ("engine", {"created_at": "2026-01-01T00:00:00+01:00"}, "created_at", "not-a-time"),
    ("engine", {"created_at": 5}, "created_at", "not-a-time"),
    ("engine", {"colour": "red"}, "colour", "unknown-field"),
    ("engine", {"id": key(9)}, "id", "unknown-field"),
    ("drive", {"engine_id": key(9)}, "engine_id", "no-such-record"),
    ("drive", {"engine_id": "1"}, "engine_id", "not-an-id"),
    ("drive", {"engine_id": key(1).replace("-7", "-4", 1)}, "engine_id", "not-an-id"),
    ("drive", {"engine_id": None}, "engine_id", "missing"),
    ("drive", {"pitch_mm": "9.5"}, "pitch_mm", "not-a-number"),
    ("drive", {"pitch_mm": 2}, "pitch_mm", "out-of-range"),
    ("drive", {"crank_teeth": 22.5}, "crank_teeth", "not-whole"),
    ("drive", {"cam_teeth": 43}, "cam_teeth", "not-half-speed"),
    ("drive", {"centre_distance_mm": 90}, "centre_distance_mm", "gears-collide"),
    ("drive", {"links": 30}, "links", "chain-too-short"),
    ("drive", {"roller_diameter_mm": 9.6}, "roller_diameter_mm", "conflict"),
    ("drive", {"centres": "loose"}, "centres", "not-a-choice"),
    ("drive", {"drive_kind": 7}, "drive_kind", "not-a-choice"),
    ("chain", {"engine_id": key(9)}, "engine_id", "no-such-record"),
    ("chain", {"pitch_mm": True}, "pitch_mm", "not-a-number"),
    ("chain", {"links": 10**400}, "links", "out-of-range"),
    *(
        ("chain", {"tag": tag}, "tag", code)
        for tag, code in {
            "": "not-a-tag",
            " C": "not-a-tag",
            "C ": "not-a-tag",
            "a/b": "not-a-tag",
            "a\nb": "not-a-tag",
            "a\x00": "not-a-tag",
            "\ud800": "not-a-tag",
            "\ufffe": "not-a-tag",
            "x" * 41: "not-a-tag",
        }.items()
    ),
    ("chain", {"tag": 7}, "tag", "not-text"),
    ("chain", {"distance_run_km": -1}, "distance_run_km", "out-of-range"),
    ("chain", {"distance_run_km": "1000"}, "distance_run_km", "not-a-number"),
    ("chain", {"description": 5}, "description", "not-text"),
    ("chain", {"description": "x" * 4001}, "description", "too-long"),
    ("gear-set", {"engine_id": key(9)}, "engine_id", "no-such-record"),
    ("gear-set", {"label": None}, "label", "missing"),
    ("gear-set", {"tag": "a/b"}, "tag", "not-a-tag"),
    ("gear-set", {"pitch_mm": None}, "pitch_mm", "missing"),
    ("gear-set", {"crank_teeth": 8}, "crank_teeth", "out-of-range"),
    ("gear-set", {"cam_teeth": 44.5}, "cam_teeth", "not-whole"),
    ("gear-set", {"adjuster": "wedge"}, "adjuster", "not-a-choice"),
    ("gear-set", {"keyway_offsets_crank_deg": 4}, "keyway_offsets_crank_deg", "not-a-list"),
    ("gear-set", {"keyway_offsets_crank_deg": [0] * 31}, "keyway_offsets_crank_deg", "too-many"),
    (
        "gear-set",
        {"keyway_offsets_crank_deg": [0, 31]},
        "keyway_offsets_crank_deg[1]",
        "out-of-range",
    ),
    (
        "gear-set",
        {"keyway_offsets_crank_deg": [None]},
        "keyway_offsets_crank_deg[0]",
        "missing",
    ),
    ("gear-set", {"links": 58}, "links", "unknown-field"),
    ("build", {"engine_id": key(9)}, "engine_id", "no-such-record"),
    ("build", {"engine_id": None}, "engine_id", "missing"),
    ("build", {"gear_set_id": key(9)}, "gear_set_id", "no-such-record"),
    ("build", {"started_at": None}, "started_at", "missing"),
    ("build", {"odometer_km": -1}, "odometer_km", "out-of-range"),
    ("entry", {"build_id": key(9)}, "build_id", "no-such-record"),
    ("entry", {"build_id": None}, "build_id", "missing"),
    ("entry", {"kind": "idea"}, "kind", "not-a-choice"),
    ("entry", {"at": "noon"}, "at", "not-a-time"),
    ("entry", {"title": " "}, "title", "missing"),
    ("entry", {"figures": {}}, "figures", "not-a-list"),
    ("entry", {"figures": [FIGURE] * 41}, "figures", "too-many"),
    ("entry", {"figures": [FIGURE, FIGURE | {"value": None}]}, "figures[1].value", "missing"),
    ("entry", {"figures": [FIGURE | {"value": "4"}]}, "figures[0].value", "not-a-number"),
    ("entry", {"figures": [FIGURE | {"value": True}]}, "figures[0].value", "not-a-number"),
    ("entry", {"figures": [FIGURE | {"value": 1e13}]}, "figures[0].value", "out-of-range"),
    ("entry", {"figures": [FIGURE | {"value": 10**400}]}, "figures[0].value", "out-of-range"),
    ("entry", {"figures": [FIGURE | {"label": ""}]}, "figures[0].label", "missing"),
    ("entry", {"figures": [FIGURE | {"colour": 1}]}, "figures[0].colour", "unknown-field"),
    ("entry", {"figures": [7]}, "figures[0]", "not-an-object"),
    ("plan", {"build_id": key(9)}, "build_id", "no-such-record"),
    ("plan", {"label": ""}, "label", "missing"),
    ("plan", {"input": None}, "input", "missing"),
    ("plan", {"result": {"a": float("nan")}}, "result", "not-finite"),
    ("plan", {"log": None}, "log", "missing"),
    ("plan", {"log": {}}, "log", "not-a-list"),
    ("plan", {"log": [7]}, "log[0]", "not-an-object"),
    (
        "plan",
        {"log": [{"kind": "danced", "at": "2026-01-31T12:00:00Z"}]},
        "log[0].kind",
        "not-a-choice",
    ),
    ("plan", {"log": [{"kind": "note", "at": "noon"}]}, "log[0].at", "not-a-time"),
    (
        "plan",
        {"log": [{"kind": "note", "at": "2026-01-31T12:00:00Z", "x": 1}]},
        "log[0].x",
        "unknown-field",
    ),
    ("reading", {"build_id": key(9)}, "build_id", "no-such-record"),
    ("reading", {"gear_set_id": key(9)}, "gear_set_id", "no-such-record"),
    ("reading", {"gear_set_id": "G-1"}, "gear_set_id", "not-an-id"),
    ("reading", {"load_n": -1}, "load_n", "out-of-range"),
    ("reading", {"load_n": float("inf")}, "load_n", "not-finite"),
    ("reading", {"calc": "batch"}, "calc", "not-a-choice"),
    ("reading", {"calc": "drive"}, "calc", "not-a-choice"),
    ("reading", {"calc": None}, "calc", "missing"),
    ("reading", {"drive_id": key(9)}, "drive_id", "no-such-record"),
    ("reading", {"input": None}, "input", "missing"),
    ("reading", {"input": []}, "input", "not-an-object"),
    ("reading", {"input": {"a": "x" * LONGEST_INPUT}}, "input", "too-long"),
    ("reading", {"result": {"a": float("nan")}}, "result", "not-finite"),
    ("reading", {"result": {"a": [{"b": float("-inf")}]}}, "result", "not-finite"),
    ("reading", {"result": {"a": "x" * LONGEST_RESULT}}, "result", "too-long"),
    ("reading", {"limit": "own"}, "limit", "not-an-object"),
    ("reading", {"core_version": 1}, "core_version", "not-text"),
    ("reading", {"taken_at": None}, "taken_at", "missing"),
    ("session", {"label": None}, "label", "missing"),
    ("session", {"label": 5}, "label", "not-text"),
    ("session", {"at": "yesterday"}, "at", "not-a-time"),
    ("session", {"standard": "sae"}, "standard", "not-a-choice"),
    ("session", {"settings": "A"}, "settings", "not-a-list"),
    ("session", {"engine_id": "E-1"}, "engine_id", "not-an-id"),
    ("session", {"build_id": key(7)}, "build_id", "no-such-record"),
    ("run", {"session_id": None}, "session_id", "missing"),
    ("run", {"session_id": key(7)}, "session_id", "no-such-record"),
    ("run", {"setting": None}, "setting", "missing"),
    ("run", {"place": 0}, "place", "out-of-range"),
    ("run", {"place": 1.5}, "place", "not-whole"),
    ("run", {"figures_are": "sae"}, "figures_are", "not-a-choice"),
    ("run", {"taken_at": "noon"}, "taken_at", "not-a-time"),
    ("run", {"core_version": 1}, "core_version", "not-text"),
]


@pytest.mark.parametrize(("noun", "change", "field", "code"), BAD, ids=lambda part: str(part)[:40])
def test_a_bad_record_is_refused_by_field_and_nothing_is_kept(
    shelf: Shelf, noun: str, change: Any, field: str, code: str
) -> None:
    problem = shelf.put(noun, 2, WRITES[noun] | change, 422)
    (found,) = problem["errors"]
    assert (found["field"], found["code"]) == (field, code)
    assert found["need"] != "another value"
    assert shelf.get(noun, 2)["type"] == "/problems/no-such-record"


def test_every_problem_is_named_at_once(shelf: Shelf) -> None:
    problem = shelf.put("drive", 2, {"pitch_mm": 2, "links": "x", "colour": 1}, 422)
    named = {error["field"] for error in problem["errors"]}
    assert {"pitch_mm", "links", "colour", "engine_id", "label", "crank_teeth"} <= named


@pytest.mark.parametrize("deep", [19, 21, 900])
def test_how_deep_a_result_may_nest(client, shelf: Shelf, deep: int) -> None:
    nested = '{"a":' * deep + "1" + "}" * deep
    body = json.dumps(WRITES["reading"] | {"result": "@@"}).replace('"@@"', nested)
    answer = client.put(f"/api/v1/readings/{key(2)}", data=body, content_type="application/json")
    assert answer.status_code == (201 if deep < 20 else 422)


def test_pages_give_every_record_once(shelf: Shelf) -> None:
    for number in range(2, 8):
        shelf.put("engine", number, WRITES["engine"], 201)
    seen, query = [], "?limit=3"
    while True:
        page = shelf.page("engine", query)
        seen += [row["id"] for row in page["items"]]
        if page["next"] is None:
            break
        query = f"?limit=3&after={page['next']}"
    assert seen == [key(number) for number in range(1, 8)]


def test_an_old_verdict_is_explained(client, shelf: Shelf, document: Document) -> None:
    stored = shelf.put("reading", 2, WRITES["reading"], 201)
    path = "/api/v1/readings/{id}/explanation"
    said = document.expect(client.get(path.replace("{id}", key(2))), "get", path)
    assert said["stored"] == stored
    assert said["recomputed"] == run("slack", WRITES["reading"]["input"])
    assert said["same_verdict"] is True
    assert (said["core_version_then"], said["core_version_now"]) == (VERSION, VERSION)


def test_a_verdict_that_today_would_be_another_is_told_apart(client, shelf: Shelf) -> None:
    sent = json.loads(json.dumps(WRITES["reading"]))
    sent["result"]["verdict"]["outcome"] = "too-loose"
    shelf.put("reading", 2, sent | {"core_version": "0.0.1"}, 201)
    said = client.get(f"/api/v1/readings/{key(2)}/explanation").get_json()
    assert said["same_verdict"] is False
    assert (said["core_version_then"], said["core_version_now"]) == ("0.0.1", VERSION)
    assert said["stored"]["result"]["verdict"]["outcome"] == "too-loose"
    assert said["recomputed"]["verdict"]["outcome"] == "wanted"


def test_input_that_today_is_refused_is_explained_too(client, shelf: Shelf) -> None:
    shelf.put("reading", 2, WRITES["reading"] | {"input": {"method": "old"}}, 201)
    said = client.get(f"/api/v1/readings/{key(2)}/explanation").get_json()
    assert said["recomputed"] is None
    assert said["same_verdict"] is False
    assert "not-a-choice" in {found["code"] for found in said["problems"]}


@pytest.mark.parametrize("calc", CALCS)
def test_every_result_that_can_be_kept_is_explained(
    client, shelf: Shelf, document: Document, calc: str
) -> None:
    result = run(calc, INPUTS[calc])
    sent = WRITES["reading"] | {"calc": calc, "input": INPUTS[calc], "result": result}
    write = {"$ref": "#/components/schemas/ReadingWrite"}
    assert document.faults(sent, write) == []
    assert document.faults(sent | {"result": RESULTS["drive"]}, write) != []
    stored = shelf.put("reading", 2, sent, 201)
    path = "/api/v1/readings/{id}/explanation"
    said = document.expect(client.get(path.replace("{id}", key(2))), "get", path)
    assert (said["stored"], said["recomputed"]) == (stored, result)
    # A calculation without a verdict cannot have the same one.
    assert said["same_verdict"] is (True if "verdict" in result else None)


def test_a_trial_fit_names_its_chain_its_gears_and_its_drive(shelf: Shelf) -> None:
    for number, noun in enumerate(("drive", "chain", "gear-set"), start=3):
        shelf.put(noun, number, WRITES[noun] | {"engine_id": key(1)}, 201)
    of = {"drive_id": key(3), "chain_id": key(4), "gear_set_id": key(5), "load_n": 110.5}
    kept = shelf.put("reading", 2, WRITES["reading"] | of, 201)
    assert {name: kept[name] for name in of} == of


def test_an_entry_keeps_its_figures_in_order(shelf: Shelf) -> None:
    figures = [FIGURE | {"value": value} for value in (3, -0.5, 1e12)]
    figures[1]["unit"] = None
    kept = shelf.put("entry", 2, WRITES["entry"] | {"figures": figures}, 201)
    assert kept["figures"] == figures
    assert shelf.put("entry", 2, WRITES["entry"] | {"figures": figures}, 200)["version"] == 1
    turned = shelf.put("entry", 2, WRITES["entry"] | {"figures": figures[::-1]}, 200, '"1"')
    assert turned["version"] == 2
    empty = shelf.put("entry", 2, WRITES["entry"] | {"figures": None}, 200, '"2"')
    assert empty["figures"] is None


def test_a_reading_belongs_to_its_build(shelf: Shelf) -> None:
    kept = shelf.put("reading", 2, WRITES["reading"] | {"build_id": key(BUILD)}, 201)
    assert kept["build_id"] == key(BUILD)
    moved = WRITES["reading"] | {"build_id": None}
    assert shelf.put("reading", 2, moved, 409)["type"] == "/problems/reading-exists"


def test_what_a_part_was_not_told_comes_back_as_null(shelf: Shelf) -> None:
    gears = {name: WRITES["gear-set"][name] for name in ("label", "pitch_mm", "created_at")}
    kept = shelf.put("gear-set", 2, gears | {"crank_teeth": 22, "cam_teeth": 44}, 201)
    empty = ("engine_id", "tag", "adjuster", "keyway_offsets_crank_deg", "note")
    assert [kept[name] for name in empty] == [None] * 5
    chain = {name: WRITES["chain"][name] for name in ("label", "pitch_mm", "links", "created_at")}
    kept = shelf.put("chain", 2, chain, 201)
    assert (kept["tag"], kept["distance_run_km"], kept["description"]) == (None, None, None)
    assert shelf.put("gear-set", 2, WRITES["gear-set"], 200, '"1"')["version"] == 2


@pytest.mark.parametrize(
    "tag", ["1", "C 07", "Ä-12 № 3", "x" * 40, "..", "日本", "a.svg", "50%?#&<"]
)
def test_a_tag_is_the_users_own(shelf: Shelf, tag: str) -> None:
    for noun in ("chain", "gear-set"):
        assert shelf.put(noun, 2, WRITES[noun] | {"tag": tag}, 201)["tag"] == tag

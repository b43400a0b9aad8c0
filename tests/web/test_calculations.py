"""The calculations over HTTP: the core's own answers, in the form the document gives."""

import json
import math
from collections.abc import Iterator
from functools import cache
from itertools import islice
from typing import Any

import pytest
from flask.testing import FlaskClient

from databases import KINDS, Databases
from midspan.core import CALCS, dispatch, measurement, run
from midspan.settings import Settings
from midspan.web import body, create_app
from midspan.web.examples import INPUTS
from vectors import vectors
from web.document import Document, dotted, put_at


@cache
def sent() -> list[tuple[str, str]]:
    """The vector set, made when it is first asked of."""
    return [(name, text) for name, text in vectors() if name in CALCS]


@pytest.fixture(scope="module")
def client(tmp_path_factory: pytest.TempPathFactory, databases: Databases) -> Iterator[FlaskClient]:
    """A client without a token. Nothing is kept, so one service does for all."""
    folder = tmp_path_factory.mktemp("calculations")
    url = databases.migrated(KINDS[0], folder)
    app = create_app(Settings(data_dir=folder, database_url=url, requests_per_minute=0))
    yield app.test_client()
    app.extensions["midspan"].close()
    databases.drop(url)


def post(client, name: str, payload: Any):
    text = payload if isinstance(payload, str) else json.dumps(payload)
    return client.post(f"/api/v1/calc/{name}", data=text, content_type="application/json")


@pytest.mark.timeout(1200)
def test_the_whole_vector_set_is_answered_as_the_core_does(client, document: Document) -> None:
    accepted = 0
    for name, text in sent():
        said = json.loads(dispatch(name, text))
        answer = post(client, name, text)
        value = document.expect(answer, "post", f"/api/v1/calc/{name}")
        if not said["ok"] and said["problems"][0]["code"] == "not-json":
            assert (answer.status_code, value["type"]) == (400, "/problems/not-json")
        elif said["ok"]:
            assert (answer.status_code, value) == (200, said["result"])
            accepted += 1
        else:
            assert answer.status_code == 422, text
            got = [(e["field"], e["code"], e["got"], e["need"]) for e in value["errors"]]
            assert got == [(p["field"], p["code"], p["got"], p["need"]) for p in said["problems"]]
    assert 100 < accepted < len(sent()) - 100


def test_the_document_admits_the_inputs_the_core_admits(document: Document) -> None:
    for name, text in sent():
        if json.loads(dispatch(name, text))["ok"]:
            schema = document.input_schema(f"/api/v1/calc/{name}")
            assert document.faults(json.loads(text), schema) == [], text


@pytest.mark.parametrize("name", sorted(CALCS))
def test_a_field_marked_required_is_missed_and_another_is_not(
    client, document: Document, name: str
) -> None:
    schema = document.input_schema(f"/api/v1/calc/{name}")
    for field in schema["properties"]:
        without = {key: value for key, value in INPUTS[name].items() if key != field}
        answer = post(client, name, without)
        if field in schema.get("required", []):
            errors = answer.get_json()["errors"]
            assert {"missing"} == {e["code"] for e in errors if e["field"] == field}, field
        elif field in INPUTS[name]:
            # Left out or null, it is at most what this method happens to need.
            for tried in (without, INPUTS[name] | {field: None}):
                errors = post(client, name, tried).get_json().get("errors", [])
                assert {e["code"] for e in errors} <= {"missing"}, field


# How many numbers of an input this is tried on at the least, where it has only a few.
FEW_NUMBERS = {"matrix": 2, "correction": 2, "pulls-needed": 4, "spark": 3}
TEXTS = {
    "NaN": ("not-finite", "NaN"),
    "Infinity": ("not-finite", "Infinity"),
    "-Infinity": ("not-finite", "-Infinity"),
    "1e400": ("not-finite", "Infinity"),
    "-1e400": ("not-finite", "-Infinity"),
    "1e300": ("out-of-range", 1e300),
    "-1": ("out-of-range", -1),
    "-1e-9": ("out-of-range", -1e-9),
    "9" * 400: ("out-of-range", "an integer beyond 2^53"),
    '"9.5"': ("not-a-number", "9.5"),
    '"9,5 mm"': ("not-a-number", "9,5 mm"),
    "true": ("not-a-number", True),
    "false": ("not-a-number", False),
    "[[1]]": ("not-a-number", "a list"),
    '{"a": 1}': ("not-a-number", "an object"),
}
MARK = "@@"


@pytest.mark.parametrize("name", sorted(CALCS))
@pytest.mark.parametrize("text", TEXTS, ids=lambda text: text[:12])
def test_every_number_of_every_input_refuses_what_is_no_number_of_its_range(
    client, document: Document, name: str, text: str
) -> None:
    code, got = TEXTS[text]
    path = f"/api/v1/calc/{name}"
    tried = 0
    for where, schema in document.numbers(document.input_schema(path)):
        number = got if code == "out-of-range" and not isinstance(got, str) else float("nan")
        if schema["minimum"] <= number <= schema["maximum"]:
            continue  # a temperature may be below zero
        payload = _for_its_method(name, where)
        body = json.dumps(put_at(payload, where, MARK)).replace(f'"{MARK}"', text)
        answer = post(client, name, body)
        problem = document.expect(answer, "post", path)
        assert answer.status_code == 422, (where, text)
        found = [e for e in problem["errors"] if e["field"] == dotted(where)]
        assert [(e["code"], e["got"]) for e in found] == [(code, got)], where
        assert found[0]["need"] in found[0]["detail"]
        assert found[0]["next_step"]
        tried += 1
    assert tried >= FEW_NUMBERS.get(name, 6)


MEASURED = {
    name: (quantity, uncertainty)
    for quantity, uncertainty in measurement.UNCERTAINTY.items()
    for name in (quantity, uncertainty)
}


def _for_its_method(name: str, where: tuple[str | int, ...]) -> dict[str, Any]:
    """Give an input whose method uses the number at a path."""
    payload = INPUTS[name]
    if name == "adjust" and where[-1] in ("reach", "mark"):
        vernier = {"kind": "vernier", "unit": "cam-deg", "reach": 5.0, "mark": 1.0}
        return payload | {"adjusters": [vernier]}
    if "drive" not in payload:
        return _for_its_lobe(name, payload, where)
    plain = {"drive": payload["drive"]}
    if name == "elongation" and where[0] == "readings_mm":
        return plain | {"method": "pin-to-pin", "pitches": 10}
    if name == "gear" and where[0] in ("teeth", "pitch_mm"):
        payload = {key: payload[key] for key in payload if key not in ("drive", "gear")}
        return payload | {"teeth": 44, "pitch_mm": 9.525}
    if name == "gear" and where[0] == "roller_diameter_mm":
        payload = {key: payload[key] for key in payload if key != "pin_diameter_mm"}
        return payload | {"method": "over-chain"}
    if name == "combined" and where[0] == "measurements":
        quantity, uncertainty = MEASURED[str(where[-1])]
        plain_measurement = {"quantity": quantity, quantity: 20, uncertainty: 0.1}
        return payload | {"measurements": [plain_measurement]}
    if name == "forecast" and where[0] == "readings" and where[-1] in MEASURED:
        quantity, uncertainty = MEASURED[str(where[-1])]
        reading = {"quantity": quantity, quantity: 5, uncertainty: 0.1}
        return payload | {"readings": [reading | {"distance_since_start_km": 0}]}
    if name == "crank-rock" and str(where[0]).endswith(("_mm", "own_limit")):
        return plain | {"method": "damper-arc", "readings_mm": [3.0], "damper_diameter_mm": 180}
    return payload


def _for_its_lobe(
    name: str, payload: dict[str, Any], where: tuple[str | int, ...]
) -> dict[str, Any]:
    """Give an input about lift whose method uses the number at a path."""
    if name == "clearance" and where[0] == "readings_mm":
        payload = {key: payload[key] for key in payload if key != "drops"} | {"method": "clay"}
    if name == "clearance" and where[0] == "own_limit":
        payload = payload | {"own_limit": {"quantity": "valve_clearance_mm", "source": "manual"}}
    if name == "matrix" and where[0] == "leave_out":
        payload = payload | {"leave_out": [{"rocker": "1.6"}]}
    if str(where[-2 if isinstance(where[-1], int) else -1]).startswith("table_"):
        lobe = {key: payload[where[0]][key] for key in ("angle_of", "lift_of")}
        if str(where[-1]) in ("table_ratio", "table_lash_mm"):
            lobe = payload[where[0]] | {"lift_of": "valve", "table_ratio": 1.5}
        payload = payload | {where[0]: lobe}
    return payload


def test_whole_numbers_must_be_whole(client, document: Document) -> None:
    for name in CALCS:
        path = f"/api/v1/calc/{name}"
        for where, schema in document.numbers(document.input_schema(path)):
            if "integer" in schema["type"]:
                answer = post(client, name, put_at(_for_its_method(name, where), where, 20.5))
                errors = {e["field"]: e["code"] for e in answer.get_json()["errors"]}
                assert errors[dotted(where)] == "not-whole"


def test_a_batch_answers_each_for_itself_and_in_order(client, document: Document) -> None:
    asked = [*islice(sent(), 300), ("drive", "5"), ("slack", "null")]
    # Whatever JSON the vectors hold, a batch is one JSON text.
    items = ", ".join(f'{{"calc": {json.dumps(name)}, "input": {text}}}' for name, text in asked)
    answer = post(client, "batch", f'{{"items": [{items}]}}')
    value = document.expect(answer, "post", "/api/v1/calc/batch")
    assert value["results"] == [json.loads(dispatch(name, text)) for name, text in asked]
    assert {row["ok"] for row in value["results"]} == {True, False}


@pytest.mark.parametrize(
    "item", [5, None, [], {}, {"calc": []}, {"calc": "limits", "input": {}}, {"calc": "x"}]
)
def test_a_bad_item_does_not_spoil_the_batch(client, document, slack, item: Any) -> None:
    good = {"calc": "slack", "input": slack}
    answer = post(client, "batch", {"items": [item, good]})
    value = document.expect(answer, "post", "/api/v1/calc/batch")
    assert answer.status_code == 200
    assert [row["ok"] for row in value["results"]] == [False, True]


def test_a_name_that_no_item_has_is_refused_as_everywhere(
    client, document: Document, slack
) -> None:
    items = [{"calc": "slack", "input": slack, "unit": "in"}]
    value = document.expect(post(client, "batch", {"items": items}), "post", "/api/v1/calc/batch")
    (problem,) = value["results"][0]["problems"]
    assert (problem["code"], problem["field"]) == ("unknown-field", "unit")


def test_an_empty_and_a_full_batch(client, slack) -> None:
    assert post(client, "batch", {"items": []}).get_json() == {"results": []}
    full = {"items": [{"calc": "slack", "input": slack}] * 1000}
    assert len(post(client, "batch", full).get_json()["results"]) == 1000


def test_the_tables_are_the_cores(client, document: Document) -> None:
    for name in ("limits", "materials", "glossary"):
        answer = client.get(f"/api/v1/{name}")
        assert document.expect(answer, "get", f"/api/v1/{name}") == run(name, {})


def test_an_answer_never_says_nan_and_carries_any_text() -> None:
    with pytest.raises(ValueError, match="not finite"):
        body.answer({"rows": [{"figure": math.inf}]})
    said = {"odd": "\ud800", "long": 2**70, "none": None, "pair": (1.5, "é")}
    assert body.answer(said).get_json() == said | {"pair": [1.5, "é"]}

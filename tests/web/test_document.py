"""The OpenAPI document: complete, exact, and the same as the committed one."""

import json
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from midspan.core import CALCS, glossary
from midspan.settings import Settings
from midspan.web import create_app
from midspan.web.openapi import MidspanApi
from web.document import Document

KEEPS_NOTHING = True
FIXTURE = Path(__file__).parents[2] / "fixtures" / "openapi.json"


def test_the_committed_document_is_todays(document: Document) -> None:
    again = "midspan openapi > fixtures/openapi.json"
    assert json.loads(FIXTURE.read_text(encoding="utf-8")) == document.whole, again


def test_the_service_serves_it(client, document: Document) -> None:
    answer = client.get("/api/v1/openapi.json")
    assert answer.mimetype == "application/json"
    assert answer.get_json() == json.loads(json.dumps(document.whole))
    assert document.whole["openapi"] == "3.1.0"


def test_it_is_made_when_asked_for_and_once_for_all_threads(monkeypatch) -> None:
    made = []
    describe = MidspanApi._describe
    monkeypatch.setattr(MidspanApi, "_describe", lambda api: (made.append(1), describe(api)))
    app = create_app(Settings(database_url="sqlite://"))
    assert app.test_client().get("/api/v1/limits").status_code == 200
    assert made == []
    with ThreadPoolExecutor(4) as threads:
        asked = [threads.submit(app.test_client().get, "/api/v1/openapi.json") for _ in range(8)]
    assert {one.result().status_code for one in asked} == {200}
    assert len({one.result().data for one in asked}) == 1
    assert made == [1]


def test_every_route_is_in_it(document: Document) -> None:
    app = create_app(Settings(database_url="sqlite://"))
    not_of_the_api = {"/", "/authority.crt", "/metrics", "/problems/{kind}", "/api/v1/openapi.json"}
    routes = {rule.rule.translate(str.maketrans("<>", "{}")) for rule in app.url_map.iter_rules()}
    assert routes - not_of_the_api == set(document.whole["paths"])


def test_every_component_is_valid_json_schema(document: Document) -> None:
    for schema in document.whole["components"]["schemas"].values():
        Draft202012Validator.check_schema(schema)


def test_every_component_says_what_it_is(document: Document) -> None:
    for method, path, operation in document.operations():
        assert operation.get("summary"), (method, path)


def test_every_request_and_response_has_an_example_that_fits(document: Document) -> None:
    seen = 0
    for method, path, operation in document.operations():
        bodies = [operation["requestBody"]] if "requestBody" in operation else []
        bodies += [document.resolved(response) for response in operation["responses"].values()]
        assert method not in ("put", "post") or "requestBody" in operation
        for body in bodies:
            for media in body["content"].values():
                assert media["examples"], (method, path)
                for example in media["examples"].values():
                    value = document.resolved(example)["value"]
                    assert document.faults(value, media["schema"]) == [], (method, path)
                    seen += 1
    assert seen > 60


def test_the_check_of_examples_sees_a_fault(document: Document) -> None:
    schema = {"$ref": "#/components/schemas/Drive"}
    assert document.faults({"pitch_mm": 2}, schema) != []


@pytest.mark.parametrize("name", sorted(CALCS))
def test_every_number_of_an_input_has_the_glossarys_range_and_meaning(
    document: Document, name: str
) -> None:
    found = list(document.numbers(document.input_schema(f"/api/v1/calc/{name}")))
    assert len(found) > 3
    for path, schema in found:
        term = glossary.TERMS[next(step for step in reversed(path) if isinstance(step, str))]
        assert (schema["minimum"], schema["maximum"]) == (term.low, term.high), path
        assert ("integer" in schema["type"]) == term.whole, path
        assert schema["description"].startswith(term.label), path
        assert term.meaning in schema["description"], path

"""No change breaks a client of the last release; and the check sees every kind of break."""

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from web.baseline import baseline, packed, refusal
from web.breaks import breaks
from web.document import Document

KEEPS_NOTHING = True
Json = dict[str, Any]
SLACK = "/api/v1/calc/slack"


def test_nothing_breaks_a_client_of_the_last_release(document: Document) -> None:
    found = breaks(baseline(), document.whole)
    assert found == [], "keep what clients rely on (DEVELOPERS.md, Versions)"


def small() -> Json:
    """A document small enough to see whole: a thing is put, and told again."""
    thing = {
        "type": "object",
        "required": ["size_mm"],
        "additionalProperties": False,
        "properties": {
            "size_mm": {"type": "number", "minimum": 1, "maximum": 9},
            "method": {"type": "string", "enum": ["one-way", "total"]},
            "readings": {"type": "array", "maxItems": 5, "items": {"type": ["number", "null"]}},
            "inner": {"$ref": "#/components/schemas/Thing"},
            "part": {"oneOf": [{"type": "string"}, {"type": "null"}]},
        },
    }
    put = {
        "security": [],
        "parameters": [{"in": "query", "name": "limit", "schema": {"type": "integer"}}],
        "requestBody": {"content": {"application/json": {"schema": {"$ref": REF + "Thing"}}}},
        "responses": {"200": {"$ref": "#/components/responses/Told"}},
    }
    told = {"content": {"application/json": {"schema": {"$ref": REF + "Answer"}}}}
    answer = {**deepcopy(thing), "required": ["size_mm", "method"]}
    answer["properties"].pop("inner")
    return {
        "info": {"x-core-version": "1.0.0"},
        "paths": {"/things": {"put": put, "delete": {"responses": {"204": {}}}}},
        "components": {"schemas": {"Thing": thing, "Answer": answer}, "responses": {"Told": told}},
    }


REF = "#/components/schemas/"


def thing(document: Json) -> Json:
    """What may be put."""
    found: Json = document["components"]["schemas"]["Thing"]
    return found


def answer(document: Json) -> Json:
    """What is told."""
    found: Json = document["components"]["schemas"]["Answer"]
    return found


def field(document: Json, name: str, **changed: object) -> None:
    """Change a field of what may be put."""
    thing(document)["properties"][name].update(changed)


def told(document: Json, name: str, **changed: object) -> None:
    """Change a field of what is told."""
    answer(document)["properties"][name].update(changed)


def put(document: Json) -> Json:
    """The operation."""
    found: Json = document["paths"]["/things"]["put"]
    return found


# What is done to the document, and what the check has to say of it.
BREAKS: list[tuple[Callable[[Json], object], str]] = [
    (lambda d: d["paths"].pop("/things"), "/things: gone"),
    (lambda d: d["paths"]["/things"].pop("delete"), "DELETE /things: gone"),
    (lambda d: put(d).update(security=[{"token": []}]), "takes a token now"),
    (lambda d: put(d)["parameters"].clear(), "query parameter limit gone"),
    (lambda d: put(d)["parameters"][0].update(required=True), "limit: required now"),
    (
        lambda d: put(d)["parameters"].append({"in": "query", "name": "of", "required": True}),
        "query parameter of: new and required",
    ),
    (lambda d: put(d)["requestBody"].update(required=True), "a body is required now"),
    (lambda d: put(d)["requestBody"]["content"].clear(), "request: application/json gone"),
    (lambda d: put(d)["responses"].clear(), "answer 200 gone"),
    (lambda d: thing(d)["properties"].pop("method"), "request.method: gone"),
    (lambda d: thing(d)["required"].append("method"), "request.method: required now"),
    (lambda d: field(d, "size_mm", minimum=2), "request.size_mm: minimum was 1, is 2"),
    (lambda d: field(d, "size_mm", maximum=8), "request.size_mm: maximum was 9, is 8"),
    (lambda d: field(d, "size_mm", exclusiveMinimum=0), "exclusiveMinimum was None, is 0"),
    (lambda d: field(d, "size_mm", type="integer"), "request.size_mm: type was ['number']"),
    (lambda d: field(d, "method", enum=["total"]), "value 'one-way' no longer taken"),
    (lambda d: field(d, "method", pattern="^t"), "request.method: pattern was None"),
    (lambda d: field(d, "readings", maxItems=4), "request.readings: maxItems was 5, is 4"),
    (lambda d: field(d, "readings", items={"type": "number"}), "request.readings[]: type was"),
    (lambda d: field(d, "part", oneOf=[{"type": "string"}]), "the form null is no longer taken"),
    (lambda d: answer(d)["properties"].pop("size_mm"), "answer 200.size_mm: gone"),
    (lambda d: answer(d)["required"].remove("method"), "answer 200.method: may be missing now"),
    (lambda d: told(d, "size_mm", type=["number", "null"]), "answer 200.size_mm: type was"),
    (lambda d: told(d, "size_mm", type="string"), "answer 200.size_mm: type was"),
    (lambda d: told(d, "method", type="integer"), "answer 200.method: type was ['string']"),
    (lambda d: answer(d)["properties"]["method"].pop("enum"), "any value now"),
    (lambda d: told(d, "readings", items={}), "answer 200.readings[]"),
    (lambda d: told(d, "part", oneOf=[{"type": "integer"}]), "the form integer is new"),
]

# What a client has to bear with.
HARMLESS: list[Callable[[Json], object]] = [
    lambda d: d["paths"].update({"/others": {"get": {"responses": {}}}}),
    lambda d: d["paths"]["/things"].update(get={"responses": {}}),
    lambda d: put(d)["parameters"].append({"in": "query", "name": "of"}),
    lambda d: put(d)["responses"].update({"201": {}}),
    lambda d: thing(d)["properties"].update(note={"type": "string"}),
    lambda d: thing(d)["required"].clear(),
    lambda d: field(d, "size_mm", minimum=0, maximum=10, type=["number", "null"]),
    lambda d: field(d, "method", enum=["one-way", "total", "sag"]),
    lambda d: field(d, "part", oneOf=[{"type": "null"}, {"type": "integer"}, {"type": "string"}]),
    lambda d: answer(d)["properties"].update(note={"type": "string"}),
    lambda d: answer(d)["required"].append("part"),
    lambda d: told(d, "size_mm", minimum=2, type="integer"),
    lambda d: told(d, "method", enum=["one-way", "total", "sag"]),
    lambda d: told(d, "part", oneOf=[{"type": "string"}, {"$ref": REF + "Thing"}]),
]


@pytest.mark.parametrize(("change", "said"), BREAKS, ids=[said for _, said in BREAKS])
def test_every_kind_of_break_is_seen(change: Callable[[Json], object], said: str) -> None:
    new = small()
    change(new)
    found = breaks(small(), new)
    assert any(said in line for line in found), found


@pytest.mark.parametrize("change", HARMLESS)
def test_what_only_adds_is_no_break(change: Callable[[Json], object]) -> None:
    new = small()
    change(new)
    assert new != small()
    assert breaks(small(), new) == []


def test_no_field_of_a_real_request_may_go(document: Document) -> None:
    """Deliberate breaks of the real document, one a field of an input."""
    schema = document.whole["components"]["schemas"]["SlackInput"]
    for name in schema["properties"]:
        new = deepcopy(document.whole)
        new["components"]["schemas"]["SlackInput"]["properties"].pop(name)
        assert f"POST {SLACK}: request.{name}: gone" in breaks(document.whole, new)


def test_the_baseline_may_be_written_again_until_it_is_released() -> None:
    broken, wider = small(), small()
    broken["paths"].clear()
    wider["paths"]["/others"] = {}
    assert refusal(small(), broken, set()) == ""
    assert refusal(small(), wider, {"v1.0.0"}) == ""
    assert "/things: gone" in refusal(small(), broken, {"v0.9.0", "v1.0.0"})


def test_the_same_document_is_packed_into_the_same_bytes() -> None:
    assert packed(small()) == packed(deepcopy(small()))

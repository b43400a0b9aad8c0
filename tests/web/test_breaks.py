"""No change breaks a client of the last release; and the check sees every kind of break."""

from collections.abc import Callable, Iterator
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest

from web.baseline import baseline, packed, refusal
from web.breaks import METHODS, breaks, unknown
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
            "at": {"type": "string", "format": "date-time"},
            "text": {"type": "string"},
        },
    }
    limit = {"type": "integer", "minimum": 1, "maximum": 500, "default": 100}
    kinds = {"type": "array", "items": {"type": "string", "enum": ["chain", "gear"]}}
    put = {
        "security": [],
        "parameters": [
            {"in": "query", "name": "limit", "schema": limit},
            {"in": "query", "name": "kind", "explode": False, "schema": kinds},
            {"in": "header", "name": "If-Match", "schema": {"type": "string"}},
        ],
        "requestBody": {"content": {"application/json": {"schema": {"$ref": REF + "Thing"}}}},
        "responses": {"200": {"$ref": "#/components/responses/Told"}},
    }
    told = {
        "content": {"application/json": {"schema": {"$ref": REF + "Answer"}}},
        "headers": {"ETag": {"schema": {"type": "string"}}},
    }
    delete = {"security": [{"token": ["member"]}], "responses": {"204": {}}}
    answer = {**deepcopy(thing), "required": ["size_mm", "method"]}
    answer["properties"].pop("inner")
    return {
        "info": {"x-core-version": "1.0.0"},
        "paths": {"/things": {"put": put, "delete": delete}},
        "components": {
            "schemas": {"Thing": thing, "Answer": answer, "Bare": {"type": "object"}},
            "responses": {"Told": told},
        },
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


def asked(document: Json, place: int, **changed: object) -> None:
    """Change what a parameter may be."""
    put(document)["parameters"][place]["schema"].update(changed)


def headers(document: Json) -> Json:
    """The headers of the answer."""
    found: Json = document["components"]["responses"]["Told"]["headers"]
    return found


def needs(document: Json, *roles: str) -> None:
    """Say whose token the other operation takes."""
    document["paths"]["/things"]["delete"]["security"] = [{"token": list(roles)}]


# What is done to the document, and what the check has to say of it.
BREAKS: list[tuple[Callable[[Json], object], str]] = [
    (lambda d: d["paths"].pop("/things"), "/things: gone"),
    (lambda d: d["paths"]["/things"].pop("delete"), "DELETE /things: gone"),
    (lambda d: put(d).update(security=[{"token": []}]), "takes a token now"),
    (lambda d: needs(d, "owner"), "DELETE /things: took the role member, takes owner now"),
    (lambda d: put(d)["parameters"].clear(), "query parameter limit gone"),
    (lambda d: put(d)["parameters"].clear(), "header parameter If-Match gone"),
    (lambda d: put(d)["parameters"][0].update(required=True), "limit: required now"),
    (lambda d: put(d)["parameters"][2].update(required=True), "If-Match: required now"),
    (lambda d: put(d)["parameters"][1].update(explode=True), "kind: explode was False, is True"),
    (
        lambda d: put(d)["parameters"].append({"in": "query", "name": "of", "required": True}),
        "query parameter of: new and required",
    ),
    (
        lambda d: put(d)["parameters"].append({"in": "header", "name": "Key", "required": True}),
        "header parameter Key: new and required",
    ),
    (
        lambda d: d["paths"]["/things"].update(
            parameters=[{"in": "header", "name": "Key", "required": True}]
        ),
        "header parameter Key: new and required",
    ),
    (lambda d: asked(d, 0, type="string"), "limit: type was ['integer'], is ['string']"),
    (lambda d: asked(d, 0, minimum=2), "limit: minimum was 1, is 2"),
    (lambda d: asked(d, 0, maximum=50), "limit: maximum was 500, is 50"),
    (lambda d: asked(d, 0, default=10), "limit: left out, it was 100, is 10"),
    (lambda d: asked(d, 1, items={"enum": ["chain"]}), "kind[]: value 'gear' no longer taken"),
    (lambda d: asked(d, 2, pattern="^W"), "If-Match: pattern was None"),
    (lambda d: put(d)["requestBody"].update(required=True), "a body is required now"),
    (lambda d: put(d)["requestBody"]["content"].clear(), "request: application/json gone"),
    (lambda d: put(d).pop("requestBody"), "request: application/json gone"),
    (lambda d: put(d)["responses"].clear(), "answer 200 gone"),
    (lambda d: put(d)["responses"].update({"200": {}}), "answer 200: application/json gone"),
    (lambda d: put(d)["responses"].update({"201": put(d)["responses"].pop("200")}), "200 gone"),
    (lambda d: headers(d).clear(), "answer 200: header ETag gone"),
    (lambda d: headers(d)["ETag"].update(schema={"type": "integer"}), "header ETag: type was"),
    (lambda d: thing(d)["properties"].pop("method"), "request.method: gone"),
    (lambda d: thing(d)["required"].append("method"), "request.method: required now"),
    (lambda d: field(d, "size_mm", minimum=2), "request.size_mm: minimum was 1, is 2"),
    (lambda d: field(d, "size_mm", maximum=8), "request.size_mm: maximum was 9, is 8"),
    (lambda d: field(d, "size_mm", exclusiveMinimum=0), "exclusiveMinimum was None, is 0"),
    (lambda d: field(d, "size_mm", type="integer"), "request.size_mm: type was ['number']"),
    (lambda d: field(d, "method", enum=["total"]), "value 'one-way' no longer taken"),
    (lambda d: field(d, "text", enum=["a", "b"]), "request.text: any value before"),
    (lambda d: field(d, "text", maxLength=9), "request.text: maxLength was None, is 9"),
    (lambda d: field(d, "at", format="date"), "request.at: format was date-time, is date"),
    (lambda d: field(d, "size_mm", multipleOf=2), "request.size_mm: multipleOf was None, is 2"),
    (lambda d: field(d, "inner", **{"$ref": REF + "Bare"}), "request.inner.size_mm: gone"),
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
    (lambda d: told(d, "method", enum=["total"]), "value 'one-way' no longer told"),
    (lambda d: told(d, "at", format="date"), "answer 200.at: format was date-time, is date"),
    (lambda d: answer(d)["properties"]["at"].pop("format"), "at: format was date-time, is None"),
    (lambda d: told(d, "readings", items={}), "answer 200.readings[]"),
    (lambda d: told(d, "part", oneOf=[{"type": "integer"}]), "the form integer is new"),
]

# What a client has to bear with.
HARMLESS: list[Callable[[Json], object]] = [
    lambda d: d["paths"].update({"/others": {"get": {"responses": {}}}}),
    lambda d: d["paths"]["/things"].update(get={"responses": {}}),
    lambda d: put(d)["parameters"].append({"in": "query", "name": "of"}),
    lambda d: asked(d, 0, minimum=0, maximum=900, description="How many."),
    lambda d: asked(d, 1, items={"type": "string", "enum": ["chain", "gear", "cover"]}),
    lambda d: needs(d, "reader"),
    lambda d: headers(d).update(Date={"schema": {"type": "string"}}),
    lambda d: put(d).update({"x-codeSamples": [], "deprecated": True, "description": "Put."}),
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


def schemas(document: Json) -> Iterator[Json]:
    """Every schema of a document, wherever it stands."""
    yield from document["components"]["schemas"].values()
    for item in document["paths"].values():
        for operation in [item, *(item[method] for method in METHODS if method in item)]:
            for parameter in operation.get("parameters", []):
                yield parameter["schema"]
            for body in [
                operation.get("requestBody", {}),
                *operation.get("responses", {}).values(),
            ]:
                for held in [*body.get("content", {}).values(), *body.get("headers", {}).values()]:
                    yield held["schema"]


def test_every_keyword_of_the_document_is_compared(document: Document) -> None:
    found = list(schemas(document.whole))
    assert len(found) > 400
    assert set().union(*map(unknown, found)) == set()
    assert unknown({"items": {"anyOf": [{"allOf": []}]}, "properties": {"a": {"not": {}}}}) == {
        "allOf", "not",
    }  # fmt: skip


def test_no_field_of_a_real_request_or_answer_may_go(document: Document) -> None:
    """Deliberate breaks of the real document, one a field."""
    for component, where in (("SlackInput", "request"), ("SlackResult", "answer 200")):
        schema = document.whole["components"]["schemas"][component]
        for name in schema["properties"]:
            new = deepcopy(document.whole)
            new["components"]["schemas"][component]["properties"].pop(name)
            assert f"POST {SLACK}: {where}.{name}: gone" in breaks(document.whole, new)


def test_neither_a_kind_of_problem_nor_a_role_may_change_unseen(document: Document) -> None:
    new = deepcopy(document.whole)
    new["components"]["schemas"]["Problem"]["properties"]["type"]["enum"].remove(
        "/problems/changed-meanwhile"
    )
    new["paths"]["/api/v1/engines"]["get"]["security"] = [{"deviceToken": ["owner"]}]
    found = breaks(document.whole, new)
    assert any("'/problems/changed-meanwhile' no longer told" in line for line in found)
    assert "GET /api/v1/engines: took the role reader, takes owner now" in found


def deprecated(node: Any, where: str = "") -> Iterator[tuple[str, str]]:
    """Give place and description of all that is marked as going, in a document or a part of it."""
    if isinstance(node, dict):
        if node.get("deprecated") is True:
            yield where, node.get("description", "")
        for name, part in node.items():
            yield from deprecated(part, f"{where}/{name}")
    elif isinstance(node, list):
        for place, part in enumerate(node):
            yield from deprecated(part, f"{where}/{place}")


def unexplained(document: Json, changelog: str) -> list[str]:
    """List what is marked as going without saying what takes its place, there and in the log."""
    newest = changelog.split("\n## ")[1]
    told = newest.partition("### Deprecated")[2].partition("\n### ")[0]
    return [
        where for where, said in deprecated(document)
        if "Instead: " not in said or said.partition("Instead: ")[2].rstrip(".") not in told
    ]  # fmt: skip


def test_what_is_deprecated_says_what_takes_its_place(document: Document) -> None:
    log = (Path(__file__).parents[2] / "CHANGELOG.md").read_text(encoding="utf-8")
    assert unexplained(document.whole, log) == []


def test_the_check_above_sees_what_is_not_explained() -> None:
    log = (
        "# Changes\n\n## 1.1.0\n\n### Deprecated\n\n- `method`: use `way`.\n\n### Added\n\n- `x`\n"
    )
    new = small()
    field(new, "method", deprecated=True)
    (place,) = unexplained(new, log)
    assert place.endswith("Thing/properties/method")
    field(new, "method", description="How. Instead: x.")
    assert unexplained(new, log) == [place]
    field(new, "method", description="How. Instead: `way`.")
    assert unexplained(new, log) == []


def test_the_baseline_may_be_written_again_until_it_is_released() -> None:
    broken, wider = small(), small()
    broken["paths"].clear()
    wider["paths"]["/others"] = {}
    assert refusal(small(), broken, set()) == ""
    assert refusal(small(), wider, {"v1.0.0"}) == ""
    assert "/things: gone" in refusal(small(), broken, {"v0.9.0", "v1.0.0"})


def test_the_same_document_is_packed_into_the_same_bytes() -> None:
    assert packed(small()) == packed(deepcopy(small()))
    shown = small()
    put(shown)["x-codeSamples"] = [{"lang": "Shell", "source": "curl"}]
    assert packed(shown) == packed(small())

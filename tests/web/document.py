"""The OpenAPI document, and whether an answer of the service is what it says."""

import copy
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from typing import Any

from jsonschema import Draft202012Validator, FormatChecker
from werkzeug.test import TestResponse

from midspan.web.openapi import document as build

METHODS = ("get", "put", "post", "delete", "patch")
ADDRESS = "urn:midspan:document"


_built = cache(build)


class Document:
    """The document, resolved where asked."""

    def __init__(self) -> None:
        self.whole = _built()

    def operations(self) -> Iterator[tuple[str, str, dict[str, Any]]]:
        """Give method, path and description of every operation."""
        for path, item in self.whole["paths"].items():
            for method in METHODS:
                if method in item:
                    yield method, path, item[method]

    def resolved(self, node: Any) -> Any:
        """Follow references until there is none."""
        while isinstance(node, dict) and "$ref" in node:
            found = self.whole
            for step in node["$ref"].removeprefix("#/").split("/"):
                found = found[step]
            node = found
        return node

    def faults(self, value: Any, schema: dict[str, Any]) -> list[str]:
        """Say where a value is not what a schema of the document says."""
        rooted = {"$schema": "https://json-schema.org/draft/2020-12/schema"}
        rooted |= {"components": self.whole["components"]} | schema
        validator = Draft202012Validator(rooted, format_checker=FormatChecker())
        return [f"{list(e.absolute_path)}: {e.message[:300]}" for e in validator.iter_errors(value)]

    def expect(self, answer: TestResponse, method: str, path: str) -> Any:
        """Fail unless an answer is one that the document describes; give its JSON."""
        described = self.whole["paths"][path][method]["responses"]
        response = described.get(str(answer.status_code), described["default"])
        if answer.status_code >= 400:
            response = described["default"]
        content = self.resolved(response)["content"]
        media_type = answer.mimetype
        assert media_type in content, f"{media_type} is not described for {answer.status_code}"
        value = answer.get_json(force=True)
        assert self.faults(value, content[media_type]["schema"]) == []
        return value

    def input_schema(self, path: str) -> dict[str, Any]:
        """Give the schema of a calculation's input."""
        content = self.whole["paths"][path]["post"]["requestBody"]["content"]
        found: dict[str, Any] = self.resolved(content["application/json"]["schema"])
        return found

    def numbers(self, schema: Any, path: tuple[str | int, ...] = ()) -> Iterator[Any]:
        """Give path and schema of every number in an input, those of parts included."""
        schema = self.resolved(schema)
        kinds = schema.get("type", [])
        kinds = [kinds] if isinstance(kinds, str) else kinds
        if "number" in kinds or "integer" in kinds:
            yield path, schema
        elif "array" in kinds:
            yield from self.numbers(schema["items"], (*path, 0))
        for name, part in schema.get("properties", {}).items():
            yield from self.numbers(part, (*path, name))
        for part in schema.get("anyOf", []) + schema.get("oneOf", []):
            yield from self.numbers(part, path)


def put_at(payload: dict[str, Any], path: tuple[str | int, ...], value: Any) -> dict[str, Any]:
    """Give a copy of a payload with another value at a path, making what leads there."""
    changed = copy.deepcopy(payload)
    node: Any = changed
    for step, after in pairwise(path):
        if isinstance(node, dict) and step not in node:
            node[step] = [0] if isinstance(after, int) else {}
        node = node[step]
    node[path[-1]] = value
    return changed


def dotted(path: tuple[str | int, ...]) -> str:
    """Give a path as problems name it."""
    text = "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in path)
    return text.removeprefix(".")

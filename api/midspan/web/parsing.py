"""Where the check of the shape ends and the core starts.

The input of a calculation goes to the core as it came: the core checks shape, range and physics
in one pass and names every problem. Its schema only documents. A record is loaded by its schema,
whose messages are the codes of problems, so both end in the same form.
"""

from collections.abc import Iterator, Mapping
from typing import Any, NoReturn

from marshmallow import Schema, ValidationError, fields
from webargs.flaskparser import FlaskParser

from midspan.core import glossary
from midspan.core.errors import Refused, problem

from . import body

# For codes whose fields do not say themselves what they need.
_NEEDS = {
    "unknown-field": ("no such field", "Check its name in the reference; nothing is dropped."),
    "not-an-object": ("an object", "Send named fields."),
}


class RecordParser(FlaskParser):
    """Loads a request through its schema; what the schema refuses becomes problems."""

    # A misspelt query parameter is refused like a misspelt field.
    DEFAULT_UNKNOWN_BY_LOCATION = {}  # noqa: RUF012

    def load_json(self, req: object, schema: Schema) -> Any:  # noqa: ANN401
        """Read the body in our own strict way."""
        return body.read()

    def handle_error(
        self, error: ValidationError, req: object, schema: Schema, **_: object
    ) -> NoReturn:
        """Raise the core's own Refused."""
        # webargs puts the messages under the location they were found in.
        (messages,) = error.messages_dict.values()
        raise Refused(list(problems_of(messages, schema, error.data))) from None


def problems_of(
    messages: object,
    described: Schema | fields.Field[Any] | None,
    got: object,
    path: str = "",
) -> Iterator[dict[str, object]]:
    """Walk marshmallow's messages, which are our codes, beside the schema and the data."""
    if isinstance(messages, dict):
        for key, inner in messages.items():
            if key == "_schema":
                yield from problems_of(inner, described, got, path)
                continue
            step = f"[{key}]" if isinstance(key, int) else f".{key}" if path else str(key)
            yield from problems_of(inner, _part(described, key), _dig(got, key), path + step)
        return
    for code in messages if isinstance(messages, list) else [messages]:
        yield _problem(str(code), described, got, path)


def _problem(
    code: str, described: Schema | fields.Field[Any] | None, got: object, path: str
) -> dict[str, object]:
    metadata = described.metadata if isinstance(described, fields.Field) else {}
    need, step = _NEEDS.get(code, (metadata.get("need", "another value"), "Correct it."))
    name = path.split(".")[-1].split("[")[0]
    label = glossary.label(name) if name in glossary.TERMS else ""
    return problem(code, path[:200], got, need, step, label)


def _part(
    described: Schema | fields.Field[Any] | None, key: str | int
) -> Schema | fields.Field[Any] | None:
    if isinstance(described, fields.Nested):
        described = described.schema
    if isinstance(described, fields.List):
        return described.inner
    return described.fields.get(str(key)) if isinstance(described, Schema) else None


def _dig(got: object, key: str | int) -> object:
    """Find what was received at a step of the path; None where nothing was."""
    if isinstance(got, Mapping):
        return got.get(key)
    return got[key] if isinstance(got, list) and isinstance(key, int) else None

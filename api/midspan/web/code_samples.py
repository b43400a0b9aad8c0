"""Each operation as curl and Python ask it, made from the document's own examples.

They stand in the document as `x-codeSamples` (OpenAPI extension registry), and the reference page
shows them. A sample runs as it is: address and token come from the environment, MIDSPAN_ADDRESS and
MIDSPAN_TOKEN, and a file it reads holds the example of the body.
"""

import json
from typing import Any

from apispec import BasePlugin

from . import sample_curl, sample_python
from .access import is_open
from .examples import ALL, RECORDS
from .nouns import BY_NAME
from .sample_call import CHANGES, Call

TAG = "C-07"
LINES = "application/x-ndjson"
# A longer body is read from a file.
LONGEST = 1500
SAVED = {"/api/v1/export": "midspan-export.json", "/api/v1/labels/{tag}.svg": "label.svg"}
# Long by nature.
READ = {"export-file": "midspan-export.json", "dyno-table": "dyno.csv"}


class CodeSamplesPlugin(BasePlugin):
    """Writes into the document how each operation is asked."""

    def operation_helper(
        self,
        path: str | None = None,
        operations: dict[str, Any] | None = None,
        **_: Any,  # noqa: ANN401
    ) -> None:
        """Add the samples of each operation of a path."""
        for method, operation in (operations or {}).items():
            found = calls(method.upper(), str(path), operation)
            operation["x-codeSamples"] = [one for call in found for one in both(call)]


def both(call: Call) -> list[dict[str, str]]:
    """Write one call in both languages, which are named as syntax highlighters know them."""
    ending = f", {call.what}" if call.what else ""
    return [
        {"lang": "Shell", "label": "curl" + ending, "source": sample_curl.write(call)},
        {"lang": "Python", "label": "Python" + ending, "source": sample_python.write(call)},
    ]


def calls(method: str, path: str, operation: dict[str, Any]) -> list[Call]:
    """Tell how an operation is asked; keeping a record also as a change of one that is kept."""
    content = operation.get("requestBody", {}).get("content", {})
    name = _example(content)
    parameters = {one["name"] for one in operation.get("parameters", []) if "name" in one}
    call = Call(
        method=method,
        place=path.replace("{tag}", TAG).replace("{id}", _identity(path, operation)),
        token=not is_open(path),
        media=next(iter(content), ""),
        body=ALL.get(name),
        file=_file(name),
        whence="GET /api/v1/export" if name == "export-file" else "",
        saved=SAVED.get(path, ""),
        paged=method == "GET" and "limit" in parameters,
        if_match=method == "DELETE" and "If-Match" in parameters,
        keyed=path.endswith("/sync"),
        lines=LINES in operation["responses"].get("200", {}).get("content", {}),
    )
    changed = _changeable(path, call)
    if not changed:
        return [call]
    return [call, call._replace(what="a change", if_match=True, changed=changed)]


def _example(content: dict[str, Any]) -> str:
    """Name the first example of a request or an answer; nothing if it has none."""
    return next((name for media in content.values() for name in media.get("examples", {})), "")


def _file(name: str) -> str:
    """Name the file that a body is read from; none for one that can be shown."""
    if name in READ or len(json.dumps(ALL.get(name))) <= LONGEST:
        return READ.get(name, "")
    return name.removesuffix("-write") + ".json"


def _identity(path: str, operation: dict[str, Any]) -> str:
    """Give the id of the record that the answer's example shows."""
    if path.endswith("/explanation"):
        return str(RECORDS["reading"]["id"])
    for response in operation["responses"].values():
        value = ALL.get(_example(response.get("content", {}))) if isinstance(response, dict) else 0
        if isinstance(value, dict) and "id" in value:
            return str(value["id"])
    return ""


def _changeable(path: str, call: Call) -> str:
    """Name the text of a record that a sample changes; none if such records never change."""
    noun = BY_NAME.get(path.removeprefix("/api/v1/").removesuffix("/{id}"))
    if call.method != "PUT" or noun is None or noun.model.append_only:
        return ""
    return next(field for field in CHANGES if field in noun.write().fields)

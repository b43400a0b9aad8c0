"""Each operation as curl and Python ask it, made from the document's own examples.

They are in the document as `x-codeSamples`, and the reference page shows them. Address and token
come from the environment, so that a sample runs as it stands: MIDSPAN_ADDRESS, MIDSPAN_TOKEN.
"""

import json
from typing import Any

from apispec import BasePlugin

from .access import is_open
from .examples import ALL

# A longer body is read from a file, which holds the example of the same name.
LONGEST = 1500
JSON = "application/json"
TAG = "MS-0001"


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
            operation["x-codeSamples"] = samples(method.upper(), str(path), operation)


def samples(method: str, path: str, operation: dict[str, Any]) -> list[dict[str, str]]:
    """Give the samples of one operation."""
    place = path.replace("{tag}", TAG).replace("{id}", _identity(path, operation))
    headers = {} if is_open(path) else {"Authorization": "Bearer $MIDSPAN_TOKEN"}
    if path.endswith("/sync"):
        # The same key again does nothing twice: a batch whose answer was lost is just sent again.
        headers["Idempotency-Key"] = '"01923f5e-8c00-7000-8000-0000000000ff"'
    name = _example(operation.get("requestBody", {}))
    if name:
        headers["Content-Type"] = JSON
    return [
        {"lang": "Shell", "label": "curl", "source": _curl(method, place, headers, name)},
        {"lang": "Python", "label": "Python", "source": _python(method, place, headers, name)},
    ]


def _example(described: dict[str, Any]) -> str:
    """Name the first example of a request or an answer; nothing if it has none."""
    examples = described.get("content", {}).get(JSON, {}).get("examples", {})
    return next(iter(examples), "")


def _identity(path: str, operation: dict[str, Any]) -> str:
    """Give the id of the record that the answer's example shows."""
    if path.endswith("/explanation"):
        return str(ALL["reading-record"]["id"])
    for response in operation.get("responses", {}).values():
        value = ALL.get(_example(response)) if isinstance(response, dict) else None
        if isinstance(value, dict) and "id" in value:
            return str(value["id"])
    return ""


def _body(name: str, indent: int | None) -> str | None:
    """Write the example out, or nothing if it is too long for that."""
    text = json.dumps(ALL[name], indent=indent, ensure_ascii=False)
    return text if len(json.dumps(ALL[name])) <= LONGEST else None


def _curl(method: str, place: str, headers: dict[str, str], name: str) -> str:
    """Ask with curl, which fails if the service refuses."""
    lines = [f'curl --fail-with-body -X {method} "$MIDSPAN_ADDRESS{place}"']
    for key, value in headers.items():
        quote = '"' if "$" in value else "'"
        lines.append(f"  -H {quote}{key}: {value}{quote}")
    if name:
        body = _body(name, None)
        quoted = f"@{name}.json" if body is None else "'" + body.replace("'", "'\\''") + "'"
        lines.append(f"  --data-binary {quoted}")
    return " \\\n".join(lines) + "\n"


def _python(method: str, place: str, headers: dict[str, str], name: str) -> str:
    """Ask with Python's own library, which raises if the service refuses."""
    lines = ["import json", "import os", "import urllib.request", ""]
    told = []
    for key, value in headers.items():
        if "$" in value:
            told.append(f'    "{key}": "Bearer " + os.environ["MIDSPAN_TOKEN"],')
        else:
            told.append(f"    {json.dumps(key)}: {value!r},")
    lines += ["headers = {", *told, "}"] if told else ["headers = {}"]
    if name:
        body = _body(name, 2)
        if body is None:
            lines += [f'with open("{name}.json", "rb") as file:', "    body = file.read()"]
        else:
            # JSON as text, since null, true and false are not Python.
            lines += [
                f'body = rb"""{body}"""' if body.isascii() else f'body = r"""{body}""".encode()'
            ]
    lines += [
        "request = urllib.request.Request(",
        f'    os.environ["MIDSPAN_ADDRESS"] + "{place}", method="{method}", headers=headers,',
        f"    data={'body' if name else 'None'},",
        ")",
        "with urllib.request.urlopen(request) as answer:",
        "    print(answer.status, answer.read().decode())",
    ]
    if not any("json." in line for line in lines[4:] if "open(" not in line):
        lines.remove("import json")
    return "\n".join(lines) + "\n"

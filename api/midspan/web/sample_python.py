"""Samples in Python, with its own library alone, so that they run with nothing installed."""

import json
from typing import Any

from .sample_call import CHANGES, Call
from .schemas.records import ADDED

WIDE = 92


def write(call: Call) -> str:
    """Write a call as a program."""
    parts = [_imports(call), *_start(call)]
    if call.paged:
        parts.append(_pages(call))
    else:
        if call.if_match:
            parts += _found(call)
        parts.append(_asked(call))
    return "\n".join(line for part in parts for line in part) + "\n"


def _imports(call: Call) -> list[str]:
    names = ["os", "urllib.request", "shutil" if call.saved else "json"]
    if _may_be_refused(call):
        names.append("urllib.error")
    if call.keyed:
        names.append("uuid")
    return [f"import {name}" for name in sorted(names)] + [""]


def _may_be_refused(call: Call) -> bool:
    """Tell whether what is sent may be at fault, so that the answer says how."""
    return bool(call.media or call.if_match)


def _start(call: Call) -> list[list[str]]:
    """Give the lines that everything else rests on."""
    headers = {}
    if call.token:
        headers["Authorization"] = '"Bearer " + os.environ["MIDSPAN_TOKEN"]'
    if call.keyed:
        headers["Idempotency-Key"] = "f'\"{uuid.uuid4()}\"'"
    if call.media:
        headers["Content-Type"] = json.dumps(call.media)
    said = []
    if call.keyed:
        said = ["# Keep the key with its batch until it is answered: sent again, it is done once."]
    parts = [[f'address = os.environ["MIDSPAN_ADDRESS"] + "{call.address}"'], said]
    if headers:
        told = [f'"{name}": {value}' for name, value in headers.items()]
        line = "headers = {" + ", ".join(told) + "}"
        if len(line) > WIDE:
            parts.append(["headers = {", *(f"    {one}," for one in told), "}"])
        else:
            parts.append([line])
    if call.media and not call.changed:
        parts.append(_body(call))
    return parts


def _body(call: Call) -> list[str]:
    if call.file:
        said = [f"# {call.file_said}"] if call.file_said else []
        return [*said, f'with open("{call.file}", "rb") as file:', "    body = file.read()"]
    return (f"body = {literal(call.body)}").split("\n")


def _found(call: Call) -> list[list[str]]:
    """Get the record that is to be changed or deleted, for its ETag."""
    lines = [
        "with urllib.request.urlopen(urllib.request.Request(address, headers=headers)) as answer:",
        "    record = json.load(answer)",
        '    headers["If-Match"] = answer.headers["ETag"]',
    ]
    if not call.changed:
        return [[lines[0], lines[2]]]
    added = ", ".join(json.dumps(name) for name in ("id", *ADDED))
    lines += [
        f"for name in ({added}):  # the service's own",
        "    del record[name]",
        f'record["{call.changed}"] = {json.dumps(CHANGES[call.changed])}',
    ]
    return [lines]


def _request(call: Call, address: str = "address") -> str:
    words = [address]
    if call.media and (call.changed or not call.file):
        words.append(f"data=json.dumps({'record' if call.changed else 'body'}).encode()")
    elif call.media:
        words.append("data=body")
    if call.token or call.media:
        words.append("headers=headers")
    if call.method != "GET":
        words.append(f'method="{call.method}"')
    return f"urllib.request.Request({', '.join(words)})"


def _asked(call: Call) -> list[str]:
    """Ask, and say what was refused and why: its answer is a problem detail (RFC 9457)."""
    request = _request(call)
    lines = [f"request = {request}"]
    if len(lines[0]) > WIDE:
        inner = request.removeprefix("urllib.request.Request(").removesuffix(")")
        lines = ["request = urllib.request.Request(", f"    {inner}", ")"]
    taken = _taken(call)
    if not _may_be_refused(call):
        return lines + taken
    lines += ["try:", *(f"    {line}" for line in taken)]
    lines += ["except urllib.error.HTTPError as refused:", "    problem = json.load(refused)"]
    if call.if_match:
        lines.append('    print("Kept by now:", problem.get("theirs"))')
    if call.media:
        lines += [
            '    for error in problem.get("errors", []):',
            '        print(error["field"], "needs", error["need"])',
        ]
    return [*lines, '    raise SystemExit(problem["detail"])']


def _taken(call: Call) -> list[str]:
    opened = "with urllib.request.urlopen(request) as answer"
    if call.saved:
        return [
            f'{opened}, open("{call.saved}", "wb") as file:',
            "    shutil.copyfileobj(answer, file)",
        ]
    if call.lines:
        return [f"{opened}:", "    for line in answer:", "        print(json.loads(line))"]
    return [f"{opened}:", "    print(json.load(answer))"]


def _pages(call: Call) -> list[str]:
    """Go through all pages, each told by the one before."""
    going_on = call.place.endswith("/changes")
    return [
        'after, more = "", True',
        "while more:",
        f"    request = {_request(call, 'address + after')}",
        "    with urllib.request.urlopen(request) as answer:",
        "        page = json.load(answer)",
        '    for item in page["items"]:',
        "        print(item)",
        '    more = page["more"]' if going_on else '    more = page["next"] is not None',
        "    after = f\"&after={page['next']}\"",
        *(['print("What changes from now on comes after", page["next"])'] if going_on else []),
    ]


def literal(value: Any, indent: int = 0) -> str:  # noqa: ANN401  (any JSON value)
    """Write a JSON value as Python, in lines that are not too long."""
    if isinstance(value, dict):
        items = [(f"{json.dumps(key, ensure_ascii=False)}: ", one) for key, one in value.items()]
        opening, closing = "{", "}"
    elif isinstance(value, list):
        items = [("", one) for one in value]
        opening, closing = "[", "]"
    elif isinstance(value, str):
        return json.dumps(value, ensure_ascii=False)
    else:
        return repr(value)
    short = opening + ", ".join(key + literal(one) for key, one in items) + closing
    if len(short) + indent < WIDE - 20 and "\n" not in short:
        return short
    space = " " * (indent + 4)
    lines = [f"{space}{key}{literal(one, indent + 4)},\n" for key, one in items]
    return f"{opening}\n{''.join(lines)}{' ' * indent}{closing}"

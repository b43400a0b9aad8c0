"""Samples for a shell: curl, which is told to fail if the service refuses."""

import json

from .sample_call import CHANGES, KEY, Call


def write(call: Call) -> str:
    """Write a call as a command."""
    words = [f'"$MIDSPAN_ADDRESS{call.address}"']
    if call.method != "GET":
        words.insert(0, f"-X {call.method}")
    lines = ["curl --fail-with-body " + " ".join(words), *_headers(call)]
    if call.file:
        lines.append(f"--data-binary @{call.file}")
    elif call.media:
        body = call.body | {call.changed: CHANGES[call.changed]} if call.changed else call.body
        lines.append("--data-binary " + _quoted(json.dumps(body, ensure_ascii=False)))
    if call.saved:
        lines.append(f"--output {call.saved}")
    return "".join(f"# {said}\n" for said in _said(call)) + " \\\n  ".join(lines) + "\n"


def _said(call: Call) -> list[str]:
    """Say what the command itself does not."""
    said = []
    if call.paged:
        said.append('The next page: the same with &after= and the "next" of this one.')
    if call.if_match:
        said.append("If-Match: the ETag that came with the record as you know it.")
    if call.keyed:
        said.append(
            "Another key for each batch; sent again, a batch keeps its key: it is done once."
        )
    return [*said, call.file_said] if call.file_said else said


def _headers(call: Call) -> list[str]:
    found = []
    if call.token:
        found.append('-H "Authorization: Bearer $MIDSPAN_TOKEN"')
    if call.if_match:
        found.append("-H " + _quoted('If-Match: "1"'))
    if call.keyed:
        found.append("-H " + _quoted(f"Idempotency-Key: {KEY}"))
    if call.media:
        found.append("-H " + _quoted(f"Content-Type: {call.media}"))
    return found


def _quoted(text: str) -> str:
    """Quote for a POSIX shell."""
    return "'" + text.replace("'", "'\\''") + "'"

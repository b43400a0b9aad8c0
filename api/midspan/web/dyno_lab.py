"""Big dyno tables: read as they come in, and told as they are read."""

import json
from collections.abc import Iterator
from typing import Any

from flask import Response, current_app, request, stream_with_context

from midspan.core.dyno_table import check_layout
from midspan.core.fields import Form
from midspan.lab import dyno_table

from .body import parse
from .example_names import named
from .lab import LabBlueprint
from .problems import Problem
from .schemas.dyno_lab import TableQuerySchema

blp = LabBlueprint(
    "dyno-lab", __name__, url_prefix="/api/v1/lab",
    description="Tables of a dyno, too big for a phone. Nothing is kept.",
)  # fmt: skip

# A page of another site may send a text/plain form, but never these, without being asked.
SENT_AS = ("text/csv", "text/tab-separated-values", "application/octet-stream")
_BODY = {
    "required": True,
    "description": "The file itself: CSV or TSV, UTF-8 or Latin-1.",
    "content": {"text/csv": {"schema": {"type": "string"}, "examples": named("dyno-table")}},
}
_ANSWER = {
    "description": "Lines of JSON, sent as the file is read: bytes and rows so far, and last the "
    "layout with the pulls (done), or done null where speed and torque or power were not found.",
    "content": {
        "application/x-ndjson": {
            "schema": {"type": "string"}, "examples": named("dyno-table-answer"),
        }
    },
}  # fmt: skip


@blp.post("/dyno-table")
@blp.arguments(TableQuerySchema, location="query")
@blp.doc(requestBody=_BODY, responses={"200": _ANSWER})
def table(query: dict[str, Any]) -> Response:
    """Read a dyno's table: its pulls, each reduced to a curve, and every row left out."""
    if request.mimetype not in SENT_AS:
        raise Problem("not-sent-as-table")
    request.max_content_length = current_app.config["MIDSPAN_MAX_TABLE_BYTES"]
    layout = _layout(query.get("layout"))
    source = request.stream  # refuses a body that is told to be too large
    lines = _lines(dyno_table.read(source, layout), request.max_content_length)
    return Response(stream_with_context(lines), content_type="application/x-ndjson")


def _layout(text: str | None) -> dict[str, Any] | None:
    if text is None:
        return None
    layout = parse(text.encode())
    form = Form({})
    check_layout(form, layout)
    form.finish()
    assert isinstance(layout, dict)  # noqa: S101  (finish raised otherwise)
    return layout


def _lines(told: Iterator[dict[str, Any]], most: int | None) -> Iterator[str]:
    """Write each answer as a line; a body cut at the limit is said, never taken for the whole."""
    read = 0
    for one in told:
        read = one.get("bytes", read)
        if "done" in one and most is not None and read >= most:
            one = one | {"done": None, "cut_at_bytes": most}
        yield json.dumps(one, allow_nan=False, ensure_ascii=False) + "\n"

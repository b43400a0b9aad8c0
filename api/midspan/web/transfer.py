"""Everything out as one open file, and back in."""

from collections.abc import Iterator
from datetime import UTC, datetime
from itertools import chain
from typing import Any

from flask import Response, current_app, request
from flask_smorest import Blueprint

from . import body, readings_csv, transfer_file
from .access import shop
from .example_names import named
from .parsing import RecordParser
from .schemas import transfer as s
from .schemas.record_fields import MOST_NESTING
from .settling import store

_BLOCK = 64 * 1024


class TransferParser(RecordParser):
    """Leaves the body to the view, which answers each record for itself; reads queries."""

    def parse(self, argmap: Any, req: Any = None, *, location: Any = None, **more: Any) -> Any:  # noqa: ANN401
        """Read a query strictly; take no part in a body."""
        if location == "query":
            return super().parse(argmap, req, location=location, **more)
        return None


class TransferBlueprint(Blueprint):
    """Documents the file by its schema."""

    ARGUMENTS_PARSER = TransferParser()


blp = TransferBlueprint(
    "transfer", __name__, url_prefix="/api/v1",
    description="Everything out as one open file, and back in.",
)  # fmt: skip

_ANSWER = {
    "description": "The file, sent as it is read. Records that were deleted are tombstones.",
    "headers": {"Content-Disposition": {"schema": {"type": "string"}}},
    "content": {
        "application/json": {
            "schema": {"$ref": "#/components/schemas/ExportFile"},
            "examples": named("export-file"),
        },
        "text/csv": {"schema": {"type": "string"}, "examples": named("export-csv")},
    },
}


@blp.get("/export")
@blp.arguments(s.ExportQuerySchema, location="query")
@blp.doc(responses={"200": _ANSWER})
def export(query: dict[str, Any]) -> Response:
    """Export everything of the shop as JSON, or its readings as CSV."""
    if query.get("format") == "csv":
        ending, kind = "csv", "text/csv; charset=utf-8; header=present"
        pieces = readings_csv.write(store(), shop())
    else:
        ending, kind = "json", "application/json"
        pieces = transfer_file.write(store(), shop())
    # The first piece is made here, so that a store that cannot be read is answered as a problem.
    answer = Response(_blocks(chain([next(pieces)], pieces)), content_type=kind)
    name = f"midspan-{datetime.now(UTC):%Y-%m-%d}.{ending}"
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return answer


@blp.post("/import")
@blp.arguments(s.ExportFileSchema, examples=named("export-file"))
@blp.arguments(s.ImportQuerySchema, location="query")
@blp.response(200, s.ImportReportSchema, examples=named("import-report"))
def take_in(_: object, query: dict[str, Any]) -> dict[str, Any]:
    """Take in a file: what is new is added, what differs is reported, nothing is overwritten."""
    request.max_content_length = current_app.config["MIDSPAN_MAX_IMPORT_BYTES"]
    file, _ = body.parse_many(body.received(), MOST_NESTING)
    return transfer_file.read(store(), shop(), file, frozenset(query.get("take", ())))


def _blocks(pieces: Iterator[str]) -> Iterator[bytes]:
    """Put pieces together: each that goes out by itself costs a packet."""
    held: list[str] = []
    size = 0
    for piece in pieces:
        held.append(piece)
        size += len(piece)
        if size >= _BLOCK:
            yield "".join(held).encode()
            held, size = [], 0
    yield "".join(held).encode()

"""Problem details (RFC 9457): the one builder of every error body, and what leads to it."""

import logging
import re
from typing import NamedTuple
from urllib.parse import quote
from uuid import uuid4

from flask import Response, current_app, json, request
from werkzeug.exceptions import HTTPException

from midspan.core.errors import Refused, problem
from midspan.store import at_head

MEDIA_TYPE = "application/problem+json"
PATH = "/problems/"
log = logging.getLogger(__name__)


class Kind(NamedTuple):
    """A kind of problem that HTTP alone does not explain."""

    status: int
    title: str
    detail: str


KINDS = {
    "input-refused": Kind(
        422, "Input refused", "Correct the fields named in errors and send it again."
    ),
    "not-json": Kind(
        400, "Not JSON", "Send one JSON object, in UTF-8. Nothing of this request was kept."
    ),
    "not-sent-as-json": Kind(
        415, "Not sent as JSON", "Send the body as Content-Type: application/json."
    ),
    "not-sent-as-table": Kind(
        415, "Not sent as a table", "Send the file as Content-Type: text/csv."
    ),
    "body-too-large": Kind(413, "Too large", "Send less at a time, or raise the server's limit."),
    "reading-exists": Kind(
        409,
        "A different reading or run has this id",
        "Neither is ever overwritten; the stored one is untouched. Send yours under a new id.",
    ),
    "changed-meanwhile": Kind(
        412,
        "Changed meanwhile",
        "The record as kept is not the one yours was made from; nothing was changed. Compare "
        "yours with theirs, then send what is to be kept, made from their version.",
    ),
    "version-needed": Kind(
        428,
        "Version needed",
        "Another record is kept under this id. Get it, and send its ETag as If-Match.",
    ),
    "sent-twice": Kind(
        422, "Sent twice", "A batch changes a record once. Send the second change in another."
    ),
    "key-needed": Kind(
        400,
        "Idempotency-Key needed",
        'Send a header such as Idempotency-Key: "01923f5e-8c00-7000-8000-000000000001", another '
        "for each batch, and the same when a batch is sent again.",
    ),
    "key-reused": Kind(
        422, "Idempotency-Key reused", "This key was sent with another batch. Make a new one."
    ),
    "cursor-unknown": Kind(
        410,
        "Cursor unknown",
        "It is of another history of these records. Begin again without after.",
    ),
    "no-such-record": Kind(404, "No such record", "List the records to see their ids."),
    "not-paired": Kind(
        401,
        "Not paired",
        "This takes the token of a device paired with the shop: none came, or it was revoked. "
        "Pair this device: run midspan pair where the service runs, or ask an owner for a code.",
    ),
    "not-allowed": Kind(
        403, "Not allowed", "Ask an owner of the shop to pair this device with another role."
    ),
    "code-refused": Kind(
        403,
        "Pairing code refused",
        "It is wrong, used, older than 10 minutes, or too many wrong codes came. Make a new one: "
        "run midspan pair where the service runs, or in the settings of an owner's device.",
    ),
    "too-many-requests": Kind(
        429, "Too many requests", "Wait as long as Retry-After says, in seconds; then try again."
    ),
    "no-authority": Kind(
        404,
        "No authority of its own",
        "This service signs no certificates. To answer phones, start it with: midspan serve --lan",
    ),
    "foreign-host": Kind(
        400, "Foreign host", "This service answers only to the names it was started with."
    ),
    "store-unavailable": Kind(
        503, "Store unavailable", "The database cannot be used now. Keep what you have; try again."
    ),
    "store-not-migrated": Kind(
        503,
        "Store not migrated",
        "The database is not at this version's form. Run: midspan migrate",
    ),
    "unexpected": Kind(
        500, "Unexpected error", "A fault of the service, not of your input. It was logged."
    ),
}
# What programs tell problems apart by; HTTP's own have none but their status.
TYPES = ["about:blank", *(PATH + kind for kind in KINDS)]


class Problem(Exception):  # noqa: N818  (it is what goes out, not a fault)
    """Raise to answer with a problem of one of KINDS."""

    def __init__(
        self, kind: str, detail: str = "", headers: dict[str, str] | None = None, **more: object
    ) -> None:
        """Take the kind's own detail unless a better one is given; `more` goes into the body."""
        super().__init__(kind)
        self.kind = kind
        self.detail = detail
        self.headers = headers
        self.more = more

    @property
    def status(self) -> int:
        """The HTTP status of its kind."""
        return KINDS[self.kind].status

    def body(self, instance: str) -> dict[str, object]:
        """Build the body of the error."""
        kind = KINDS[self.kind]
        detail = self.detail or kind.detail
        return body(PATH + self.kind, kind.title, kind.status, detail, instance) | self.more


def pointer(field: str) -> str:
    """Turn a dotted path into a JSON pointer in a URI fragment (RFC 6901, section 6)."""
    parts = [part for part in re.split(r"[.\[\]]+", field) if part]
    return "#" + "".join("/" + quote(p.replace("~", "~0").replace("/", "~1")) for p in parts)


def as_error(found: dict[str, object]) -> dict[str, object]:
    """Give a problem of the core as an item of `errors`."""
    return {
        "field": found["field"],
        "pointer": pointer(str(found["field"])),
        "code": found["code"],
        "got": found["got"],
        "need": found["need"],
        "detail": found["text"],
        "next_step": found["next_step"],
    }


def body(
    type_: str,
    title: str,
    status: int,
    detail: str,
    instance: str,
    errors: list[dict[str, object]] | None = None,
) -> dict[str, object]:
    """Build the body of an error."""
    built: dict[str, object] = {
        "type": type_,
        "title": title,
        "status": status,
        "detail": detail,
        "instance": instance,
    }
    return built if errors is None else built | {"errors": errors}


def refused_body(problems: list[dict[str, object]], instance: str) -> dict[str, object]:
    """Build the body for refused input."""
    kind = KINDS["input-refused"]
    errors = [as_error(found) for found in problems]
    detail = f"{problems[0]['text']} {problems[0]['next_step']}"
    if len(problems) > 1:
        detail += f" And {len(problems) - 1} more: see errors."
    return body(PATH + "input-refused", kind.title, kind.status, detail, instance, errors)


def _respond(built: dict[str, object], headers: dict[str, str] | None = None) -> Response:
    status = int(str(built["status"]))
    return current_app.response_class(json.dumps(built), status, headers, content_type=MEDIA_TYPE)


def on_refused(refused: Refused) -> Response:
    """Answer input that the core, or a record's schema, refused."""
    return _respond(refused_body(refused.problems, request.path))


def on_problem(raised: Problem, instance: str | None = None) -> Response:
    """Answer a problem of one of KINDS."""
    return _respond(raised.body(instance or request.path), raised.headers)


# What the framework itself raises, and the kind that explains it better than its status.
_FRAMEWORK = {"SecurityError": "foreign-host", "RequestEntityTooLarge": "body-too-large"}


def on_http(error: HTTPException) -> Response:
    """Answer what HTTP itself refuses: no such address, method not allowed, and so on."""
    kind = _FRAMEWORK.get(type(error).__name__)
    if kind is not None:
        return on_problem(Problem(kind))
    status = error.code or 500
    kept = {k: v for k, v in error.get_headers() if k in ("Allow", "Retry-After")}
    detail = str(error.description or error.name)
    return _respond(body(TYPES[0], error.name, status, detail, request.path), kept)


def on_unexpected(error: Exception) -> Response:
    """Answer a fault of ours: log all of it under an id, tell the client only the id."""
    instance = uuid4().urn
    log.error("unexpected error %s on %s", instance, request.path, exc_info=error)
    return on_problem(Problem("unexpected"), instance)


def on_store(error: Exception) -> Response:
    """Answer a database that cannot be reached or stays locked; its words stay in the log."""
    log.error("store unavailable on %s", request.path, exc_info=error)
    return on_problem(Problem("store-unavailable"))


def on_query(error: Exception) -> Response:
    """Answer a query the database does not understand: not migrated yet, or a fault of ours."""
    if not at_head(current_app.extensions["midspan"]):
        return on_problem(Problem("store-not-migrated"))
    return on_unexpected(error)


def refuse(code: str, field: str, got: object, need: str, next_step: str) -> Refused:
    """Make the refusal of one field, in the core's form."""
    return Refused([problem(code, field, got, need, next_step)])

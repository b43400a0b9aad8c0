"""What is kept, one record or page at a time: the same views for every noun."""

import re
from collections.abc import Container
from typing import Any
from uuid import UUID

from flask import request
from flask_smorest import Blueprint

from midspan.store import Reading, sync
from midspan.store import explain as explain_reading
from midspan.store import records as kept
from midspan.store.models import Record

from .access import shop
from .example_names import named
from .nouns import NOUNS, Noun
from .parsing import RecordParser
from .problems import KINDS, Problem, refuse
from .schemas import records as s
from .schemas.record_fields import IDENTIFIER, NEED_IDENTIFIER, as_identifier
from .settling import STATUS, objection, store

ID = {
    "in": "path",
    "name": "id",
    "required": True,
    "schema": {"type": "string", "format": "uuid", "pattern": IDENTIFIER},
    "description": "A UUID of version 7, made where the record was made.",
}
IF_MATCH = {
    "in": "header",
    "name": "If-Match",
    "schema": {"type": "string"},
    "example": '"1"',
    "description": "ETag of the record that the change was made from. A new record needs none.",
}
ETAG = {
    "ETag": {
        "schema": {"type": "string"},
        "example": '"1"',
        "description": "The record's version, for If-Match.",
    }
}


class RecordBlueprint(Blueprint):
    """Loads what is sent through its schema; refuses in the core's form."""

    ARGUMENTS_PARSER = RecordParser()


blp = RecordBlueprint(
    "records", __name__, url_prefix="/api/v1",
    description="What is kept, of the shop that the device is paired with.",
)  # fmt: skip


@blp.url_value_preprocessor
def read_id(_endpoint: str | None, values: dict[str, Any] | None) -> None:
    """Turn the id in the address into a UUID, or refuse it."""
    if values and "id" in values:
        found = as_identifier(values["id"])
        if found is None:
            raise refuse("not-an-id", "id", values["id"], NEED_IDENTIFIER, "Make a new one.")
        values["id"] = found


def offer(noun: Noun) -> None:
    """Add the four views of one kind of record: keep, get, list, delete."""
    example = named(f"{noun.one}-record")
    shown = {"schema": noun.record, "examples": example, "headers": ETAG}
    said = noun.many.replace("-", " ")
    again = "a change needs If-Match"
    gone = f"Delete one of the {said}; its id and last form are kept."
    if noun.model.append_only:
        again = "the same again changes nothing, and another is refused"
        gone = f"Set one of the {said} aside; it is kept whole, and can be brought back by PUT."
    one = f"/{noun.many}/<id>"
    # Views of one address share its parameters in the document; a header is of some of them only.
    made_from = {"parameters": [IF_MATCH]}

    @blp.route(one, methods=["PUT"], endpoint=f"put-{noun.one}", parameters=[ID])
    @blp.doc(summary=f"Keep one of the {said} under its id; {again}.", **made_from)
    @blp.arguments(noun.write, examples=named(f"{noun.one}-write"))
    @blp.response(200, description="Kept already, or changed.", **shown)
    @blp.alt_response(201, description="New.", success=True, **shown)
    def put(values: dict[str, Any], id: UUID) -> Any:  # noqa: ANN401
        if noun.check is not None:
            noun.check(values)
        return _change(noun, id, values)

    @blp.route(one, methods=["DELETE"], endpoint=f"delete-{noun.one}", parameters=[ID])
    @blp.doc(summary=gone, **made_from)
    @blp.response(200, description="Deleted, now or before.", **shown)
    def delete(id: UUID) -> Any:  # noqa: ANN401
        return _change(noun, id, None)

    @blp.route(one, endpoint=f"get-{noun.one}", parameters=[ID])
    @blp.doc(summary=f"Get one of the {said}.")
    @blp.arguments(s.DeletedQuerySchema, location="query")
    @blp.response(200, **shown)
    def get(query: dict[str, Any], id: UUID) -> Any:  # noqa: ANN401
        return _answer(_find(noun.model, id, deleted=query["deleted"]))

    @blp.route(f"/{noun.many}", endpoint=f"list-{noun.many}")
    @blp.doc(summary=f"List the {said}, page by page, in the order of their ids.")
    @blp.arguments(s.PageQuerySchema, location="query")
    @blp.response(200, s.page_of(noun.record), examples=named(f"{noun.one}-page"))
    def page(query: dict[str, Any]) -> dict[str, Any]:
        with store().reading() as session:
            after, limit, deleted = query.get("after"), query["limit"], query["deleted"]
            rows, following = kept.page(
                session, noun.model, shop(), after, limit, deleted=deleted
            )  # fmt: skip
        return {"items": rows, "next": following}


for _noun in NOUNS:
    offer(_noun)


@blp.route("/readings/<id>/explanation", parameters=[ID])
@blp.response(200, s.ExplanationSchema, examples=named("explanation"))
def explanation(id: UUID) -> dict[str, Any]:
    """Show a stored reading beside what today's calculations make of the same input."""
    return explain_reading(_find(Reading, id, deleted=True))


def _change(noun: Noun, id: UUID, values: dict[str, Any] | None) -> Any:  # noqa: ANN401
    """Do one change, made from the version that If-Match names."""
    header = request.headers.get("If-Match")
    change = sync.Change(noun.model, id, values, _versions(header))
    with store().writing() as session:
        (answer,) = sync.apply(session, shop(), [change])
        row = kept.get(session, noun.model, shop(), id, deleted=True)
    against = objection(noun, values, answer)
    if isinstance(against, Problem) and answer.outcome == "stale" and header is None:
        raise Problem("version-needed", "", None, **against.more)
    if against is not None:
        raise against
    return _answer(row, STATUS[answer.outcome])


def _versions(if_match: str | None) -> Container[int]:
    """Read If-Match (RFC 9110, section 13.1.1): a record that is not there has no ETag."""
    if if_match is None:
        return sync.NEW
    if if_match.strip() == "*":
        return sync.KEPT
    # A weak one never matches, and a version of ours has no more digits.
    return {int(found) for found in re.findall(r'(?<!W/)"([1-9][0-9]{0,9})"', if_match, re.ASCII)}


def _answer(row: Record | None, status: int = 200) -> Any:  # noqa: ANN401
    assert row is not None  # noqa: S101  (what was done is kept)
    return row, status, {"ETag": f'"{row.version}"'}


def _find(model: type[Any], id: UUID, *, deleted: bool = False) -> Any:  # noqa: ANN401
    with store().reading() as session:
        row = kept.get(session, model, shop(), id, deleted=deleted)
    if row is None:
        step = KINDS["no-such-record"].detail
        raise Problem("no-such-record", f"No record has the id {id}. {step}")
    return row

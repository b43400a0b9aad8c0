"""What is kept: engines, drives, parts, builds, readings, each of the device's own shop."""

from collections.abc import Callable
from typing import Any, NamedTuple
from uuid import UUID

from flask import current_app
from flask_smorest import Blueprint
from marshmallow import Schema

from midspan.core.build import take_build
from midspan.core.fields import Form
from midspan.store import (
    Build,
    Chain,
    Drive,
    Engine,
    Entry,
    GearSet,
    Reading,
    ReadingExists,
    Store,
)
from midspan.store import explain as explain_reading
from midspan.store import records as kept

from .access import shop
from .examples import named
from .parsing import RecordParser
from .problems import Problem, refuse
from .schemas import records as s
from .schemas.inputs import DriveSchema
from .schemas.record_fields import IDENTIFIER, NEED_IDENTIFIER, as_identifier

ID = {
    "in": "path",
    "name": "id",
    "required": True,
    "schema": {"type": "string", "format": "uuid", "pattern": IDENTIFIER},
    "description": "A UUID of version 7, made where the record was made.",
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


def check_drive(values: dict[str, Any]) -> None:
    """Have the core check that a drive with these figures can exist."""
    form = Form({"drive": {name: values[name] for name in values if name in _FIGURES}})
    take_build(form)
    for found in form.problems:
        found["field"] = str(found["field"]).removeprefix("drive.")
    form.finish()


_FIGURES = frozenset(DriveSchema().fields)


class Noun(NamedTuple):
    """What is offered for one kind of record."""

    one: str
    many: str
    model: type[Any]
    write: type[Schema]
    record: type[Schema]
    page: type[Schema]
    check: Callable[[dict[str, Any]], None] | None = None


NOUNS = (
    Noun(
        "engine", "engines", Engine, s.EngineWriteSchema, s.EngineRecordSchema, s.EnginePageSchema,
    ),
    Noun(
        "drive", "drives", Drive, s.DriveWriteSchema, s.DriveRecordSchema, s.DrivePageSchema,
        check_drive,
    ),
    Noun("chain", "chains", Chain, s.ChainWriteSchema, s.ChainRecordSchema, s.ChainPageSchema),
    Noun(
        "gear-set", "gear-sets", GearSet, s.GearSetWriteSchema, s.GearSetRecordSchema,
        s.GearSetPageSchema,
    ),
    Noun("build", "builds", Build, s.BuildWriteSchema, s.BuildRecordSchema, s.BuildPageSchema),
    Noun("entry", "entries", Entry, s.EntryWriteSchema, s.EntryRecordSchema, s.EntryPageSchema),
    Noun(
        "reading", "readings", Reading, s.ReadingWriteSchema, s.ReadingRecordSchema,
        s.ReadingPageSchema,
    ),
)  # fmt: skip


def offer(noun: Noun) -> None:
    """Add the three views of one kind of record: keep, get, list."""
    example = named(f"{noun.one}-record")
    said = noun.many.replace("-", " ")
    again = "the same again changes nothing" if noun.model is Reading else "a change replaces it"

    @blp.route(f"/{noun.many}/<id>", methods=["PUT"], endpoint=f"put-{noun.one}", parameters=[ID])
    @blp.doc(summary=f"Keep one of the {said} under its id; {again}.")
    @blp.arguments(noun.write, examples=named(f"{noun.one}-write"))
    @blp.response(200, noun.record, examples=example, description="Kept already.")
    @blp.alt_response(201, schema=noun.record, examples=example, description="New.", success=True)
    def put(values: dict[str, Any], id: UUID) -> tuple[Any, int]:
        if noun.check is not None:
            noun.check(values)
        try:
            with _store().writing() as session:
                row, new = kept.put(session, noun.model, shop(), id, values)
        except ReadingExists:
            raise Problem("reading-exists") from None
        return row, 201 if new else 200

    @blp.route(f"/{noun.many}/<id>", endpoint=f"get-{noun.one}", parameters=[ID])
    @blp.doc(summary=f"Get one of the {said}.")
    @blp.response(200, noun.record, examples=example)
    def get(id: UUID) -> Any:  # noqa: ANN401
        return _find(noun.model, id)

    @blp.route(f"/{noun.many}", endpoint=f"list-{noun.many}")
    @blp.doc(summary=f"List the {said}, page by page, in the order of their ids.")
    @blp.arguments(s.PageQuerySchema, location="query")
    @blp.response(200, noun.page, examples=named(f"{noun.one}-page"))
    def page(query: dict[str, Any]) -> dict[str, Any]:
        with _store().reading() as session:
            after, limit = query.get("after"), query["limit"]
            rows, following = kept.page(session, noun.model, shop(), after, limit)
        return {"items": rows, "next": following}


for _noun in NOUNS:
    offer(_noun)


@blp.route("/readings/<id>/explanation", parameters=[ID])
@blp.response(200, s.ExplanationSchema, examples=named("explanation"))
def explanation(id: UUID) -> dict[str, Any]:
    """Show a stored reading beside what today's calculations make of the same input."""
    return explain_reading(_find(Reading, id))


def _store() -> Store:
    found = current_app.extensions["midspan"]
    assert isinstance(found, Store)  # noqa: S101  (create_app put it there)
    return found


def _find(model: type[Any], id: UUID) -> Any:  # noqa: ANN401
    with _store().reading() as session:
        row = kept.get(session, model, shop(), id)
    if row is None:
        raise Problem("no-such-record", f"No record has the id {id}.")
    return row

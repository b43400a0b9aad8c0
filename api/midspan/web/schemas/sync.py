"""Many changes in one request, and what changed since, for phones that catch up."""

from collections.abc import Mapping

from marshmallow import Schema, fields, validate

from ..nouns import NOUNS, Noun
from .problem import ProblemSchema
from .quantity import OneOf, Strict, choice
from .record_fields import Flag, Identifier
from .records import how_many

MOST_CHANGES = 1000
KINDS = tuple(noun.many for noun in NOUNS)
_KIND = "The kind of record, as in its address."
CURSOR = r"^[0-9a-f]{1,12}-[0-9]{1,18}$"


def _named(noun: Noun, ending: str, parts: Mapping[str, object], doc: str) -> type[Schema]:
    """Make the schema of one kind: EngineChange and so on."""
    name = noun.write.__name__.replace("WriteSchema", ending + "Schema")
    return type(name, (Strict,), {**parts, "__doc__": doc})


def _base() -> fields.Integer:
    return fields.Integer(
        allow_none=True,
        validate=validate.Range(1, 2**31 - 1),
        metadata={"description": "The version it was made from; null if it was not kept there."},
    )


def _change(noun: Noun) -> type[Schema]:
    parts = {
        "kind": choice((noun.many,), _KIND),
        "id": Identifier("The record's id.", required=True),
        "base_version": _base(),
        "record": fields.Nested(noun.write, required=True),
    }
    return _named(noun, "Change", parts, "A record as it is to be.")


def _changed(noun: Noun) -> type[Schema]:
    parts = {
        "kind": choice((noun.many,), _KIND),
        "record": fields.Nested(noun.record, required=True),
    }
    return _named(noun, "Changed", parts, "A record as it is now.")


class DeletionSchema(Strict):
    """A record that is to go; a reading is set aside."""

    kind = choice(KINDS, _KIND)
    id = Identifier("The record's id.", required=True)
    base_version = _base()
    deleted = Flag("Always true.", required=True)


class SyncRequestSchema(Strict):
    """Changes, each to another record, in any order; parents may be among them."""

    changes = fields.List(
        OneOf(*map(_change, NOUNS), DeletionSchema),
        required=True, validate=validate.Length(0, MOST_CHANGES),
    )  # fmt: skip


class SyncResultSchema(Schema):
    """What became of one change."""

    kind = fields.String(required=True, allow_none=True, metadata={"description": _KIND})
    id = fields.String(required=True, allow_none=True, metadata={"description": "The record's id."})
    status = fields.Integer(
        required=True,
        metadata={
            "description": "As PUT or DELETE would answer it: 200 kept already, changed or "
            "deleted; 201 new; 404 not there to be deleted; 409 another reading or run has this "
            "id; 412 changed meanwhile; 422 refused."
        },
    )
    version = fields.Integer(
        required=True, allow_none=True, metadata={"description": "The record's version now."}
    )
    problem = fields.Nested(
        ProblemSchema, required=True, allow_none=True,
        metadata={"description": "What is wrong with it; null if it was done."},
    )  # fmt: skip
    theirs = OneOf(
        *(noun.record for noun in NOUNS), required=True, allow_none=True,
        metadata={"description": "The record as kept, if that is another than the one sent."},
    )  # fmt: skip


class SyncAnswerSchema(Schema):
    """What became of every change, in the order of the changes."""

    results = fields.List(fields.Nested(SyncResultSchema), required=True)


class ChangesQuerySchema(Strict):
    """From where to go on."""

    after = fields.String(
        validate=validate.Regexp(CURSOR, error="not-a-cursor"),
        metadata={
            "description": "The next of the page before; leave it out to begin.",
            "need": "the next of an earlier page, unchanged",
        },
    )
    limit = how_many()


class ChangesPageSchema(Schema):
    """Records as they are now, in the order of their last change, deleted ones included."""

    items = fields.List(OneOf(*map(_changed, NOUNS)), required=True)
    next = fields.String(
        required=True,
        metadata={"description": "Send it as after to go on from here, now or later.",
                  "pattern": CURSOR},
    )  # fmt: skip
    more = fields.Boolean(
        required=True, metadata={"description": "Whether there is more to fetch already."}
    )

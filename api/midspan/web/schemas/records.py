"""What is kept: engines, drives, parts, builds and readings, as sent and as given back."""

from typing import Any

from marshmallow import Schema, fields, validate

from .batch import INPUTS, RESULTS
from .inputs import DriveSchema
from .problem import RefusalSchema
from .quantity import OneOf, Strict, choice, number, numbers, words
from .record_fields import Amount, Evidence, Flag, Identifier, Moment, Tag, Text
from .results import LimitSchema

# Drives and plans are kept as records of their own; they are no readings.
_OWN_RECORDS = ("drive", "plan", "plan-adapted", "plan-calendar")
CALCS = [calc for calc in INPUTS if calc not in _OWN_RECORDS]
ADJUSTERS = ("none", "vernier", "offset-bushings", "multi-keyway")
MOST_KEYWAYS = 30
ENTRIES = ("part", "setting", "plan", "session", "note")
MOST_FIGURES = 40
# Room for the fit of the largest shelf that can be asked for.
LONGEST_INPUT, LONGEST_RESULT = 256_000, 1_500_000
MOST_LISTED = 500
_ENGINE = "The engine it belongs to."
_TAG = "The user's own short name, as on its label."


def as_sent(description: str, *, allow_none: bool = False) -> fields.Dict:
    """Make the field of an object that is given back as it came."""
    return fields.Dict(required=True, allow_none=allow_none, metadata={"description": description})


# What the store adds to a record beside its id, for itself alone.
ADDED = ("version", "received_at", "deleted_at")


class Kept(Schema):
    """What the store adds to every record; what was left out comes back as null."""

    id = Identifier("The record's id.", required=True)
    version = fields.Integer(required=True, metadata={"description": "Counts the changes, from 1."})
    received_at = Moment("When this version reached the store.", required=True)
    deleted_at = Moment(
        "When it was deleted, or, of a reading, set aside; null while it is neither.",
        required=True, allow_none=True,
    )  # fmt: skip

    def on_bind_field(self, field_name: str, field_obj: fields.Field[Any]) -> None:
        """Say that every field is there."""
        field_obj.required = True


class EngineWriteSchema(Strict):
    """An engine, to keep."""

    name = Text(200, "What the engine is called.", required=True)
    note = Text(4000, "Anything worth knowing.", allow_none=True)
    invented = Flag("Whether it is made up, for a demonstration.")
    created_at = Moment("When it was first entered.", required=True)


class DriveWriteSchema(DriveSchema):
    """A drive of an engine, to keep. Its figures must make a drive that can exist."""

    engine_id = Identifier(_ENGINE, required=True)
    label = Text(200, "What the drive is called.", required=True)
    created_at = Moment("When it was first entered.", required=True)


class ChainWriteSchema(Strict):
    """A chain, to keep; it may lie on the shelf, so an engine is not needed."""

    engine_id = Identifier(_ENGINE, allow_none=True)
    label = Text(200, "What the chain is called.", required=True)
    pitch_mm = number("pitch_mm")
    links = number("links")
    roller_diameter_mm = number("roller_diameter_mm", required=False)
    tag = Tag(_TAG, allow_none=True)
    distance_run_km = number("distance_run_km", required=False)
    description = Text(4000, "What it looks like, to know it again.", allow_none=True)
    note = Text(4000, "Anything worth knowing.", allow_none=True)
    created_at = Moment("When it was first entered.", required=True)


class GearSetWriteSchema(Strict):
    """A crank gear and a cam gear that belong together, to keep; on an engine or on the shelf."""

    engine_id = Identifier(_ENGINE, allow_none=True)
    label = Text(200, "What the gear set is called.", required=True)
    tag = Tag(_TAG, allow_none=True)
    pitch_mm = number("pitch_mm")
    crank_teeth = number("crank_teeth")
    cam_teeth = number("cam_teeth")
    adjuster = choice(ADJUSTERS, "How it sets the cam timing.", required=False, nullable=True)
    keyway_offsets_crank_deg = numbers("keyway_offsets_crank_deg", MOST_KEYWAYS)
    note = Text(4000, "Anything worth knowing.", allow_none=True)
    created_at = Moment("When it was first entered.", required=True)


class BuildWriteSchema(Strict):
    """A build of an engine, to keep; the drive, chain and gear set are those it starts with."""

    engine_id = Identifier("The engine that is built.", required=True)
    drive_id = Identifier("The drive it is built with.", allow_none=True)
    chain_id = Identifier("The chain that goes in.", allow_none=True)
    gear_set_id = Identifier("The gear set that goes in.", allow_none=True)
    label = Text(200, "What the build is called.", required=True)
    started_at = Moment("When work on it was started.", required=True)
    odometer_km = number("odometer_km", required=False)
    note = Text(4000, "Anything worth knowing.", allow_none=True)
    created_at = Moment("When it was first entered.", required=True)


class FigureSchema(Strict):
    """One number of an entry, as typed: what it is, how much, and in which unit."""

    label = Text(60, "What the number is.", required=True)
    value = Amount("The number.", required=True)
    unit = Text(20, "Its unit; empty for a plain number.", allow_none=True)


class EntryWriteSchema(Strict):
    """Something of a build that is no reading, to keep."""

    build_id = Identifier("The build it belongs to.", required=True)
    kind = choice(ENTRIES, "What it is: a part, a setting, a plan, a dyno session, a note.")
    at = Moment("When it happened, or is to happen.", required=True)
    title = Text(200, "What it is, in a few words.", required=True)
    text = Text(4000, "The rest of it.", allow_none=True)
    figures = fields.List(
        fields.Nested(FigureSchema),
        allow_none=True,
        validate=validate.Length(0, MOST_FIGURES, error="too-many"),
        error_messages={"invalid": "not-a-list"},
        metadata={
            "description": "Its numbers, in the order in which they are shown.",
            "need": f"a list of up to {MOST_FIGURES} figures, each with label, value and unit",
        },
    )
    chain_id = Identifier("The chain it is about.", allow_none=True)
    gear_set_id = Identifier("The gear set it is about.", allow_none=True)
    created_at = Moment("When it was first entered.", required=True)


class _Reading(Strict):
    """What a reading is, but for the evidence itself."""

    engine_id = Identifier(_ENGINE, allow_none=True)
    drive_id = Identifier("The drive it was taken on.", allow_none=True)
    chain_id = Identifier("The chain that was measured.", allow_none=True)
    gear_set_id = Identifier(
        "The gear set it was fitted to, or that was measured.", allow_none=True
    )
    build_id = Identifier("The build it was taken in.", allow_none=True)
    load_n = number("load_n", required=False)
    distance_since_start_km = number("distance_since_start_km", required=False)
    running_since_start_h = number("running_since_start_h", required=False)
    odometer_km = number(
        "odometer_km", required=False, note="The distance run follows from that of its build."
    )
    calc = choice(CALCS, "The calculation that gave the result.")
    taken_at = Moment("When it was taken.", required=True)
    core_version = Text(40, "Version of the calculations that gave the result.", required=True)
    note = Text(4000, "Anything worth knowing.", allow_none=True)


class ReadingWriteSchema(_Reading):
    """A reading with its result, to keep for good: what was typed, and what was answered."""

    input = Evidence(
        *(INPUTS[calc] for calc in CALCS),
        longest=LONGEST_INPUT,
        required=True,
        description="Input of the calculation.",
    )
    result = Evidence(
        *(RESULTS[calc] for calc in CALCS),
        longest=LONGEST_RESULT,
        required=True,
        description="Result, as it was shown.",
    )
    limit = Evidence(
        LimitSchema, longest=4_000, required=True, allow_none=True,
        description="The limit the verdict rests on.",
    )  # fmt: skip


class EngineRecordSchema(EngineWriteSchema, Kept):
    """An engine, as kept."""


class DriveRecordSchema(DriveWriteSchema, Kept):
    """A drive, as kept."""


class ChainRecordSchema(ChainWriteSchema, Kept):
    """A chain, as kept."""


class GearSetRecordSchema(GearSetWriteSchema, Kept):
    """A gear set, as kept."""


class BuildRecordSchema(BuildWriteSchema, Kept):
    """A build, as kept."""


class EntryRecordSchema(EntryWriteSchema, Kept):
    """An entry of a build, as kept."""


class ReadingRecordSchema(_Reading, Kept):
    """A reading, as kept: whatever form input and result had in the version that made them."""

    input = as_sent("Input of the calculation, as sent.")
    result = as_sent("Result, as it was shown.")
    limit = as_sent("The limit the verdict rests on.", allow_none=True)


def how_many() -> fields.Integer:
    """Make the field that limits a page."""
    return fields.Integer(
        load_default=100,
        validate=validate.Range(1, MOST_LISTED, error="out-of-range"),
        error_messages={"invalid": "not-whole"},
        metadata={
            "description": "How many to give at most.",
            "need": f"a whole number from 1 to {MOST_LISTED}",
        },
    )


class DeletedQuerySchema(Strict):
    """Whether what was deleted counts."""

    deleted = fields.Boolean(
        load_default=False, truthy={"true"}, falsy={"false"},
        error_messages={"invalid": "not-a-choice"},
        metadata={
            "description": "Whether to give what was deleted or set aside too.",
            "need": "true or false",
        },
    )  # fmt: skip


class PageQuerySchema(DeletedQuerySchema):
    """Which part of a list to give."""

    after = Identifier("Give the records after this id; the next of the page before.")
    limit = how_many()


class _Page(Schema):
    next = Identifier(
        "Send it as after to get the next page; null at the end.", required=True, allow_none=True
    )


def page_of(record: type[Schema]) -> type[Schema]:
    """Make the schema of a page of records: EnginePage and so on."""
    name = record.__name__.replace("Record", "Page")
    items = fields.List(fields.Nested(record), required=True)
    doc = "A page of records, in the order of their ids."
    return type(name, (_Page,), {"items": items, "__doc__": doc})


class ExplanationSchema(Schema):
    """A stored reading beside what today's calculations make of the same input."""

    stored = fields.Nested(ReadingRecordSchema, required=True)
    recomputed = OneOf(
        *(RESULTS[calc] for calc in CALCS), required=True, allow_none=True,
        metadata={"description": "Result of today; null if today's calculations refuse the input."},
    )  # fmt: skip
    problems = fields.List(
        fields.Nested(RefusalSchema), required=True,
        metadata={"description": "Why they refuse it; empty if they do not."},
    )  # fmt: skip
    same_verdict = fields.Boolean(
        required=True, allow_none=True,
        metadata={"description": "Same outcome word; null if the calculation gives no verdict."},
    )  # fmt: skip
    core_version_then = words("Version that gave the stored result.")
    core_version_now = words("Version of today.")

"""Dyno sessions and their runs, as kept. The core checks what is in them."""

from typing import Any

from marshmallow import Schema, fields, validate

from midspan.core.correction import FIGURES_ARE
from midspan.core.correction_standards import IDS
from midspan.core.dyno_records import MOST_POINTS, MOST_SETTINGS

from .dyno_run import RunConditionsSchema, RunPeaksSchema
from .quantity import Strict, choice, describe, number
from .record_fields import Evidence, Flag, Identifier, Moment, Text
from .records import Kept, as_sent

LONGEST_SETTING, LONGEST_PART, LONGEST_CURVE, LONGEST_SOURCE = 6_000, 2_000, 40_000, 400_000
MOST_RUNS = 10_000
_ABSENT: dict[str, Any] = {"invalid": "not-a-list", "required": "missing", "null": "missing"}


class SessionSettingSchema(Strict):
    """A setting of the engine that runs are made at."""

    key = Text(12, "A, B and so on; no other setting of the session has it.", required=True)
    label = Text(60, "What it is called.", required=True)
    movement_mm = number("movement_mm", required=False, note="As measured, cold, at this setting.")
    movement_u_mm = number("movement_u_mm", required=False)
    note = Text(4000, "Anything worth knowing.", allow_none=True)


def _points(name: str) -> fields.List[Any]:
    return fields.List(
        number(name), required=True, validate=validate.Length(1, MOST_POINTS),
        metadata={"description": describe(name)},
    )  # fmt: skip


class RunCurveSchema(Strict):
    """Torque over engine speed, from slow to fast."""

    speed_rpm = _points("speed_rpm")
    torque_nm = _points("torque_nm")


class RunSourceSchema(Schema):
    """The file that a run came from, and how it was read."""

    file_name = fields.String(metadata={"description": "Name of the file."})
    rows = fields.Integer(metadata={"description": "Rows of the file that hold figures."})
    rows_used = fields.Integer(metadata={"description": "Rows that the curve rests on."})
    bad_rows = fields.List(
        fields.Dict(), metadata={"description": "Rows left out: line, text and why."}
    )
    mapping = fields.Dict(metadata={"description": "Which column was taken for what."})


class _Session(Strict):
    """What a session is, but for its settings."""

    engine_id = Identifier("The engine on the dyno.", allow_none=True)
    build_id = Identifier("The build it belongs to.", allow_none=True)
    label = Text(200, "What the session is called.", required=True)
    at = Moment("When it was held.", required=True)
    standard = choice(
        IDS, "The one standard that its runs are corrected by; null while none is chosen.",
        required=False, nullable=True,
    )  # fmt: skip
    note = Text(4000, "Anything worth knowing.", allow_none=True)
    invented = Flag("Whether it is made up, for a demonstration.")
    created_at = Moment("When it was first entered.", required=True)


class SessionWriteSchema(_Session):
    """A dyno session, to keep."""

    settings = fields.List(
        Evidence(SessionSettingSchema, longest=LONGEST_SETTING, description="A setting."),
        required=True,
        validate=validate.Length(0, MOST_SETTINGS, error="too-many"),
        error_messages=_ABSENT,
        metadata={
            "description": "What is compared.",
            "need": f"a list of up to {MOST_SETTINGS} settings, empty at first",
        },
    )


class SessionRecordSchema(_Session, Kept):
    """A dyno session, as kept."""

    settings = fields.List(
        fields.Dict(), required=True, metadata={"description": "What is compared, as sent."}
    )


class _Run(Strict):
    """What a run is, but for what was read."""

    session_id = Identifier("The session it belongs to.", required=True)
    setting = Text(12, "Key of the setting it was made at.", required=True)
    place = fields.Integer(
        required=True, strict=True, validate=validate.Range(1, MOST_RUNS, error="out-of-range"),
        error_messages={"invalid": "not-whole", "required": "missing", "null": "missing"},
        metadata={
            "description": "Its place in the order of the session, from 1.",
            "need": f"a whole number from 1 to {MOST_RUNS}",
        },
    )  # fmt: skip
    taken_at = Moment("When it was made.", required=True)
    figures_are = choice(
        FIGURES_ARE,
        "observed, or the standard by which the dyno had corrected peaks and curve.",
    )
    core_version = Text(40, "Version of the calculations that read the file.", required=True)
    note = Text(4000, "Anything worth knowing.", allow_none=True)
    created_at = Moment("When it was first entered.", required=True)


class RunWriteSchema(_Run):
    """A dyno run, to keep for good: as it was read, with the air it was read in."""

    conditions = Evidence(
        RunConditionsSchema, longest=LONGEST_PART, allow_none=True,
        description="Its air; null if nobody read it.",
    )  # fmt: skip
    peaks = Evidence(
        RunPeaksSchema, longest=LONGEST_PART, required=True, description="Its greatest figures."
    )
    curve = Evidence(
        RunCurveSchema, longest=LONGEST_CURVE, allow_none=True,
        description="Its curve; null if only the peaks are known.",
    )  # fmt: skip
    source = Evidence(
        RunSourceSchema, longest=LONGEST_SOURCE, allow_none=True,
        description="The file it came from; null if it was typed.",
    )  # fmt: skip


class RunRecordSchema(_Run, Kept):
    """A dyno run, as kept: as it was sent."""

    conditions = as_sent("Its air, as sent.", allow_none=True)
    peaks = as_sent("Its greatest figures, as sent.")
    curve = as_sent("Its curve, as sent.", allow_none=True)
    source = as_sent("The file it came from, as sent.", allow_none=True)

"""The registry of what is kept: a noun is a line here, its model, its schemas and an example.

Keeping, getting, listing, deleting, sync and the pull then work for it without more code.
"""

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple, cast

from marshmallow import Schema, ValidationError

from midspan.core.build import take_build
from midspan.core.dyno_records import take_run, take_settings
from midspan.core.errors import Refused
from midspan.core.fields import Form
from midspan.core.plan_log import take_log
from midspan.store import (
    Build,
    Chain,
    Drive,
    DynoRun,
    DynoSession,
    Engine,
    Entry,
    GearSet,
    Plan,
    Reading,
)
from midspan.store.models import Record

from .parsing import problems_of
from .schemas import dyno_records as dyno
from .schemas import plan_records as plans
from .schemas import records as s
from .schemas.inputs import DriveSchema
from .schemas.record_fields import Evidence

_FIGURES = frozenset(DriveSchema().fields)


def check_drive(values: dict[str, Any]) -> None:
    """Have the core check that a drive with these figures can exist."""
    form = Form({"drive": {name: values[name] for name in values if name in _FIGURES}})
    take_build(form)
    for found in form.problems:
        found["field"] = str(found["field"]).removeprefix("drive.")
    form.finish()


def check_log(values: dict[str, Any]) -> None:
    """Have the core check that it can read the log of a plan.

    What was asked is not asked again: a plan made by an older core stays one.
    """
    form = Form({"log": values["log"]})
    take_log(form)
    form.finish()


def check_session(values: dict[str, Any]) -> None:
    """Have the core check the settings of a dyno session."""
    form = Form({"settings": values["settings"]})
    take_settings(form)
    form.finish()


def check_run(values: dict[str, Any]) -> None:
    """Have the core check the air and the figures of a dyno run."""
    form = Form({name: values.get(name) for name in ("conditions", "peaks", "curve")})
    take_run(form)
    form.finish()


class Noun(NamedTuple):
    """What is offered for one kind of record."""

    one: str
    many: str
    model: type[Record]
    write: type[Schema]
    record: type[Schema]
    check: Callable[[dict[str, Any]], None] | None = None


# Parents before children, as phones send them.
NOUNS = (
    Noun("engine", "engines", Engine, s.EngineWriteSchema, s.EngineRecordSchema),
    Noun("drive", "drives", Drive, s.DriveWriteSchema, s.DriveRecordSchema, check_drive),
    Noun("chain", "chains", Chain, s.ChainWriteSchema, s.ChainRecordSchema),
    Noun("gear-set", "gear-sets", GearSet, s.GearSetWriteSchema, s.GearSetRecordSchema),
    Noun("build", "builds", Build, s.BuildWriteSchema, s.BuildRecordSchema),
    Noun("entry", "entries", Entry, s.EntryWriteSchema, s.EntryRecordSchema),
    Noun("plan", "plans", Plan, plans.PlanWriteSchema, plans.PlanRecordSchema, check_log),
    Noun("reading", "readings", Reading, s.ReadingWriteSchema, s.ReadingRecordSchema),
    Noun(
        "session", "sessions", DynoSession, dyno.SessionWriteSchema, dyno.SessionRecordSchema,
        check_session,
    ),
    Noun("run", "runs", DynoRun, dyno.RunWriteSchema, dyno.RunRecordSchema, check_run),
)  # fmt: skip
BY_NAME = {noun.many: noun for noun in NOUNS}
BY_MODEL = {noun.model: noun for noun in NOUNS}
_WRITES = {noun.many: noun.write() for noun in NOUNS}


def take(noun: Noun, sent: object, *, sound: bool = False) -> dict[str, Any]:
    """Load a record as its schema would; quicker where nothing is wrong with it.

    Parameters
    ----------
    noun : what it is
    sent : the record as sent
    sound : whether its numbers are known to be finite, and its nesting to be bounded

    Raises
    ------
    Refused : the schema's problems, or the core's
    """
    schema = _WRITES[noun.many]
    values = _quickly(schema, sent, sound) if isinstance(sent, dict) else None
    if values is None:
        try:
            values = schema.load(cast(Any, sent))  # whatever it is, the schema says what is wrong
        except ValidationError as error:
            raise Refused(list(problems_of(error.messages, schema, sent))) from None
    assert isinstance(values, dict)  # noqa: S101  (no schema here loads many)
    if noun.check is not None:
        noun.check(values)
    return values


def _quickly(schema: Schema, sent: Mapping[str, Any], sound: bool) -> dict[str, Any] | None:
    """Load field by field, without marshmallow's care for what is wrong; None if anything is."""
    values: dict[str, Any] = {}
    try:
        for name, field in schema.fields.items():
            if name in sent:
                value = sent[name]
                if value is None and field.allow_none:
                    values[name] = None
                elif sound and type(field) is Evidence and type(value) is dict:
                    values[name] = field.written(value)
                else:
                    values[name] = field.deserialize(value, name, sent)
            elif field.required:
                return None
    except ValidationError:
        return None
    return values if len(values) == len(sent) else None

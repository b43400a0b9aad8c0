"""What is said of a change to a record: by itself over HTTP, or in a batch. One set of rules."""

from collections.abc import Mapping
from typing import Any

from flask import current_app

from midspan.core.errors import Refused
from midspan.store import Store
from midspan.store.models import Record
from midspan.store.sync import Answer

from .nouns import BY_MODEL, Noun
from .problems import Problem, refused_body

STATUS = {"new": 201, "same": 200, "changed": 200, "deleted": 200, "restored": 200}
_PROBLEMS = {
    "stale": "changed-meanwhile",
    "differs": "reading-exists",
    "absent": "no-such-record",
    "twice": "sent-twice",
}


def store() -> Store:
    """Give the service's store."""
    found = current_app.extensions["midspan"]
    assert isinstance(found, Store)  # noqa: S101  (create_app put it there)
    return found


def objection(
    noun: Noun, values: Mapping[str, Any] | None, answer: Answer
) -> Problem | Refused | None:
    """Give what speaks against a change, with both sides where there are two; None if done."""
    if answer.problems:
        return Refused(list(answer.problems))
    if answer.outcome in STATUS:
        return None
    kind = _PROBLEMS[answer.outcome]
    if answer.outcome not in ("stale", "differs"):
        return Problem(kind)
    yours = None if values is None else noun.write().dump(values)
    return Problem(kind, yours=yours, theirs=shown(answer.theirs))


def shown(row: Record | None) -> Any:  # noqa: ANN401  (JSON)
    """Give a record as it goes out; null for none."""
    return None if row is None else BY_MODEL[type(row)].record().dump(row)


def as_body(raised: Problem | Refused, instance: str) -> dict[str, object]:
    """Give the problem details of one record of a batch."""
    if isinstance(raised, Refused):
        return refused_body(raised.problems, instance)
    # The other side stands beside the problem in a batch, and the phone has its own.
    return Problem(raised.kind, raised.detail).body(instance)

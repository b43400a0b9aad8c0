"""Sync: what a phone did goes up in batches, and what others did comes down in order."""

import hashlib
import re
from typing import Any, NamedTuple

import orjson
from flask import Response, jsonify, request
from flask_smorest import Blueprint

from midspan.core.errors import Refused
from midspan.store import changes, once
from midspan.store import sync as engine
from midspan.store.written import Packed, Written

from . import body
from .access import shop
from .example_names import named
from .nouns import BY_MODEL, BY_NAME, Noun, take
from .parsing import RecordParser
from .problems import Problem, refuse
from .schemas import sync as s
from .schemas.record_fields import MOST_NESTING, NEED_IDENTIFIER, as_identifier
from .settling import STATUS, as_body, objection, shown, store

# A string of RFC 8941, as draft-ietf-httpapi-idempotency-key-header asks for.
KEY = r'^"[\x20\x21\x23-\x5b\x5d-\x7e]{1,128}"$'
IDEMPOTENCY_KEY = {
    "in": "header",
    "name": "Idempotency-Key",
    "required": True,
    "schema": {"type": "string", "pattern": KEY},
    "example": '"01923f5e-8c00-7000-8000-000000000001"',
    "description": "A text in quotes, another for each batch. The same key with the same body is "
    f"answered the same without doing it again, for {once.KEPT_FOR.days} days; with another "
    "body it is refused.",
}
NAMES = {"kind", "id", "base_version", "record", "deleted"}


class SyncParser(RecordParser):
    """Leaves the body to the view, which answers each change for itself; reads queries."""

    def load_json(self, req: object, schema: object) -> Any:  # noqa: ANN401
        """Take no part in it."""
        return {"changes": []}


class SyncBlueprint(Blueprint):
    """Documents what is sent by its schema."""

    ARGUMENTS_PARSER = SyncParser()


blp = SyncBlueprint(
    "sync", __name__, url_prefix="/api/v1",
    description="Bringing phones and the shop's records together.",
)  # fmt: skip


class Sent(NamedTuple):
    """One change as it was sent: what it asks for, or what is wrong with it."""

    kind: str | None
    id: str | None
    noun: Noun | None = None
    change: engine.Change | None = None
    refused: Refused | None = None


@blp.post("/sync", parameters=[IDEMPOTENCY_KEY])
@blp.arguments(s.SyncRequestSchema, examples=named("sync"))
@blp.response(200, s.SyncAnswerSchema, examples=named("sync-answer"))
def sync(_: object) -> Response:
    """Do a batch of changes, once; each is answered for itself, in order."""
    key = request.headers.get("Idempotency-Key", "")
    if not re.fullmatch(KEY, key):
        raise Problem("key-needed")
    data = body.received()
    fingerprint = hashlib.sha256(data).digest()
    batch = _read_each(data) or _read_all(data)
    try:
        with store().writing() as session:
            engine.lock(session, shop())
            answer = once.recall(session, shop(), key, fingerprint)
            if answer is None:
                asked = [sent.change for sent in batch if sent.change is not None]
                done = iter(engine.apply(session, shop(), asked))
                results = [_result(sent, next(done) if sent.change else None) for sent in batch]
                answer = orjson.dumps({"results": results})
                once.remember(session, shop(), key, fingerprint, answer)
    except once.KeyReused:
        raise Problem("key-reused") from None
    return Response(answer, mimetype="application/json")


@blp.get("/changes")
@blp.arguments(s.ChangesQuerySchema, location="query")
@blp.response(200, s.ChangesPageSchema, examples=named("changes"))
def pull(query: dict[str, Any]) -> Response:
    """Give what changed since a cursor, in the order in which it changed; deleted records too."""
    try:
        with store().reading() as session:
            page = changes.since(session, shop(), query.get("after"), query["limit"])
    except changes.UnknownCursor:
        raise Problem("cursor-unknown") from None
    items = [{"kind": BY_MODEL[type(row)].many, "record": shown(row)} for row in page.rows]
    return jsonify(items=items, next=page.cursor, more=page.more)


def _read_each(data: bytes) -> list[Sent]:
    """Read a batch as phones write it, one change after the other; empty if it is not so written.

    Of each, only the text of what is large is held. All of them at once, unpacked, take so much
    memory that getting it takes longer than reading them.
    """
    pieces = body.pieces(data, b'{"changes":[', b"]}")
    if len(pieces) > s.MOST_CHANGES:
        return []
    batch = []
    for piece in pieces:
        # The object and the list around it count too.
        item = body.read_piece(piece, MOST_NESTING - 2)
        if item is None:
            return []
        batch.append(_packed(_read(item, sound=True)))
    return batch


def _packed(sent: Sent) -> Sent:
    change = sent.change
    if change is None or change.values is None:
        return sent
    values = {
        name: Packed(value.text) if type(value) is Written else value
        for name, value in change.values.items()
    }
    return sent._replace(change=change._replace(values=values))


def _read_all(data: bytes) -> list[Sent]:
    """Read a batch however it is written."""
    payload, sound = body.parse_many(data, MOST_NESTING)
    return [_read(item, sound) for item in _changes(payload)]


def _changes(payload: object) -> list[Any]:
    need = f"a list of 0 to {s.MOST_CHANGES} changes"
    if not isinstance(payload, dict):
        raise refuse("not-an-object", "", payload, "an object with changes", "Send named fields.")
    for name in payload:
        if name != "changes":
            step = "Use: changes"
            raise refuse("unknown-field", str(name), payload[name], "no such field", step)
    found = payload.get("changes")
    if not isinstance(found, list):
        code = "not-a-list" if "changes" in payload else "missing"
        raise refuse(code, "changes", found, need, "Put the changes in a list.")
    if len(found) > s.MOST_CHANGES:
        step = "Send several batches."
        raise refuse("too-many", "changes", f"{len(found)} changes", need, step)
    return found


def _read(item: object, sound: bool) -> Sent:
    """Read one change; what is wrong with it is part of its answer, not an error of the batch."""
    if not isinstance(item, dict):
        step = "Send named fields."
        return Sent(None, None, refused=refuse("not-an-object", "", item, "a change", step))
    kind, id = item.get("kind"), item.get("id")
    told = Sent(kind if isinstance(kind, str) else None, id if isinstance(id, str) else None)
    try:
        return told._replace(**_taken(item, kind, id, sound))
    except Refused as refused:
        return told._replace(refused=refused)


def _taken(item: dict[str, Any], kind: object, id: object, sound: bool) -> dict[str, Any]:
    for name in item.keys() - NAMES:
        raise refuse("unknown-field", name, item[name], "no such field", "Check its name.")
    noun = BY_NAME.get(kind) if isinstance(kind, str) else None
    if noun is None:
        need = "one of " + ", ".join(BY_NAME)
        raise refuse("not-a-choice", "kind", kind, need, "Choose one of these.")
    key = as_identifier(id)
    if key is None:
        raise refuse("not-an-id", "id", id, NEED_IDENTIFIER, "Make a new one.")
    base = item.get("base_version")
    if base is not None and (type(base) is not int or not 1 <= base < 2**31):
        need = "the version that it was made from, or null"
        raise refuse("out-of-range", "base_version", base, need, "Get the record.")
    if ("record" in item) == ("deleted" in item) or item.get("deleted", True) is not True:
        need = "either record, or deleted as true"
        raise refuse("conflict", "record", None, need, "Send one of the two.")
    values = take(noun, item["record"], sound=sound) if "record" in item else None
    versions = engine.NEW if base is None else (base,)
    return {"noun": noun, "change": engine.Change(noun.model, key, values, versions)}


def _result(sent: Sent, answer: engine.Answer | None) -> dict[str, object]:
    result = {"kind": sent.kind, "id": sent.id, "status": 422, "version": None}
    against: Problem | Refused | None = sent.refused
    theirs = None
    if answer is not None and sent.noun is not None and sent.change is not None:
        against = objection(sent.noun, None, answer)  # the phone has its own side
        result["version"] = answer.version
        result["status"] = STATUS.get(answer.outcome, 422)
        if isinstance(against, Problem):
            result["status"] = against.status
            theirs = against.more.get("theirs")
        elif answer.outcome == "same" and answer.theirs is not None and answer.theirs.deleted_at:
            theirs = shown(answer.theirs)  # the same, but set aside since
    where = f"/api/v1/{sent.kind}/{sent.id}"
    return result | {"problem": against and as_body(against, where), "theirs": theirs}

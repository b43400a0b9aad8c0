"""Changing what is kept: versions, deletions, batches that are done once, catching up."""

import json
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any
from uuid import uuid4

import pytest
from flask import Flask
from marshmallow import ValidationError

from midspan.core.errors import Refused
from midspan.store import once
from midspan.store.models import LOCAL_SHOP, SentBatch, Shop
from midspan.web import sync
from midspan.web.examples import WRITES
from midspan.web.nouns import BY_NAME, NOUNS, take
from web.shelf import BUILD, SESSION, Shelf, compact, key, many
from web.test_records import BAD

EDITABLE = [noun.one for noun in NOUNS if not noun.model.append_only]
EVERY = [noun.one for noun in NOUNS]


def other(noun: str) -> dict[str, Any]:
    """Give the example of a noun, changed."""
    names = {"engine": "name", "entry": "title"}
    return WRITES[noun] | {names.get(noun, "label"): "Other"}


def change(noun: str, number: int, base: int | None = None, **record: Any) -> dict[str, Any]:
    """Make a change for a batch: the example with something else in it."""
    record = WRITES[noun] | record
    return {"kind": many(noun), "id": key(number), "base_version": base, "record": record}


def gone(noun: str, number: int, base: int | None) -> dict[str, Any]:
    return {"kind": many(noun), "id": key(number), "base_version": base, "deleted": True}


def told(answer: Any) -> list[tuple[int, int | None]]:
    return [(result["status"], result["version"]) for result in answer["results"]]


# One record at a time


@pytest.mark.parametrize("noun", EDITABLE)
def test_a_change_needs_the_version_it_was_made_from(shelf: Shelf, noun: str) -> None:
    first = shelf.put(noun, 2, WRITES[noun], 201)
    assert shelf.etag == '"1"'
    problem = shelf.put(noun, 2, other(noun), 428)
    assert problem["type"] == "/problems/version-needed"
    for stale in ('"2"', 'W/"1"', "1", "", '"x"', '"2", "3"'):
        problem = shelf.put(noun, 2, other(noun), 412, stale)
        assert problem["type"] == "/problems/changed-meanwhile"
        assert problem["theirs"] == first
        assert {name: problem["yours"][name] for name in WRITES[noun]} == other(noun)
    assert shelf.get(noun, 2) == first
    assert shelf.etag == '"1"'
    assert shelf.put(noun, 2, other(noun), 200, '"9", "1"')["version"] == 2
    assert shelf.etag == '"2"'
    assert shelf.put(noun, 2, other(noun), 200)["version"] == 2  # the same again
    assert shelf.put(noun, 2, WRITES[noun], 200, "*")["version"] == 3


@pytest.mark.parametrize("noun", EVERY)
def test_what_is_deleted_keeps_its_content_and_can_be_brought_back(shelf: Shelf, noun: str) -> None:
    if noun == "run":
        shelf.put("session", SESSION, WRITES["session"], 201)
    kept = shelf.put(noun, 2, WRITES[noun], 201)
    assert shelf.delete(noun, 2, 428)["type"] == "/problems/version-needed"
    assert shelf.delete(noun, 2, 412, '"7"')["theirs"] == kept
    deleted = shelf.delete(noun, 2, 200, '"1"')
    assert (deleted["version"], shelf.etag) == (2, '"2"')
    assert deleted["deleted_at"] is not None
    assert shelf.delete(noun, 2, 200, '"1"') == deleted  # the same again
    assert shelf.get(noun, 2)["type"] == "/problems/no-such-record"
    assert key(2) not in [row["id"] for row in shelf.page(noun)["items"]]
    # Whoever asks sees it, whole.
    assert shelf.get(noun, 2, "?deleted=true") == deleted
    assert deleted in shelf.page(noun, "?deleted=true")["items"]
    assert {name: deleted[name] for name in WRITES[noun]} == WRITES[noun]
    # It does not come back by being sent again, only by being meant.
    shelf.put(noun, 2, WRITES[noun], 200 if noun in ("reading", "run") else 428)
    assert shelf.get(noun, 2)["type"] == "/problems/no-such-record"
    back = shelf.put(noun, 2, WRITES[noun], 200, '"2"')
    assert (back["version"], back["deleted_at"]) == (3, None)
    assert shelf.get(noun, 2) == back


def test_a_reading_set_aside_is_still_never_changed(shelf: Shelf) -> None:
    shelf.put("reading", 2, WRITES["reading"], 201)
    shelf.delete("reading", 2, 200, '"1"')
    problem = shelf.put("reading", 2, WRITES["reading"] | {"note": "x"}, 409, '"2"')
    assert problem["theirs"]["note"] == WRITES["reading"]["note"]
    assert shelf.get("reading", 2, "?deleted=true")["version"] == 2


def test_what_hangs_on_a_deleted_part_can_still_come_in(shelf: Shelf) -> None:
    shelf.put("chain", 2, WRITES["chain"], 201)
    shelf.delete("chain", 2, 200, '"1"')
    shelf.put("reading", 3, WRITES["reading"] | {"chain_id": key(2)}, 201)


# Batches


def test_a_batch_is_answered_in_order_and_parents_may_come_last(shelf: Shelf) -> None:
    changes = [
        change("reading", 20, engine_id=key(30), chain_id=key(40)),
        change("chain", 40, engine_id=key(30)),
        change("engine", 30),
    ]
    answer = shelf.sync(changes, "a")
    assert told(answer) == [(201, 1)] * 3
    assert [result["id"] for result in answer["results"]] == [key(20), key(40), key(30)]
    assert shelf.get("reading", 20)["chain_id"] == key(40)


def test_a_bad_record_spoils_none_of_the_others(shelf: Shelf) -> None:
    shelf.put("reading", 9, WRITES["reading"], 201)
    shelf.put("engine", 8, WRITES["engine"], 201)
    changes = [
        change("engine", 2),
        change("chain", 3, links="many"),
        change("drive", 4, engine_id=key(99)),
        change("reading", 9, note="another"),
        change("engine", 8, 5, name="Other"),
        change("engine", 2, name="Twice"),
        gone("engine", 77, 1),
        5,
        {"kind": "engins", "id": key(5)},
        {"kind": "engines", "id": "5"},
        change("engine", 6) | {"base_version": 0},
        change("engine", 6) | {"base_version": True},
        change("engine", 6) | {"deleted": True},
        {"kind": "engines", "id": key(6)},
        gone("engine", 6, None) | {"deleted": False},
        change("engine", 6) | {"extra": 1},
        change("engine", 7),
    ]
    answer = shelf.sync(changes, "a")
    statuses = [result["status"] for result in answer["results"]]
    assert statuses == [201, 422, 422, 409, 412, 422, 404, *[422] * 9, 201]
    types = [r["problem"] and r["problem"]["type"].split("/")[-1] for r in answer["results"]]
    assert types[2:7] == [
        "input-refused", "reading-exists", "changed-meanwhile", "sent-twice", "no-such-record",
    ]  # fmt: skip
    assert answer["results"][1]["problem"]["errors"][0]["field"] == "links"
    assert answer["results"][3]["theirs"]["note"] == WRITES["reading"]["note"]
    assert (answer["results"][4]["theirs"]["name"], answer["results"][4]["version"]) == (
        WRITES["engine"]["name"], 1,
    )  # fmt: skip
    for number, there in ((2, True), (3, False), (4, False), (6, False), (7, True)):
        assert ("version" in shelf.get("engine", number)) == there
    assert shelf.get("engine", 2)["name"] == WRITES["engine"]["name"]


def test_the_same_batch_again_is_answered_the_same_and_not_done_again(shelf: Shelf) -> None:
    shelf.put("engine", 2, WRITES["engine"], 201)
    batch = [change("engine", 2, 1, name="Other"), change("reading", 3), gone("engine", 99, 1)]
    first = shelf.sync(batch, "a")
    assert told(first) == [(200, 2), (201, 1), (404, None)]
    later = shelf.put("engine", 2, WRITES["engine"], 200, '"2"')
    assert shelf.sync(batch, "a") == first
    assert shelf.get("engine", 2) == later
    problem = shelf.sync(batch[:1], "a", 422)
    assert problem["type"] == "/problems/key-reused"
    # Without its key it is another batch, and each record answers for itself.
    assert told(shelf.sync(batch, "b")) == [(412, 3), (200, 1), (404, None)]


def test_a_batch_is_forgotten_after_its_time(shelf: Shelf, app: Flask) -> None:
    shelf.sync([change("engine", 2)], "a")
    with app.extensions["midspan"].writing() as session:
        old = session.get_one(SentBatch, (LOCAL_SHOP, '"a"'))
        old.created_at = datetime.now(UTC) - once.KEPT_FOR - timedelta(minutes=1)
    shelf.sync([], "b")
    assert told(shelf.sync([change("engine", 3)], "a")) == [(201, 1)]


def test_deleting_and_bringing_back_in_batches(shelf: Shelf) -> None:
    shelf.sync([change("reading", 2), change("chain", 3)], "a")
    assert told(shelf.sync([gone("reading", 2, 1), gone("chain", 3, 1)], "b")) == [(200, 2)] * 2
    # A phone that missed the first answer sends the reading again: it stays set aside.
    again = shelf.sync([change("reading", 2), change("chain", 3)], "c")
    assert told(again) == [(200, 2), (412, 2)]
    assert again["results"][0]["theirs"]["deleted_at"] is not None
    assert again["results"][1]["theirs"]["deleted_at"] is not None
    assert shelf.page("reading")["items"] == []
    back = shelf.sync([change("reading", 2, 2), change("chain", 3, 2)], "d")
    assert told(back) == [(200, 3)] * 2
    assert len(shelf.page("reading")["items"]) == 1


@pytest.mark.parametrize(
    "spoiled",
    ['"\\ud800"', "1e999", "NaN", "1" * 400, '{"a":1,"a":2}', '{"a" :1}', '"\\":"', '"ä"'],
)
@pytest.mark.parametrize("write", [json.dumps, compact])
def test_the_quick_reader_takes_and_refuses_what_the_strict_one_does(
    shelf: Shelf, spoiled: str, write: Callable[[Any], str]
) -> None:
    body = write({"changes": [change("reading", 2, input={"x": "@"})]})
    answer = shelf.client.post(
        "/api/v1/sync",
        data=body.replace('"@"', spoiled),
        content_type="application/json",
        headers={"Idempotency-Key": '"a"'},
    )
    body = json.dumps(WRITES["reading"] | {"input": {"x": "@"}}).replace('"@"', spoiled)
    alone = shelf.client.put(
        f"/api/v1/readings/{key(3)}", data=body, content_type="application/json"
    )
    status = answer.status_code
    if status == 200:
        status = answer.get_json()["results"][0]["status"]
    assert status == alone.status_code
    if status == 201:
        two, three = shelf.get("reading", 2), shelf.get("reading", 3)
        assert json.dumps(two["input"]) == json.dumps(three["input"])


def nested(depth: int) -> dict[str, Any]:
    return {"x": nested(depth - 1)} if depth else {}


def plain(batch: list[sync.Sent]) -> list[Any]:
    """Make what was read comparable: large objects by their text, refusals by their problems."""
    return [
        (
            sent.kind, sent.id, sent.noun, sent.refused and sent.refused.problems,
            sent.change and sent.change[:2] + sent.change[3:],
            sent.change and sent.change.values
            and {name: getattr(v, "text", v) for name, v in sent.change.values.items()},
        )
        for sent in batch
    ]  # fmt: skip


LIKE_A_CUT = {"x": [{"kind": 1, "y": 2}, {"kind": 3}], "y": '},{"kind":'}
SPELLED = [
    [change(noun, 2) for noun in EVERY],
    [change("reading", 2, input={"x": '"},{"kin', "ä": 1.5, "z": [1e-300, {}, None, True]})],
    [gone("engine", 2, 1), change("engine", 3, name=""), {"kind": "engins"}, {"kind": 1, "x": 1}],
]


@pytest.mark.parametrize("changes", SPELLED)
def test_change_by_change_a_batch_is_read_as_all_at_once(changes: list[Any]) -> None:
    data = compact({"changes": changes}).encode()
    found = sync._read_each(data)
    assert len(found) == len(changes)
    assert plain(found) == plain(sync._read_all(data))
    assert sync._read_each(json.dumps({"changes": changes}).encode()) == []


@pytest.mark.parametrize(
    "data",
    [
        *(compact({"changes": odd}) for odd in (
            [], [5, change("engine", 2)], [change("engine", 2), 5], [change("engine", 2), []],
            [change("reading", 2, input=LIKE_A_CUT)], [change("reading", 2, input=nested(19))],
            [change("engine", 2)] * 1001,
        )),
        compact({"changes": [change("engine", 2)], "more": 1}),
        compact([{"changes": [change("engine", 2)]}]),
        compact({"changes": [change("engine", 2)]}) + " ",
        compact({"changes": [change("engine", 2)]})[:-3],
        compact({"changes": [change("engine", 2)]}).replace("{", '{"kind":"plans",', 2),
        '{"changes":[{"kind":"engines","kind":"engines"}]}',
        '{"changes":[{"kind":NaN}]}',
        '{"changes":[{}]}',
    ],
)  # fmt: skip
def test_whatever_else_is_left_to_reading_all_at_once(data: str) -> None:
    assert sync._read_each(data.encode()) == []


def test_a_reading_that_is_sent_again_in_a_batch_is_compared_as_a_whole(shelf: Shelf) -> None:
    shelf.put("reading", 2, WRITES["reading"], 201)
    assert told(shelf.sync([change("reading", 2)], "a")) == [(200, 1)]
    other = change("reading", 2, input=WRITES["reading"]["input"] | {"x": 1})
    assert told(shelf.sync([other], "b")) == [(409, 1)]
    assert told(shelf.sync([gone("reading", 2, 1), change("reading", 3)], "c"))[0] == (200, 2)
    assert told(shelf.sync([change("reading", 2, 2)], "d")) == [(200, 3)]
    assert shelf.get("reading", 2)["input"] == WRITES["reading"]["input"]


@pytest.mark.parametrize("noun", NOUNS, ids=lambda noun: noun.one)
def test_quick_loading_is_the_schemas_own_loading(noun: Any) -> None:
    assert take(noun, WRITES[noun.one]) == noun.write().load(WRITES[noun.one])
    bad = [change for one, change, *_ in BAD if one == noun.one]
    assert noun.one in ("build", "entry") or len(bad) > 5
    for spoiled in bad:
        sent = WRITES[noun.one] | spoiled
        try:
            noun.write().load(sent)
        except ValidationError:
            with pytest.raises(Refused):
                take(BY_NAME[noun.many], sent)


# Catching up


def caught_up(shelf: Shelf, cursor: str | None, limit: int) -> tuple[list[Any], str]:
    """Fetch page by page until there is no more."""
    seen: list[Any] = []
    while True:
        page = shelf.changes(cursor, limit)
        assert len(page["items"]) <= limit
        seen += page["items"]
        cursor = page["next"]
        if not page["more"]:
            return seen, str(cursor)


@pytest.mark.parametrize("limit", [1, 2, 3, 100])
def test_catching_up_gives_every_record_at_its_last_change(shelf: Shelf, limit: int) -> None:
    shelf.sync([change("chain", 2), change("reading", 3), change("engine", 4)], "a")
    shelf.put("chain", 2, other("chain"), 200, '"1"')
    shelf.delete("reading", 3, 200, '"1"')
    seen, cursor = caught_up(shelf, None, limit)
    order = [(item["kind"], item["record"]["id"]) for item in seen]
    assert order == [
        ("engines", key(1)), ("builds", key(BUILD)), ("engines", key(4)),
        ("chains", key(2)), ("readings", key(3)),
    ]  # fmt: skip
    assert seen[3]["record"]["label"] == "Other"
    assert seen[4]["record"]["deleted_at"] is not None
    assert caught_up(shelf, cursor, limit) == ([], cursor)
    shelf.put("engine", 1, other("engine"), 200, '"1"')
    seen, _ = caught_up(shelf, cursor, limit)
    assert [item["record"]["id"] for item in seen] == [key(1)]


def test_the_same_again_is_no_change(shelf: Shelf) -> None:
    _, cursor = caught_up(shelf, None, 100)
    shelf.put("engine", 1, WRITES["engine"], 200)
    shelf.sync([change("engine", 1, name=5), change("engine", 2, 3)], "a")
    assert caught_up(shelf, cursor, 100) == ([], cursor)


def test_after_a_restore_every_phone_begins_again(shelf: Shelf, app: Flask) -> None:
    _, cursor = caught_up(shelf, None, 100)
    with app.extensions["midspan"].writing() as session:
        session.get_one(Shop, LOCAL_SHOP).history = uuid4()
    assert shelf.changes(cursor, status=410)["type"] == "/problems/cursor-unknown"
    assert len(caught_up(shelf, None, 100)[0]) == 2


def test_a_cursor_ahead_of_the_shop_is_unknown(shelf: Shelf) -> None:
    _, cursor = caught_up(shelf, None, 100)
    history, _, _ = cursor.partition("-")
    assert shelf.changes(f"{history}-999", status=410)["type"] == "/problems/cursor-unknown"

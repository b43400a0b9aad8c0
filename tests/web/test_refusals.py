"""Every way to be refused, and the one form that every refusal has."""

import json
import logging
import time
from dataclasses import replace
from io import BytesIO
from typing import Any, NamedTuple
from urllib.parse import unquote

import pytest
from flask import Flask
from sqlalchemy.exc import OperationalError

from databases import Databases
from midspan.core.errors import Refused
from midspan.settings import Settings
from midspan.store import tokens, upgrade
from midspan.store.models import LOCAL_SHOP
from midspan.web import create_app
from midspan.web.body import parse
from midspan.web.examples import WRITES
from midspan.web.problems import KINDS, pointer
from web.document import Document
from web.pairing import bearer, client_of, paired

JSON = "application/json"
FORM = "application/x-www-form-urlencoded"
ENGINE = "/api/v1/engines/01923f5e-8c00-7000-8000-000000000001"
SLACK = "/api/v1/calc/slack"
SYNC = "/api/v1/sync"
BATCH = {"Idempotency-Key": '"batch"'}
PAIR = {"code": "ABCDE-23456", "device_name": "Phone"}


class Case(NamedTuple):
    """A request, and what is said of it."""

    method: str
    path: str
    status: int
    type: str
    body: Any = b""
    sent_as: str | None = JSON
    headers: dict[str, str] = {}  # noqa: RUF012
    field: str | None = None
    code: str | None = None


CASES = {
    "no such page": Case("GET", "/nowhere", 404, "about:blank"),
    "no such page of the API": Case("GET", "/api/v1/nowhere", 404, "about:blank"),
    "no such problem": Case("GET", "/problems/nothing", 404, "about:blank"),
    "method": Case("POST", ENGINE, 405, "about:blank"),
    "method of a calculation": Case("GET", SLACK, 405, "about:blank"),
    "a table sent as JSON": Case("POST", "/api/v1/lab/dyno-table", 415, "not-sent-as-table"),
    "no body": Case("POST", SLACK, 400, "not-json"),
    "half a body": Case("POST", SLACK, 400, "not-json", b'{"drive": '),
    "two bodies": Case("POST", SLACK, 400, "not-json", b"{} {}"),
    "not UTF-8": Case("POST", SLACK, 400, "not-json", b'{"a": "\xff"}'),
    "UTF-16": Case("POST", SLACK, 400, "not-json", "{}".encode("utf-16")),
    "byte order mark": Case("POST", SLACK, 400, "not-json", b"\xef\xbb\xbf{}"),
    "nested deep": Case("POST", SLACK, 400, "not-json", b"[" * 100_000 + b"]" * 100_000),
    "objects nested deep": Case("POST", SLACK, 400, "not-json", b'{"a":' * 100_000),
    "endless number": Case("POST", SLACK, 400, "not-json", b'{"a": ' + b"9" * 5000 + b"}"),
    "a form": Case("POST", SLACK, 415, "not-sent-as-json", b"a=1", FORM),
    "plain text": Case("POST", SLACK, 415, "not-sent-as-json", b"{}", "text/plain"),
    "no type": Case("POST", SLACK, 415, "not-sent-as-json", b"{}", None),
    "charset": Case("POST", SLACK, 415, "not-sent-as-json", b"{}", JSON + "; charset=latin-1"),
    "record as a form": Case("PUT", ENGINE, 415, "not-sent-as-json", b"{}", "text/plain"),
    "too large": Case("POST", SLACK, 413, "body-too-large", b" " * 20_001),
    "no authority": Case("GET", "/authority.crt", 404, "no-authority"),
    "foreign host": Case("GET", "/healthz", 400, "foreign-host", headers={"Host": "evil.example"}),
    "foreign host, our port": Case(
        "POST", SLACK, 400, "foreign-host", b"{}", headers={"Host": "evil.example:8765"}
    ),
    "like our host": Case(
        "GET", "/api/v1/engines", 400, "foreign-host", headers={"Host": "localhost.evil.example"}
    ),
    "twice": Case(
        "POST", SLACK, 422, "input-refused", b'{"a": {"method": 1, "method": 2}}',
        field="method", code="given-twice",
    ),
    # As many colons behind a quote as names: the quick reader alone would be taken in.
    "twice, once with a blank": Case(
        "POST", SLACK, 422, "input-refused", b'{"a": {"method" :1, "method": 2}}',
        field="method", code="given-twice",
    ),
    "a list": Case("POST", SLACK, 422, "input-refused", [], field="", code="not-an-object"),
    "null": Case("POST", SLACK, 422, "input-refused", b"null", field="", code="not-an-object"),
    "unknown field": Case(
        "POST", SLACK, 422, "input-refused", {"methd": "total"}, field="methd", code="unknown-field"
    ),
    "batch of nothing": Case(
        "POST", "/api/v1/calc/batch", 422, "input-refused", {}, field="items", code="missing"
    ),
    "batch, no object": Case(
        "POST", "/api/v1/calc/batch", 422, "input-refused", 5, field="", code="not-an-object"
    ),
    "batch, no list": Case(
        "POST", "/api/v1/calc/batch", 422, "input-refused", {"items": {}},
        field="items", code="not-a-list",
    ),
    "batch, too many": Case(
        "POST", "/api/v1/calc/batch", 422, "input-refused", {"items": [0] * 1001},
        field="items", code="too-many",
    ),
    "batch, misspelt": Case(
        "POST", "/api/v1/calc/batch", 422, "input-refused", {"itms": []},
        field="itms", code="unknown-field",
    ),
    "no record": Case("GET", ENGINE, 404, "no-such-record"),
    "nothing to delete": Case("DELETE", ENGINE, 404, "no-such-record"),
    "a change of nothing": Case(
        "PUT", ENGINE, 412, "changed-meanwhile", WRITES["engine"], headers={"If-Match": '"1"'}
    ),
    "batch without a key": Case("POST", SYNC, 400, "key-needed", {"changes": []}),
    "batch with a bare key": Case(
        "POST", SYNC, 400, "key-needed", {"changes": []}, headers={"Idempotency-Key": "a"}
    ),
    "sync of no object": Case(
        "POST", SYNC, 422, "input-refused", [], headers=BATCH, field="", code="not-an-object"
    ),
    "sync of nothing": Case(
        "POST", SYNC, 422, "input-refused", {}, headers=BATCH, field="changes", code="missing"
    ),
    "sync, no list": Case(
        "POST", SYNC, 422, "input-refused", {"changes": 1}, headers=BATCH,
        field="changes", code="not-a-list",
    ),
    "sync, misspelt": Case(
        "POST", SYNC, 422, "input-refused", {"change": []}, headers=BATCH,
        field="change", code="unknown-field",
    ),
    "sync, too many": Case(
        "POST", SYNC, 422, "input-refused", {"changes": [0] * 1001}, headers=BATCH,
        field="changes", code="too-many",
    ),
    "sync, twice": Case(
        "POST", SYNC, 422, "input-refused", b'{"changes": [{"kind": 1, "kind":2}]}', headers=BATCH,
        field="kind", code="given-twice",
    ),
    "sync, nested deep": Case("POST", SYNC, 400, "not-json", b"[" * 100_000, headers=BATCH),
    "sync, half a body": Case("POST", SYNC, 400, "not-json", b'{"changes": [', headers=BATCH),
    "cursor": Case(
        "GET", "/api/v1/changes?after=x", 422, "input-refused", field="after", code="not-a-cursor"
    ),
    "cursor of elsewhere": Case("GET", "/api/v1/changes?after=0-1", 410, "cursor-unknown"),
    "no reading to explain": Case(
        "GET", ENGINE.replace("engines", "readings") + "/explanation", 404, "no-such-record"
    ),
    "id": Case("GET", "/api/v1/engines/1", 422, "input-refused", field="id", code="not-an-id"),
    "id of another version": Case(
        "PUT", ENGINE.replace("-7000-", "-4000-"), 422, "input-refused", {},
        field="id", code="not-an-id",
    ),
    "no token": Case("GET", ENGINE, 401, "not-paired", headers={"Authorization": ""}),
    "another scheme": Case(
        "GET", ENGINE, 401, "not-paired", headers={"Authorization": "Basic bTpzcA=="}
    ),
    "a token of nobody": Case("PUT", ENGINE, 401, "not-paired", {}, headers=bearer("midspan_x")),
    "code": Case("POST", "/api/v1/pair", 403, "code-refused", PAIR),
    "code in words": Case(
        "POST", "/api/v1/pair", 422, "input-refused", PAIR | {"code": "please"},
        field="code", code="not-a-code",
    ),
    "code, no text": Case(
        "POST", "/api/v1/pair", 422, "input-refused", PAIR | {"code": 5},
        field="code", code="not-text",
    ),
    "no name": Case(
        "POST", "/api/v1/pair", 422, "input-refused", PAIR | {"device_name": " "},
        field="device_name", code="missing",
    ),
    "role": Case(
        "POST", "/api/v1/pairing-codes", 422, "input-refused", {"role": "king"},
        field="role", code="not-a-choice",
    ),
    "no device": Case("DELETE", ENGINE.replace("engines", "devices"), 404, "no-such-record"),
    "page size": Case(
        "GET", "/api/v1/readings?limit=0", 422, "input-refused", field="limit", code="out-of-range"
    ),
    "page size, huge": Case(
        "GET", "/api/v1/readings?limit=501", 422, "input-refused",
        field="limit", code="out-of-range",
    ),
    "page size in words": Case(
        "GET", "/api/v1/readings?limit=ten", 422, "input-refused", field="limit", code="not-whole"
    ),
    "page start": Case(
        "GET", "/api/v1/readings?after=x", 422, "input-refused", field="after", code="not-an-id"
    ),
    "label of a blank": Case(
        "GET", "/api/v1/labels/%20.svg", 422, "input-refused", field="tag", code="not-a-tag"
    ),
    "label, too long": Case(
        "GET", "/api/v1/labels/" + "x" * 41 + ".svg", 422, "input-refused",
        field="tag", code="not-a-tag",
    ),
    "label of two words with a slash": Case("GET", "/api/v1/labels/a/b.svg", 404, "about:blank"),
    "label in another form": Case("GET", "/api/v1/labels/C-1.png", 404, "about:blank"),
    "misspelt query": Case(
        "GET", "/api/v1/readings?limt=5", 422, "input-refused",
        field="limt", code="unknown-field",
    ),
}  # fmt: skip


@pytest.fixture
def settings(settings: Settings) -> Settings:
    return replace(settings, max_body_bytes=20_000)


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_it_is_refused_in_the_one_form(client, document: Document, settings, case: Case) -> None:
    body = case.body if isinstance(case.body, bytes) else json.dumps(case.body).encode()
    if case.status != 413 and len(body) > settings.max_body_bytes:
        client.application.config["MAX_CONTENT_LENGTH"] = None
    answer = client.open(
        case.path, method=case.method, data=body, content_type=case.sent_as, headers=case.headers
    )
    assert answer.status_code == case.status
    problem = answer.get_json(force=True)
    assert answer.mimetype == "application/problem+json"
    assert document.faults(problem, {"$ref": "#/components/schemas/Problem"}) == []
    assert problem["status"] == case.status
    assert problem["type"].removeprefix("/problems/") == case.type
    assert problem["instance"] == unquote(case.path.split("?")[0])
    assert len(problem["detail"]) > 10
    if case.field is not None:
        (found,) = [e for e in problem["errors"] if e["field"] == case.field][:1]
        assert found["code"] == case.code
        assert found["pointer"] == pointer(case.field)
        assert found["need"]
        assert found["next_step"]
    assert answer.headers["X-Content-Type-Options"] == "nosniff"


def test_every_kind_of_problem_is_met_here_or_below() -> None:
    below = {"unexpected", "store-unavailable", "store-not-migrated"}
    below |= {"reading-exists", "version-needed", "sent-twice", "key-reused"}  # of records, sync
    below |= {"not-allowed", "too-many-requests"}  # in test_access.py and test_rates.py
    assert {case.type for case in CASES.values()} - {"about:blank"} | below == set(KINDS)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_the_page_its_type_leads_to(client, kind: str) -> None:
    answer = client.get(f"/problems/{kind}")
    assert answer.status_code == 200
    assert KINDS[kind].detail in answer.text


@pytest.mark.parametrize("length", [19_000, 20_000, 60_000])
def test_a_body_in_chunks_is_never_cut_and_taken(client, length: int) -> None:
    answer = client.post(
        SLACK,
        input_stream=BytesIO(b"{}" + b" " * (length - 2)),
        content_type=JSON,
        environ_overrides={"wsgi.input_terminated": True, "HTTP_TRANSFER_ENCODING": "chunked"},
    )
    assert answer.status_code == (422 if length < 20_000 else 413)


def test_method_not_allowed_says_which_are(client) -> None:
    assert "POST" in client.get(SLACK).headers["Allow"]


@pytest.mark.parametrize("host", ["localhost", "localhost:8765", "127.0.0.1:80"])
def test_our_own_names_are_answered(client, host: str) -> None:
    assert client.get("/healthz", headers={"Host": host}).status_code == 200


def test_a_fault_of_ours_is_logged_under_an_id_and_tells_nothing(
    own_app: Flask, document: Document, caplog: pytest.LogCaptureFixture
) -> None:
    client = client_of(own_app, paired(own_app.extensions["midspan"])[0])

    @own_app.get("/api/v1/fault")
    def fault() -> str:
        raise RuntimeError("secret of the inside")

    with caplog.at_level(logging.ERROR):
        answer = client.get("/api/v1/fault")
    problem = answer.get_json(force=True)
    assert (answer.status_code, answer.mimetype) == (500, "application/problem+json")
    assert document.faults(problem, {"$ref": "#/components/schemas/Problem"}) == []
    assert "secret" not in answer.text
    assert "Traceback" not in answer.text
    assert problem["instance"].startswith("urn:uuid:")
    assert problem["instance"] in caplog.text
    assert "secret of the inside" in caplog.text


def test_an_answer_that_is_no_json_never_goes_out(own_app: Flask) -> None:
    client = client_of(own_app, paired(own_app.extensions["midspan"])[0])
    own_app.add_url_rule("/api/v1/nan", view_func=lambda: {"value": float("nan")})
    assert client.get("/api/v1/nan").status_code == 500


def test_a_store_that_cannot_be_used_is_503_and_its_words_stay_inside(own_app: Flask) -> None:
    client = client_of(own_app, paired(own_app.extensions["midspan"])[0])

    @own_app.get("/api/v1/locked")
    def locked() -> str:
        raise OperationalError("SELECT secret", {}, Exception("database is locked"))

    answer = client.get("/api/v1/locked")
    assert answer.status_code == 503
    assert answer.get_json(force=True)["type"] == "/problems/store-unavailable"
    assert "secret" not in answer.text


def test_before_the_migration_it_is_up_but_not_ready(
    tmp_path, store_kind: str, databases: Databases, document
) -> None:
    app = create_app(Settings(database_url=databases.empty(store_kind, tmp_path)))
    client = app.test_client()
    document.expect(client.get("/healthz"), "get", "/healthz")
    answer = client.get("/readyz")
    assert document.expect(answer, "get", "/readyz")["type"] == "/problems/store-not-migrated"
    assert answer.status_code == 503
    some_token = bearer(tokens.new_token(LOCAL_SHOP, LOCAL_SHOP)[0])
    assert client.get("/api/v1/engines", headers=some_token).status_code == 503
    upgrade(app.extensions["midspan"])
    assert document.expect(client.get("/readyz"), "get", "/readyz")["status"] == "up"


@pytest.mark.parametrize(
    ("field", "expected"),
    [
        ("", "#"),
        ("drive.centre_distance_mm", "#/drive/centre_distance_mm"),
        ("readings_mm[2]", "#/readings_mm/2"),
        ("a/b~c d", "#/a~1b~0c%20d"),
    ],
)
def test_pointers_are_those_of_the_standard(field: str, expected: str) -> None:
    assert pointer(field) == expected


def test_a_name_given_twice_is_found_in_a_time_that_grows_with_the_body_and_no_faster() -> None:
    """Looked for name by name, ten times the names would take a hundred times as long."""

    def quickest(count: int) -> float:
        names = [*range(count), count - 1]
        text = ("{" + ",".join(f'"{name}":1' for name in names) + "}").encode()
        spent = []
        for _ in range(5):
            start = time.perf_counter()
            with pytest.raises(Refused) as refused:
                parse(text)
            spent.append(time.perf_counter() - start)
            assert refused.value.problems[0]["field"] == str(count - 1)
        return min(spent)

    assert quickest(20_000) < 40 * quickest(2_000)

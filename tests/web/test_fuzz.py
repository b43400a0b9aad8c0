"""Requests made up from the document, good and bad: never a fault of ours, never another form."""

import json
from collections.abc import Iterator
from contextlib import ExitStack
from typing import Any

import pytest
import schemathesis
from hypothesis import HealthCheck, given, settings, strategies
from schemathesis import GenerationMode
from schemathesis.checks import CHECKS

from databases import KINDS, Databases
from midspan.core import CALCS
from midspan.settings import Settings
from midspan.web import create_app
from web.document import Document
from web.pairing import bearer, paired

HELD = (
    "not_a_server_error",
    "status_code_conformance",
    "content_type_conformance",
    "response_schema_conformance",
)
BOUNDED = settings(
    max_examples=10, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck)
)


class Fuzzed:
    """A service on each kind of database; made-up requests go to the one whose turn it is."""

    def __init__(self, urls: dict[str, str]) -> None:
        self.apps = {
            kind: create_app(Settings(database_url=url, requests_per_minute=0))
            for kind, url in urls.items()
        }
        self.turn = KINDS[0]

    def __call__(self, environ: Any, start_response: Any) -> Any:
        return self.apps[self.turn](environ, start_response)


@pytest.fixture(scope="module")
def fuzzed(databases: Databases) -> Iterator[Fuzzed]:
    """Two services for all made-up requests; records pile up, as they do in life."""
    with ExitStack() as stack:
        urls = {kind: stack.enter_context(databases.lent(kind))[0] for kind in KINDS}
        made = Fuzzed(urls)
        yield made
        for app in made.apps.values():
            app.extensions["midspan"].close()


@pytest.fixture(scope="module")
def schema(fuzzed: Fuzzed) -> Any:
    """The document as the makers of requests read it, which takes them a second."""
    return schemathesis.openapi.from_wsgi("/api/v1/openapi.json", fuzzed)


def operations() -> Iterator[tuple[str, str, GenerationMode]]:
    """Give every operation, to be asked well and, where it takes anything, badly."""
    document = Document()
    for method, path, operation in document.operations():
        yield method, path, GenerationMode.POSITIVE
        if {"requestBody", "parameters"} & (set(operation) | set(document.whole["paths"][path])):
            yield method, path, GenerationMode.NEGATIVE


@pytest.mark.parametrize(("method", "path", "mode"), sorted(operations()))
def test_made_up_requests(
    fuzzed: Fuzzed, schema: Any, document: Document, method: str, path: str, mode: GenerationMode
) -> None:
    """What touches the store is asked on both kinds; it alone needs a token."""
    secured = document.whole["paths"][path][method]["security"]
    kinds = KINDS if secured or path == "/api/v1/pair" else KINDS[:1]
    tokens = {kind: bearer(paired(fuzzed.apps[kind].extensions["midspan"])[0]) for kind in kinds}
    made_up = schema[path][method].as_strategy(generation_mode=mode)
    checks = [CHECKS.get_one(name) for name in HELD]
    sent = dict.fromkeys(kinds, 0)

    @BOUNDED
    @given(case=made_up)
    def send(case: Any) -> None:
        for fuzzed.turn in kinds:
            case.call_and_validate(checks=checks, headers=tokens[fuzzed.turn])
            sent[fuzzed.turn] += 1

    send()
    assert min(sent.values()) > 0


ANY_JSON = strategies.recursive(
    strategies.none() | strategies.booleans() | strategies.floats() | strategies.integers()
    | strategies.text(max_size=5),
    lambda inner: strategies.lists(inner, max_size=3)
    | strategies.dictionaries(strategies.text(max_size=5), inner, max_size=3),
    max_leaves=8,
)  # fmt: skip


@given(payload=ANY_JSON, name=strategies.sampled_from([*sorted(CALCS), "batch"]))
@settings(BOUNDED, max_examples=200)
def test_any_json_at_all(fuzzed: Fuzzed, payload: Any, name: str) -> None:
    answer = (
        fuzzed.apps[KINDS[0]]
        .test_client()
        .post(f"/api/v1/calc/{name}", data=json.dumps(payload), content_type="application/json")
    )
    assert answer.status_code in (200, 422), answer.text


@given(body=strategies.binary(max_size=60))
@settings(BOUNDED, max_examples=100)
def test_any_bytes_at_all(fuzzed: Fuzzed, body: bytes) -> None:
    answer = (
        fuzzed.apps[KINDS[0]]
        .test_client()
        .post("/api/v1/calc/slack", data=body, content_type="application/json")
    )
    assert answer.status_code in (400, 422)

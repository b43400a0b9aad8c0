"""Requests made up from the document, good and bad: never a fault of ours, never another form."""

import json
from collections.abc import Iterator
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
    max_examples=15, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck)
)


@pytest.fixture(scope="module")
def fuzzed(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory, databases: Databases
) -> Iterator[Any]:
    """One service for all made-up requests; records pile up, as they do in life."""
    folder = tmp_path_factory.mktemp("fuzzed")
    url = databases.migrated(request.param, folder)
    app = create_app(Settings(data_dir=folder, database_url=url, requests_per_minute=0))
    yield app
    app.extensions["midspan"].close()
    databases.drop(url)


@pytest.fixture(scope="module")
def schema(fuzzed: Any) -> Any:
    """The document as the makers of requests read it, which takes them a second."""
    return schemathesis.openapi.from_wsgi("/api/v1/openapi.json", fuzzed)


def operations() -> Iterator[tuple[str, str, str, GenerationMode]]:
    """Give every operation, to be asked well and, where it takes anything, badly.

    What touches the store is asked on both kinds; it alone needs a token.
    """
    document = Document()
    for method, path, operation in document.operations():
        kinds = KINDS if operation["security"] or path == "/api/v1/pair" else KINDS[:1]
        modes = [GenerationMode.POSITIVE]
        if {"requestBody", "parameters"} & (set(operation) | set(document.whole["paths"][path])):
            modes.append(GenerationMode.NEGATIVE)
        for kind in kinds:
            yield from ((kind, method, path, mode) for mode in modes)


@pytest.mark.parametrize(
    ("fuzzed", "method", "path", "mode"), sorted(operations()), indirect=["fuzzed"]
)
def test_made_up_requests(
    fuzzed: Any, schema: Any, method: str, path: str, mode: GenerationMode
) -> None:
    token = bearer(paired(fuzzed.extensions["midspan"])[0])
    made_up = schema[path][method].as_strategy(generation_mode=mode)
    checks = [CHECKS.get_one(name) for name in HELD]

    @BOUNDED
    @given(case=made_up)
    def send(case: Any) -> None:
        case.call_and_validate(checks=checks, headers=token)

    send()


ANY_JSON = strategies.recursive(
    strategies.none() | strategies.booleans() | strategies.floats() | strategies.integers()
    | strategies.text(max_size=5),
    lambda inner: strategies.lists(inner, max_size=3)
    | strategies.dictionaries(strategies.text(max_size=5), inner, max_size=3),
    max_leaves=8,
)  # fmt: skip


@pytest.mark.parametrize("fuzzed", KINDS[:1], indirect=True)
@given(payload=ANY_JSON, name=strategies.sampled_from([*sorted(CALCS), "batch"]))
@settings(BOUNDED, max_examples=200)
def test_any_json_at_all(fuzzed: Any, payload: Any, name: str) -> None:
    answer = fuzzed.test_client().post(
        f"/api/v1/calc/{name}", data=json.dumps(payload), content_type="application/json"
    )
    assert answer.status_code in (200, 422), answer.text


@pytest.mark.parametrize("fuzzed", KINDS[:1], indirect=True)
@given(body=strategies.binary(max_size=60))
@settings(BOUNDED, max_examples=100)
def test_any_bytes_at_all(fuzzed: Any, body: bytes) -> None:
    answer = fuzzed.test_client().post(
        "/api/v1/calc/slack", data=body, content_type="application/json"
    )
    assert answer.status_code in (400, 422)

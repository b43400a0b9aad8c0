"""A dyno's table over HTTP: streamed in, and told line by line."""

import json
from typing import Any

import pytest
from flask.testing import FlaskClient

from dyno_files import rows, written
from midspan.core import run

PATH = "/api/v1/lab/dyno-table"
TEXT = written([rows(), rows()])


def lines(answer: Any) -> list[dict[str, Any]]:
    assert answer.mimetype == "application/x-ndjson", answer.get_data(as_text=True)
    return [json.loads(line) for line in answer.get_data(as_text=True).splitlines()]


def send(client: FlaskClient, data: str, **query: str) -> Any:
    return client.post(PATH, data=data.encode(), content_type="text/csv", query_string=query)


def test_progress_and_then_the_pulls(client) -> None:
    *progress, last = lines(send(client, TEXT))
    assert progress[-1] == {"bytes": len(TEXT.encode()), "rows": 402}
    assert [pull["rows_used"] for pull in last["done"]["pulls"]] == [201, 201]
    layout = run("dyno-table", {"step": "guess", "text": TEXT})["layout"]
    assert last["layout"] == layout


def test_a_changed_layout_is_read_by(client) -> None:
    layout = run("dyno-table", {"step": "guess", "text": TEXT})["layout"]
    layout["columns"][1]["unit"] = "lbf ft"
    *_, last = lines(send(client, TEXT, layout=json.dumps(layout)))
    (plain,) = [lines(send(client, TEXT))[-1]]
    ratio = (
        last["done"]["pulls"][0]["peaks"]["torque_nm"]
        / plain["done"]["pulls"][0]["peaks"]["torque_nm"]
    )
    assert ratio == pytest.approx(1.3558179483314004)


def test_what_is_no_table_or_no_layout_is_refused(client) -> None:
    answer = client.post(PATH, json={"a": 1})
    assert answer.status_code == 415
    assert answer.mimetype == "application/problem+json"
    answer = send(client, TEXT, layout="{}")
    assert answer.status_code == 422
    assert "layout.separator" in [e["field"] for e in answer.get_json()["errors"]]
    assert send(client, TEXT, layout="{").status_code == 400


def test_a_table_too_large_is_refused(client) -> None:
    client.application.config["MIDSPAN_MAX_TABLE_BYTES"] = 1000
    assert send(client, TEXT).status_code == 413

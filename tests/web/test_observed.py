"""What the running service tells of its requests: all workers' figures, logs without secrets."""

import json
import re
import sqlite3
from contextlib import closing
from typing import Any

from midspan.settings import Settings
from midspan.web import create_app
from midspan.web.examples import WRITES
from web.process import Process, request

SECRET = "kept-between-us"  # noqa: S105
KEY = "01923f5e-8c00-7000-8000-000000000001"
ENGINE = f"/api/v1/engines/{KEY}"


def send(
    process: Process, method: str, path: str, body: bytes | None = None, **headers: str
) -> tuple[int, dict[str, str], str]:
    """Send anything, and take whatever answer comes."""
    sent = {"Content-Type": "application/json", "Authorization": f"Bearer {process.token}"}
    sent |= {name.replace("_", "-"): value for name, value in headers.items()}
    status, got, content = request(process.address + path, method, body, sent)
    return status, got, content.decode()


def told(log: str) -> list[dict[str, Any]]:
    """Read a log, of which every line must be a JSON object."""
    return [json.loads(line) for line in log.splitlines()]


def test_every_request_is_logged_and_no_secret_is(start) -> None:
    process: Process = start(settings={"MIDSPAN_LOG_LEVEL": "info"}).wait_until_it_says_where()
    process.pair()
    code = "BCDF-GHJK"
    note = json.dumps(WRITES["engine"] | {"note": SECRET}).encode()
    given = "0123456789abcdef0123456789abcdef"
    sent = [
        send(process, "PUT", ENGINE, note),
        send(process, "GET", ENGINE, X_Request_Id=given),
        send(process, "GET", f"/api/v1/engines?limt={SECRET}", X_Request_Id=f"{SECRET}\t{SECRET}"),
        send(process, "GET", f"/nowhere/{SECRET}?a={SECRET}", Referer=f"http://x/{SECRET}"),
        send(process, "POST", "/api/v1/calc/drive", b'{"a": "' + SECRET.encode()),
        send(process, "GET", ENGINE, Authorization=f"Bearer {SECRET}", Cookie=f"a={SECRET}"),
        send(process, "POST", "/api/v1/pair", json.dumps(
            {"code": code, "device_name": SECRET}).encode()),
        send(process, "BREW", "/healthz"),
        send(process, "GET", "/healthz", User_Agent=SECRET),
    ]  # fmt: skip
    statuses = [status for status, _, _ in sent]
    assert statuses[:2] == [201, 200]
    assert all(400 <= status < 500 for status in statuses[2:8]), statuses
    # A store that fails is logged at length, with what the database said.
    with closing(sqlite3.connect(process.data / "midspan.sqlite3")) as database:
        database.execute("ALTER TABLE engine RENAME TO gone")
        database.commit()
    failed = send(process, "PUT", ENGINE[:-1] + "2", note)
    assert failed[0] in (500, 503)
    assert process.stop() == 0

    log = process.kill()
    lines = told(log)
    for word in (SECRET, process.token, code, KEY):
        assert word not in log
    by_id = {line["request"]: line for line in lines if line["logger"] == "midspan.request"}
    for status, headers, _ in [*sent, failed]:
        line = by_id[headers["X-Request-Id"]]
        assert line["status"] == status
        assert line["duration_ms"] > 0
    put = by_id[sent[0][1]["X-Request-Id"]]
    assert (put["method"], put["route"]) == ("PUT", "/api/v1/engines/<id>")
    assert re.fullmatch(r"[0-9a-f-]{36}", put["shop"])
    assert re.fullmatch(r"[0-9a-f-]{36}", put["device"])
    assert sent[1][1]["X-Request-Id"] == given
    assert by_id[sent[3][1]["X-Request-Id"]]["route"] == "none"
    assert by_id[sent[7][1]["X-Request-Id"]]["method"] == "other"
    assert "device" not in by_id[sent[5][1]["X-Request-Id"]]
    (fault,) = [line for line in lines if line["level"] == "error"]
    assert fault["request"] == failed[1]["X-Request-Id"]
    assert "engine" in fault["error"]


def test_unless_told_a_quiet_day_logs_nothing(start) -> None:
    process: Process = start().wait_until_it_says_where()
    assert send(process, "GET", "/healthz")[0] == 200
    assert process.stop() == 0
    assert process.kill() == ""


def figures(text: str) -> dict[tuple[str, str, str], int]:
    """Give how many requests were counted, by method, route and status."""
    pattern = r'midspan_request_seconds_count\{method="(.*?)",route="(.*?)",status="(.*?)"\} (\S+)'
    return {(m, r, s): int(float(count)) for m, r, s, count in re.findall(pattern, text)}


def test_the_figures_are_those_of_all_workers(start) -> None:
    process: Process = start(settings={"MIDSPAN_WORKERS": "3"}).wait_until_it_says_where()
    process.pair()
    for _ in range(30):
        assert send(process, "GET", "/healthz")[0] == 200
    for number in range(20):
        assert send(process, "GET", f"/nowhere/{number}")[0] == 404
        assert send(process, f"BREW{number}", "/healthz")[0] == 405
    for _ in range(6):  # whoever answers
        status, headers, text = send(process, "GET", "/metrics")
        assert status == 200
        assert headers["Content-Type"].startswith("text/plain; version=")
        counted = figures(text)
        assert counted["GET", "/healthz", "200"] == 30
        assert counted["GET", "none", "404"] == 20
        assert counted["other", "none", "405"] == 20
    bucket = re.findall(r'_bucket\{le="\+Inf",method="GET",route="/healthz".*?\} (\S+)', text)
    assert bucket == ["30.0"]
    app = create_app(Settings(database_url="sqlite://"))
    rules = {rule.rule for rule in app.url_map.iter_rules()} | {"none", "static"}
    assert {route for _, route, _ in counted} <= rules
    assert KEY not in text


def test_the_figures_are_for_an_owner(bare_client, client) -> None:
    answer = bare_client.get("/metrics")
    assert answer.status_code == 401
    assert client.get("/metrics").status_code == 200

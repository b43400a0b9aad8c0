"""What sync costs beside the bare database, and a list page beside a short list: ratios only."""

import json
import time
from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import sqlalchemy as sa

from midspan.core import run
from midspan.settings import Settings
from midspan.store import Reading, Store, records
from midspan.store.models import LOCAL_SHOP, Base
from midspan.web import create_app
from midspan.web.examples import INPUTS, WRITES
from web.pairing import client_of, paired

READINGS, IN_A_BATCH, ROUNDS = 2_000, 400, 2
# Wanted is 0.30. The bare rows wait for the disk and the service for the processor, so on a busy
# machine this falls to a third; one round trip a record would be far below.
LEAST_OF_BARE = 0.05
MOST_FOR_A_PAGE = 1.5
# One that read the whole list would cost a hundred times as much; `midspan bench` has a million.
SHORT, LONG = 1_000, 100_000
AT = datetime(2026, 1, 31, 12, tzinfo=UTC)


def key(number: int) -> str:
    return f"01923f5e-8c00-7000-8000-{number:012x}"


def reading() -> dict[str, Any]:
    """Give a reading as a phone sends it: the whole of its result."""
    result = run("slack", INPUTS["slack"])
    return WRITES["reading"] | {"engine_id": None, "result": result}


def bare(url: str, first: int, count: int) -> float:
    """Time the driver's own executemany of the same rows, in as many transactions."""
    store, sent = Store(url), reading()
    text = {name: json.dumps(sent[name]) for name in ("input", "result", "limit")}
    moment = AT if store.engine.name == "postgresql" else "2026-01-31 12:00:00.000000"
    shop: Any = LOCAL_SHOP if store.engine.name == "postgresql" else LOCAL_SHOP.hex
    rows = []
    for number in range(first, first + count):
        id = key(number) if store.engine.name == "postgresql" else key(number).replace("-", "")
        rows.append((
            shop, id, 1, moment, number, "slack", moment, text["input"], text["result"],
            sent["core_version"], text["limit"], sent["note"],
        ))  # fmt: skip
    columns = "shop_id, id, version, received_at, seq, calc, taken_at, input, result, core_version"
    mark = "%s" if store.engine.name == "postgresql" else "?"
    places = ", ".join([mark] * 12)
    statement = f'INSERT INTO reading ({columns}, "limit", note) VALUES ({places})'  # noqa: S608
    connection: Any = store.engine.raw_connection()
    cursor = connection.cursor()
    start = time.perf_counter()
    for at in range(0, count, IN_A_BATCH):
        if store.engine.name == "sqlite":
            cursor.execute("BEGIN IMMEDIATE")
        cursor.executemany(statement, rows[at : at + IN_A_BATCH])
        cursor.execute("COMMIT")
    spent = time.perf_counter() - start
    cursor.execute("DELETE FROM reading")
    cursor.execute("COMMIT") if store.engine.name == "postgresql" else None
    connection.close()
    store.close()
    return spent


def synced(url: str, first: int, count: int) -> float:
    """Time the service: requests with JSON in them, to answers with JSON in them."""
    app = create_app(Settings(database_url=url, requests_per_minute=0))
    store = app.extensions["midspan"]
    client = client_of(app, paired(store)[0])
    sent = reading()
    bodies = []
    for at in range(first, first + count, IN_A_BATCH):
        changes = [
            {"kind": "readings", "id": key(number), "base_version": None, "record": sent}
            for number in range(at, at + IN_A_BATCH)
        ]
        bodies.append(json.dumps({"changes": changes}, separators=(",", ":")).encode())
    start = time.perf_counter()
    for number, body in enumerate(bodies):
        answer = client.post(
            "/api/v1/sync", data=body, content_type="application/json",
            headers={"Idempotency-Key": f'"{first} {number}"'},
        )  # fmt: skip
        assert answer.status_code == 200
    spent = time.perf_counter() - start
    assert {result["status"] for result in answer.get_json()["results"]} == {201}
    with store.writing() as session:
        assert session.scalar(sa.select(sa.func.count()).select_from(Reading)) == count
        session.execute(sa.delete(Reading))
    store.close()
    return spent


def test_sync_keeps_up_with_the_bare_database(store: Store) -> None:
    url = store.engine.url.render_as_string(hide_password=False)
    both: list[tuple[float, float]] = []
    for number in range(ROUNDS):
        first = 1_000_000 * (number + 1)
        both.append((bare(url, first, READINGS), synced(url, first, READINGS)))
    # The best of each: others use the machine too.
    least = [min(column) for column in zip(*both, strict=True)]
    ratio = least[0] / least[1]
    print(f"{store.engine.name}: {READINGS} readings at {ratio:.2f} of the bare rate")
    assert ratio >= LEAST_OF_BARE


def fill(store: Store, first: int, count: int) -> None:
    """Let the database itself make many small readings."""
    if store.engine.name == "postgresql":
        numbers = f"SELECT n FROM generate_series({first}, {first + count - 1}) AS m (n)"  # noqa: S608
        id = "('01923f5e-8c00-7000-8000-' || lpad(to_hex(n), 12, '0'))::uuid"
        shop, at = f"'{LOCAL_SHOP}'::uuid", "now()"
    else:
        numbers = (
            f"WITH RECURSIVE made (n) AS (SELECT {first} UNION ALL SELECT n + 1 FROM made "  # noqa: S608
            f"WHERE n < {first + count - 1}) SELECT n FROM made"
        )
        id = "'01923f5e8c0070008000' || printf('%012x', n)"
        shop, at = f"'{LOCAL_SHOP.hex}'", "'2026-01-31 12:00:00.000000'"
    columns = "shop_id, id, version, received_at, seq, calc, taken_at, input, result, core_version"
    with store.for_writing.begin() as connection:
        connection.exec_driver_sql(
            f"INSERT INTO reading ({columns}) SELECT {shop}, {id}, 1, {at}, n, 'slack', {at}, "  # noqa: S608
            f"'{{}}', '{{}}', '0' FROM ({numbers}) AS numbers"
        )
        connection.exec_driver_sql("ANALYZE")


def test_a_page_of_a_long_list_costs_what_one_of_a_short_list_does(store: Store) -> None:
    def page(after: int) -> Callable[[], None]:
        def ask() -> None:
            with store.reading() as session:
                rows, _ = records.page(session, Reading, LOCAL_SHOP, UUID(key(after)), 100)
            assert len(rows) == 100

        return ask

    def best(ask: Callable[[], None]) -> float:
        def once() -> float:
            start = time.perf_counter()
            ask()
            return time.perf_counter() - start

        return min(once() for _ in range(200))

    fill(store, 1, SHORT)
    short = best(page(SHORT // 2))
    fill(store, SHORT + 1, LONG - SHORT)
    long = best(page(LONG // 2))
    print(f"{store.engine.name}: a page of {LONG} costs {long / short:.2f} of one of {SHORT}")
    assert long / short <= MOST_FOR_A_PAGE
    assert Base.metadata.tables["reading"].primary_key.columns.keys() == ["shop_id", "id"]

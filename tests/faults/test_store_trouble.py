"""A full disk and a locked database: the phone is told to wait, and nothing is half done."""

import resource
import sqlite3
import threading
import time
from pathlib import Path

import psycopg
import pytest

from midspan.store.database import BUSY_MS


def children(pid: int) -> list[int]:
    """Find a process and all its workers."""
    found = Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
    return [pid, *(inner for child in found for inner in children(int(child)))]


def limit_files(pid: int, most: int) -> None:
    """Let the service's files grow no larger; the system then refuses its writes (EFBIG)."""
    for one in children(pid):
        _, hard = resource.prlimit(one, resource.RLIMIT_FSIZE)
        resource.prlimit(one, resource.RLIMIT_FSIZE, (most, hard))


def test_a_full_disk_keeps_what_was_and_takes_the_rest_later(bench_of) -> None:
    bench = bench_of("sqlite")
    process = bench.start()
    sender = bench.sender()
    for _ in range(3):
        sender.send(lambda: None)
    wal = Path(bench.url.removeprefix("sqlite:///") + "-wal")
    limit_files(process.running.pid, wal.stat().st_size + 1000)
    refused = 0

    def again() -> None:
        nonlocal refused
        refused += 1
        if refused == 5:
            limit_files(process.running.pid, resource.RLIM_INFINITY)

    sender.send(again)
    assert refused == 5
    for _ in range(3):
        sender.send(lambda: None)
    print(f"disk full for {refused} tries (RLIMIT_FSIZE), {sender.check(bench.url)}")


def test_a_locked_sqlite_is_waited_for_and_then_said(bench_of) -> None:
    bench = bench_of("sqlite")
    bench.start()
    sender = bench.sender()
    sender.send(lambda: None)
    other = sqlite3.connect(bench.url.removeprefix("sqlite:///"), isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    refused = []

    def again() -> None:
        refused.append(time.monotonic())
        other.execute("ROLLBACK")

    start = time.monotonic()
    sender.send(again)
    other.close()
    # It waited as long as it is told to before it gave up.
    assert refused[0] - start > 0.9 * BUSY_MS / 1000
    print(f"locked for {refused[0] - start:.0f} s, {sender.check(bench.url)}")


@pytest.mark.parametrize("seconds", [2])
def test_a_locked_postgresql_is_waited_for(bench_of, seconds: int) -> None:
    bench = bench_of("postgresql")
    bench.start()
    sender = bench.sender()
    sender.send(lambda: None)
    with psycopg.connect(bench.url) as other:
        other.execute("SELECT * FROM shop FOR UPDATE")
        threading.Timer(seconds, other.rollback).start()
        start = time.monotonic()
        sender.send(lambda: None)
        waited = time.monotonic() - start
    assert waited > 0.9 * seconds
    print(f"locked for {waited:.0f} s, {sender.check(bench.url)}")

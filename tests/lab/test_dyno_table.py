"""Big dyno tables: the quick way and the careful way give the same, at what speed and memory."""

import io
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dyno_files import close, noisy, rows, spoiled, written
from midspan.core import run
from midspan.lab import dyno_chunk, dyno_table


def quick(text: str, chunk: int, layout: Any = None) -> tuple[dict[str, Any], int]:
    """What the service makes of it, and how many chunks went the quick way."""
    count = 0

    def counted(*args: Any) -> bool:
        nonlocal count
        done = original(*args)
        count += done
        return done

    original = dyno_chunk.add_chunk
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(dyno_table, "CHUNK_BYTES", chunk)
        patch.setattr(dyno_chunk, "add_chunk", counted)
        *_, last = dyno_table.read(io.BytesIO(text.encode()), layout)
    return last["done"], count


def careful(text: str) -> dict[str, Any]:
    layout = run("dyno-table", {"step": "guess", "text": text[:200_000]})["layout"]
    return run("dyno-table", {"step": "read", "text": text, "layout": layout})["done"]


@given(
    seed=st.integers(0, 9999), count=st.integers(50, 2500), chunk=st.integers(400, 20000),
    wrong=st.sampled_from((0, 0, 1, 5)), comma=st.booleans(),
)  # fmt: skip
@settings(max_examples=60, deadline=None)
def test_both_ways_give_the_same(
    seed: int, count: int, chunk: int, wrong: int, comma: bool
) -> None:
    text, _ = spoiled(written([noisy(seed, count)], comma=comma), seed, wrong)
    found, _ = quick(text, chunk)
    assert close(found, careful(text)) == []


@pytest.mark.parametrize("between", ["", "blank", "heading"])
def test_pulls_are_told_apart_across_chunks(between: str) -> None:
    text = written([rows(step=2), rows(step=2), rows(3000, 6000, 2)], between=between)
    found, chunks = quick(text, 5000)
    assert [pull["rows_used"] for pull in found["pulls"]] == [2001, 2001, 1501]
    assert chunks > 10, "nothing went the quick way"
    assert close(found, careful(text)) == []


def test_power_alone_and_windows_line_ends_go_the_quick_way_too() -> None:
    text = "rpm\tkW\r\n" + "".join(f"{n}\t{t * n / 9549.3:.5f}\r\n" for n, t in rows(step=1))
    found, chunks = quick(text, 4000)
    assert chunks > 5
    assert close(found, careful(text)) == []


def test_one_row_in_the_middle_that_nobody_can_read_is_listed() -> None:
    lines = written([rows(step=0.5)]).split("\n")
    lines[5000] = "kaputt"
    found, _ = quick("\n".join(lines), 20_000)
    assert found["bad_rows"] == [
        {"line": 5001, "text": "kaputt", "why": "no number for speed"}
    ]  # fmt: skip
    assert found["rows"] == 8001


def test_a_table_without_speed_is_told_and_not_guessed_at() -> None:
    *_, last = dyno_table.read(io.BytesIO(b"a;b\n1;2\n2;3\n"))
    assert last["done"] is None
    assert [c["role"] for c in last["layout"]["columns"]] == [None, None]


def test_latin_1_is_read() -> None:
    text = written([rows()])
    *_, last = dyno_table.read(io.BytesIO(text.encode("latin-1")))
    assert last["done"]["pulls"][0]["rows_used"] == 201
    assert "°" in last["layout"]["heading"][3]


# Measured in a process of its own, whose memory is only this; both passes in one run.
MEASURE = """
import csv, io, json, resource, sys, time
sys.path[:0] = json.loads(sys.argv[1])
from midspan.lab import dyno_chunk, dyno_table
class Made(io.RawIOBase):
    head = b"rpm,torque (Nm),power (kW),air temp (C)\\n"
    block = b"".join(b"%.1f,%.2f,%.2f,24.5\\n" % (2500 + 0.2 * i, 480 + i % 97, 130 + i % 89)
                     for i in range(20000))
    def __init__(self, times):
        self.left, self.held = times, self.head
    def read(self, size=-1):
        while self.left and len(self.held) < size:
            self.held += self.block
            self.left -= 1
        out, self.held = self.held[:size], self.held[size:]
        return out
def plain():
    lines = csv.reader(io.StringIO((Made.head + Made.block * 10).decode()))
    next(lines)
    return sum(1 for row in lines if [float(cell) for cell in row])
def ours(times):
    *_, last = dyno_table.read(Made(times))
    return last["done"]["rows_used"]
ours(1)
start = time.process_time(); assert plain() == 200000; a = time.process_time() - start
start = time.process_time(); assert ours(50) == 1000000; b = time.process_time() - start
start = time.process_time(); assert plain() == 200000; c = time.process_time() - start
def peak_kb():
    # What ru_maxrss tells on Linux may be the peak of the program that started this one.
    try:
        lines = open("/proc/self/status").read().splitlines()
    except OSError:
        return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return next(int(line.split()[1]) for line in lines if line.startswith("VmHWM"))
print(json.dumps({"ratio": min(a, c) * 5 / b, "megabytes": peak_kb() / 1024}))
"""


def test_a_million_rows_take_little_memory_and_keep_pace_with_a_plain_reader() -> None:
    roots = [str(Path(dyno_table.__file__).parents[2])]
    done = subprocess.run(
        [sys.executable, "-c", MEASURE, json.dumps(roots)],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    found = json.loads(done.stdout)
    assert found["megabytes"] < 300, found
    assert found["ratio"] > 0.5, found

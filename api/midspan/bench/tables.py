"""How fast a dyno's table is read and reduced, beside a plain pass over its rows."""

import csv
import io
import math
import random
import time
from collections.abc import Iterator

from midspan.lab import dyno_table

from .sizes import Sizes
from .table import Row, compare


def made_up(count: int) -> bytes:
    """Write a table of invented pulls, so many rows."""
    rng = random.Random(1)  # noqa: S311  (noise on made-up readings)
    lines = ["Engine speed (rpm),Torque (Nm),Power (kW),Air temp (C)"]
    speed = 2500.0
    for _ in range(count):
        torque = 480 + 60 * math.sin((speed - 2500) / 1400) + rng.gauss(0, 4)
        power = torque * speed * math.pi / 30_000
        lines.append(f"{speed:.1f},{torque:.2f},{power:.2f},24.5")
        speed = speed + 5 if speed < 6500 else 2500.0
    return ("\n".join(lines) + "\n").encode()


def rows(sizes: Sizes) -> Iterator[Row]:
    """Measure the one row."""
    data = made_up(sizes.table_rows)

    def read() -> float:
        start = time.perf_counter()
        *_, last = dyno_table.read(io.BytesIO(data))
        spent = time.perf_counter() - start
        if not last["done"]["pulls"]:
            raise RuntimeError("No pull was found in the made-up table.")
        return sizes.table_rows / spent

    def passed() -> float:
        start = time.perf_counter()
        count = sum(1 for _ in csv.reader(io.TextIOWrapper(io.BytesIO(data), "utf-8")))
        return (count - 1) / (time.perf_counter() - start)

    found = compare(read, passed, sizes.rounds)
    yield Row(
        f"dyno table of {sizes.table_rows} rows, beside csv.reader", f"{found.measured:.0f}/s",
        f"{found.reference:.0f}/s", found.ratio,
    )  # fmt: skip

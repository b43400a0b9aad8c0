"""How much is measured: enough for a figure to stand on, or less where there is no time."""

from typing import NamedTuple


class Sizes(NamedTuple):
    """Rounds, and how much each does."""

    rounds: int
    # Questions of one calculation, and items of one batch.
    asked: int
    batch: int
    # Readings that are sent, and so many in each request.
    readings: int
    in_a_batch: int
    # Readings in the short and in the long list, and pages of each that are asked for.
    short: int
    long: int
    pages: int
    # Rows of the dyno's table.
    table_rows: int
    # Calculations on the phone's interpreter; keys typed in the browser, and short goes of the loop
    # there, of which the best tells how fast that page is.
    on_phone: int
    keys: int
    goes: int


FULL = Sizes(
    rounds=7, asked=1500, batch=1000, readings=10_000, in_a_batch=400, short=1_000,
    long=1_000_000, pages=60, table_rows=200_000, on_phone=150, keys=40,
    goes=25,
)  # fmt: skip
QUICK = Sizes(
    rounds=3, asked=400, batch=1000, readings=2_000, in_a_batch=400, short=1_000,
    long=100_000, pages=30, table_rows=50_000, on_phone=40, keys=15,
    goes=25,
)  # fmt: skip

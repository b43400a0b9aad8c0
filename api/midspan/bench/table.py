"""Ratios of what was measured to its reference, and the table of them."""

from collections.abc import Callable, Sequence
from statistics import median
from typing import NamedTuple

# A round is one run of each, so that whatever else the machine does slows both alike.
Run = Callable[[], float]


class Target(NamedTuple):
    """What a ratio is to be: at least or at most a figure."""

    least: bool
    figure: float

    def __str__(self) -> str:
        """Write it as in the table."""
        return f"{'>=' if self.least else '<='} {self.figure:g}"

    def met(self, ratio: float) -> bool:
        """Tell whether a ratio keeps it."""
        return ratio >= self.figure if self.least else ratio <= self.figure


class Compared(NamedTuple):
    """Medians over the rounds. The ratio is that of the rounds' ratios, not of the medians."""

    measured: float
    reference: float
    ratio: float


class Row(NamedTuple):
    """One row. Without a ratio it says why there is none; without a target it only tells."""

    what: str
    measured: str = ""
    reference: str = ""
    ratio: float | None = None
    target: Target | None = None
    why_not: str = ""

    @property
    def met(self) -> bool | None:
        """Whether the target is met; None where there is none, or nothing was measured."""
        if self.ratio is None or self.target is None:
            return None
        return self.target.met(self.ratio)


def compare(subject: Run, reference: Run, rounds: int) -> Compared:
    """Run both in turn, each first in every other round.

    Parameters
    ----------
    subject, reference : each gives one figure, a rate or a time, in the same unit
    rounds : how often; the first figures of each are thrown away
    """
    subject()
    reference()
    pairs = []
    for number in range(rounds):
        if number % 2:
            under = reference()
            pairs.append((subject(), under))
        else:
            over = subject()
            pairs.append((over, reference()))
    return of_pairs(pairs)


def of_pairs(pairs: Sequence[tuple[float, float]]) -> Compared:
    """Put rounds together: (measured, reference) of each."""
    over, under = zip(*pairs, strict=True)
    return Compared(median(over), median(under), median(a / b for a, b in pairs))


def written(rows: Sequence[Row]) -> str:
    """Write the table."""
    head = ("what", "measured", "reference", "ratio", "target", "met")
    lines = [head, *(_cells(row) for row in rows)]
    shown = [line for line in lines if len(line) == len(head)]
    widths = [max(len(line[i]) for line in shown) for i in range(len(head))]
    widths[0] = max(len(line[0]) for line in lines)
    text = [
        "  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=False)).rstrip()
        for line in lines
    ]
    return "\n".join([text[0], "-" * len(text[0]), *text[1:]])


def _cells(row: Row) -> tuple[str, ...]:
    if row.ratio is None:
        return (row.what, f"not measured: {row.why_not}")
    word = {True: "yes", False: "NO", None: "-"}[row.met]
    target = "-" if row.target is None else str(row.target)
    return (row.what, row.measured, row.reference, f"{row.ratio:.3g}", target, word)

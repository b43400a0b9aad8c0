"""The command line."""

import json
import os
import sys
from typing import IO

import click

from midspan import settings as settings_of
from midspan.core import CALCS, VERSION, run
from midspan.core.errors import Refused
from midspan.settings import BadSetting, Settings


def _table() -> str:
    rows = [f"{name}  [{default}]\n    {help}" for name, default, help in settings_of.table()]
    return "\b\nSettings, from the environment:\n" + "\n".join(rows)


@click.group(epilog=_table(), context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(VERSION)
@click.pass_context
def main(context: click.Context) -> None:
    """Judge and set up the camshaft chain drive of an engine."""
    try:
        context.obj = settings_of.read(os.environ)
    except BadSetting as bad:
        raise click.ClickException(str(bad)) from None


@main.command()
@click.option("--port", type=click.IntRange(0, 65535), help="Port; 0 takes any free one.")
@click.option("--lan", is_flag=True, help="Answer phones in the shop's network too, over HTTPS.")
@click.pass_obj
def serve(settings: Settings, port: int | None, lan: bool) -> None:
    """Start the service on this machine: migrates the database, then serves."""
    from midspan import server

    try:
        server.serve(settings, settings.port if port is None else port, lan)
    except server.CannotServe as reason:
        raise click.ClickException(str(reason)) from None


@main.command()
@click.pass_obj
def migrate(settings: Settings) -> None:
    """Bring the database to the form this version needs."""
    from midspan.store import Store, upgrade

    upgrade(Store(settings.database()))
    click.echo("The database has the form this version needs.")


@main.command()
@click.pass_obj
def demo(settings: Settings) -> None:
    """Fill in an invented engine to look at; the same again changes nothing."""
    from midspan.demo import load
    from midspan.store import Store, upgrade

    store = Store(settings.database())
    upgrade(store)
    for line in load(store):
        click.echo(line)
    click.echo(f"Start it with: midspan serve    Then open: http://127.0.0.1:{settings.port}/")


@main.command()
def openapi() -> None:
    """Print the OpenAPI document of the service."""
    from midspan.web.openapi import document

    click.echo(json.dumps(document(), indent=2))


@main.command()
@click.argument("name", type=click.Choice(sorted(CALCS)))
@click.argument("file", type=click.File("rb"))
def calc(name: str, file: IO[bytes]) -> None:
    """Run one calculation on a JSON FILE (- is standard input) and print its result."""
    try:
        payload = json.loads(file.read())
    except (ValueError, RecursionError) as error:
        raise click.ClickException(f"The input is not JSON: {error}") from None
    try:
        click.echo(json.dumps(run(name, payload), indent=2))
    except Refused as refused:
        for found in refused.problems:
            click.echo(f"{found['field']}: {found['text']} {found['next_step']}", err=True)
        sys.exit(1)

"""The command line."""

import json
import os
import sys
from typing import IO
from uuid import UUID

import click

from midspan import settings as settings_of
from midspan.bench.command import bench
from midspan.core import CALCS, VERSION, run
from midspan.core.errors import Refused
from midspan.keeping import backup, restore
from midspan.settings import BadSetting, Settings
from midspan.store.devices import ROLES


def _table() -> str:
    rows = [f"{name}  [{default}]\n    {help}" for name, default, help in settings_of.table()]
    return "\b\nSettings, from the environment:\n" + "\n".join(rows)


def _printable(text: str) -> str:
    """Take out what could steer the terminal or fake a line: it comes from a phone or a file."""
    return "".join(sign if sign.isprintable() else "?" for sign in text)


class Commands(click.Group):
    """All of them; of a database that cannot be used they say so, whichever needed it."""

    def invoke(self, context: click.Context) -> object:
        """Run the one that was asked for."""
        try:
            return super().invoke(context)
        except Exception as error:
            from midspan.store import trouble

            if not isinstance(error, trouble.TROUBLE):
                raise
            setting = settings_of.variable("database_url")
            raise click.ClickException(trouble.told(error, setting)) from None


@click.group(
    cls=Commands, epilog=_table(), context_settings={"help_option_names": ["-h", "--help"]}
)
@click.version_option(VERSION)
@click.pass_context
def main(context: click.Context) -> None:
    """Judge and set up the camshaft chain drive of an engine."""
    try:
        context.obj = settings_of.read(os.environ)
    except BadSetting as bad:
        raise click.ClickException(str(bad)) from None


main.add_command(backup)
main.add_command(restore)
main.add_command(bench)


@main.command()
@click.option("--port", type=click.IntRange(0, 65535), help="Port; 0 takes any free one.")
@click.option("--lan", is_flag=True, help="Answer phones in the shop's network too, over HTTPS.")
@click.pass_obj
def serve(settings: Settings, port: int | None, lan: bool) -> None:
    """Start the service on this machine: migrates the database, then serves."""
    from midspan import server

    try:
        server.serve(settings, settings.port if port is None else port, lan)
    except (server.CannotServe, BadSetting) as reason:
        raise click.ClickException(str(reason)) from None


@main.command()
@click.pass_obj
def migrate(settings: Settings) -> None:
    """Bring the database to the form this version needs."""
    from midspan.store import Store, upgrade

    upgrade(Store(settings.database()))
    click.echo("The database has the form this version needs.")


@main.command()
@click.option(
    "--role",
    type=click.Choice(ROLES),
    default="member",
    show_default=True,
    help="What the device may do: read; also keep records; also pair and revoke.",
)
@click.option("--address", help="Where the device reaches the service, if not on this machine.")
@click.pass_obj
def pair(settings: Settings, role: str, address: str | None) -> None:
    """Print a code that pairs one phone or browser, within ten minutes."""
    import segno

    from midspan.pairing import CODE_MINUTES, link, new_code

    code = new_code(settings, role)
    opens = link(address or f"http://127.0.0.1:{settings.port}", code)
    segno.make(opens, error="m", micro=False).terminal(sys.stdout, border=4, compact=True)
    click.echo(f"Pairing code: {code}   ({role}, for one device, {CODE_MINUTES} minutes)")
    click.echo(f"Scan it, or open {opens}, or type it under Settings, This device.")


@main.command("devices")
@click.pass_obj
def list_devices(settings: Settings) -> None:
    """List the paired devices: id, role, when last seen, name."""
    from midspan.pairing import paired_devices

    found = list(paired_devices(settings))
    for device in found:
        last = device.last_seen_at or device.created_at
        name = _printable(device.name)
        click.echo(f"{device.id}  {device.role:6}  {last:%Y-%m-%d %H:%M}Z  {name}")
    if not found:
        click.echo("No device is paired. Pair one with: midspan pair")


@main.command()
@click.argument("id", type=click.UUID)
@click.pass_obj
def revoke(settings: Settings, id: UUID) -> None:
    """Let the device with this ID in no more; its records stay."""
    from midspan.pairing import revoke_device

    name = revoke_device(settings, id)
    if name is None:
        raise click.ClickException(f"No paired device has the id {id}. See: midspan devices")
    click.echo(f"Revoked: {_printable(name)}. What it has sent is kept.")


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
    click.echo("A browser sees it once it is paired: midspan pair --role owner")


@main.command()
def openapi() -> None:
    """Print the OpenAPI document of the service."""
    from midspan.web.openapi import document

    click.echo(json.dumps(document(), indent=2))


@main.command("export")
@click.argument("file", type=click.File("w", encoding="utf-8", atomic=True, lazy=False))
@click.option("--csv", "table", is_flag=True, help="Only the readings, as CSV.")
@click.pass_obj
def export_file(settings: Settings, file: IO[str], table: bool) -> None:
    """Write everything that is kept to FILE (- is standard output), as JSON."""
    from midspan.store import Store, upgrade
    from midspan.store.models import LOCAL_SHOP
    from midspan.web import readings_csv, transfer_file

    store = Store(settings.database())
    upgrade(store)
    writer = readings_csv if table else transfer_file
    for piece in writer.write(store, LOCAL_SHOP):
        file.write(piece)


@main.command("import")
@click.argument("file", type=click.File("rb"))
@click.option(
    "--take", multiple=True, metavar="ID",
    help="Keep the file's side of this record, which a first import listed; may be repeated.",
)  # fmt: skip
@click.pass_obj
def import_file(settings: Settings, file: IO[bytes], take: tuple[str, ...]) -> None:
    """Take in a FILE (- is standard input) that was exported here or on a phone.

    What is new is added; nothing that is kept is overwritten. Ends with 1 if a record was refused.
    """
    from midspan.store import Store, upgrade
    from midspan.store.models import LOCAL_SHOP
    from midspan.web import transfer_file
    from midspan.web.body import parse_many
    from midspan.web.problems import Problem
    from midspan.web.schemas.record_fields import MOST_NESTING, NEED_IDENTIFIER, as_identifier

    chosen = {as_identifier(id) for id in take}
    if None in chosen:
        raise click.BadParameter(f"--take needs {NEED_IDENTIFIER}.")
    store = Store(settings.database())
    upgrade(store)
    try:
        told, _ = parse_many(file.read(), MOST_NESTING)
        report = transfer_file.read(store, LOCAL_SHOP, told, frozenset(id for id in chosen if id))
    except Problem as problem:
        raise click.ClickException(f"The file is not JSON: {problem.detail}") from None
    except Refused as refused:
        found = refused.problems[0]
        said = _printable(f"{found['text']} {found['next_step']}")
        raise click.ClickException(said) from None
    for line in transfer_file.told(report):
        click.echo(_printable(line))
    if report["refused"]:
        sys.exit(1)


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
            said = f"{found['field']}: {found['text']} {found['next_step']}"
            click.echo(_printable(said), err=True)
        sys.exit(1)

"""The commands that keep a copy of everything, and bring it back."""

import os
from pathlib import Path

import click
from sqlalchemy.exc import SQLAlchemyError

from .settings import Settings


@click.command()
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.pass_obj
def backup(settings: Settings, file: Path) -> None:
    """Write everything kept into FILE, while the service goes on.

    The file fits SQLite and PostgreSQL alike. Keep it as safe as the database.
    """
    from .store import Store
    from .store.backup import Unusable, write

    if file.exists():
        raise click.ClickException(f"{file} exists already. Name another file.")
    aside = file.with_name(file.name + ".part")
    store = Store(settings.database())
    try:
        # For this user alone: it holds all records.
        with os.fdopen(os.open(aside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as out:
            rows = write(store, out)
            out.flush()
            os.fsync(out.fileno())
        aside.rename(file)
    except (Unusable, OSError, SQLAlchemyError) as reason:
        if not isinstance(reason, FileExistsError):
            aside.unlink(missing_ok=True)
        raise click.ClickException(str(reason)) from None
    finally:
        store.close()
    click.echo(f"{rows} rows are in {file}.")


@click.command()
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False, exists=True))
@click.option("--replace", is_flag=True, help="Throw away what is kept now; asks first.")
@click.option("--yes", is_flag=True, help="Do not ask.")
@click.pass_obj
def restore(settings: Settings, file: Path, replace: bool, yes: bool) -> None:
    """Bring back what `midspan backup` wrote into FILE: all of it, or nothing is changed."""
    from .store import Store
    from .store.backup import Unusable, check, restore

    store = Store(settings.database())
    try:
        head = check(file)
        if replace and not yes:
            made = head["made_at"][:16]
            click.confirm(f"Throw away what is kept now, for the backup of {made} UTC?", abort=True)
        rows = restore(store, file, replace)
    except (Unusable, SQLAlchemyError) as reason:
        raise click.ClickException(f"Nothing was changed. {reason}") from None
    finally:
        store.close()
    click.echo(f"{rows} rows are back. Phones send again what they have and this backup has not.")

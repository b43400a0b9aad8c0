"""Alembic's way in: the caller's connection, or, from alembic's own command, the settings'."""

import os

from alembic import context
from sqlalchemy import Connection

from midspan import settings
from midspan.store.database import Store
from midspan.store.models import Base


def run(connection: Connection) -> None:
    context.configure(
        connection=connection,
        target_metadata=Base.metadata,
        render_as_batch=True,  # SQLite alters a table by copying it
        compare_type=True,
        compare_server_default=True,
    )
    with context.begin_transaction():
        context.run_migrations()


given = context.config.attributes.get("connection")
if given is not None:
    run(given)
else:
    with Store(settings.read(os.environ).database()).for_writing.begin() as own:
        run(own)

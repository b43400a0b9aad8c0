"""Bringing the database to the form that this version needs, by the migrations alone."""

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, text

from midspan import places

from .database import Store

# Any number will do, as long as every Midspan takes the same.
LOCK = 6_172_735


def config(connection: Connection | None = None) -> Config:
    """Give alembic's settings; they need no file."""
    made = Config()
    made.set_main_option("script_location", str(places.migrations()))
    made.attributes["connection"] = connection
    return made


def upgrade(store: Store, revision: str = "head") -> None:
    """Migrate upward in one transaction; of several processes at once, one does it."""
    with store.for_writing.begin() as connection:
        lock(connection)
        command.upgrade(config(connection), revision)


def downgrade(store: Store, revision: str) -> None:
    """Migrate downward in one transaction. What later versions kept is lost."""
    with store.for_writing.begin() as connection:
        lock(connection)
        command.downgrade(config(connection), revision)


def at_head(store: Store) -> bool:
    """Tell whether the database has the form that this version needs."""
    head = ScriptDirectory.from_config(config()).get_current_head()
    with store.engine.connect() as connection:
        return MigrationContext.configure(connection).get_current_revision() == head


def lock(connection: Connection) -> None:
    """Let one process at a time change the form of the database, until its transaction ends."""
    # SQLite is locked already: the transaction began by announcing that it writes.
    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": LOCK})

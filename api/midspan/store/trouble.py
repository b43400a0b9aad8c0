"""What is wrong with a database, in a sentence for whoever keeps it."""

from alembic.util.exc import CommandError
from sqlalchemy.exc import SQLAlchemyError

# What opening, migrating or asking a database that cannot be used may raise.
TROUBLE = (SQLAlchemyError, CommandError)


def told(error: Exception, setting: str) -> str:
    """Say it.

    Parameters
    ----------
    error : what was raised, one of `TROUBLE` or what the system says of a file
    setting : the variable of the environment that names the database
    """
    if isinstance(error, CommandError):
        return (
            "The database has the form of a newer version of Midspan. Update Midspan, or restore "
            "a backup of this version's time into another database."
        )
    reason = str(error).partition("\n")[0]
    return f"The database cannot be used. Is {setting} right? {reason}"

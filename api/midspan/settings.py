"""Every setting, once: its name, its default and what it is for.

The fields of `Settings` are the table. The environment is read from it, the command line's help
prints it, and a test compares.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

from platformdirs import user_data_path

PREFIX = "MIDSPAN_"
DATA_DIR = user_data_path("midspan", appauthor=False)


def _setting(default: object, help: str, choices: tuple[str, ...] = ()) -> Any:  # noqa: ANN401
    return field(default=default, metadata={"help": help, "choices": choices})


# ruff: noqa: RUF009  (_setting makes dataclass fields, as field itself does)


@dataclass(frozen=True)
class Settings:
    """What the service can be told. Each field is also an environment variable."""

    data_dir: Path = _setting(
        DATA_DIR,
        "Folder of the SQLite database and of tls/. Default: the user's data folder.",
    )
    database_url: str = _setting(
        "", "Database, as an SQLAlchemy URL. Default: SQLite in the data folder."
    )
    port: int = _setting(8765, "Port on this machine; 0 takes any free one.")
    workers: int = _setting(2, "Worker processes of the service.")
    threads: int = _setting(4, "Threads in each worker.")
    request_seconds: int = _setting(30, "Time in which a request must have arrived whole.")
    lan_addresses: tuple[str, ...] = _setting(
        (),
        "Addresses to answer on with --lan, separated by commas. Default: every private IPv4 "
        "address of this machine.",
    )
    log_level: str = _setting(
        "warning",
        "What is logged, as JSON lines on standard error: info (every request), warning, error.",
        ("info", "warning", "error"),
    )
    max_body_bytes: int = _setting(4 * 1024 * 1024, "Largest request body accepted, in bytes.")
    max_import_bytes: int = _setting(
        64 * 1024 * 1024,
        "Largest file accepted by import, in bytes; the command midspan import has no limit.",
    )
    max_table_bytes: int = _setting(
        512 * 1024 * 1024, "Largest dyno table accepted at /api/v1/lab/dyno-table, in bytes."
    )
    trusted_hosts: tuple[str, ...] = _setting(
        ("localhost", "127.0.0.1"),
        "Host names the service answers to, separated by commas.",
    )
    trusted_proxies: int = _setting(
        0,
        "How many proxies before the service to believe about who calls, and whether over HTTPS.",
    )
    requests_per_minute: int = _setting(
        1200, "Requests answered per minute and address, in each worker; 0 for any number."
    )
    rate_limit_store: str = _setting(
        "memory://",
        "Where requests are counted, as a URI of the package limits. Default: in each worker.",
    )

    def database(self) -> str:
        """Give the database's URL, working out the default."""
        return self.database_url or f"sqlite:///{self.data_dir / 'midspan.sqlite3'}"

    def authority_file(self) -> Path:
        """Give the place of the private authority's certificate, made by `midspan serve --lan`."""
        return self.data_dir / "tls" / "authority.crt"


class BadSetting(ValueError):  # noqa: N818  (it names what is wrong)
    """A setting in the environment that cannot be used; the message says which and why."""


def variable(name: str) -> str:
    """Give the environment variable of a setting."""
    return PREFIX + name.upper()


def read(environment: Mapping[str, str]) -> Settings:
    """Read the settings given in the environment; the others keep their defaults.

    Raises
    ------
    BadSetting : a variable that cannot be used, or that starts with MIDSPAN_ and names no setting
    """
    known = {variable(f.name): f for f in fields(Settings)}
    given: dict[str, Any] = {}
    for name, text in environment.items():
        if not name.startswith(PREFIX):
            continue
        if name not in known:
            raise BadSetting(f"{name}: no such setting. Known are: {', '.join(known)}.")
        given[known[name].name] = _value(name, text, known[name].default)
        choices = known[name].metadata["choices"]
        if choices and text not in choices:
            raise BadSetting(f"{name}: got {text!r}, needs one of: {', '.join(choices)}.")
    return Settings(**given)


def table() -> list[tuple[str, str, str]]:
    """Give variable, default and help of every setting, for a person to read."""
    return [(variable(f.name), _shown(f.default), f.metadata["help"]) for f in fields(Settings)]


def _value(name: str, text: str, default: object) -> object:
    """Turn the text of a variable into the type that its default has."""
    if isinstance(default, int):
        if text.isascii() and text.isdigit():
            return int(text)
        raise BadSetting(f"{name}: got {text!r}, needs a whole number such as {default}.")
    if isinstance(default, tuple):
        return tuple(part.strip() for part in text.split(",") if part.strip())
    return Path(text).expanduser() if isinstance(default, Path) else text


def _shown(default: object) -> str:
    if isinstance(default, Path):
        return ""  # it differs from one machine to the next; the help says how
    return ",".join(default) if isinstance(default, tuple) else str(default)

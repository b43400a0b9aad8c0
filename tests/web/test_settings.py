"""The table of settings feeds the environment, the help and this test."""

from dataclasses import fields
from pathlib import Path

import pytest
from click.testing import CliRunner

from midspan.cli import main
from midspan.settings import BadSetting, Settings, read, table, variable

OTHERS = {
    "data_dir": ("/tmp/x", Path("/tmp/x")),  # noqa: S108
    "database_url": ("postgresql://localhost/x", "postgresql://localhost/x"),
    "port": ("1", 1),
    "workers": ("3", 3),
    "threads": ("5", 5),
    "request_seconds": ("9", 9),
    "lan_addresses": ("10.0.0.1, 10.0.0.2", ("10.0.0.1", "10.0.0.2")),
    "log_level": ("info", "info"),
    "max_body_bytes": ("1000", 1000),
    "max_import_bytes": ("5", 5),
    "max_table_bytes": ("5", 5),
    "trusted_hosts": ("a, b.example", ("a", "b.example")),
    "trusted_proxies": ("1", 1),
    "requests_per_minute": ("0", 0),
    "rate_limit_store": ("redis://localhost", "redis://localhost"),
}


def test_every_setting_is_read_from_its_variable() -> None:
    assert {f.name for f in fields(Settings)} == set(OTHERS)
    for name, (text, value) in OTHERS.items():
        made = read({variable(name): text, "PATH": "x"})
        assert getattr(made, name) == value != getattr(Settings(), name)


def test_every_setting_is_in_the_help_with_its_default() -> None:
    said = CliRunner().invoke(main, ["--help"]).output
    assert len(table()) == len(OTHERS)
    for name, default, help in table():
        assert f"{name}  [{default}]" in said
        assert help in said
        assert help.endswith(".")


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("MIDSPAN_PORT", "http"),
        ("MIDSPAN_PORT", "-1"),
        ("MIDSPAN_PROT", "1"),
        ("MIDSPAN_LOG_LEVEL", "loud"),
    ],
)
def test_a_slip_is_named_not_passed_over(name: str, text: str) -> None:
    with pytest.raises(BadSetting, match=name):
        read({name: text})
    said = CliRunner().invoke(main, ["migrate"], env={name: text})
    assert said.exit_code != 0
    assert name in said.output


def test_only_this_machine_is_trusted_unless_told() -> None:
    assert set(Settings().trusted_hosts) == {"localhost", "127.0.0.1"}


def test_the_database_is_in_the_data_folder_unless_told() -> None:
    assert read({"MIDSPAN_DATA_DIR": "/x"}).database() == "sqlite:////x/midspan.sqlite3"
    assert read({"MIDSPAN_DATABASE_URL": "sqlite://"}).database() == "sqlite://"

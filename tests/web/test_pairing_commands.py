"""Pairing from the machine that runs the service: midspan pair, devices, revoke; the first link."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from midspan import pairing
from midspan.cli import main
from midspan.settings import Settings
from midspan.store import Device, Store, devices, tokens
from midspan.store.models import LOCAL_SHOP


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    return Settings(data_dir=tmp_path)


def command(settings: Settings, *words: str) -> Result:
    return CliRunner().invoke(main, words, env={"MIDSPAN_DATA_DIR": str(settings.data_dir)})


def use(settings: Settings, said: str, name: str = "Phone") -> tuple[str, Device] | None:
    """Pair by the code in what a command said."""
    code = re.search(r"[0-9A-Z]{5}-[0-9A-Z]{5}", said)
    assert code is not None
    store = Store(settings.database())
    with store.writing() as session:
        done = devices.pair(session, str(tokens.tidy_code(code[0])), name)
    store.close()
    return done


@pytest.mark.parametrize("role", [None, *devices.ROLES])
def test_pair_prints_code_link_and_qr(settings: Settings, role: str | None) -> None:
    said = command(settings, "pair", *(["--role", role] if role else []))
    assert said.exit_code == 0
    code = re.search(r"Pairing code: (\S+)", said.stdout)
    assert code is not None
    assert f"http://127.0.0.1:8765/#/pair/{code[1]}" in said.stdout
    assert "█" in said.stdout
    assert "10 minutes" in said.stdout
    done = use(settings, said.stdout)
    assert done is not None
    assert done[1].role == (role or "member")
    assert use(settings, said.stdout) is None


def test_the_link_may_name_another_address(settings: Settings) -> None:
    said = command(settings, "pair", "--address", "https://shop.example/").stdout
    assert re.search(r"https://shop\.example/#/pair/[0-9A-Z]{5}-", said)


def test_devices_are_listed_and_revoked(settings: Settings) -> None:
    assert "midspan pair" in command(settings, "devices").stdout
    done = use(settings, command(settings, "pair").stdout, "Phone at the stand")
    assert done is not None
    listed = command(settings, "devices").stdout
    assert str(done[1].id) in listed
    assert "Phone at the stand" in listed
    assert "member" in listed
    gone = command(settings, "revoke", str(done[1].id))
    assert (gone.exit_code, "Phone at the stand" in gone.stdout) == (0, True)
    again = command(settings, "revoke", str(done[1].id))
    assert again.exit_code == 1
    assert "midspan devices" in again.stderr
    assert str(done[1].id) not in command(settings, "devices").stdout


def test_a_devices_name_cannot_steer_the_terminal(settings: Settings) -> None:
    done = use(settings, command(settings, "pair").stdout, "a\nb\x9b31m")
    assert done is not None
    listed = command(settings, "devices").stdout
    assert len(listed.splitlines()) == 1
    assert listed.endswith("a?b?31m\n")
    gone = command(settings, "revoke", str(done[1].id)).stdout
    assert gone.startswith("Revoked: a?b?31m. ")


def test_more_devices_than_a_page_are_all_listed(settings: Settings) -> None:
    command(settings, "migrate")
    store = Store(settings.database())
    with store.writing() as session:
        for number in range(201):
            code = str(tokens.tidy_code(devices.open_code(session, LOCAL_SHOP, "reader")[0]))
            assert devices.pair(session, code, f"Phone {number}")
    store.close()
    assert len(command(settings, "devices").stdout.splitlines()) == 201


def test_the_first_link_is_an_owners_and_only_while_nobody_is_paired(settings: Settings) -> None:
    code = pairing.first_code(settings)
    assert code is not None
    done = use(settings, code)
    assert done is not None
    assert done[1].role == "owner"
    assert pairing.first_code(settings) is None
    # Nobody is shut out for good: with the last device revoked, there is a link again.
    assert pairing.revoke_device(settings, done[1].id) == "Phone"
    assert pairing.first_code(settings) is not None


def test_the_demonstration_says_how_to_see_it(settings: Settings) -> None:
    assert "midspan pair --role owner" in command(settings, "demo").stdout

"""The locks hold every package by hash, fit pyproject.toml, and carry nothing of one machine."""

import json
import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement

import lock as lock_script

ROOT = Path(__file__).resolve().parents[2]
LOCKS = ["api/requirements.txt", "api/requirements-build.txt", "tests/requirements.txt"]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text())


def locked(name: str) -> dict[str, set[str]]:
    """Each package of a lock and its versions (more than one where Pythons differ)."""
    found: dict[str, set[str]] = {}
    for line in (ROOT / name).read_text().splitlines():
        if match := re.match(r"([a-z0-9][a-z0-9.-]*)==([^ ]+)", line):
            found.setdefault(match[1], set()).add(match[2])
    return found


@pytest.mark.parametrize("name", LOCKS)
def test_lock_is_only_pins_and_hashes(name: str) -> None:
    pin = r"[a-z0-9][a-z0-9.-]*==[^ /]+( ; [^/]+)? \\"
    digest = r"    --hash=sha256:[0-9a-f]{64}( \\)?"
    lines = (ROOT / name).read_text().splitlines()
    odd = [line for line in lines if not re.fullmatch(f"{pin}|{digest}", line)]
    assert odd == []
    assert len(lines) > 10


@pytest.mark.parametrize(
    ("name", "wanted"),
    [
        (LOCKS[0], PROJECT["project"]["dependencies"]),
        (LOCKS[1], PROJECT["build-system"]["requires"]),
        (LOCKS[2], PROJECT["project"]["optional-dependencies"]["test"]),
    ],
)
def test_lock_satisfies_pyproject(name: str, wanted: list[str]) -> None:
    have = locked(name)
    for requirement in map(Requirement, wanted):
        versions = have.get(requirement.name.lower())
        assert versions, f"{requirement.name} is not in {name}: run api/lock.py"
        assert all(requirement.specifier.contains(version) for version in versions)


def test_locks_agree_where_they_overlap() -> None:
    runtime, build, test = map(locked, LOCKS)
    for other in (build, test):
        for name in runtime.keys() & other.keys():
            assert runtime[name] == other[name], name
    for name in build.keys() & test.keys():
        assert build[name] == test[name], name


def test_settings_of_this_machine_do_not_reach_a_lock(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PIP_CONSTRAINT", "/somewhere/constraints.txt")
    monkeypatch.setenv("UV_INDEX_URL", "https://mirror.invalid/simple")
    monkeypatch.setenv("HTTPS_PROXY", "http://proxy.invalid")
    clean = lock_script.clean_environment()
    assert "PIP_CONSTRAINT" not in clean
    assert "UV_INDEX_URL" not in clean
    assert clean["HTTPS_PROXY"] == "http://proxy.invalid"


def test_npm_lock_holds_hashes_and_no_addresses_to_fetch_from() -> None:
    packages = json.loads((ROOT / "pwa/package-lock.json").read_text())["packages"]
    assert len(packages) > 10
    for name, package in packages.items():
        assert "resolved" not in package, name
        if name:
            assert package["integrity"].startswith("sha512-"), name

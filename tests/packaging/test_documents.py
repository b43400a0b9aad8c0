"""Every path, command, setting and link that the documents name is there."""

import json
import re
from pathlib import Path

import pytest

from midspan.cli import main as midspan
from midspan.core import VERSION
from midspan.settings import table

ROOT = Path(__file__).resolve().parents[2]
DOCUMENTS = ["README.md", "DEVELOPERS.md", "api/CLIENTS.md", "CHANGELOG.md"]
# Made by a command that the documents give, so not in a fresh clone.
MADE = {".venv", "dist/", "tls/"}
OUTSIDE_THE_SERVICE = {
    "MIDSPAN_SKIP_PWA": "api/build_hook.py", "MIDSPAN_CHROMIUM": "tests/e2e",
    "MIDSPAN_ADDRESS": "api/midspan/web/sample_python.py",
    "MIDSPAN_TOKEN": "api/midspan/web/sample_python.py",
    "MIDSPAN_CODE": "tests/web/test_client_program.py",
}  # fmt: skip
TEXTS = {name: (ROOT / name).read_text() for name in DOCUMENTS}


def code_of(text: str) -> list[str]:
    """Everything set as code: in backticks, and indented lines."""
    return re.findall(r"`([^`\n]+)`", text) + re.findall(r"^    (\S.*)$", text, re.MULTILINE)


CODE = [(name, code) for name in DOCUMENTS for code in code_of(TEXTS[name])]
A_PATH = r"\.?\w[\w./-]*(/|\.(py|txt|json|toml|png|md|ts))"
PATHS = [(n, c) for n, c in CODE if re.fullmatch(A_PATH, c) and c not in MADE]
COMMANDS = [(n, c) for n, c in CODE if re.match(r"(python3|midspan|\.venv/bin/\w+) ", c)]
SCRIPTS = json.loads((ROOT / "pwa/package.json").read_text())["scripts"]


@pytest.mark.parametrize(("document", "path"), PATHS)
def test_named_path_exists(document: str, path: str) -> None:
    homes = [ROOT, ROOT / "api/midspan/core", ROOT / "api/midspan"]
    assert any((home / path).exists() for home in homes), f"{document} names {path}"


@pytest.mark.parametrize(("document", "command"), COMMANDS)
def test_named_command_exists(document: str, command: str) -> None:
    program, *words = command.split()
    if Path(program).name == "midspan":
        assert words[0] in midspan.commands, f"{document}: {command}"
    elif words[0] == "-m":
        assert words[1] in {"pip", "hatchling"}, f"{document}: {command}"
    elif words[0] == "api/npm.py":
        assert words[-1] in SCRIPTS, f"{document}: {command}"
    else:
        assert (ROOT / words[0]).is_file(), f"{document}: {command}"
        if words[0] == "api/start.py":
            assert words[1] in {"test", *midspan.commands}, f"{document}: {command}"


@pytest.mark.parametrize("name", DOCUMENTS)
def test_named_settings_exist(name: str) -> None:
    known = {row[0] for row in table()}
    for variable in set(re.findall(r"MIDSPAN_[A-Z_]+", TEXTS[name])) - known:
        home = ROOT / OUTSIDE_THE_SERVICE[variable]
        files = [home] if home.is_file() else list(home.glob("*.py"))
        assert any(variable in file.read_text() for file in files)


@pytest.mark.parametrize("name", DOCUMENTS)
def test_links_and_pictures_are_files_here(name: str) -> None:
    for target in re.findall(r"\]\(([^)]+)\)", TEXTS[name]):
        assert (ROOT / name).parent.joinpath(target).is_file(), f"{name} links to {target}"


def test_the_picture_is_small() -> None:
    assert (ROOT / "pwa/screenshot.png").stat().st_size < 200_000


def test_the_tests_above_find_something() -> None:
    assert len(PATHS) > 20
    assert len(COMMANDS) > 8


def test_changelog_has_this_version_and_its_numbers() -> None:
    newest = TEXTS["CHANGELOG.md"].split("\n## ")[1]
    assert newest.startswith(VERSION)
    assert "### Changed numbers" in newest


def test_versions_agree() -> None:
    assert f'version = "{VERSION}"' in (ROOT / "pyproject.toml").read_text()
    assert json.loads((ROOT / "pwa/package.json").read_text())["version"] == VERSION

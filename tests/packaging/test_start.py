"""The set-up does what is missing, repeats nothing, and says what to install."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

import start

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture
def clone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder that start.py takes for its clone."""
    monkeypatch.setattr(start, "ROOT", tmp_path)
    monkeypatch.setattr(start, "VENV", tmp_path / ".venv")
    monkeypatch.setattr(start, "PYTHON", tmp_path / ".venv/bin/python")
    for name in start.SOURCES:
        path = tmp_path / name
        if path.suffix:
            path.parent.mkdir(exist_ok=True, parents=True)
            path.write_text("a")
        else:
            path.mkdir(exist_ok=True)
            (path / "file.txt").write_text("a")
    return tmp_path


def test_without_a_word_it_says_what_it_can_do() -> None:
    done = subprocess.run([sys.executable, ROOT / "api/start.py"], capture_output=True, text=True)
    assert done.returncode != 0
    assert "python3 api/start.py serve" in done.stderr
    assert "python3 api/start.py test" in done.stderr


def test_a_python_that_is_too_old_gets_far_enough_to_be_told() -> None:
    source = (ROOT / "api/start.py").read_text()
    parsed = ast.parse(source, feature_version=(3, 7))
    # Else the annotations are worked out, and fail, before anything is said.
    assert any(isinstance(n, ast.ImportFrom) and n.module == "__future__" for n in parsed.body)


def test_a_python_without_ensurepip_is_told_what_to_install(
    clone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(start.importlib.util, "find_spec", lambda name: None)
    with pytest.raises(SystemExit, match="apt-get install python3-venv"):
        start.make_environment()
    assert not (clone / ".venv").exists()


def test_a_broken_environment_is_made_again(clone: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    python = clone / ".venv/bin/python"
    python.parent.mkdir(parents=True)
    python.symlink_to("/nowhere/python3")
    made = []
    monkeypatch.setattr(start, "run", lambda *command: made.append(command))
    start.make_environment()
    assert made == [(sys.executable, "-m", "venv", clone / ".venv")]
    assert not python.is_symlink()


@pytest.mark.parametrize("changed", ["pwa/file.txt", "api/file.txt", "pyproject.toml"])
def test_a_changed_source_means_a_new_build(clone: Path, changed: str) -> None:
    before = start.digest(start.SOURCES)
    (clone / changed).write_text("b")
    assert start.digest(start.SOURCES) != before


@pytest.mark.parametrize("folder", ["node_modules", "dist", "__pycache__", "src/generated"])
def test_what_a_build_leaves_behind_is_no_source(clone: Path, folder: str) -> None:
    (clone / "pwa/src").mkdir()
    before = start.digest(start.SOURCES)
    made = clone / "pwa" / folder
    made.mkdir()
    (made / "made.js").write_text("x")
    assert start.digest(start.SOURCES) == before


def test_a_finished_step_is_not_repeated(clone: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (clone / ".venv").mkdir()
    steps = []
    monkeypatch.setattr(start, "run", lambda *command: steps.append(command))
    start.install_midspan()
    start.install_midspan()
    assert len(steps) == 1
    (clone / "api/file.txt").write_text("b")
    start.install_midspan()
    assert len(steps) == 2
    monkeypatch.setenv("MIDSPAN_SKIP_PWA", "1")
    start.install_midspan()
    assert len(steps) == 3


def test_packages_come_by_hash_and_the_build_fetches_nothing(
    clone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (clone / ".venv").mkdir()
    steps = []
    monkeypatch.setattr(start, "run", lambda *command: steps.append(command))
    start.install_packages("serve", ("README.md",))
    start.install_midspan()
    assert "--require-hashes" in steps[0]
    assert {"--no-index", "--no-build-isolation", "--no-deps"} <= set(steps[1])


def test_a_failed_step_is_not_marked_done(clone: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (clone / ".venv").mkdir()
    monkeypatch.setattr(start, "PIP_INSTALL", (sys.executable, "-c", "raise SystemExit(3)"))
    with pytest.raises(SystemExit, match="The set-up stopped at"):
        start.install_midspan()
    assert not list((clone / ".venv").glob("*.stamp"))


def test_ci_runs_the_test_command() -> None:
    last = (ROOT / ".ci/run").read_text().splitlines()[-1]
    assert last == "python3 api/start.py test"
    assert last in (ROOT / "README.md").read_text()

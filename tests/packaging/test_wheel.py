"""What is installed is what is in the sources, and the sdist builds the same wheel."""

import importlib.metadata
import os
import subprocess
import sys
import tarfile
import zipfile
from collections.abc import Mapping
from pathlib import Path

import pytest

import start

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "api/midspan"


@pytest.fixture(scope="module")
def installed() -> dict[str, Path]:
    """Files of the installed package, by their path inside site-packages."""
    files = importlib.metadata.files("midspan") or []
    return {str(file): Path(str(file.locate())) for file in files}


def test_installed_code_is_the_source(installed: dict[str, Path]) -> None:
    sources = [p for p in PACKAGE.rglob("*") if p.is_file() and "__pycache__" not in p.parts]
    assert len(sources) > 20
    for source in sources:
        name = source.relative_to(PACKAGE.parent).as_posix()
        assert name in installed, f"{name}: run python3 api/start.py test"
        assert installed[name].read_bytes() == source.read_bytes(), name


def test_the_phone_app_and_the_migrations_are_packed(installed: dict[str, Path]) -> None:
    wanted = ["_pwa/index.html", "_pwa/sw.js", "_pwa/manifest.webmanifest"]
    wanted += ["_pwa/reference/index.html", "_migrations/env.py"]
    for name in wanted:
        assert installed[f"midspan/{name}"].stat().st_size > 0
    assert any(name.startswith("midspan/_migrations/versions/") for name in installed)
    assert any(name.startswith("midspan/_pwa/") and name.endswith(".wasm") for name in installed)


def build(kind: str, folder: Path, source: Path, env: Mapping[str, str] = os.environ) -> Path:
    """Build with hatchling as pip would; return the one file made."""
    command = [sys.executable, "-m", "hatchling", "build", "-t", kind, "-d", str(folder)]
    subprocess.run(command, cwd=source, check=True, capture_output=True, env=env)
    (made,) = folder.iterdir()
    return made


def test_the_sdist_holds_what_the_wheel_needs(tmp_path: Path, installed: dict[str, Path]) -> None:
    with tarfile.open(build("sdist", tmp_path / "sdist", ROOT)) as archive:
        archive.extractall(tmp_path / "source")  # noqa: S202 - made by us a moment ago
    (source,) = (tmp_path / "source").iterdir()
    assert not (source / "pwa/node_modules").exists()
    assert not (source / "pwa/dist").exists()
    # All that it is built from is there to the byte, so the phone app comes out as it did here.
    made_of = [path for name in start.SOURCES for path in start.files_under(ROOT / name)]
    assert len(made_of) > 700
    for path in made_of:
        assert (source / path.relative_to(ROOT)).read_bytes() == path.read_bytes(), path.name
    without = {**os.environ, "MIDSPAN_SKIP_PWA": "1"}
    with zipfile.ZipFile(build("wheel", tmp_path / "wheel", source, without)) as wheel:
        packed = {name for name in wheel.namelist() if name.startswith("midspan/")}
    assert packed == {
        name
        for name in installed
        if name.startswith("midspan/") and "__pycache__" not in name and "/_pwa/" not in name
    }

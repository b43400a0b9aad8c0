"""Write the hashed dependency locks from pyproject.toml.

``python api/lock.py`` needs uv (``pip install uv``) and the network. It writes three files that
fit together on Python 3.11 and newer, on every platform: api/requirements.txt (what the service
runs on), api/requirements-build.txt (what builds the wheel) and tests/requirements.txt (what the
test command adds). Versions already locked stay; ``--upgrade`` moves them.
"""

import os
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
RUNTIME = ROOT / "api/requirements.txt"
BUILD = ROOT / "api/requirements-build.txt"
TEST = ROOT / "tests/requirements.txt"


def clean_environment() -> dict[str, str]:
    """The environment without settings of this machine that could leak into a lock."""
    return {k: v for k, v in os.environ.items() if not k.startswith(("UV_", "PIP_"))}


def write_lock(target: Path, wanted: list[str], constraints: list[Path], upgrade: bool) -> None:
    """Resolve ``wanted`` within ``constraints`` and write ``target`` with every file's hash."""
    uv = shutil.which("uv")
    if uv is None:
        sys.exit("api/lock.py needs uv. Install it with: pip install uv")
    command = [uv, "pip", "compile", "--no-config", "--universal", "--generate-hashes"]
    command += ["--python-version", "3.11", "--no-header", "--no-annotate", "--quiet"]
    command += ["--no-emit-index-url", "--output-file", str(target)]
    command += [f"--constraint={path.relative_to(ROOT)}" for path in constraints]
    if upgrade:
        command.append("--upgrade")
    text = "\n".join(wanted)
    subprocess.run(
        [*command, "-"], input=text, text=True, check=True, cwd=ROOT, env=clean_environment()
    )


def main() -> None:
    """Write the three locks, each within the versions of the ones before it."""
    with (ROOT / "pyproject.toml").open("rb") as file:
        settings = tomllib.load(file)
    upgrade = "--upgrade" in sys.argv[1:]
    runtime = settings["project"]["dependencies"]
    test = settings["project"]["optional-dependencies"]["test"]
    write_lock(RUNTIME, runtime, [], upgrade)
    write_lock(BUILD, settings["build-system"]["requires"], [RUNTIME], upgrade)
    write_lock(TEST, [*runtime, *test], [RUNTIME, BUILD], upgrade)


if __name__ == "__main__":
    main()

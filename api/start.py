"""Set Midspan up from a fresh clone and run it; only Python 3.11 or newer is needed.

python3 api/start.py serve      set up, then start the service with the phone app
python3 api/start.py test       set up, then run every check
python3 api/start.py WORD ...   set up, then run: midspan WORD ...   (for example: demo, --help)

Everything is kept in .venv in this folder. The first run needs the network; later runs do only
what changed since, and need none.
"""

# An older Python must come as far as `main`, which tells it: it knows no `str | Path`.
from __future__ import annotations

import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
PYTHON = BIN / ("python.exe" if os.name == "nt" else "python")
PIP_INSTALL = (PYTHON, "-m", "pip", "install", "--quiet", "--disable-pip-version-check")
SERVE_LOCKS = ("api/requirements.txt", "api/requirements-build.txt")
TEST_LOCKS = (*SERVE_LOCKS, "tests/requirements.txt")
# What the installed package is made of; a change in any of it means a new build.
SOURCES = ("api", "migrations", "pwa", "fixtures/openapi.json", "pyproject.toml", "README.md")
NOT_SOURCES = {"node_modules", "dist", "generated", "__pycache__", ".npm-cache"}
# Settings that would put packages elsewhere than into .venv.
MISLEADING = ("PIP_USER", "PIP_TARGET", "PIP_PREFIX", "PYTHONHOME", "PYTHONPATH")
# Settings of the set-up and the checks, which the service would refuse as unknown.
NOT_FOR_THE_SERVICE = ("MIDSPAN_SKIP_PWA", "MIDSPAN_CHROMIUM")


def run(*command: str | Path) -> None:
    """Run one step of the set-up; stop with its own words if it fails."""
    env = {k: v for k, v in os.environ.items() if k not in MISLEADING}
    result = subprocess.run(command, cwd=ROOT, env=env)
    if result.returncode:
        step = " ".join(str(word) for word in command)
        sys.exit(f"\nThe set-up stopped at: {step}\nWhat it said is above. Run again to go on.")


def files_under(path: Path) -> list[Path]:
    """Every source file at or below ``path``, in a fixed order."""
    if path.is_file():
        return [path]
    found = []
    for folder, folders, names in os.walk(path):
        folders[:] = sorted(set(folders) - NOT_SOURCES)
        found += [Path(folder) / name for name in sorted(names)]
    return found


def digest(names: tuple[str, ...]) -> str:
    """One hash over the names and contents of these files and folders, and this Python."""
    total = hashlib.sha256(sys.version.encode())
    for name in names:
        for path in files_under(ROOT / name):
            total.update(path.relative_to(ROOT).as_posix().encode())
            total.update(hashlib.sha256(path.read_bytes()).digest())
    return total.hexdigest()


def is_done(step: str, digest_now: str) -> bool:
    """Whether this step was finished on exactly this input."""
    stamp = VENV / f"midspan-{step}.stamp"
    return stamp.is_file() and stamp.read_text() == digest_now


def mark_done(step: str, digest_now: str) -> None:
    """Remember that this step was finished on this input."""
    (VENV / f"midspan-{step}.stamp").write_text(digest_now)


def make_environment() -> None:
    """Create .venv unless a working one is there."""
    works = [
        str(PYTHON),
        "-c",
        "import pip, sys; sys.exit(sys.version != sys.argv[1])",
        sys.version,
    ]
    if PYTHON.exists() and not subprocess.run(works, stderr=subprocess.DEVNULL).returncode:
        return
    if not (importlib.util.find_spec("venv") and importlib.util.find_spec("ensurepip")):
        version = f"{sys.version_info.major}.{sys.version_info.minor}"
        sys.exit(
            "This Python cannot make a virtual environment: its venv or ensurepip module is "
            f"missing.\nOn Debian or Ubuntu: apt-get install python3-venv (or python{version}-venv)"
            ". Elsewhere: install Python from its own installer. Then run this again."
        )
    print("Making .venv ...", flush=True)
    shutil.rmtree(VENV, ignore_errors=True)
    run(sys.executable, "-m", "venv", VENV)


def install_packages(step: str, locks: tuple[str, ...]) -> None:
    """Install the locked packages; pip refuses any file whose hash is not in the lock."""
    wanted = digest(locks)
    if is_done(step, wanted):
        return
    print("Installing the locked packages ...", flush=True)
    hashed = ("--require-hashes", "--only-binary=:all:")
    run(*PIP_INSTALL, *hashed, *(f"--requirement={name}" for name in locks))
    mark_done(step, wanted)


def install_midspan() -> None:
    """Build the phone app and the wheel from the locked tools, and install it without a network."""
    wanted = digest(SOURCES) + os.environ.get("MIDSPAN_SKIP_PWA", "")
    if is_done("app", wanted):
        return
    print("Building the phone app and installing Midspan ...", flush=True)
    offline = ("--no-index", "--no-build-isolation", "--no-deps", "--force-reinstall")
    run(*PIP_INSTALL, *offline, ".")
    mark_done("app", wanted)


def hand_over(*command: str | Path) -> None:
    """Become the given program, so that signals reach it; it does not come back."""
    words = [str(word) for word in command]
    if os.name == "nt":
        sys.exit(subprocess.run(words).returncode)
    os.execv(words[0], words)


def main() -> None:
    """Set up what the word needs, then hand over to it."""
    if sys.version_info < (3, 11):  # noqa: UP036 - a fresh machine may have an older one
        sys.exit("Midspan needs Python 3.11 or newer; this is " + sys.version.split()[0])
    words = sys.argv[1:]
    if not words or words[0] in ("-h", "--help"):
        sys.exit(__doc__)
    make_environment()
    if words[0] == "test":
        install_packages("test", TEST_LOCKS)
        install_midspan()
        hand_over(PYTHON, ROOT / "tests/checks.py", *words[1:])
    if not is_done("test", digest(TEST_LOCKS)):  # which holds all that the service needs
        install_packages("serve", SERVE_LOCKS)
    install_midspan()
    for name in NOT_FOR_THE_SERVICE:
        os.environ.pop(name, None)
    hand_over(BIN / "midspan", *words)


if __name__ == "__main__":
    main()

"""Find a Chromium to test with, or install one where that is allowed, or say what to install."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
# Quiet flags: without them the browser looks up hosts of its own at every start.
QUIET = (
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


def works(program: str | Path | None) -> bool:
    """Whether this program starts and gives its version (a stub that asks for a store does not)."""
    if not program:
        return False
    try:
        done = subprocess.run([program, "--version"], capture_output=True, timeout=60)
    except (OSError, subprocess.TimeoutExpired):
        return False
    return done.returncode == 0


def from_playwright() -> str | None:
    """Return the browser that `playwright install chromium` puts down, if it is there."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        path = playwright.chromium.executable_path
    return path if Path(path).exists() else None


def find() -> str | None:
    """Return the path of a Chromium that starts, or None."""
    chosen = os.environ.get("MIDSPAN_CHROMIUM")
    if chosen:
        return chosen if works(chosen) else None
    for program in map(shutil.which, NAMES):
        if works(program):
            return program
    program = from_playwright()
    return program if works(program) else None


def install() -> None:
    """Try the two usual ways; whether it worked is for find() to say."""
    if os.name == "posix" and os.geteuid() == 0 and shutil.which("apt-get"):
        env = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        subprocess.run(["apt-get", "update", "-q"], env=env)
        words = ["apt-get", "install", "-y", "-q", "--no-install-recommends"]
        subprocess.run([*words, "chromium", "fonts-dejavu-core"], env=env)
        if find():
            return
    subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"])


def find_or_install() -> str:
    """Return the path of a Chromium that starts; leave with what to install if there is none."""
    program = find()
    if program is None and not os.environ.get("MIDSPAN_CHROMIUM"):
        install()
        program = find()
    if program is None:
        sys.exit(
            "The browser checks need a Chromium and none starts here. Install one (Debian: "
            "apt-get install chromium), or set MIDSPAN_CHROMIUM to the path of one."
        )
    return program


if __name__ == "__main__":
    print(find_or_install())

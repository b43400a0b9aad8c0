"""Run every check of Midspan, one after the other, and fail at the end if any failed.

Started by `python3 api/start.py test`; words after it go to pytest.
"""

import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PYTHON = sys.executable
NPM = [PYTHON, "api/npm.py", "run"]

# name, command; in this order, the quick ones first.
CHECKS = [
    ("lint: ruff check", [PYTHON, "-m", "ruff", "check", "."]),
    ("format: ruff format", [PYTHON, "-m", "ruff", "format", "--check", "."]),
    ("types: mypy", [PYTHON, "-m", "mypy"]),
    ("imports: import-linter", [str(Path(PYTHON).parent / "lint-imports"), "--no-cache"]),
    ("phone app: tsc, biome ci", [*NPM, "check"]),
    ("phone unit tests", [*NPM, "test"]),
    ("a Chromium to test with", [PYTHON, "tests/e2e/chromium.py"]),
]
# A worker a core; a file stays with one, so that what its checks share is made once.
PYTEST = [PYTHON, "-m", "pytest", "-n", "auto", "--dist", "loadfile"]


def run(name: str, command: list[str]) -> tuple[str, bool, float]:
    """Run one check, its output going straight to the screen."""
    print(f"\n== {name}", flush=True)
    start = time.monotonic()
    passed = subprocess.run(command, cwd=ROOT).returncode == 0
    return name, passed, time.monotonic() - start


def run_pytest(words: list[str]) -> tuple[tuple[str, bool, float], str]:
    """Run pytest, holding back its closing line so that it can come last of all."""
    print("\n== pytest", flush=True)
    start = time.monotonic()
    held = ""
    with subprocess.Popen(
        [*PYTEST, *words], cwd=ROOT, stdout=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        for line in process.stdout:
            print(held, end="", flush=True)
            held = line
    # A check that was skipped has not been passed.
    passed = process.returncode == 0 and "skipped" not in held
    return ("pytest, nothing skipped", passed, time.monotonic() - start), held


def main() -> int:
    """Run all, print the table, then pytest's closing line; 1 if anything failed."""
    rows = [run(name, command) for name, command in CHECKS]
    row, closing = run_pytest(sys.argv[1:])
    rows.append(row)
    print("\n\nWhat passed")
    for name, passed, seconds in rows:
        print(f"  {'passed' if passed else 'FAILED'}  {name:28} {seconds:6.1f} s")
    print(closing, end="", flush=True)
    return 0 if all(passed for _, passed, _ in rows) else 1


if __name__ == "__main__":
    sys.exit(main())

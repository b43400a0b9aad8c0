"""Run every check of Midspan, two at a time, and fail at the end if any failed.

Started by `python3 api/start.py test`; words after it go to pytest.
"""

import os
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
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
# A worker more than cores, as browsers and killed services are waited for. A file stays with one,
# so that what its checks share is made once. In the order of the folders: by number of checks, a
# few long ones would come last, on one worker.
WORKERS = (os.cpu_count() or 1) + 1
SHARED = ["-n", str(WORKERS), "--dist", "loadfile", "--no-loadscope-reorder"]
PYTEST = [PYTHON, "-m", "pytest", *SHARED]
AT_ONCE = 2  # of the checks before pytest: most run on one core


def run(check: tuple[str, list[str]]) -> tuple[str, bool, float]:
    """Run one check; its output is printed whole when it has ended."""
    name, command = check
    start = time.monotonic()
    done = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    print(f"\n== {name}\n{done.stdout.decode(errors='replace')}", end="", flush=True)
    return name, done.returncode == 0, time.monotonic() - start


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
    with ThreadPoolExecutor(AT_ONCE) as threads:
        rows = list(threads.map(run, CHECKS))
    row, closing = run_pytest(sys.argv[1:])
    rows.append(row)
    print("\n\nWhat passed")
    for name, passed, seconds in rows:
        print(f"  {'passed' if passed else 'FAILED'}  {name:28} {seconds:6.1f} s")
    print(closing, end="", flush=True)
    return 0 if all(passed for _, passed, _ in rows) else 1


if __name__ == "__main__":
    sys.exit(main())

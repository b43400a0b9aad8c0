"""What a phone has to fetch, packed: for the first paint, and for the whole app offline."""

import re
from pathlib import Path

import pytest

from midspan import places
from midspan.bench.phone import LOADED_KB, PAINTED_KB, first_paint, packed, precached

# Kilobytes after brotli: what was reached and a little, so that growth is decided, not drifted
# into; the design's aims beside them. The whole cannot come down to its aim as long as the core
# runs in MicroPython: its interpreter alone is 165 kB, the core's own source 118 kB. The second
# language is part of it, so that it is there without a network.
BUDGETS = {"first paint": 42, "precache": 625}
AIMS = {"first paint": PAINTED_KB, "precache": LOADED_KB}
IMPORTED = re.compile(r'(?:from|import)"\./([^"]+\.js)"')


def weigh(built: Path) -> dict[str, list[Path]]:
    """What each budget is about: the page with its styles and scripts, and all there is."""
    return {
        "first paint": with_imports([built / name for name in first_paint(built)]),
        "precache": [built / name for name in precached(built)],
    }


def with_imports(paths: list[Path]) -> list[Path]:
    """These, and the scripts that they import before they run."""
    found: list[Path] = []
    left = list(paths)
    while left:
        path = left.pop()
        if path not in found:
            found.append(path)
            if path.suffix == ".js":
                left += [path.with_name(name) for name in IMPORTED.findall(path.read_text("utf-8"))]
    return found


def kilobytes(paths: list[Path]) -> float:
    return sum(map(packed, paths)) / 1000


def over(built: Path) -> list[str]:
    """The budgets that this build is over, and its largest files."""
    said = []
    for name, paths in weigh(built).items():
        if kilobytes(paths) > BUDGETS[name]:
            largest = sorted(paths, key=packed, reverse=True)[:6]
            files = ", ".join(f"{path.name} {packed(path)}" for path in largest)
            said.append(f"{name}: {kilobytes(paths):.1f} of {BUDGETS[name]} kB; {files}")
    return said


def test_the_phone_app_keeps_to_its_budgets(capsys: pytest.CaptureFixture[str]) -> None:
    built = places.pwa()
    assert built is not None
    with capsys.disabled():
        for name, paths in weigh(built).items():
            beside = f"budget {BUDGETS[name]}, aim {AIMS[name]}"
            print(f"\n{name}: {kilobytes(paths):.1f} kB in {len(paths)} files, {beside}", end="")
    assert over(built) == []


def test_what_is_weighed_is_all_there_is() -> None:
    built = places.pwa()
    assert built is not None
    first, whole = map(set, weigh(built).values())
    assert {path.suffix for path in first} == {".html", ".js", ".css"}
    assert {".wasm", ".js", ".css", ".html"} <= {path.suffix for path in whole}
    assert first < whole
    # No script or style of the app goes unweighed; the reference page is read at the service.
    assets = {p for p in (built / "assets").iterdir() if p.suffix in (".js", ".css", ".wasm")}
    assert {p for p in assets - whole if not p.name.startswith("reference-")} == set()


def test_a_build_that_grew_is_refused(tmp_path: Path) -> None:
    (tmp_path / "assets").mkdir()
    (tmp_path / "index.html").write_text('<script src="/assets/app.js"></script>')
    (tmp_path / "assets/app.js").write_text('import"./more.js";')
    (tmp_path / "assets/more.js").write_bytes(bytes(1000 * BUDGETS["first paint"]))
    (tmp_path / "sw.js").write_text('[{url:"index.html"},{url:"assets/more.js"}]')
    assert [said.split(":")[0] for said in over(tmp_path)] == ["first paint"]

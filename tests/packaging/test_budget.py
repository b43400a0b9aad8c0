"""What a phone has to fetch, packed: for the first paint, and for the whole app offline."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from midspan import places

# Bytes after brotli: what was reached and a little, so that growth is decided and not drifted into.
# The design's aims are beside them. The whole cannot come down to its aim as long as the core
# runs in MicroPython: its interpreter alone is 165 kB, the core's own source 118 kB.
BUDGETS = {"first paint": 38_000, "precache": 508_000}
AIMS = {"first paint": 60_000, "precache": 300_000}

PRECACHED = re.compile(r'url:"([^"]+)"')
IN_PAGE = re.compile(r'(?:src|href)="/(assets/[^"]+)"')
IMPORTED = re.compile(r'(?:from|import)"\./([^"]+\.js)"')


def packed(path: Path) -> int:
    """Bytes on the line: the brotli copy where there is one."""
    squeezed = path.with_name(path.name + ".br")
    return (squeezed if squeezed.exists() else path).stat().st_size


def precache(built: Path) -> set[Path]:
    """Everything that the service worker fetches when it is installed."""
    return {built / url for url in PRECACHED.findall((built / "sw.js").read_text("utf-8"))}


def first_paint(built: Path) -> set[Path]:
    """The page, its styles, its scripts and all that these import before they run."""
    page = built / "index.html"
    return {page, *with_imports(built / url for url in IN_PAGE.findall(page.read_text("utf-8")))}


def with_imports(paths: Iterator[Path]) -> set[Path]:
    found: set[Path] = set()
    left = list(paths)
    while left:
        path = left.pop()
        if path not in found:
            found.add(path)
            if path.suffix == ".js":
                names = IMPORTED.findall(path.read_text("utf-8"))
                left += [path.with_name(name) for name in names]
    return found


def weigh(built: Path) -> dict[str, set[Path]]:
    return {"first paint": first_paint(built), "precache": precache(built)}


def over(built: Path) -> list[str]:
    """The budgets that this build is over, and its largest files."""
    said = []
    for name, paths in weigh(built).items():
        total = sum(map(packed, paths))
        if total > BUDGETS[name]:
            largest = sorted(paths, key=packed, reverse=True)[:6]
            files = ", ".join(f"{path.name} {packed(path)}" for path in largest)
            said.append(f"{name}: {total} of {BUDGETS[name]} bytes; {files}")
    return said


def test_the_phone_app_keeps_to_its_budgets(capsys: pytest.CaptureFixture[str]) -> None:
    built = places.pwa()
    assert built is not None
    with capsys.disabled():
        for name, paths in weigh(built).items():
            total = sum(map(packed, paths))
            print(
                f"\n{name}: {total / 1000:.1f} kB in {len(paths)} files, "
                f"budget {BUDGETS[name] / 1000:.0f}, aim {AIMS[name] / 1000:.0f}",
                end="",
            )
    assert over(built) == []


def test_what_is_weighed_is_all_there_is(tmp_path: Path) -> None:
    built = places.pwa()
    assert built is not None
    whole, first = precache(built), first_paint(built)
    kinds = {path.suffix for path in whole}
    assert {".wasm", ".js", ".css", ".html"} <= kinds
    assert first < whole
    assert {path.suffix for path in first} == {".html", ".js", ".css"}
    # No script or style of the app goes unweighed; the reference page is read at the service.
    assets = {p for p in (built / "assets").iterdir() if p.suffix in (".js", ".css", ".wasm")}
    assert {p for p in assets - whole if not p.name.startswith("reference-")} == set()


def test_a_build_that_grew_is_refused(tmp_path: Path) -> None:
    (tmp_path / "assets").mkdir()
    (tmp_path / "index.html").write_text('<script src="/assets/app.js"></script>')
    (tmp_path / "assets/app.js").write_text('import"./more.js";')
    (tmp_path / "assets/more.js").write_bytes(bytes(BUDGETS["first paint"]))
    (tmp_path / "sw.js").write_text('[{url:"index.html"},{url:"assets/more.js"}]')
    assert [said.split(":")[0] for said in over(tmp_path)] == ["first paint"]

"""A build from its start to paper and to another phone: all of it without a signal."""

import csv
import io
import json
import os
import re
import subprocess
import sys
from datetime import datetime
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, Playwright, expect

from e2e.browser import Phone
from e2e.builds import add_entry, open_build, start_build
from e2e.flow import ENGINE, enter_drive, go, measure, open_app, wait_until_offline_ready
from e2e.service import Service
from web.document import Document

BUILD = "second build"
ENTRIES = {
    "Part": {"What it is": "Front seal", "In words": "New, lip oiled."},
    "Setting": {"What it is": "Cam gear keyway", "What": "Keyway", "Number": "-4", "Unit": "deg"},
    "Plan": {"In words": "Check the valve clearance by the maker's manual first."},
    "Dyno session": {"Peak torque": "402", "Speed at peak torque": "4100", "Air temperature": "75"},
    "Note": {"In words": "Old chain rubs the cover."},
}


def time_line(page: Page) -> list[str]:
    """Give what each line of the time line begins with."""
    return [text.split(" · ")[0] for text in page.locator(".timeline .item-when").all_inner_texts()]


def exported(page: Page, button: str, folder: Path) -> Path:
    """Export to a file, as the browser would put it into the downloads."""
    go(page, "files")
    with page.expect_download() as waiting:
        page.get_by_role("button", name=button).click()
    file = folder / waiting.value.suggested_filename
    waiting.value.save_as(file)
    return file


def imported(page: Page, file: Path) -> None:
    """Choose a file to import and wait for what is said of it."""
    go(page, "files")
    page.get_by_label("Choose a file to import").set_input_files(file)
    expect(
        page.get_by_role("status").filter(has_text=re.compile("added|Nothing new"))
    ).to_be_visible()


def content(file: Path) -> dict[str, Any]:
    """Give the records of an exported file, which must be as the document says."""
    whole = json.loads(file.read_text(encoding="utf-8"))
    assert Document().faults(whole, {"$ref": "#/components/schemas/ExportFile"}) == []
    return dict(whole["records"])


def midspan(service: Service, *words: str | Path) -> str:
    """Run a command on the service's own store; give what it said."""
    command = Path(sys.executable).parent / "midspan"
    env = {**os.environ, "MIDSPAN_DATA_DIR": str(service.data)}
    return subprocess.run(
        [command, *words], env=env, check=True, capture_output=True
    ).stdout.decode()


def cells(table: Path) -> list[list[object]]:
    """Read a table; numbers and times as such, however exactly they are written."""
    rows = csv.reader(io.StringIO(table.read_text(encoding="utf-8-sig"), newline=""), strict=True)
    return [[meant(cell) for cell in row] for row in rows]


def meant(cell: str) -> object:
    """Give the number or the time that a cell says, or its text."""
    for read in (float, datetime.fromisoformat):
        try:
            return read(cell)
        except ValueError:
            continue
    return cell


def test_a_build_is_kept_exported_and_taken_in_without_a_signal(
    service: Service, phone: Phone, tmp_path: Path, playwright: Playwright, chromium: str
) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    wait_until_offline_ready(page)
    other = Phone(playwright, chromium, tmp_path / "other")
    other.start()
    try:
        there = open_app(other, service)
        wait_until_offline_ready(there)
        there.close()
        page.close()
        service.kill()
        for one in (phone, other):
            one.lose_network()

        # A build, with each kind of entry; the reading taken with it in hand belongs to it.
        page = open_app(phone, service)
        start_build(page, BUILD)
        expect(page.get_by_role("link", name=f"Engine: {ENGINE}")).to_contain_text(BUILD)
        for kind, typed in ENTRIES.items():
            add_entry(page, kind, typed)
        measure(page, "17/32 in")
        open_build(page, BUILD)
        assert time_line(page) == [*ENTRIES, "Reading"]
        # The drive was given no name: it goes by its gears, not by the word beside it.
        expect(page.locator("dt:text-is('Drive') + dd")).to_contain_text("22/44")
        expect(page.locator(".item-reading")).to_contain_text("Too loose")

        # Half a note, then the battery falls out.
        page.get_by_role("link", name="Note", exact=True).click()
        page.get_by_label("In words", exact=True).fill("half a no")
        page.locator(".back").click()
        page.get_by_role("link", name="Note", exact=True).click()
        expect(page.get_by_label("In words", exact=True)).to_have_value("half a no")
        phone.kill()
        phone.start()
        phone.lose_network()
        page = open_app(phone, service)
        open_build(page, BUILD)
        page.get_by_role("link", name="Note", exact=True).click()
        expect(page.get_by_label("In words", exact=True)).to_have_value("half a no")
        page.get_by_label("In words", exact=True).fill("")
        page.locator(".back").click()

        # Out as a file, into another phone, and out again: the same records.
        file = exported(page, "Export everything as a file", tmp_path)
        there = open_app(other, service)
        imported(there, file)
        expect(there.get_by_text("7 added. 2 were here already, the same.")).to_be_visible()
        (tmp_path / "again").mkdir()
        again = exported(there, "Export everything as a file", tmp_path / "again")
        assert content(again) == content(file)
        imported(there, file)
        expect(there.get_by_text("Nothing new in the file. 9 were here already")).to_be_visible()
        table = exported(there, "Export readings as CSV", tmp_path)
        assert table.read_bytes().startswith(b"\xef\xbb\xbfid,taken at (UTC),engine")
        assert table.read_bytes().count(b"\r\n") == 2

        # What differs is shown with both sides, and stays until the file's side is chosen.
        changed = json.loads(file.read_text(encoding="utf-8"))
        changed["records"]["builds"][0]["label"] = "renamed elsewhere"
        changed["records"]["readings"][0]["note"] = "changed elsewhere"
        changed["records"]["entries"][0]["title"] = ""
        other_file = tmp_path / "changed.json"
        other_file.write_text(json.dumps(changed), encoding="utf-8")
        imported(there, other_file)
        expect(there.get_by_text("The reading here stays.")).to_be_visible()
        expect(
            there.get_by_text("entry of a build, number 1: not as they should be: title")
        ).to_be_visible()
        go(there, "builds")
        expect(there.get_by_role("main").get_by_role("link", name=BUILD)).to_be_visible()
        imported(there, other_file)
        there.get_by_role("button", name="Take the file's").click()
        expect(there.get_by_text("Taken from the file.")).to_be_visible()
        go(there, "builds")
        expect(there.get_by_role("link", name="renamed elsewhere")).to_be_visible()

        # Back in the shop, the first phone's build reaches the database whole.
        service.start()
        phone.regain_network()
        expect(page.get_by_test_id("sync-state")).to_have_attribute(
            "data-state", "server", timeout=60_000
        )
        found = service.rows("select kind, title from entry order by at, id")
        assert [kind for kind, _ in found] == ["part", "setting", "plan", "session", "note"]
        assert service.rows(
            "select b.label, r.calc from reading r join build b on b.id = r.build_id"
        ) == [(BUILD, "slack")]

        # What the one writes the other reads as the same: file and table, both ways.
        assert midspan(service, "import", file).startswith("0 added, 9 here already and the same.")
        home = tmp_path / "home.json"
        midspan(service, "export", home)
        assert set(map(len, content(home).values())) == set(map(len, content(file).values()))
        imported(page, home)
        expect(page.get_by_text("Nothing new in the file. 9 were here already")).to_be_visible()
        expect(page.get_by_role("heading", name="In both, and not the same")).to_have_count(0)
        midspan(service, "export", "--csv", tmp_path / "home.csv")
        assert cells(tmp_path / "home.csv") == cells(table)
        assert other.complaints == []
    finally:
        other.kill()


def test_what_was_read_before_a_build_stands_beside_it(service: Service, phone: Phone) -> None:
    page = open_app(phone, service)
    enter_drive(page)
    measure(page, "17/32 in")
    measure(page, "9/16 in")
    go(page, "builds")
    page.get_by_role("button", name="Start a build of").click()
    expect(page.get_by_text("2 readings of this engine")).to_be_visible()
    start_build(page, BUILD)
    measure(page, "1/2 in", "too-close")
    open_build(page, BUILD)
    assert time_line(page)[0] == "Reading"
    before = page.locator("details", has_text="Before this build (2)")
    expect(before.locator(".item-reading")).to_have_count(2)
    expect(before.locator(".item-reading").first).to_contain_text("0.56")
    page.get_by_role("link", name="Build sheet").click()
    expect(page.get_by_role("region", name="Before this build").locator("tbody tr")).to_have_count(
        2
    )
    # They are no part of the build, and none of the next one.
    expect(page.get_by_role("region", name="Latest readings").locator("tbody tr")).to_have_count(1)
    start_build(page, "third build")
    expect(page.get_by_text("Before this build")).to_have_count(0)

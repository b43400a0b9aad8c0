"""Everything out as one file and back in: nothing lost, nothing doubled, nothing overwritten."""

import csv
import io
import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from midspan.cli import main
from midspan.settings import Settings
from midspan.store import upgrade
from midspan.web import create_app, readings_csv
from midspan.web.examples import RECORDS, WRITES
from midspan.web.nouns import NOUNS, take
from web.document import Document
from web.files import ALL, FILE, REPORT, file_of, one_of_each, record
from web.pairing import client_of, paired
from web.shelf import key


class Files:
    """Sends files and asks for them, every answer held against the document."""

    def __init__(self, client: Any, document: Document) -> None:
        self.client = client
        self.document = document

    def take_in(self, file: Any, query: str = "", status: int = 200) -> Any:
        """Import."""
        sent = {"data": json.dumps(file), "content_type": "application/json"}
        answer = self.client.post(f"/api/v1/import{query}", **sent)
        assert answer.status_code == status, answer.text
        return self.document.expect(answer, "post", "/api/v1/import")

    def export(self) -> Any:
        """Export everything."""
        answer = self.client.get("/api/v1/export")
        assert answer.status_code == 200
        assert "attachment" in answer.headers["Content-Disposition"]
        assert self.document.faults(answer.get_json(), FILE) == []
        return answer.get_json()

    def counts(self, file: Any, query: str = "") -> tuple[int, int, int, int, int]:
        """Import; give how many were added, same, taken, in conflict, refused."""
        said = self.take_in(file, query)
        listed = len(said["conflicts"]), len(said["refused"])
        return said["added"], said["same"], said["taken"], *listed


@pytest.fixture
def files(client, document: Document) -> Files:
    """The service, its answers checked."""
    return Files(client, document)


def test_a_file_comes_out_as_it_went_in_and_twice_is_once(files: Files) -> None:
    sent = one_of_each()
    assert files.counts(sent) == (ALL, 0, 0, 0, 0)
    first = files.export()
    assert files.counts(sent) == (0, ALL, 0, 0, 0)
    again = files.export()
    assert again["records"] == first["records"]
    for kind, (kept,) in first["records"].items():
        for name, value in sent["records"][kind][0].items():
            assert kept[name] == value, (kind, name)
    assert first["kinds"] == list(first["records"])


def test_what_is_empty_comes_out_as_a_file_too(files: Files) -> None:
    empty = files.export()
    assert set(map(len, empty["records"].values())) == {0}
    assert files.counts(empty) == (0, 0, 0, 0, 0)


def test_what_differs_is_shown_with_both_sides_and_kept(files: Files) -> None:
    files.take_in(one_of_each())
    other = one_of_each()
    other["records"]["engines"][0]["name"] = "Theirs"
    other["records"]["readings"][0]["note"] = "Theirs"
    said = files.take_in(other)
    assert (said["added"], said["same"]) == (0, ALL - 2)
    engine, reading = said["conflicts"]
    assert (engine["kind"], engine["id"]) == ("engines", key(1))
    assert (engine["here"]["name"], engine["there"]["name"]) == ("Shop engine", "Theirs")
    assert (reading["kind"], reading["there"]["note"]) == ("readings", "Theirs")
    assert files.export()["records"]["engines"][0]["name"] == "Shop engine"
    # The file's side is kept where it is chosen; of a reading never.
    assert files.counts(other, f"?take={key(1)}&take={key(7)}") == (0, ALL - 2, 1, 1, 0)
    kept = files.export()["records"]
    assert kept["engines"][0]["name"] == "Theirs"
    assert kept["readings"][0]["note"] == "Plugs out."


def test_bad_records_are_listed_one_by_one_and_the_good_ones_taken(files: Files) -> None:
    sent = one_of_each()
    sent["records"]["engines"] += [
        7, record("engine", 20, name=""), record("engine", 21, id="21"),
        record("engine", 22, colour="red"), record("engine", 1), record("engine", 23),
    ]  # fmt: skip
    sent["records"]["drives"].append(record("drive", 24, engine_id=key(1), cam_teeth=43))
    sent["records"]["builds"].append(record("build", 25, engine_id=key(20)))
    sent["records"]["wheels"] = []
    said = files.take_in(sent)
    assert said["added"] == ALL + 1
    told = [
        (one["kind"], one["place"], one["id"], one["errors"][0]["field"], one["errors"][0]["code"])
        for one in said["refused"]
    ]
    assert told == [
        ("wheels", 0, None, "records.wheels", "unknown-kind"),
        ("engines", 2, None, "", "not-an-object"),
        ("engines", 3, key(20), "name", "missing"),
        ("engines", 4, None, "id", "not-an-id"),
        ("engines", 5, key(22), "colour", "unknown-field"),
        ("engines", 6, key(1), "id", "given-twice"),
        ("drives", 2, key(24), "cam_teeth", "not-half-speed"),
        ("builds", 2, key(25), "engine_id", "no-such-record"),
    ]
    assert len(files.export()["records"]["engines"]) == 2


@pytest.mark.parametrize(
    ("file", "field"),
    [
        ([], ""),
        ({}, "format"),
        (file_of() | {"format": "other"}, "format"),
        (file_of() | {"version": 2}, "version"),
        (file_of() | {"version": True}, "version"),
        (file_of() | {"records": []}, "records"),
        (file_of() | {"tombstones": {}}, "tombstones"),
    ],
    ids=str,
)
def test_what_is_no_such_file_is_refused_whole(files: Files, file: Any, field: str) -> None:
    problem = files.take_in(file, status=422)
    assert [error["field"] for error in problem["errors"]] == [field]


def test_a_list_that_is_none_is_named_and_the_other_kinds_taken(files: Files) -> None:
    sent = one_of_each()
    sent["records"]["readings"] = {"a": 1}
    said = files.take_in(sent)
    assert said["added"] == ALL - 1
    assert said["refused"][0]["errors"][0]["field"] == "records.readings"


def test_what_was_deleted_travels_as_a_tombstone(files: Files, client) -> None:
    files.take_in(one_of_each())
    headers = {"If-Match": "*"}
    for path in ("readings", "engines"):
        id = key(7 if path == "readings" else 1)
        assert client.delete(f"/api/v1/{path}/{id}", headers=headers).status_code == 200
    whole = files.export()
    assert [one["kind"] for one in whole["tombstones"]] == ["engines", "readings"]
    assert whole["tombstones"][1]["record"]["note"] == "Plugs out."
    assert whole["records"]["readings"] == []
    assert files.counts(whole) == (0, ALL, 0, 0, 0)


def test_a_larger_file_than_a_request_may_be_is_taken_and_a_larger_one_refused(
    document: Document, tmp_path: Path
) -> None:
    small = {"max_body_bytes": 2_000, "max_import_bytes": 20_000, "requests_per_minute": 0}
    app = create_app(Settings(data_dir=tmp_path, **small))  # type: ignore[arg-type]
    upgrade(app.extensions["midspan"])
    client = client_of(app, paired(app.extensions["midspan"])[0])
    assert Files(client, document).counts(one_of_each())[0] == ALL
    large = file_of(engines=[record("engine", n, note="x" * 900) for n in range(1, 40)])
    sent = {"data": json.dumps(large), "content_type": "application/json"}
    answer = client.post("/api/v1/import", **sent)
    assert answer.status_code == 413
    assert answer.get_json(force=True)["type"] == "/problems/body-too-large"


def table(text: str) -> list[list[str]]:
    """Read CSV back, its mark first."""
    assert text.startswith("\ufeff")
    return list(csv.reader(io.StringIO(text[1:], newline=""), strict=True))


def test_readings_come_out_as_a_table(files: Files, client) -> None:
    sent = one_of_each()
    sly = '=HYPERLINK("http://x")\n"quoted", naïve'
    sent["records"]["engines"][0]["name"] = sly
    files.take_in(sent)
    answer = client.get("/api/v1/export?format=csv")
    assert answer.mimetype == "text/csv"
    assert answer.mimetype_params["charset"] == "utf-8"
    head, row = table(answer.data.decode())
    assert tuple(head) == readings_csv.COLUMNS
    cells = dict(zip(head, row, strict=True))
    measured = WRITES["reading"]["result"]["measured"]
    assert float(cells["value [mm]"]) == measured["value"]
    assert float(cells["U, 95 % [mm]"]) == measured["expanded_uncertainty"]
    assert (cells["value [%]"], cells["value [deg]"]) == ("", "")
    assert cells["engine"] == f"'{sly}"
    assert cells["build"] == WRITES["build"]["label"]
    assert cells["limit, origin"] == WRITES["reading"]["limit"]["origin"]
    assert answer.data.count(b"\r\n") == 2
    assert client.get("/api/v1/export?format=xml").status_code == 422


@pytest.mark.parametrize("text", ["=1", "+1", "-1", "@a", " =1", "\t1", "\rx", "＝1", "\u00a0-1"])
def test_no_text_starts_like_a_formula(text: str) -> None:
    assert readings_csv.defused(text) == f"'{text}"


@pytest.mark.parametrize("text", ["C-1", "1=1", "", "a@b", "'=1"])
def test_other_text_stays(text: str) -> None:
    assert readings_csv.defused(text) == text


@pytest.fixture
def command(tmp_path: Path) -> Any:
    """Run a command with a data folder of its own."""

    def call(folder: str, *words: str) -> Result:
        return CliRunner().invoke(main, words, env={"MIDSPAN_DATA_DIR": str(tmp_path / folder)})

    return call


def test_the_commands_carry_a_shop_to_another_machine(command, tmp_path: Path) -> None:
    file = tmp_path / "all.json"
    assert command("one", "demo").exit_code == 0
    assert command("one", "export", str(file)).exit_code == 0
    done = command("two", "import", str(file))
    assert done.exit_code == 0, done.output
    assert "added, 0 here already" in done.output
    assert "0 added" in command("two", "import", str(file)).output
    again = tmp_path / "again.json"
    command("two", "export", str(again))
    first, second = (json.loads(one.read_text()) for one in (file, again))
    assert first["records"] == second["records"]
    assert sum(map(len, first["records"].values())) > 20
    assert command("two", "export", "--csv", str(tmp_path / "all.csv")).exit_code == 0
    rows = table((tmp_path / "all.csv").read_bytes().decode())
    assert len(rows) == 1 + len(first["records"]["readings"])


def test_the_command_says_what_differs_and_what_was_refused(command, tmp_path: Path) -> None:
    file = tmp_path / "all.json"
    file.write_text(json.dumps(one_of_each()))
    command("one", "import", str(file))
    other = one_of_each()
    other["records"]["engines"][0]["name"] = "Theirs"
    other["records"]["chains"][0]["links"] = "x"
    file.write_text(json.dumps(other))
    done = command("one", "import", str(file))
    assert done.exit_code == 1
    assert 'name: here "Shop engine", file "Theirs"' in done.output
    assert "chains, number 1, could not be taken" in done.output
    assert "1 now as in the file" in command("one", "import", str(file), "--take", key(1)).output


@pytest.mark.parametrize("text", ["{", "[]", "{}", '{"format": "x"}', '{"a": 1, "a": 2}'])
def test_the_command_refuses_what_is_no_such_file(command, tmp_path: Path, text: str) -> None:
    file = tmp_path / "bad.json"
    file.write_text(text)
    done = command("one", "import", str(file))
    assert done.exit_code == 1
    assert done.output.startswith("Error: ")
    assert command("one", "import", str(file), "--take", "7").exit_code == 2


def test_the_examples_are_what_the_document_says(document: Document) -> None:
    examples = document.whole["components"]["examples"]
    assert document.faults(examples["export-file"]["value"], FILE) == []
    assert document.faults(examples["import-report"]["value"], REPORT) == []
    assert set(RECORDS) == {noun.one for noun in NOUNS}
    for noun in NOUNS:
        take(noun, WRITES[noun.one])


def test_nothing_in_a_file_can_steer_the_terminal(command, tmp_path: Path) -> None:
    sent = one_of_each()
    sent["records"] = {"a\x1b[31m\nb": []}
    file = tmp_path / "file.json"
    file.write_text(json.dumps(sent))
    said = command("one", "import", str(file)).output
    assert "a?[31m?b, number 0, could not be taken" in said
    assert "\x1b" not in said

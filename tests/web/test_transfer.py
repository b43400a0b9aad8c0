"""Everything out as one file and back in: nothing lost, nothing doubled, nothing overwritten."""

import csv
import io
import json
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from uuid import UUID

import pytest
from click.testing import CliRunner, Result
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from midspan.cli import main
from midspan.settings import Settings
from midspan.store import Store, sync, upgrade
from midspan.store.models import LOCAL_SHOP
from midspan.web import create_app, readings_csv, transfer_file
from midspan.web.examples import RECORDS, WRITES
from midspan.web.nouns import NOUNS, take
from web.document import Document
from web.pairing import client_of, paired
from web.shelf import key

FILE = {"$ref": "#/components/schemas/ExportFile"}
ALL = len(NOUNS)  # how many records a file with one of each kind has
REPORT = {"$ref": "#/components/schemas/ImportReport"}


def record(noun: str, number: int, **changes: Any) -> dict[str, Any]:
    """Give an example of a record as a file has it; it refers to nothing but what is said."""
    sent = {name: value for name, value in WRITES[noun].items() if not name.endswith("_id")}
    return {"id": key(number)} | sent | changes


def file_of(**records: list[Any]) -> dict[str, Any]:
    """Give a file with these records."""
    lists = {noun.many: records.get(noun.many.replace("-", "_"), []) for noun in NOUNS}
    return {
        "format": "midspan-export", "version": 1, "exported_at": "2026-01-31T12:00:00Z",
        "core_version": "0.1.0", "kinds": list(lists), "records": lists, "tombstones": [],
    }  # fmt: skip


def one_of_each() -> dict[str, Any]:
    """Give a file with a record of each kind, each referring to what it may."""
    whose = {"engine_id": key(1)}
    parts = {"chain_id": key(3), "gear_set_id": key(4)}
    return file_of(
        engines=[record("engine", 1)],
        drives=[record("drive", 2, **whose)],
        chains=[record("chain", 3, **whose)],
        gear_sets=[record("gear-set", 4)],
        builds=[record("build", 5, **whose, **parts, drive_id=key(2))],
        entries=[record("entry", 6, build_id=key(5), **parts)],
        plans=[record("plan", 8, **whose, build_id=key(5))],
        readings=[
            record("reading", 7, **whose, **parts, drive_id=key(2), build_id=key(5), load_n=None)
        ],
    )


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


# Whatever a person may type: any text that the schemas let through.
TEXT = st.text(st.characters(exclude_categories=["Cs", "Cc"], include_characters="\n"), max_size=40)
NAME = TEXT.filter(str.strip)
MOMENT = st.datetimes(datetime(1990, 1, 1), datetime(2100, 1, 1)).map(
    lambda at: at.replace(tzinfo=UTC).isoformat().replace("+00:00", "Z")
)
NUMBER = st.floats(-1e9, 1e9) | st.integers(-(2**53), 2**53)
JSON = st.dictionaries(
    st.text(max_size=5),
    st.recursive(
        st.none() | st.booleans() | NUMBER | st.text(max_size=5),
        lambda inner: st.lists(inner, max_size=3)
        | st.dictionaries(st.text(max_size=5), inner, max_size=3),
        max_leaves=6,
    ),
    max_size=4,
)  # fmt: skip
FIGURE = st.fixed_dictionaries(
    {"label": NAME, "value": st.floats(-1e12, 1e12)}, optional={"unit": st.none() | TEXT.map(
        lambda text: text[:20]
    )},
)  # fmt: skip


@st.composite
def shops(draw: st.DrawFn) -> tuple[dict[str, Any], set[str]]:
    """Draw the records of a shop, each referring to any of those before it, and what is deleted."""
    ids = (key(number) for number in range(1, 1000))
    made: dict[str, list[str]] = {"engine": [], "chain": [], "gear-set": [], "build": []}

    def some(noun: str, base: dict[str, Any]) -> list[dict[str, Any]]:
        found = []
        for _ in range(draw(st.integers(0, 3))):
            refs = {
                f"{other.replace('-', '_')}_id": draw(st.sampled_from(made[other]) | st.none())
                for other in made
                if made[other] and other != noun and f"{other}_id".replace("-", "_") in may(noun)
            }
            values = record(noun, 1) | {name: draw(how) for name, how in base.items()} | refs
            values["id"] = next(ids)
            if all(values.get(name) for name in must(noun)):
                found.append(values)
                made.setdefault(noun, []).append(values["id"])
        return found

    label = {"label": NAME, "note": st.none() | TEXT, "created_at": MOMENT}
    file = file_of(
        engines=some("engine", {"name": NAME, "note": TEXT, "invented": st.booleans()}),
        chains=some("chain", label | {"distance_run_km": st.floats(0, 1e6)}),
        gear_sets=some("gear-set", label),
        builds=some("build", label | {"started_at": MOMENT}),
        entries=some("entry", {
            "title": NAME, "text": st.none() | TEXT, "at": MOMENT,
            "figures": st.none() | st.lists(FIGURE, max_size=3),
            "kind": st.sampled_from(["part", "setting", "plan", "session", "note"]),
        }),
        plans=some("plan", {"label": NAME, "created_at": MOMENT}),
        readings=some("reading", {"taken_at": MOMENT, "input": JSON, "result": JSON}),
    )  # fmt: skip
    every = [one["id"] for records in file["records"].values() for one in records]
    gone = set(draw(st.lists(st.sampled_from(every), unique=True))) if every else set()
    return file, gone


def may(noun: str) -> set[str]:
    """Give the fields of a noun."""
    (found,) = [one for one in NOUNS if one.one == noun]
    return set(found.write().fields)


def must(noun: str) -> set[str]:
    """Give the references that a noun cannot be without."""
    (found,) = [one for one in NOUNS if one.one == noun]
    return {n for n, field in found.write().fields.items() if field.required and n.endswith("_id")}


@pytest.fixture(scope="module")
def two_shops(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    """Two stores, emptied by being other shops each time."""
    folder = tmp_path_factory.mktemp("two")
    made = []
    for name in ("one", "two"):
        store = Store(f"sqlite:///{folder / name}.sqlite3")
        upgrade(store)
        made.append(store)
    yield made
    for store in made:
        store.close()


def emptied(store: Store) -> None:
    """Take every record out."""
    with store.for_writing.begin() as connection:
        for noun in reversed(NOUNS):
            connection.execute(noun.model.__table__.delete())  # type: ignore[attr-defined]


def exported(store: Store) -> dict[str, Any]:
    """Export, and leave out when that was."""
    whole: dict[str, Any] = json.loads("".join(transfer_file.write(store, LOCAL_SHOP)))
    del whole["exported_at"]
    return whole


@given(drawn=shops())
@settings(
    max_examples=60, deadline=None, derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)  # fmt: skip
def test_any_shop_goes_out_and_into_an_empty_one_and_out_the_same(
    two_shops: list[Store], document: Document, drawn: tuple[dict[str, Any], set[str]]
) -> None:
    one, two = two_shops
    for store in two_shops:
        emptied(store)
    file, gone = drawn
    count = sum(map(len, file["records"].values()))
    report = transfer_file.read(one, LOCAL_SHOP, file, frozenset())
    assert (report["added"], report["refused"], report["conflicts"]) == (count, [], [])
    delete(one, file, gone)
    first = exported(one)
    assert document.faults(first | {"exported_at": "2026-01-31T12:00:00Z"}, FILE) == []
    assert len(first["tombstones"]) == len(gone)
    assert transfer_file.read(two, LOCAL_SHOP, first, frozenset())["added"] == count
    second = exported(two)
    assert second == first
    # Once more into either: nothing changes.
    for store in two_shops:
        again = transfer_file.read(store, LOCAL_SHOP, second, frozenset())
        assert (again["added"], again["same"]) == (0, count)
        assert (again["conflicts"], again["refused"]) == ([], [])
        assert exported(store) == first
    # And through a phone, which has one kind of number: 1.0 comes back as 1.
    as_phone = json.loads(json.dumps(second), parse_float=_as_javascript)
    assert transfer_file.read(one, LOCAL_SHOP, as_phone, frozenset())["same"] == count


def _as_javascript(digits: str) -> float | int:
    value = float(digits)
    return int(value) if value.is_integer() and abs(value) < 2**53 else value


def delete(store: Store, file: dict[str, Any], gone: set[str]) -> None:
    """Delete some of a file's records."""
    with store.writing() as session:
        for noun in NOUNS:
            changes = [
                sync.Change(noun.model, UUID(one["id"]), None, sync.ANY)
                for one in file["records"][noun.many]
                if one["id"] in gone
            ]
            sync.apply(session, LOCAL_SHOP, changes)


def test_the_drawn_shops_hold_what_they_are_to_test(document: Document) -> None:
    """Every kind but drives, whose figures the core checks: those are in the other tests."""
    found: set[str] = set()

    @given(drawn=shops())
    @settings(max_examples=60, deadline=None, derandomize=True, database=None)
    def look(drawn: tuple[dict[str, Any], set[str]]) -> None:
        file, gone = drawn
        found.update(kind for kind, records in file["records"].items() if records)
        if gone:
            found.add("gone")

    look()
    assert found == {noun.many for noun in NOUNS} - {"drives"} | {"gone"}


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

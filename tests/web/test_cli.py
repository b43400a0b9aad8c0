"""The commands."""

import json
import math
import re
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from midspan.cli import main
from midspan.core import run
from midspan.demo import scenario
from midspan.settings import Settings
from midspan.store import Build, Chain, Drive, Engine, Entry, GearSet, Reading, Store, at_head
from midspan.store.explain import explain
from midspan.store.models import LOCAL_SHOP
from midspan.store.records import page
from midspan.web.schemas.record_fields import as_identifier


@pytest.fixture
def command(tmp_path: Path):
    """Run a command with a data folder of its own."""

    def call(*words: str, stdin: str | None = None) -> Result:
        return CliRunner().invoke(main, words, input=stdin, env={"MIDSPAN_DATA_DIR": str(tmp_path)})

    return call


@pytest.fixture
def store(tmp_path: Path) -> Store:
    """The store that the commands use."""
    return Store(Settings(data_dir=tmp_path).database())


def everything(store: Store) -> dict[str, list[Any]]:
    with store.reading() as session:
        kinds = (Engine, Drive, Chain, GearSet, Build, Entry, Reading)
        return {
            kind.__tablename__: list(page(session, kind, LOCAL_SHOP, None, 500)[0])
            for kind in kinds
        }


def test_calc_prints_the_cores_result(command, slack: dict[str, Any], tmp_path: Path) -> None:
    file = tmp_path / "input.json"
    file.write_text(json.dumps(slack))
    sent = command("calc", "slack", "-", stdin=file.read_text())
    for done in (sent, command("calc", "slack", str(file))):
        assert done.exit_code == 0
        assert json.loads(done.stdout) == run("slack", slack)


def test_calc_names_what_it_refuses(command, slack: dict[str, Any]) -> None:
    done = command("calc", "slack", "-", stdin=json.dumps(slack | {"method": "x"}))
    assert done.exit_code == 1
    assert "method" in done.stderr
    assert done.stdout == ""
    for bad in ("{", "[" * 100_000, ""):
        done = command("calc", "slack", "-", stdin=bad)
        assert done.exit_code == 1
        assert "not JSON" in done.stderr


def test_migrate_brings_the_database_to_todays_form(command, store: Store) -> None:
    assert command("migrate").exit_code == 0
    assert at_head(store)


def test_the_demonstration_is_loaded_once(command, store: Store) -> None:
    first = command("demo")
    assert first.exit_code == 0, first.output
    assert "invented" in first.output.lower()
    assert "http://127.0.0.1:" in first.output
    told = scenario()
    before = everything(store)
    assert {name: len(rows) for name, rows in before.items()} == {
        "engine": 1, "drive": len(told["drives"]), "chain": len(told["chains"]),
        "gear_set": len(told["gear_sets"]), "build": len(told["builds"]),
        "entry": len(told["entries"]), "reading": len(told["readings"]),
    }  # fmt: skip
    assert "added" not in command("demo").output
    received = {name: [row.received_at for row in rows] for name, rows in before.items()}
    again = {name: [row.received_at for row in rows] for name, rows in everything(store).items()}
    assert again == received


def test_the_demonstration_says_that_it_is_invented_and_the_core_computes_it(
    command, store: Store
) -> None:
    command("demo")
    kept = everything(store)
    assert kept["engine"][0].invented
    for row in kept["engine"] + kept["drive"] + kept["chain"] + kept["gear_set"] + kept["build"]:
        assert "invented" in (getattr(row, "label", None) or row.name).lower()
    for row in kept["entry"]:
        assert "invented" in row.title.lower()
        assert "invented" in row.text.lower()
    assert {row.kind for row in kept["entry"]} == {"part", "setting", "plan", "session", "note"}
    for row in kept["reading"]:
        assert "invented" in row.note.lower()
        assert row.result == json.loads(json.dumps(run(row.calc, row.input)))
        assert explain(row)["same_verdict"]
    told = json.dumps(scenario())
    assert '"result"' not in told
    for id in re.findall(r'"(?:\w+_)?id": "([^"]+)"', told):
        assert as_identifier(id), id


def test_the_demonstration_tells_a_fresh_chain_from_a_worn_one(command, store: Store) -> None:
    command("demo")
    labels = {row.id: row.label for row in everything(store)["chain"]}
    outcomes = {
        (labels[row.chain_id].split()[0], row.calc): row.result["verdict"]["outcome"]
        for row in reversed(everything(store)["reading"])
        if row.chain_id is not None
    }
    assert outcomes[("fresh", "slack")] == "wanted"
    assert outcomes[("worn", "slack")] == "too-loose"


def measured(row: Reading) -> dict[str, float]:
    """Give a reading's result as the fit takes it."""
    seen = row.result["measured"]
    name = "standard_uncertainty_" + seen["quantity"].rsplit("_", 1)[1]
    return {seen["quantity"]: seen["value"], name: seen["standard_uncertainty"]}


def test_the_demonstration_holds_a_shelf_to_choose_from(command, store: Store) -> None:
    """The saved readings alone make the input of a fit; nothing is entered twice."""
    command("demo")
    kept = everything(store)
    tags = {row.id: row.tag for row in kept["chain"] + kept["gear_set"]}
    assert len(set(tags.values())) == len(tags) == 6
    by = {calc: [row for row in kept["reading"] if row.calc == calc] for calc in ("slack", "gear")}
    lengths = [row for row in kept["reading"] if row.calc == "elongation"]
    assert all(row.chain_id and row.load_n for row in lengths)
    assert {row.input["gear"] for row in by["gear"]} == {"crank", "cam"}
    (used,) = {tags[row.gear_set_id] for row in by["gear"]}
    worn = [row.result["added_excess_mm"] for row in by["gear"]]
    spread = math.hypot(*(one["standard_uncertainty"] for one in worn))
    added = {"added_excess_mm": sum(one["value"] for one in worn)}
    fit = {
        "drive": by["slack"][0].input["drive"],
        "chains": [row.tag for row in kept["chain"]],
        "gear_sets": [row.tag for row in kept["gear_set"]],
        "trials": [
            {"chain": tags[row.chain_id], "gear_set": tags[row.gear_set_id]} | measured(row)
            for row in by["slack"]
        ],
        "bench": [{"chain": tags[row.chain_id]} | measured(row) for row in lengths],
        "gears": [{"gear_set": used, "standard_uncertainty_mm": spread} | added],
        "heat": {"block_material": "aluminium-356"},
    }
    found: Any = run("fit", fit)
    assert found["consistency"]["consistent"]
    assert found["unused_trials"] == []
    never = {row["chain"] for row in found["combinations"] if not row["determined"]}
    assert never == {"C-3"}
    assert found["next_trial"]["chain"] == "C-3"
    # What suits cold is not what suits hot.
    by_cold = max(found["combinations"], key=lambda row: row["cold_probability"] or 0)
    by_hot = max(found["combinations"], key=lambda row: row["hot_probability"] or 0)
    assert (by_cold["chain"], by_cold["gear_set"]) == ("C-1", "G-1")
    assert (by_hot["chain"], by_hot["gear_set"]) != ("C-1", "G-1")


def test_a_reading_of_older_calculations_is_left_as_it_is(command, store: Store) -> None:
    command("demo")
    with store.writing() as session:
        row = page(session, Reading, LOCAL_SHOP, None, 1)[0][0]
        row.core_version = "0.0.1"
    done = command("demo")
    assert done.exit_code == 0
    assert "kept from before" in done.output
    assert everything(store)["reading"][0].core_version == "0.0.1"


@pytest.mark.parametrize("words", ["migrate", "demo", "pair", "devices", "export -"])
def test_a_database_that_cannot_be_used_is_told_in_a_sentence(
    tmp_path: Path, command, words: str
) -> None:
    (tmp_path / "midspan.sqlite3").write_text("no database" * 100)
    told = command(*words.split())
    assert told.exit_code == 1
    assert "Error: The database cannot be used. Is MIDSPAN_DATABASE_URL right?" in told.output
    assert "not a database" in told.output

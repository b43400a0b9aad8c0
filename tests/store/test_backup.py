"""Backup and restore: on both databases, and from each to the other."""

import copy
import gzip
import hashlib
import json
import sqlite3
from contextlib import closing
from pathlib import Path
from threading import Thread
from typing import Any

import pytest
import sqlalchemy as sa
from click.testing import CliRunner, Result

from databases import KINDS, Databases
from midspan.cli import main
from midspan.store import Chain, Engine, Store, at_head, backup, upgrade
from midspan.store.models import LOCAL_SHOP
from midspan.store.records import put
from store.filled import AT, everything, fill, key, shape
from store.test_every_form import FORMS, held


@pytest.fixture(params=KINDS)
def target(request: pytest.FixtureRequest, tmp_path: Path, databases: Databases):
    """An empty database of either kind, to restore into."""
    folder = tmp_path / "target"
    folder.mkdir()
    url = databases.empty(request.param, folder)
    store = Store(url)
    yield store
    store.close()
    databases.drop(url)


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "kept.backup"


def save(store: Store, file: Path) -> int:
    with file.open("wb") as out:
        return backup.write(store, out)


def test_everything_comes_back_on_either_kind(store: Store, target: Store, file: Path) -> None:
    before = fill(store)
    rows = save(store, file)
    assert rows == sum(len(found) for found in before.values())
    assert backup.restore(target, file) == rows
    again = everything(target)
    same(before, again)
    assert at_head(target)
    assert shape(target) == shape(store) or store.engine.name != target.engine.name
    # Phones that know more than the backup must notice, and send it again.
    histories = {row["history"] for kept in (before, again) for row in kept["shop"]}
    assert len(histories) == 4


def same(before: dict[str, Any], after: dict[str, Any]) -> None:
    """Fail unless all is as it was, but for the name of each shop's history."""
    assert set(after) == set(before)
    for kept in (before := copy.deepcopy(before), after := copy.deepcopy(after)):
        for row in kept["shop"]:
            del row["history"]
    assert after == before


def lines(file: Path) -> list[bytes]:
    """The rows of a backup, without what tells one day from the next."""
    return gzip.open(file).read().splitlines()[:-1]


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize(("url", "target"), [KINDS, KINDS[::-1]], indirect=True)
def test_a_backup_of_an_older_form_is_brought_to_todays(
    empty: Store, target: Store, file: Path, form: str
) -> None:
    upgrade(empty, form)
    before = fill(empty)
    save(empty, file)
    backup.restore(target, file)
    assert at_head(target)
    for row in before["shop"]:
        row.pop("history", None)
    held(before, everything(target))


def test_nothing_is_thrown_away_unasked(store: Store, target: Store, file: Path) -> None:
    fill(store)
    save(store, file)
    upgrade(target)
    with target.writing() as session:
        put(session, Engine, LOCAL_SHOP, key(99), {"name": "Mine", "created_at": AT})
    before = everything(target)
    with pytest.raises(backup.Unusable, match="--replace"):
        backup.restore(target, file)
    assert everything(target) == before
    backup.restore(target, file, replace=True)
    same(everything(store), everything(target))


def damaged(file: Path) -> dict[str, bytes]:
    whole = file.read_bytes()
    text = gzip.decompress(whole)
    rows = text.splitlines(keepends=True)
    head = json.loads(rows[0])
    (middle, *_) = [at for at, row in enumerate(rows) if row.startswith(b'["drive"')]
    engine = 1 + list(head["tables"]["drive"]).index("engine_id")

    def signed(kept: list[bytes]) -> bytes:
        """A forger who knows the form, hash and all."""
        digest = hashlib.sha256(b"".join(kept)).hexdigest()
        last = json.dumps({"rows": len(kept) - 1, "sha256": digest}).encode() + b"\n"
        return gzip.compress(b"".join(kept) + last)

    found: list[Any] = json.loads(rows[middle])
    no_uuid = json.dumps([found[0], "no uuid", *found[2:]]).encode() + b"\n"
    orphan = json.dumps([*found[:engine], str(key(999)), *found[engine + 1 :]]).encode() + b"\n"
    newer = json.dumps(head | {"revision": "9999"}).encode() + b"\n"
    fewer = json.dumps(head | {"tables": {"shop": {"id": "uuid"}}}).encode() + b"\n"
    return {
        "nothing": b"",
        "no gzip": text,
        "another file": gzip.compress(b'{"a": 1}\n'),
        "no JSON": gzip.compress(b"hello\n" * 9),
        "cut in the middle": whole[: len(whole) // 2],
        "cut before the end": whole[:-1],
        "the last line gone": gzip.compress(b"".join(rows[:-1])),
        "a row gone": gzip.compress(b"".join(rows[:middle] + rows[middle + 1 :])),
        "a row twice": gzip.compress(b"".join(rows[:middle] + rows[middle - 1 :])),
        "a letter changed": gzip.compress(text.replace(b"2026-01-31", b"2026-01-30", 1)),
        "a byte flipped": whole[:200] + bytes([whole[200] ^ 1]) + whole[201:],
        "more after the end": gzip.compress(text + b"[]\n"),
        "forged: no uuid": signed([*rows[:middle], no_uuid, *rows[middle + 1 : -1]]),
        "forged: another's id": signed([*rows[:middle], orphan, *rows[middle + 1 : -1]]),
        "forged: a newer form": signed([newer, *rows[1:-1]]),
        "forged: other tables": signed([fewer, *rows[1:-1]]),
    }


def test_a_damaged_file_changes_nothing(store: Store, file: Path) -> None:
    """Each is refused, though all that is kept might be thrown away for a good one."""
    fill(store)
    save(store, file)
    before, was = everything(store), shape(store)
    for name, content in damaged(file).items():
        bad = file.with_name("bad")
        bad.write_bytes(content)
        with pytest.raises((backup.Unusable, sa.exc.IntegrityError)) as said:
            backup.restore(store, bad, replace=True)
        assert name.startswith("forged") or isinstance(said.value, backup.Unusable), name
        assert everything(store) == before, name
        assert shape(store) == was, name
    backup.restore(store, file, replace=True)
    same(before, everything(store))


def test_it_is_one_instant_while_others_write(store: Store, file: Path) -> None:
    """Engines and their chains are kept in pairs; no backup may hold a chain without its pair."""
    upgrade(store)
    done = False
    made = 0

    def work() -> None:
        nonlocal made
        while not done:
            made += 1
            chain = {"label": "C", "pitch_mm": 9.525, "links": 58, "created_at": AT}
            with store.writing() as session:
                put(session, Engine, LOCAL_SHOP, key(made), {"name": "E", "created_at": AT})
                put(session, Chain, LOCAL_SHOP, key(made), chain)

    writer = Thread(target=work)
    writer.start()
    try:
        seen = []
        while len(seen) < 5 or (made < 20 and writer.is_alive()):
            save(store, file)
            rows = [json.loads(line)[0] for line in lines(file)[1:]]
            seen.append((rows.count("engine"), rows.count("chain")))
    finally:
        done = True
        writer.join()
    assert all(engines == chains for engines, chains in seen), seen
    assert seen[0] < seen[-1]


@pytest.fixture
def command(tmp_path: Path, store: Store):
    """Run a command on the store."""

    def call(*words: str, stdin: str | None = None) -> Result:
        url = store.engine.url.render_as_string(hide_password=False)
        return CliRunner().invoke(main, words, input=stdin, env={"MIDSPAN_DATABASE_URL": url})

    return call


def test_the_commands(command, store: Store, file: Path) -> None:
    before = fill(store)
    done = command("backup", str(file))
    assert done.exit_code == 0, done.output
    assert file.stat().st_mode & 0o777 == 0o600
    assert [path.name for path in file.parent.glob("*.part")] == []
    assert command("backup", str(file)).exit_code == 1  # and is not written over
    assert command("restore", str(file)).exit_code == 1
    for answer in ("n\n", ""):
        refused = command("restore", str(file), "--replace", stdin=answer)
        assert refused.exit_code == 1
    with store.for_writing.begin() as connection:
        connection.exec_driver_sql("DELETE FROM reading")
    done = command("restore", str(file), "--replace", stdin="y\n")
    assert done.exit_code == 0, done.output
    same(before, everything(store))
    before = everything(store)
    file.write_bytes(file.read_bytes()[:-20])
    done = command("restore", str(file), "--replace", "--yes")
    assert done.exit_code == 1
    assert "Traceback" not in done.output
    assert "cut or damaged" in done.output or "to its end" in done.output
    assert everything(store) == before


def test_there_must_be_something_to_back_up(tmp_path: Path, file: Path) -> None:
    done = CliRunner().invoke(main, ["backup", str(file)], env={"MIDSPAN_DATA_DIR": str(tmp_path)})
    assert done.exit_code == 1
    assert "nothing to back up" in done.output
    assert not file.exists()
    assert list(tmp_path.glob("*.part")) == []


@pytest.mark.parametrize(
    ("damage", "found_by"),
    [
        # Each index in the other's place, as after a write that reached half the disk.
        (
            "UPDATE reading SET chain_id = NULL; PRAGMA writable_schema = ON;"
            "UPDATE sqlite_master SET rootpage = (SELECT sum(rootpage) FROM sqlite_master"
            " WHERE name IN ('ix_reading_shop_id_chain_id', 'ix_reading_shop_id_engine_id'))"
            " - rootpage"
            " WHERE name IN ('ix_reading_shop_id_chain_id', 'ix_reading_shop_id_engine_id')",
            "integrity_check",
        ),
        ("DELETE FROM engine", "foreign_key_check"),
    ],
)
def test_a_damaged_sqlite_is_not_passed_on(
    tmp_path: Path, file: Path, damage: str, found_by: str
) -> None:
    database = tmp_path / "x.sqlite3"
    store = Store(f"sqlite:///{database}")
    upgrade(store)
    fill(store)
    store.close()
    with closing(sqlite3.connect(database)) as raw:
        raw.executescript(damage)
    with pytest.raises(backup.Unusable, match=found_by):
        save(store, file)
    store.close()

"""The migrations alone make the schema, on both databases."""

from concurrent.futures import ThreadPoolExecutor

from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy import func, inspect, select

from midspan.store import Store, at_head, upgrade
from midspan.store.migrate import downgrade
from midspan.store.models import LOCAL_SHOP, Base, Shop

RECORDS = {
    "engine", "drive", "chain", "gear_set", "build", "entry", "plan", "reading", "dyno_session",
    "dyno_run",
}  # fmt: skip
TABLES = RECORDS | {"shop", "sent_batch"}
# What lets devices in.
ACCESS = {"device", "pairing_code"}


def tables(store: Store) -> set[str]:
    return set(inspect(store.engine).get_table_names()) - {"alembic_version"}


def test_up_down_and_up_again(empty: Store) -> None:
    assert not at_head(empty)
    upgrade(empty)
    assert at_head(empty)
    assert tables(empty) == TABLES | ACCESS
    downgrade(empty, "base")
    assert tables(empty) == set()
    assert not at_head(empty)
    upgrade(empty)
    assert tables(empty) == TABLES | ACCESS


def test_the_migrations_make_what_the_models_say(store: Store) -> None:
    with store.engine.connect() as connection:
        options = {"compare_type": True, "compare_server_default": True}
        context = MigrationContext.configure(connection, opts=options)
        assert compare_metadata(context, Base.metadata) == []


def test_the_difference_check_sees_a_difference(store: Store) -> None:
    with store.for_writing.begin() as connection:
        connection.exec_driver_sql("ALTER TABLE engine DROP COLUMN note")
    with store.engine.connect() as connection:
        context = MigrationContext.configure(connection)
        (change,) = compare_metadata(context, Base.metadata)
        assert change[0] == "add_column"


def test_migrating_again_changes_nothing(store: Store) -> None:
    upgrade(store)
    with store.reading() as session:
        assert session.get_one(Shop, LOCAL_SHOP).name == "This machine"


def test_many_processes_may_migrate_at_once(url: str) -> None:
    def migrate(_: int) -> None:
        one = Store(url)
        upgrade(one)
        one.close()

    with ThreadPoolExecutor(4) as pool:
        list(pool.map(migrate, range(4)))
    store = Store(url)
    with store.reading() as session:
        assert session.scalar(select(func.count()).select_from(Shop)) == 1
    store.close()


def test_every_key_leads_with_the_shop() -> None:
    for name in (TABLES | ACCESS) - {"shop"}:
        assert next(iter(Base.metadata.tables[name].primary_key)).name == "shop_id"
    for name in RECORDS | ACCESS:
        table = Base.metadata.tables[name]
        assert [column.name for column in table.primary_key] == ["shop_id", "id"]
        if name not in ACCESS:
            happened = "taken_at" if name == "reading" else "created_at"
            assert {happened, "received_at", "version", "deleted_at"} <= set(table.columns.keys())
        for key in table.foreign_key_constraints:
            assert key.column_keys[0] == "shop_id"
        for index in table.indexes:
            assert next(iter(index.columns)).name == "shop_id"


def test_sqlite_is_told_what_it_leaves_off(tmp_path) -> None:
    folder = tmp_path / "new folder"
    store = Store(f"sqlite:///{folder / 'x.sqlite3'}")
    assert folder.stat().st_mode & 0o077 == 0
    with store.engine.connect() as connection:
        for pragma, wanted in (("journal_mode", "wal"), ("foreign_keys", 1)):
            assert connection.exec_driver_sql(f"PRAGMA {pragma}").scalar() == wanted
        assert connection.exec_driver_sql("PRAGMA busy_timeout").scalar() > 0
    store.close()

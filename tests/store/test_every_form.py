"""From every earlier form to today's and back, with rows in every table, on both databases."""

from typing import Any

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory

from midspan.store import Store, at_head, upgrade
from midspan.store.migrate import config, downgrade
from midspan.store.models import Base
from store.filled import everything, fill, shape

FORMS = [script.revision for script in ScriptDirectory.from_config(config()).walk_revisions()][::-1]


def held(before: dict[str, Any], after: dict[str, Any]) -> None:
    """Fail unless every row is still there with every value it had."""
    for name, rows in before.items():
        assert len(after[name]) == len(rows) > 0, name
        for old, new in zip(rows, after[name], strict=True):
            assert {column: new[column] for column in old} == old, name


def test_the_forms_are_a_line() -> None:
    assert FORMS[0] == "0001"
    assert len(FORMS) == len(set(FORMS)) >= 3


@pytest.mark.parametrize("form", FORMS)
def test_up_from_it_and_down_again_keeps_every_row(empty: Store, form: str) -> None:
    """Down again it is as it was, row by row: so it can go up as the first time."""
    upgrade(empty, form)
    before, was = fill(empty), shape(empty)
    upgrade(empty)
    assert at_head(empty)
    held(before, everything(empty))
    with empty.engine.connect() as connection:
        options = {"compare_type": True, "compare_server_default": True}
        context = MigrationContext.configure(connection, opts=options)
        assert compare_metadata(context, Base.metadata) == []
    found = shape(empty)
    for name, table in Base.metadata.tables.items():
        _, foreign, indexes, _ = found[name]
        assert foreign == {one.name for one in table.foreign_key_constraints}
        assert indexes == {one.name for one in table.indexes}

    downgrade(empty, form)
    assert shape(empty) == was
    assert everything(empty) == before


def test_every_table_of_today_gets_rows(store: Store) -> None:
    made = fill(store)
    codes = {"pairing_code"}
    assert set(made) == set(Base.metadata.tables) - codes
    assert all(len(rows) >= 2 for rows in made.values())

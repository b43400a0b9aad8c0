"""The build record: builds of an engine, their entries, and readings that belong to a build.

Until here an engine had readings, and nothing told those of one rebuild from those of the next, nor
what was fitted and done between them. A reading kept before belongs to no build. There is no 0004.
"""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0003"
branch_labels = None
depends_on = None

MOMENT = sa.DateTime(timezone=True)
KEY = "fk_reading_shop_id_build_id"
INDEX = "ix_reading_shop_id_build_id"


def upgrade() -> None:
    op.create_table(
        "build",
        *_of_every_record(),
        sa.Column("engine_id", sa.Uuid(), nullable=False),
        sa.Column("drive_id", sa.Uuid()),
        sa.Column("chain_id", sa.Uuid()),
        sa.Column("gear_set_id", sa.Uuid()),
        sa.Column("label", sa.String(), nullable=False),
        sa.Column("started_at", MOMENT, nullable=False),
        sa.Column("odometer_km", sa.Double()),
        sa.Column("note", sa.String()),
        sa.Column("created_at", MOMENT, nullable=False),
        *_keys("build", "engine", "drive", "chain", "gear_set"),
    )
    op.create_index("ix_build_shop_id_engine_id", "build", ["shop_id", "engine_id"])
    op.create_table(
        "entry",
        *_of_every_record(),
        sa.Column("build_id", sa.Uuid(), nullable=False),
        sa.Column("chain_id", sa.Uuid()),
        sa.Column("gear_set_id", sa.Uuid()),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("at", MOMENT, nullable=False),
        sa.Column("title", sa.String(), nullable=False),
        sa.Column("text", sa.String()),
        sa.Column("figures", sa.JSON()),
        sa.Column("created_at", MOMENT, nullable=False),
        *_keys("entry", "build", "chain", "gear_set"),
    )
    op.create_index("ix_entry_shop_id_build_id", "entry", ["shop_id", "build_id"])
    with op.batch_alter_table("reading") as table:
        table.add_column(sa.Column("build_id", sa.Uuid()))
        table.create_foreign_key(KEY, "build", ["shop_id", "build_id"], ["shop_id", "id"])
        table.create_index(INDEX, ["shop_id", "build_id"])


def downgrade() -> None:
    with op.batch_alter_table("reading") as table:
        table.drop_index(INDEX)
        table.drop_constraint(KEY, type_="foreignkey")
        table.drop_column("build_id")
    op.drop_table("entry")
    op.drop_table("build")


def _of_every_record() -> list[sa.Column[Any]]:
    return [
        sa.Column("shop_id", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("received_at", MOMENT, nullable=False),
        sa.Column("deleted_at", MOMENT),
    ]


def _keys(table: str, *others: str) -> list[sa.Constraint]:
    """Lead every key with the shop."""
    made: list[sa.Constraint] = [
        sa.PrimaryKeyConstraint("shop_id", "id", name=f"pk_{table}"),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.id"], name=f"fk_{table}_shop_id"),
    ]
    for other in others:
        made.append(
            sa.ForeignKeyConstraint(
                ["shop_id", f"{other}_id"],
                [f"{other}.shop_id", f"{other}.id"],
                name=f"fk_{table}_shop_id_{other}_id",
            )
        )
    return made

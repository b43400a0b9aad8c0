"""Dyno sessions with their settings, and the runs made in them."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None

MOMENT = sa.DateTime(timezone=True)


def _record(table: str, parents: dict[str, str], *columns: sa.Column[Any]) -> None:
    op.create_table(
        table,
        sa.Column("shop_id", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("received_at", MOMENT, nullable=False),
        sa.Column("deleted_at", MOMENT),
        sa.Column("seq", sa.BigInteger(), nullable=False, server_default="0"),
        *columns,
        sa.PrimaryKeyConstraint("shop_id", "id", name=f"pk_{table}"),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.id"], name=f"fk_{table}_shop_id"),
        *(
            sa.ForeignKeyConstraint(
                ["shop_id", column],
                [f"{parent}.shop_id", f"{parent}.id"],
                name=f"fk_{table}_shop_id_{column}",
            )
            for column, parent in parents.items()
        ),
    )
    for column in parents:
        op.create_index(f"ix_{table}_shop_id_{column}", table, ["shop_id", column])
    op.create_index(f"ix_{table}_shop_id_seq", table, ["shop_id", "seq"], unique=True)


def upgrade() -> None:
    _record(
        "dyno_session",
        {"engine_id": "engine", "build_id": "build"},
        sa.Column("engine_id", sa.Uuid()),
        sa.Column("build_id", sa.Uuid()),
        sa.Column("label", sa.String(), nullable=False),
        sa.Column("at", MOMENT, nullable=False),
        sa.Column("standard", sa.String()),
        sa.Column("settings", sa.JSON(), nullable=False),
        sa.Column("note", sa.String()),
        sa.Column("invented", sa.Boolean(), nullable=False),
        sa.Column("created_at", MOMENT, nullable=False),
    )
    _record(
        "dyno_run",
        {"session_id": "dyno_session"},
        sa.Column("session_id", sa.Uuid(), nullable=False),
        sa.Column("setting", sa.String(), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("taken_at", MOMENT, nullable=False),
        sa.Column("conditions", sa.JSON()),
        sa.Column("figures_are", sa.String(), nullable=False),
        sa.Column("peaks", sa.JSON(), nullable=False),
        sa.Column("curve", sa.JSON()),
        sa.Column("source", sa.JSON()),
        sa.Column("core_version", sa.String(), nullable=False),
        sa.Column("note", sa.String()),
        sa.Column("created_at", MOMENT, nullable=False),
    )


def downgrade() -> None:
    op.drop_table("dyno_run")
    op.drop_table("dyno_session")

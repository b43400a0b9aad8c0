"""First form: shop, engine, drive, chain, reading, every key led by the shop."""

from datetime import UTC, datetime
from typing import Any
from uuid import UUID

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

MOMENT = sa.DateTime(timezone=True)
LOCAL_SHOP = UUID("00000000-0000-7000-8000-000000000001")


def kept(name: str, *columns: sa.Column[Any], refers: tuple[str, ...] = ()) -> None:
    """Create a table of records, with what every record has."""
    op.create_table(
        name,
        sa.Column("shop_id", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("received_at", MOMENT, nullable=False),
        sa.Column("deleted_at", MOMENT),
        *columns,
        sa.PrimaryKeyConstraint("shop_id", "id", name=f"pk_{name}"),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.id"], name=f"fk_{name}_shop_id"),
        *(
            sa.ForeignKeyConstraint(
                ["shop_id", f"{other}_id"],
                [f"{other}.shop_id", f"{other}.id"],
                name=f"fk_{name}_shop_id_{other}_id",
            )
            for other in refers
        ),
    )
    for other in refers:
        op.create_index(f"ix_{name}_shop_id_{other}_id", name, ["shop_id", f"{other}_id"])


def upgrade() -> None:
    shop = op.create_table(
        "shop",
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("created_at", MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_shop"),
    )
    local = {"id": LOCAL_SHOP, "name": "This machine", "created_at": datetime.now(UTC)}
    op.bulk_insert(shop, [local])
    kept(
        "engine",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("note", sa.String()),
        sa.Column("invented", sa.Boolean(), nullable=False),
        sa.Column("created_at", MOMENT, nullable=False),
    )
    kept(
        "drive",
        sa.Column("engine_id", sa.Uuid(), nullable=False),
        sa.Column("label", sa.String(), nullable=False),
        sa.Column("pitch_mm", sa.Double(), nullable=False),
        sa.Column("crank_teeth", sa.Integer(), nullable=False),
        sa.Column("cam_teeth", sa.Integer(), nullable=False),
        sa.Column("centre_distance_mm", sa.Double(), nullable=False),
        sa.Column("links", sa.Integer(), nullable=False),
        sa.Column("roller_diameter_mm", sa.Double()),
        sa.Column("centre_distance_error_mm", sa.Double()),
        sa.Column("drive_kind", sa.String()),
        sa.Column("centres", sa.String()),
        sa.Column("created_at", MOMENT, nullable=False),
        refers=("engine",),
    )
    kept(
        "chain",
        sa.Column("engine_id", sa.Uuid()),
        sa.Column("label", sa.String(), nullable=False),
        sa.Column("pitch_mm", sa.Double(), nullable=False),
        sa.Column("links", sa.Integer(), nullable=False),
        sa.Column("roller_diameter_mm", sa.Double()),
        sa.Column("note", sa.String()),
        sa.Column("created_at", MOMENT, nullable=False),
        refers=("engine",),
    )
    kept(
        "reading",
        sa.Column("engine_id", sa.Uuid()),
        sa.Column("drive_id", sa.Uuid()),
        sa.Column("chain_id", sa.Uuid()),
        sa.Column("calc", sa.String(), nullable=False),
        sa.Column("taken_at", MOMENT, nullable=False),
        sa.Column("input", sa.JSON(), nullable=False),
        sa.Column("result", sa.JSON(), nullable=False),
        sa.Column("core_version", sa.String(), nullable=False),
        sa.Column("limit", sa.JSON()),
        sa.Column("note", sa.String()),
        refers=("engine", "drive", "chain"),
    )


def downgrade() -> None:
    for name in ("reading", "chain", "drive", "engine", "shop"):
        op.drop_table(name)

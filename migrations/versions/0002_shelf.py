"""The shelf: gear sets; tags and more of chains; readings of gear sets, and under a load."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

MOMENT = sa.DateTime(timezone=True)
KEY = "fk_reading_shop_id_gear_set_id"
INDEX = "ix_reading_shop_id_gear_set_id"


def upgrade() -> None:
    op.create_table(
        "gear_set",
        sa.Column("shop_id", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("received_at", MOMENT, nullable=False),
        sa.Column("deleted_at", MOMENT),
        sa.Column("engine_id", sa.Uuid()),
        sa.Column("label", sa.String(), nullable=False),
        sa.Column("tag", sa.String()),
        sa.Column("pitch_mm", sa.Double(), nullable=False),
        sa.Column("crank_teeth", sa.Integer(), nullable=False),
        sa.Column("cam_teeth", sa.Integer(), nullable=False),
        sa.Column("adjuster", sa.String()),
        sa.Column("keyway_offsets_crank_deg", sa.JSON()),
        sa.Column("note", sa.String()),
        sa.Column("created_at", MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("shop_id", "id", name="pk_gear_set"),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.id"], name="fk_gear_set_shop_id"),
        sa.ForeignKeyConstraint(
            ["shop_id", "engine_id"],
            ["engine.shop_id", "engine.id"],
            name="fk_gear_set_shop_id_engine_id",
        ),
    )
    op.create_index("ix_gear_set_shop_id_engine_id", "gear_set", ["shop_id", "engine_id"])
    # Plain additions: readings refer to chains, so SQLite could not copy that table.
    op.add_column("chain", sa.Column("tag", sa.String()))
    op.add_column("chain", sa.Column("distance_run_km", sa.Double()))
    op.add_column("chain", sa.Column("description", sa.String()))
    with op.batch_alter_table("reading") as table:
        table.add_column(sa.Column("gear_set_id", sa.Uuid()))
        table.add_column(sa.Column("load_n", sa.Double()))
        table.create_foreign_key(KEY, "gear_set", ["shop_id", "gear_set_id"], ["shop_id", "id"])
        table.create_index(INDEX, ["shop_id", "gear_set_id"])


def downgrade() -> None:
    with op.batch_alter_table("reading") as table:
        table.drop_index(INDEX)
        table.drop_constraint(KEY, type_="foreignkey")
        table.drop_column("load_n")
        table.drop_column("gear_set_id")
    for name in ("description", "distance_run_km", "tag"):
        op.drop_column("chain", name)
    op.drop_table("gear_set")

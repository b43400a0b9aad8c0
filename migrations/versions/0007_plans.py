"""Running-in plans: what was asked, the plan as answered, and the log of following it."""

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None

MOMENT = sa.DateTime(timezone=True)


def upgrade() -> None:
    op.create_table(
        "plan",
        sa.Column("shop_id", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("received_at", MOMENT, nullable=False),
        sa.Column("deleted_at", MOMENT),
        sa.Column("seq", sa.BigInteger(), nullable=False, server_default="0"),
        sa.Column("engine_id", sa.Uuid()),
        sa.Column("build_id", sa.Uuid()),
        sa.Column("label", sa.String(), nullable=False),
        sa.Column("started_at", MOMENT),
        sa.Column("input", sa.JSON(), nullable=False),
        sa.Column("result", sa.JSON(), nullable=False),
        sa.Column("core_version", sa.String(), nullable=False),
        sa.Column("log", sa.JSON(), nullable=False),
        sa.Column("created_at", MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("shop_id", "id", name="pk_plan"),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.id"], name="fk_plan_shop_id"),
        *(
            sa.ForeignKeyConstraint(
                ["shop_id", f"{other}_id"],
                [f"{other}.shop_id", f"{other}.id"],
                name=f"fk_plan_shop_id_{other}_id",
            )
            for other in ("engine", "build")
        ),
    )
    for column in ("engine_id", "build_id"):
        op.create_index(f"ix_plan_shop_id_{column}", "plan", ["shop_id", column])
    op.create_index("ix_plan_shop_id_seq", "plan", ["shop_id", "seq"], unique=True)


def downgrade() -> None:
    op.drop_table("plan")

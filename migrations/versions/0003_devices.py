"""Devices paired with a shop, and the codes that pair them.

Until here whoever reached the service could read and change every record. From here on a request
for records carries the token of a device, which names its shop; of tokens and codes only hashes are
kept. No record names a device, so what was kept before stays as it is.
"""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

MOMENT = sa.DateTime(timezone=True)


def upgrade() -> None:
    op.create_table(
        "device",
        sa.Column("shop_id", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("role", sa.String(), nullable=False),
        sa.Column("token_hash", sa.String(), nullable=False),
        sa.Column("created_at", MOMENT, nullable=False),
        sa.Column("last_seen_at", MOMENT),
        sa.Column("revoked_at", MOMENT),
        sa.PrimaryKeyConstraint("shop_id", "id", name="pk_device"),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.id"], name="fk_device_shop_id"),
    )
    op.create_table(
        "pairing_code",
        sa.Column("shop_id", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("role", sa.String(), nullable=False),
        sa.Column("code_hash", sa.String(), nullable=False),
        sa.Column("created_at", MOMENT, nullable=False),
        sa.Column("expires_at", MOMENT, nullable=False),
        sa.Column("wrong_tries", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("shop_id", "id", name="pk_pairing_code"),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.id"], name="fk_pairing_code_shop_id"),
    )


def downgrade() -> None:
    op.drop_table("pairing_code")
    op.drop_table("device")

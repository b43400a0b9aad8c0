"""Sync: the place of each record's last change among its shop's, and batches that were done.

A phone that was away must fetch what others changed, and miss nothing: times cannot tell that, as
of two changes at once the earlier may be seen later, and clocks differ. So each shop counts its
changes. A batch whose answer was lost is sent again: its key and answer are kept, so that it is not
done twice.
"""

from uuid import uuid4

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None

MOMENT = sa.DateTime(timezone=True)
RECORDS = ("engine", "drive", "chain", "gear_set", "build", "entry", "reading")


def upgrade() -> None:
    op.create_table(
        "sent_batch",
        sa.Column("shop_id", sa.Uuid(), nullable=False),
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("fingerprint", sa.LargeBinary(), nullable=False),
        sa.Column("answer", sa.LargeBinary(), nullable=False),
        sa.Column("created_at", MOMENT, nullable=False),
        sa.PrimaryKeyConstraint("shop_id", "key", name="pk_sent_batch"),
        sa.ForeignKeyConstraint(["shop_id"], ["shop.id"], name="fk_sent_batch_shop_id"),
    )
    op.create_index("ix_sent_batch_shop_id_created_at", "sent_batch", ["shop_id", "created_at"])
    # Plain additions: much refers to these tables, so SQLite could not copy them.
    op.add_column("shop", sa.Column("seq", sa.BigInteger(), nullable=False, server_default="0"))
    op.add_column("shop", sa.Column("history", sa.Uuid()))
    for name in RECORDS:
        op.add_column(name, sa.Column("seq", sa.BigInteger(), nullable=False, server_default="0"))
        _count(name)
        op.create_index(f"ix_{name}_shop_id_seq", name, ["shop_id", "seq"], unique=True)
    shop = sa.table("shop", sa.column("id", sa.Uuid()), sa.column("history", sa.Uuid()))
    for id in op.get_bind().scalars(sa.select(shop.c.id)).all():
        op.execute(shop.update().where(shop.c.id == id).values(history=uuid4()))


def _count(name: str) -> None:
    """Number what is kept in the order in which it was received, after what is numbered."""
    op.execute(
        f"""UPDATE {name} SET seq = place.n + (SELECT seq FROM shop WHERE id = place.shop_id)
            FROM (SELECT shop_id, id, row_number()
                  OVER (PARTITION BY shop_id ORDER BY received_at, id) AS n FROM {name}) AS place
            WHERE {name}.shop_id = place.shop_id AND {name}.id = place.id"""  # noqa: S608
    )
    op.execute(
        f"""UPDATE shop SET seq = seq
            + (SELECT count(*) FROM {name} WHERE {name}.shop_id = shop.id)"""  # noqa: S608
    )


def downgrade() -> None:
    for name in reversed(RECORDS):
        op.drop_index(f"ix_{name}_shop_id_seq", name)
        op.drop_column(name, "seq")
    op.drop_column("shop", "history")
    op.drop_column("shop", "seq")
    op.drop_table("sent_batch")

"""How far or how long the chain had run when a reading was taken."""

import sqlalchemy as sa
from alembic import op

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None

COLUMNS = ("distance_since_start_km", "running_since_start_h", "odometer_km")


def upgrade() -> None:
    for column in COLUMNS:
        op.add_column("reading", sa.Column(column, sa.Double()))


def downgrade() -> None:
    for column in reversed(COLUMNS):
        op.drop_column("reading", column)

"""What tells how the service fares: channels that are up, counts over all processes, families out of reach."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

INSTANT = sa.DateTime(timezone=True)


def upgrade() -> None:
    """Forwards only: a backup is the way back. A case says whether it is out of reach when it is next kept."""
    op.create_table(
        "lines",
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("up_at", INSTANT, nullable=False),
        sa.PrimaryKeyConstraint("channel", name="pk_lines"),
    )
    op.create_table(
        "tallies",
        sa.Column("sample", sa.Text(), nullable=False),
        sa.Column("labels", sa.Text(), nullable=False),
        sa.Column("value", sa.Double(), nullable=False),
        sa.PrimaryKeyConstraint("sample", "labels", name="pk_tallies"),
    )
    op.add_column("cases", sa.Column("unreachable", sa.Boolean(), server_default=sa.false(), nullable=False))
    where = sa.text("unreachable")
    op.create_index("ix_cases_unreachable", "cases", ["id"], postgresql_where=where, sqlite_where=where)

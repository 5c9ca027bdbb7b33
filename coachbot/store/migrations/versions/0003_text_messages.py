"""What text messages need: pieces of longer ones, and the names under which networks report on those sent."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
INSTANT = sa.DateTime(timezone=True)


def upgrade() -> None:
    """Forwards only: a backup is the way back."""
    op.create_table(
        "pieces",
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("address_hash", sa.LargeBinary(), nullable=False),
        sa.Column("reference", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("total", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("words", sa.LargeBinary(), nullable=False),
        sa.Column("received_at", INSTANT, nullable=False),
        sa.PrimaryKeyConstraint("channel", "address_hash", "reference", "total", "number", name="pk_pieces"),
    )
    op.create_table(
        "deliveries",
        sa.Column("id", ID, nullable=False),
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("outbox_id", ID, nullable=False),
        sa.Column("outcome", sa.Text(), nullable=True),
        sa.Column("at", INSTANT, nullable=True),
        sa.CheckConstraint("(outcome IS NULL) = (at IS NULL)", name=op.f("ck_deliveries_reported")),
        sa.ForeignKeyConstraint(["outbox_id"], ["outbox.id"], name="fk_deliveries_outbox_id", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("id", name="pk_deliveries"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_deliveries_name", "deliveries", ["name", "channel"])
    op.create_index("ix_deliveries_outbox_id", "deliveries", ["outbox_id"])

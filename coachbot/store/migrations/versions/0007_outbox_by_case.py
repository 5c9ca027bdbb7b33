"""What waits for a case is found by the unique key, which begins with the case: an index of its own only cost."""

from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Forwards only: a backup is the way back."""
    op.drop_index("ix_outbox_case_id", table_name="outbox")

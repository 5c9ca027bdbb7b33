"""A message is kept and settled in one transaction: none is ever looked for that is kept and not settled."""

from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Forwards only: a backup is the way back."""
    op.drop_index("ix_messages_unsettled", table_name="messages")

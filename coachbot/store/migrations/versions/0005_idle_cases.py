"""How cases are found in which nothing has happened for long."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Forwards only: a backup is the way back."""
    where = sa.text("state IN ('invited', 'finished', 'followed_up', 'withdrawn')")
    op.create_index("ix_cases_idle", "cases", ["changed_at"], postgresql_where=where, sqlite_where=where)

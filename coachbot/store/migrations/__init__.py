"""The tables' versions, run by Alembic."""

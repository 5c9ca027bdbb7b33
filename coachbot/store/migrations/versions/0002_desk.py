"""What the desk needs: sessions, used one-time codes, the log of access, notes."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
INSTANT = sa.DateTime(timezone=True)


def upgrade() -> None:
    """Forwards only: a backup is the way back."""
    _sessions()
    _one_time_codes()
    _access()
    _notes()


def _sessions() -> None:
    op.create_table(
        "sessions",
        sa.Column("token_hash", sa.LargeBinary(), nullable=False),
        sa.Column("clinician_id", ID, nullable=False),
        sa.Column("begun_at", INSTANT, nullable=False),
        sa.Column("seen_at", INSTANT, nullable=False),
        sa.ForeignKeyConstraint(["clinician_id"], ["clinicians.id"], name="fk_sessions_clinician_id"),
        sa.PrimaryKeyConstraint("token_hash", name="pk_sessions"),
    )
    op.create_index("ix_sessions_clinician_id", "sessions", ["clinician_id"])


def _one_time_codes() -> None:
    op.create_table(
        "one_time_codes",
        sa.Column("clinician_id", ID, autoincrement=False, nullable=False),
        sa.Column("step", ID, nullable=False),
        sa.ForeignKeyConstraint(["clinician_id"], ["clinicians.id"], name="fk_one_time_codes_clinician_id"),
        sa.PrimaryKeyConstraint("clinician_id", name="pk_one_time_codes"),
    )


def _access() -> None:
    op.create_table(
        "access",
        sa.Column("id", ID, nullable=False),
        sa.Column("at", INSTANT, nullable=False),
        sa.Column("by", sa.Text(), nullable=False),
        sa.Column("case_id", ID, nullable=True),
        sa.Column("what", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_access"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_access_case_id", "access", ["case_id"])
    for statement in _APPEND_ONLY[op.get_bind().dialect.name]:
        op.execute(statement)


def _notes() -> None:
    op.create_table(
        "notes",
        sa.Column("id", ID, nullable=False),
        sa.Column("case_id", ID, nullable=False),
        sa.Column("alert", sa.Integer(), nullable=True),
        sa.Column("at", INSTANT, nullable=False),
        sa.Column("by", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("words", sa.LargeBinary(), nullable=False),
        sa.CheckConstraint("kind IN ('note', 'call', 'screening')", name=op.f("ck_notes_kind")),
        sa.ForeignKeyConstraint(["case_id"], ["cases.id"], name="fk_notes_case_id"),
        sa.PrimaryKeyConstraint("id", name="pk_notes"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_notes_case_id", "notes", ["case_id"])


_APPEND_ONLY = {
    "sqlite": [
        f"CREATE TRIGGER access_no_{deed} BEFORE {deed} ON access "
        "BEGIN SELECT RAISE(ABORT, 'the log of access is only ever added to'); END"
        for deed in ("update", "delete")
    ],
    "postgresql": [
        (
            "CREATE FUNCTION access_only_added() RETURNS trigger LANGUAGE plpgsql AS "
            "$$ BEGIN RAISE EXCEPTION 'the log of access is only ever added to' USING ERRCODE = '23000'; END $$"
        ),
        (
            "CREATE TRIGGER access_only_added BEFORE UPDATE OR DELETE ON access "
            "FOR EACH ROW EXECUTE FUNCTION access_only_added()"
        ),
    ],
}

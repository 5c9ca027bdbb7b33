"""First tables."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
INSTANT = sa.DateTime(timezone=True)


def upgrade() -> None:
    """Forwards only: a backup is the way back."""
    _cases()
    _clinicians()
    _contacts()
    _heartbeats()
    _outbox()
    _settings()
    _tombstones()
    _alerts()
    _history()
    _invites()
    _messages()
    _nights()
    _swallows()


def _partial(name: str, table: str, columns: list[str], where: str, *, unique: bool = False) -> None:
    condition = sa.text(where)
    op.create_index(name, table, columns, unique=unique, postgresql_where=condition, sqlite_where=condition)


def _cases() -> None:
    op.create_table(
        "cases",
        sa.Column("id", ID, nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("language", sa.Text(), nullable=False),
        sa.Column("created_at", INSTANT, nullable=False),
        sa.Column("changed_at", INSTANT, nullable=False),
        sa.Column("due_at", INSTANT, nullable=True),
        sa.Column("document", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_cases")),
        sqlite_autoincrement=True,
    )
    _partial("ix_cases_due", "cases", ["due_at", "id"], "due_at IS NOT NULL")


def _clinicians() -> None:
    op.create_table(
        "clinicians",
        sa.Column("id", ID, nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("duty", sa.Text(), nullable=False),
        sa.Column("language", sa.Text(), nullable=False),
        sa.Column("active", sa.Boolean(), nullable=False),
        sa.Column("channel", sa.Text(), nullable=True),
        sa.Column("address_hash", sa.LargeBinary(), nullable=True),
        sa.Column("address", sa.LargeBinary(), nullable=True),
        sa.Column("password_hash", sa.Text(), nullable=True),
        sa.Column("totp", sa.LargeBinary(), nullable=True),
        sa.Column("awaiting_case_id", ID, nullable=True),
        sa.Column("created_at", INSTANT, nullable=False),
        sa.CheckConstraint("duty IN ('on_call', 'backup', 'none')", name=op.f("ck_clinicians_duty")),
        sa.CheckConstraint("role IN ('clinician', 'lead', 'researcher')", name=op.f("ck_clinicians_role")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_clinicians")),
        sa.UniqueConstraint("name", name=op.f("uq_clinicians_name")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_clinicians_address", "clinicians", ["address_hash", "channel"])


def _contacts() -> None:
    op.create_table(
        "contacts",
        sa.Column("id", ID, nullable=False),
        sa.Column("case_id", ID, nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("language", sa.Text(), nullable=False),
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("address_hash", sa.LargeBinary(), nullable=False),
        sa.Column("address", sa.LargeBinary(), nullable=False),
        sa.Column("active", sa.Boolean(), nullable=False),
        sa.Column("joined_at", INSTANT, nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_contacts")),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_contacts_address", "contacts", ["address_hash", "channel"])
    op.create_index(op.f("ix_contacts_case_id"), "contacts", ["case_id"])
    _partial("uq_contacts_active", "contacts", ["case_id", "channel", "address_hash"], "active", unique=True)


def _heartbeats() -> None:
    op.create_table(
        "heartbeats",
        sa.Column("process", sa.Text(), nullable=False),
        sa.Column("at", INSTANT, nullable=False),
        sa.PrimaryKeyConstraint("process", name=op.f("pk_heartbeats")),
    )


def _outbox() -> None:
    op.create_table(
        "outbox",
        sa.Column("id", ID, nullable=False),
        sa.Column("case_id", ID, nullable=True),
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("recipient", sa.Text(), nullable=False),
        sa.Column("contact_id", ID, nullable=True),
        sa.Column("clinician_id", ID, nullable=True),
        sa.Column("urgency", sa.SmallInteger(), nullable=False),
        sa.Column("status", sa.Text(), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.Column("alert", sa.Integer(), nullable=True),
        sa.Column("created_at", INSTANT, nullable=False),
        sa.Column("not_before", INSTANT, nullable=False),
        sa.Column("expires_at", INSTANT, nullable=True),
        sa.Column("lease_until", INSTANT, nullable=True),
        sa.Column("attempts", sa.Integer(), nullable=False),
        sa.Column("settled_at", INSTANT, nullable=True),
        sa.Column("channel_id", sa.Text(), nullable=True),
        sa.Column("farewell", sa.Boolean(), nullable=False),
        sa.CheckConstraint("(status = 'claimed') = (lease_until IS NOT NULL)", name=op.f("ck_outbox_lease")),
        sa.CheckConstraint("(status IN ('waiting', 'claimed')) = (settled_at IS NULL)", name=op.f("ck_outbox_settled")),
        sa.CheckConstraint(
            "status IN ('waiting', 'claimed', 'sent', 'never', 'gone', 'unknown', 'expired', 'cancelled')",
            name=op.f("ck_outbox_status"),
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_outbox")),
        sa.UniqueConstraint("case_id", "key", "recipient", name=op.f("uq_outbox_case_id_key_recipient")),
        sqlite_autoincrement=True,
    )
    op.create_index(op.f("ix_outbox_case_id"), "outbox", ["case_id"])
    _partial("ix_outbox_expiry", "outbox", ["expires_at"], "status = 'waiting' AND expires_at IS NOT NULL")
    _partial("ix_outbox_lease", "outbox", ["lease_until"], "status = 'claimed'")
    _partial("ix_outbox_line", "outbox", ["recipient", "urgency", "id"], "status = 'waiting'")
    _partial("ix_outbox_waiting", "outbox", ["urgency", "not_before", "id"], "status = 'waiting'")
    _partial("uq_outbox_in_flight", "outbox", ["recipient"], "status = 'claimed'", unique=True)
    _partial("uq_outbox_no_case", "outbox", ["key", "recipient"], "case_id IS NULL", unique=True)


def _settings() -> None:
    op.create_table(
        "settings",
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("key", name=op.f("pk_settings")),
    )


def _tombstones() -> None:
    op.create_table(
        "tombstones",
        sa.Column("case_id", ID, autoincrement=False, nullable=False),
        sa.Column("created_at", INSTANT, nullable=False),
        sa.Column("erased_at", INSTANT, nullable=False),
        sa.Column("events", sa.Integer(), nullable=False),
        sa.Column("nights", sa.Integer(), nullable=False),
        sa.Column("received", sa.Integer(), nullable=False),
        sa.Column("sent", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("case_id", name=op.f("pk_tombstones")),
    )


def _alerts() -> None:
    op.create_table(
        "alerts",
        sa.Column("case_id", ID, nullable=False),
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("level", sa.SmallInteger(), nullable=False),
        sa.Column("category", sa.Text(), nullable=False),
        sa.Column("raised_at", INSTANT, nullable=False),
        sa.Column("steps", sa.Integer(), nullable=False),
        sa.Column("next_step_at", INSTANT, nullable=True),
        sa.Column("acknowledged_at", INSTANT, nullable=True),
        sa.Column("acknowledged_by", sa.Text(), nullable=True),
        sa.CheckConstraint(
            "(acknowledged_at IS NULL) = (acknowledged_by IS NULL)", name=op.f("ck_alerts_acknowledged")
        ),
        sa.CheckConstraint("number >= 1", name=op.f("ck_alerts_number")),
        sa.ForeignKeyConstraint(["case_id"], ["cases.id"], name=op.f("fk_alerts_case_id")),
        sa.PrimaryKeyConstraint("case_id", "number", name=op.f("pk_alerts")),
    )
    _partial("ix_alerts_open", "alerts", ["raised_at"], "acknowledged_at IS NULL")


def _history() -> None:
    op.create_table(
        "history",
        sa.Column("case_id", ID, nullable=False),
        sa.Column("seq", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("actor", sa.Text(), nullable=False),
        sa.Column("at", INSTANT, nullable=False),
        sa.Column("payload", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["case_id"], ["cases.id"], name=op.f("fk_history_case_id")),
        sa.PrimaryKeyConstraint("case_id", "seq", name=op.f("pk_history")),
    )
    for statement in _APPEND_ONLY[op.get_bind().dialect.name]:
        op.execute(statement)


def _invites() -> None:
    op.create_table(
        "invites",
        sa.Column("code_hash", sa.LargeBinary(), nullable=False),
        sa.Column("case_id", ID, nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("created_at", INSTANT, nullable=False),
        sa.Column("expires_at", INSTANT, nullable=False),
        sa.Column("used_at", INSTANT, nullable=True),
        sa.ForeignKeyConstraint(["case_id"], ["cases.id"], name=op.f("fk_invites_case_id")),
        sa.PrimaryKeyConstraint("code_hash", name=op.f("pk_invites")),
    )
    op.create_index(op.f("ix_invites_case_id"), "invites", ["case_id"])


def _messages() -> None:
    op.create_table(
        "messages",
        sa.Column("id", ID, nullable=False),
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("channel_id", sa.Text(), nullable=False),
        sa.Column("address_hash", sa.LargeBinary(), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.Column("received_at", INSTANT, nullable=False),
        sa.Column("outcome", sa.Text(), nullable=True),
        sa.Column("case_id", ID, nullable=True),
        sa.Column("contact_id", ID, nullable=True),
        sa.Column("level", sa.SmallInteger(), nullable=True),
        sa.Column("category", sa.Text(), nullable=True),
        sa.Column("evidence", sa.LargeBinary(), nullable=True),
        sa.Column("unread_at", INSTANT, nullable=True),
        sa.Column("read_at", INSTANT, nullable=True),
        sa.Column("read_by", sa.Text(), nullable=True),
        sa.CheckConstraint("(read_at IS NULL) = (read_by IS NULL)", name=op.f("ck_messages_read")),
        sa.ForeignKeyConstraint(["case_id"], ["cases.id"], name=op.f("fk_messages_case_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_messages")),
        sa.UniqueConstraint("channel", "channel_id", name=op.f("uq_messages_channel_channel_id")),
        sqlite_autoincrement=True,
    )
    op.create_index(op.f("ix_messages_address_hash"), "messages", ["address_hash"])
    op.create_index(op.f("ix_messages_case_id"), "messages", ["case_id"])
    _partial("ix_messages_unread", "messages", ["unread_at"], "unread_at IS NOT NULL AND read_at IS NULL")
    _partial("ix_messages_unsettled", "messages", ["id"], "outcome IS NULL")


def _nights() -> None:
    op.create_table(
        "nights",
        sa.Column("case_id", ID, nullable=False),
        sa.Column("number", sa.SmallInteger(), autoincrement=False, nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("turn", sa.SmallInteger(), nullable=False),
        sa.Column("status", sa.Text(), nullable=False),
        sa.Column("prompted_at", INSTANT, nullable=False),
        sa.Column("candy_kind", sa.Text(), nullable=False),
        sa.Column("candy_mm", sa.SmallInteger(), nullable=False),
        sa.Column("best", sa.Text(), nullable=True),
        sa.CheckConstraint("best IN ('center', 'left', 'right', 'up', 'down')", name=op.f("ck_nights_best")),
        sa.CheckConstraint("number BETWEEN 1 AND 60", name=op.f("ck_nights_number")),
        sa.ForeignKeyConstraint(["case_id"], ["cases.id"], name=op.f("fk_nights_case_id")),
        sa.PrimaryKeyConstraint("case_id", "number", name=op.f("pk_nights")),
        sa.UniqueConstraint("case_id", "day", name=op.f("uq_nights_case_id_day")),
    )


def _swallows() -> None:
    op.create_table(
        "swallows",
        sa.Column("case_id", ID, autoincrement=False, nullable=False),
        sa.Column("night", sa.SmallInteger(), autoincrement=False, nullable=False),
        sa.Column("position", sa.Text(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("place", sa.SmallInteger(), nullable=False),
        sa.Column("rating", sa.SmallInteger(), nullable=True),
        sa.Column("went_down", sa.Boolean(), nullable=False),
        sa.Column("skipped", sa.Boolean(), nullable=False),
        sa.CheckConstraint("position IN ('center', 'left', 'right', 'up', 'down')", name=op.f("ck_swallows_position")),
        sa.CheckConstraint(
            "(rating IS NOT NULL) = went_down AND NOT (skipped AND went_down)", name=op.f("ck_swallows_consistent")
        ),
        sa.CheckConstraint("place BETWEEN 1 AND 5", name=op.f("ck_swallows_place")),
        sa.CheckConstraint("rating BETWEEN 1 AND 5", name=op.f("ck_swallows_rating")),
        sa.ForeignKeyConstraint(
            ["case_id", "night"], ["nights.case_id", "nights.number"], name=op.f("fk_swallows_case_id_night")
        ),
        sa.PrimaryKeyConstraint("case_id", "night", "position", name=op.f("pk_swallows")),
        sa.UniqueConstraint("case_id", "night", "place", name=op.f("uq_swallows_case_id_night_place")),
    )


# A row may go with its family or be sealed anew with another key; what happened, when and in which order cannot change.
_WATCHED = "BEFORE UPDATE OF case_id, seq, kind, actor, at ON history"
_REFUSAL = "history is only ever added to"
_APPEND_ONLY = {
    "sqlite": [f"CREATE TRIGGER history_only_added {_WATCHED} BEGIN SELECT RAISE(ABORT, '{_REFUSAL}'); END"],
    "postgresql": [
        f"""CREATE FUNCTION history_only_added() RETURNS trigger LANGUAGE plpgsql AS
        $$ BEGIN RAISE EXCEPTION '{_REFUSAL}' USING ERRCODE = '23000'; END $$""",
        f"CREATE TRIGGER history_only_added {_WATCHED} FOR EACH ROW EXECUTE FUNCTION history_only_added()",
    ],
}

"""The tables. What can be read without the key says nothing about a child but ratings by case number.

Law 6 stands here as far as a database can hold it: one row a night, a day and a position, numbers within the protocol's
outer limits, one outgoing message for each key and recipient, one message in flight for each recipient.
"""

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    Double,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    SmallInteger,
    Table,
    Text,
    UniqueConstraint,
    false,
    text,
)

from coachbot.programme.positions import Position
from coachbot.programme.protocol import MOST_NIGHTS
from coachbot.store.columns import Id, Instant

POSITIONS = ", ".join(f"'{position}'" for position in Position)

metadata = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
    }
)


IDLE = "state IN ('invited', 'finished', 'followed_up', 'withdrawn')"
"""Cases in which nothing is to happen any more, or has not begun."""


def _partial(name: str, *columns: str, where: str, unique: bool = False) -> Index:
    return Index(name, *columns, unique=unique, postgresql_where=text(where), sqlite_where=text(where))


cases = Table(
    "cases",
    metadata,
    Column("id", Id, primary_key=True),
    Column("version", Integer, nullable=False),
    Column("state", Text, nullable=False),
    Column("language", Text, nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("changed_at", Instant, nullable=False),
    Column("due_at", Instant),
    Column("document", LargeBinary, nullable=False),
    Column("unreachable", Boolean, nullable=False, server_default=false()),
    _partial("ix_cases_due", "due_at", "id", where="due_at IS NOT NULL"),
    _partial("ix_cases_unreachable", "id", where="unreachable"),
    _partial("ix_cases_idle", "changed_at", where=IDLE),
    sqlite_autoincrement=True,
)

history = Table(
    "history",
    metadata,
    Column("case_id", Id, ForeignKey("cases.id"), primary_key=True),
    Column("seq", Integer, primary_key=True, autoincrement=False),
    Column("kind", Text, nullable=False),
    Column("actor", Text, nullable=False),
    Column("at", Instant, nullable=False),
    Column("payload", LargeBinary, nullable=False),
)
"""What happened to each case, in order. Rows are only ever added: a trigger refuses to change one."""

nights = Table(
    "nights",
    metadata,
    Column("case_id", Id, ForeignKey("cases.id"), primary_key=True),
    Column("number", SmallInteger, primary_key=True, autoincrement=False),
    Column("day", Date, nullable=False),
    Column("turn", SmallInteger, nullable=False),
    Column("status", Text, nullable=False),
    Column("prompted_at", Instant, nullable=False),
    Column("candy_kind", Text, nullable=False),
    Column("candy_mm", SmallInteger, nullable=False),
    Column("best", Text),
    UniqueConstraint("case_id", "day"),
    CheckConstraint(f"number BETWEEN 1 AND {MOST_NIGHTS}", name="number"),
    CheckConstraint(f"best IN ({POSITIONS})", name="best"),
)

swallows = Table(
    "swallows",
    metadata,
    Column("case_id", Id, primary_key=True, autoincrement=False),
    Column("night", SmallInteger, primary_key=True, autoincrement=False),
    Column("position", Text, primary_key=True),
    Column("day", Date, nullable=False),
    Column("place", SmallInteger, nullable=False),
    Column("rating", SmallInteger),
    Column("went_down", Boolean, nullable=False),
    Column("skipped", Boolean, nullable=False),
    ForeignKeyConstraint(["case_id", "night"], ["nights.case_id", "nights.number"]),
    UniqueConstraint("case_id", "night", "place"),
    CheckConstraint(f"position IN ({POSITIONS})", name="position"),
    CheckConstraint(f"place BETWEEN 1 AND {len(Position)}", name="place"),
    CheckConstraint("rating BETWEEN 1 AND 5", name="rating"),
    CheckConstraint("(rating IS NOT NULL) = went_down AND NOT (skipped AND went_down)", name="consistent"),
)

alerts = Table(
    "alerts",
    metadata,
    Column("case_id", Id, ForeignKey("cases.id"), primary_key=True),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("level", SmallInteger, nullable=False),
    Column("category", Text, nullable=False),
    Column("raised_at", Instant, nullable=False),
    Column("steps", Integer, nullable=False),
    Column("next_step_at", Instant),
    Column("acknowledged_at", Instant),
    Column("acknowledged_by", Text),
    _partial("ix_alerts_open", "raised_at", where="acknowledged_at IS NULL"),
    CheckConstraint("number >= 1", name="number"),
    CheckConstraint("(acknowledged_at IS NULL) = (acknowledged_by IS NULL)", name="acknowledged"),
)

contacts = Table(
    "contacts",
    metadata,
    Column("id", Id, primary_key=True),
    Column("case_id", Id, nullable=False, index=True),
    Column("role", Text, nullable=False),
    Column("language", Text, nullable=False),
    Column("channel", Text, nullable=False),
    Column("address_hash", LargeBinary, nullable=False),
    Column("address", LargeBinary, nullable=False),
    Column("active", Boolean, nullable=False),
    Column("joined_at", Instant, nullable=False),
    Index("ix_contacts_address", "address_hash", "channel"),
    _partial("uq_contacts_active", "case_id", "channel", "address_hash", where="active", unique=True),
    sqlite_autoincrement=True,
)
"""No foreign key to the case: the address of an erased family stays until its last message has gone."""

invites = Table(
    "invites",
    metadata,
    Column("code_hash", LargeBinary, primary_key=True),
    Column("case_id", Id, ForeignKey("cases.id"), nullable=False, index=True),
    Column("role", Text, nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("expires_at", Instant, nullable=False),
    Column("used_at", Instant),
)

clinicians = Table(
    "clinicians",
    metadata,
    Column("id", Id, primary_key=True),
    Column("name", Text, nullable=False, unique=True),
    Column("role", Text, nullable=False),
    Column("duty", Text, nullable=False),
    Column("language", Text, nullable=False),
    Column("active", Boolean, nullable=False),
    Column("channel", Text),
    Column("address_hash", LargeBinary),
    Column("address", LargeBinary),
    Column("password_hash", Text),
    Column("totp", LargeBinary),
    Column("awaiting_case_id", Id),
    Column("created_at", Instant, nullable=False),
    Index("ix_clinicians_address", "address_hash", "channel"),
    CheckConstraint("duty IN ('on_call', 'backup', 'none')", name="duty"),
    CheckConstraint("role IN ('clinician', 'lead', 'researcher')", name="role"),
    sqlite_autoincrement=True,
)

messages = Table(
    "messages",
    metadata,
    Column("id", Id, primary_key=True),
    Column("channel", Text, nullable=False),
    Column("channel_id", Text, nullable=False),
    Column("address_hash", LargeBinary, nullable=False, index=True),
    Column("body", LargeBinary, nullable=False),
    Column("received_at", Instant, nullable=False),
    Column("outcome", Text),
    Column("case_id", Id, ForeignKey("cases.id"), index=True),
    Column("contact_id", Id),
    Column("level", SmallInteger),
    Column("category", Text),
    Column("evidence", LargeBinary),
    Column("unread_at", Instant),
    Column("read_at", Instant),
    Column("read_by", Text),
    UniqueConstraint("channel", "channel_id"),
    _partial("ix_messages_unread", "unread_at", where="unread_at IS NOT NULL AND read_at IS NULL"),
    CheckConstraint("(read_at IS NULL) = (read_by IS NULL)", name="read"),
    sqlite_autoincrement=True,
)

outbox = Table(
    "outbox",
    metadata,
    Column("id", Id, primary_key=True),
    Column("case_id", Id),
    Column("key", Text, nullable=False),
    Column("recipient", Text, nullable=False),
    Column("contact_id", Id),
    Column("clinician_id", Id),
    Column("urgency", SmallInteger, nullable=False),
    Column("status", Text, nullable=False),
    Column("body", LargeBinary, nullable=False),
    Column("alert", Integer),
    Column("created_at", Instant, nullable=False),
    Column("not_before", Instant, nullable=False),
    Column("expires_at", Instant),
    Column("lease_until", Instant),
    Column("attempts", Integer, nullable=False),
    Column("settled_at", Instant),
    Column("channel_id", Text),
    Column("farewell", Boolean, nullable=False),
    UniqueConstraint("case_id", "key", "recipient"),
    _partial("uq_outbox_no_case", "key", "recipient", where="case_id IS NULL", unique=True),
    _partial("ix_outbox_waiting", "urgency", "not_before", "id", where="status = 'waiting'"),
    _partial("ix_outbox_line", "recipient", "urgency", "id", where="status = 'waiting'"),
    _partial("uq_outbox_in_flight", "recipient", where="status = 'claimed'", unique=True),
    _partial("ix_outbox_lease", "lease_until", where="status = 'claimed'"),
    _partial("ix_outbox_expiry", "expires_at", where="status = 'waiting' AND expires_at IS NOT NULL"),
    CheckConstraint(
        "status IN ('waiting', 'claimed', 'sent', 'never', 'gone', 'unknown', 'expired', 'cancelled')", name="status"
    ),
    CheckConstraint("(status = 'claimed') = (lease_until IS NOT NULL)", name="lease"),
    CheckConstraint("(status IN ('waiting', 'claimed')) = (settled_at IS NULL)", name="settled"),
    sqlite_autoincrement=True,
)
"""`case_id` without a foreign key: what an erased family is still to be told outlives it, marked `farewell`."""

pieces = Table(
    "pieces",
    metadata,
    Column("channel", Text, primary_key=True),
    Column("address_hash", LargeBinary, primary_key=True),
    Column("reference", Integer, primary_key=True, autoincrement=False),
    Column("total", Integer, primary_key=True, autoincrement=False),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("words", LargeBinary, nullable=False),
    Column("received_at", Instant, nullable=False),
)
"""Pieces of messages that have not come whole. Each is kept before the network hears that it came."""

deliveries = Table(
    "deliveries",
    metadata,
    Column("id", Id, primary_key=True),
    Column("channel", Text, nullable=False),
    Column("name", Text, nullable=False),
    Column("outbox_id", Id, ForeignKey("outbox.id", ondelete="CASCADE"), nullable=False, index=True),
    Column("outcome", Text),
    Column("at", Instant),
    Index("ix_deliveries_name", "name", "channel"),
    CheckConstraint("(outcome IS NULL) = (at IS NULL)", name="reported"),
    sqlite_autoincrement=True,
)
"""Under which names a channel may report on what was sent, and the first final report on each."""

tombstones = Table(
    "tombstones",
    metadata,
    Column("case_id", Id, primary_key=True, autoincrement=False),
    Column("created_at", Instant, nullable=False),
    Column("erased_at", Instant, nullable=False),
    Column("events", Integer, nullable=False),
    Column("nights", Integer, nullable=False),
    Column("received", Integer, nullable=False),
    Column("sent", Integer, nullable=False),
)
"""What stays of an erased family: that there was one, when, and how much was erased."""

heartbeats = Table(
    "heartbeats",
    metadata,
    Column("process", Text, primary_key=True),
    Column("at", Instant, nullable=False),
)

lines = Table(
    "lines",
    metadata,
    Column("channel", Text, primary_key=True),
    Column("up_at", Instant, nullable=False),
)
"""When each channel was last known to take messages in, whichever process listens to it."""

tallies = Table(
    "tallies",
    metadata,
    Column("sample", Text, primary_key=True),
    Column("labels", Text, primary_key=True),
    Column("value", Double, nullable=False),
)
"""What all processes have counted since the tables were made, by the names that `/metrics` gives them."""

settings = Table(
    "settings",
    metadata,
    Column("key", Text, primary_key=True),
    Column("value", Text, nullable=False),
)

sessions = Table(
    "sessions",
    metadata,
    Column("token_hash", LargeBinary, primary_key=True),
    Column("clinician_id", Id, ForeignKey("clinicians.id"), nullable=False, index=True),
    Column("begun_at", Instant, nullable=False),
    Column("seen_at", Instant, nullable=False),
)

one_time_codes = Table(
    "one_time_codes",
    metadata,
    Column("clinician_id", Id, ForeignKey("clinicians.id"), primary_key=True, autoincrement=False),
    Column("step", Id, nullable=False),
)
"""The time step of the code that each clinician used last: neither it nor an older one opens again."""

access = Table(
    "access",
    metadata,
    Column("id", Id, primary_key=True),
    Column("at", Instant, nullable=False),
    Column("by", Text, nullable=False),
    Column("case_id", Id, index=True),
    Column("what", Text, nullable=False),
    sqlite_autoincrement=True,
)
"""Who looked at, took out or changed what, and when. Rows are only ever added: triggers refuse the rest.

`case_id` without a foreign key: that somebody looked stays known after the family has been erased.
"""

notes = Table(
    "notes",
    metadata,
    Column("id", Id, primary_key=True),
    Column("case_id", Id, ForeignKey("cases.id"), nullable=False, index=True),
    Column("alert", Integer),
    Column("at", Instant, nullable=False),
    Column("by", Text, nullable=False),
    Column("kind", Text, nullable=False),
    Column("words", LargeBinary, nullable=False),
    CheckConstraint("kind IN ('note', 'call', 'screening')", name="kind"),
    sqlite_autoincrement=True,
)
"""What clinicians wrote about a family for each other."""

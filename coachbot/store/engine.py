"""Connections to the two databases, each set so that a commit that has returned is on the disk."""

import os
from pathlib import Path
from typing import Any

from sqlalchemy import URL, Engine, create_engine, event, make_url

from coachbot.store.errors import StoreError

BUSY_SECONDS = 30
"""How long SQLite waits for another process's transaction, and PostgreSQL for a lock."""

_POSTGRES_SETTINGS = {
    "timezone": "UTC",
    "synchronous_commit": "on",
    "lock_timeout": f"{BUSY_SECONDS}s",
    "idle_in_transaction_session_timeout": "60s",
    # The first of a recipient's line is one step in an ordered index. While a table grows faster than its statistics,
    # the planner would rather fetch the whole line and sort it: 4 s, not 30 ms, to claim past 5,000 alerts for one.
    "enable_bitmapscan": "off",
}


def parse(url: str) -> URL:
    """The URL of a database.

    Raises:
        StoreError: if it is neither a SQLite file nor PostgreSQL by psycopg.
    """
    parsed = make_url(url)
    if parsed.get_backend_name() == "sqlite" and parsed.database not in (None, "", ":memory:"):
        return parsed
    if parsed.drivername == "postgresql+psycopg":
        return parsed
    raise StoreError("DATABASE_URL must be sqlite:///a-file or postgresql+psycopg://user@host/name")


def is_sqlite(url: URL) -> bool:
    """Whether it is a SQLite file."""
    return url.get_backend_name() == "sqlite"


def sqlite_engine(url: URL, *, read_only: bool) -> Engine:
    """Connections to a SQLite file: to be written by one thread, or to be read by several.

    Write-ahead logging lets readers go on while the writer writes; `synchronous=FULL` brings each commit to the disk
    before it returns (NORMAL would lose the last ones at a power cut); `BEGIN IMMEDIATE` takes the writer's lock at
    once, for a read that turns into a write later fails without waiting (https://www.sqlite.org/lang_transaction.html).
    """
    engine = create_engine(url, hide_parameters=True, connect_args={"timeout": BUSY_SECONDS})
    begin = "BEGIN" if read_only else "BEGIN IMMEDIATE"

    @event.listens_for(engine, "connect")
    def _set(connection: Any, _record: object) -> None:
        connection.isolation_level = None  # the transaction is opened by us, below
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA secure_delete = ON")
        connection.execute(f"PRAGMA query_only = {int(read_only)}")

    @event.listens_for(engine, "begin")
    def _begin(connection: Any) -> None:
        connection.exec_driver_sql(begin)

    return engine


def make_file(url: URL) -> None:
    """Make an empty SQLite file that only its owner may read, and its folder, unless they are there."""
    path = Path(str(url.database))
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))


def postgres_engine(url: URL, connections: int, *, read_only: bool) -> Engine:
    """A pool of that many connections to PostgreSQL.

    Writers run at READ COMMITTED and lock the rows that must not change; readers see one instant throughout.
    """
    options = " ".join(f"-c {name}={value}" for name, value in _POSTGRES_SETTINGS.items())
    isolation = {"isolation_level": "REPEATABLE READ", "postgresql_readonly": True} if read_only else {}
    return create_engine(
        url,
        execution_options=isolation,
        hide_parameters=True,
        pool_size=connections,
        max_overflow=0,
        connect_args={"options": options, "connect_timeout": 10},
    )

"""The tables' versions: Alembic's migrations, run by the program itself.

Alembic is loaded for an upgrade only: to look which version the tables are at, at every start, takes one query.
"""

from pathlib import Path

from sqlalchemy import Connection, text

from coachbot.store.errors import SchemaError

MIGRATIONS = Path(__file__).parent / "migrations"
_LOCK = 0x636F616368  # one upgrade at a time; any number will do that nobody else uses on this database


def upgrade(connection: Connection) -> None:
    """Bring the tables to the newest version, within the transaction of this connection."""
    from alembic import command  # noqa: PLC0415 - see above
    from alembic.config import Config  # noqa: PLC0415

    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": _LOCK})
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    config.attributes["connection"] = connection
    command.upgrade(config, "head")


def check(connection: Connection) -> None:
    """Refuse tables of another version than this program's.

    Raises:
        SchemaError: saying what to do.
    """
    known, found = versions(), _found(connection)
    if found == known[-1]:
        return
    if found is None or found in known:
        raise SchemaError(
            f"the tables are at {found or 'nothing'} and {known[-1]} is needed: run `coachbot database upgrade`"
        )
    raise SchemaError(f"the tables are at {found}, which this program does not know: it is older than its database")


def versions() -> list[str]:
    """The versions that this program knows, oldest first: the numbers that its migrations' files begin with."""
    return sorted(path.name.partition("_")[0] for path in (MIGRATIONS / "versions").glob("[0-9]*_*.py"))


def _found(connection: Connection) -> str | None:
    if not connection.dialect.has_table(connection, "alembic_version"):
        return None
    version: str | None = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    return version

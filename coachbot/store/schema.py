"""The tables' versions: Alembic's migrations, run by the program itself."""

from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, text

from coachbot.store.errors import SchemaError

MIGRATIONS = Path(__file__).parent / "migrations"
_LOCK = 0x636F616368  # one upgrade at a time; any number will do that nobody else uses on this database


def upgrade(connection: Connection) -> None:
    """Bring the tables to the newest version, within the transaction of this connection."""
    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": _LOCK})
    config = _config()
    config.attributes["connection"] = connection
    command.upgrade(config, "head")


def check(connection: Connection) -> None:
    """Refuse tables of another version than this program's.

    Raises:
        SchemaError: saying what to do.
    """
    script = ScriptDirectory.from_config(_config())
    needed, found = script.get_current_head(), MigrationContext.configure(connection).get_current_revision()
    if found == needed:
        return
    known = {revision.revision for revision in script.walk_revisions()}
    if found is None or found in known:
        raise SchemaError(
            f"the tables are at {found or 'nothing'} and {needed} is needed: run `coachbot database upgrade`"
        )
    raise SchemaError(f"the tables are at {found}, which this program does not know: it is older than its database")


def _config() -> Config:
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    return config

"""Promises about the tables' versions."""

from pathlib import Path
from typing import Any

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, create_engine, inspect, text

from coachbot.store import SchemaError, Store
from coachbot.store.schema import MIGRATIONS, versions
from coachbot.store.tables import metadata
from conftest import KEY


def details(connection: Connection, schema: str | None = None) -> dict[str, Any]:
    """All that a table is made of, as far as the database tells."""
    seen = inspect(connection)
    return {
        table: {
            "columns": [(one["name"], str(one["type"]), one["nullable"]) for one in seen.get_columns(table, schema)],
            "checks": sorted((one["name"] or "", one["sqltext"]) for one in seen.get_check_constraints(table, schema)),
            "unique": sorted(str(one["name"]) for one in seen.get_unique_constraints(table, schema)),
            "indexes": sorted(
                (str(one["name"]), tuple(one["column_names"]), one["unique"]) for one in seen.get_indexes(table, schema)
            ),
            "primary": seen.get_pk_constraint(table, schema)["constrained_columns"],
            "foreign": sorted(
                (one["name"] or "", tuple(one["constrained_columns"]), one["referred_table"])
                for one in seen.get_foreign_keys(table, schema)
            ),
        }
        for table in metadata.tables
    }


def test_the_migrations_make_the_tables_that_the_program_knows(store: Store) -> None:
    """Alembic finds no difference between the tables as migrated and as written in the code."""
    difference = store.run(lambda tx: compare_metadata(MigrationContext.configure(tx._connection), metadata))

    assert difference == []


def test_the_versions_are_those_that_alembic_finds() -> None:
    """The files' numbers, which every start goes by, are the revisions' own, in their order."""
    found = ScriptDirectory(str(MIGRATIONS)).walk_revisions()

    assert versions() == [one.revision for one in found][::-1]


def test_the_migrations_make_every_constraint_too(store: Store) -> None:
    """What Alembic does not compare: checks, keys and partial indexes are those that the code would make itself."""

    def work(connection: Connection) -> tuple[dict[str, Any], dict[str, Any]]:
        migrated = details(connection)
        trial = connection.begin_nested()
        metadata.drop_all(connection)
        metadata.create_all(connection)
        made = details(connection)
        trial.rollback()
        return migrated, made

    migrated, made = store.run(lambda tx: work(tx._connection))

    assert migrated == made


def test_an_empty_database_is_refused_with_what_to_do(tmp_path: Path) -> None:
    """Before the tables are made, the check names the command; after, it is silent."""
    store = Store.open(f"sqlite:///{tmp_path}/new.sqlite3", KEY)
    with pytest.raises(SchemaError, match="run `coachbot database upgrade`"):
        store.check()
    store.upgrade()
    store.check()
    store.upgrade()
    store.check()
    store.close()


def test_a_database_of_a_newer_program_is_refused(store: Store) -> None:
    """An old program does not write into tables that it does not know."""
    known = store.run(lambda tx: tx._connection.execute(text("SELECT version_num FROM alembic_version")).scalar_one())
    store.run(lambda tx: tx._connection.execute(text("UPDATE alembic_version SET version_num = '9999'")))
    with pytest.raises(SchemaError, match="older than its database"):
        store.check()
    put_back = text("UPDATE alembic_version SET version_num = :known")
    store.run(lambda tx: tx._connection.execute(put_back, {"known": known}))
    store.check()


def test_a_migration_that_fails_leaves_the_tables_as_they_were(tmp_path: Path) -> None:
    """Tables are made in one transaction: what stands in the way of the last leaves none of the first."""
    path = tmp_path / "old.sqlite3"
    engine = create_engine(f"sqlite:///{path}")
    with engine.begin() as connection:
        connection.execute(text("CREATE TABLE swallows (id INTEGER)"))
    store = Store.open(f"sqlite:///{path}", KEY)
    with pytest.raises(Exception, match="already exists"):
        store.upgrade()
    store.close()
    with engine.connect() as connection:
        assert inspect(connection).get_table_names() == ["swallows"]
    engine.dispose()

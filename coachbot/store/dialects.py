"""The few statements that the two databases' constructs are spelled apart for."""

from functools import cache

from sqlalchemy import Connection, Table
from sqlalchemy.dialects import postgresql, sqlite


def insert_or_ignore(connection: Connection, table: Table) -> postgresql.Insert | sqlite.Insert:
    """An insert that passes by a row which is there already."""
    return _ignoring(connection.dialect.name, table)


@cache
def _ignoring(dialect: str, table: Table) -> postgresql.Insert | sqlite.Insert:
    """Made once: what a statement is cached by costs more to work out than to look up."""
    insert = postgresql.insert if dialect == "postgresql" else sqlite.insert
    return insert(table).on_conflict_do_nothing()


def insert_or_update(connection: Connection, table: Table, key: str, value: str) -> postgresql.Insert | sqlite.Insert:
    """An insert that writes `value` over that of a row with the same `key`."""
    insert = postgresql.insert if connection.dialect.name == "postgresql" else sqlite.insert
    statement = insert(table)
    return statement.on_conflict_do_update(index_elements=[key], set_={value: statement.excluded[value]})


def insert_or_add(connection: Connection, table: Table, value: str) -> postgresql.Insert | sqlite.Insert:
    """An insert that adds its `value` to that of a row with the same primary key."""
    insert = postgresql.insert if connection.dialect.name == "postgresql" else sqlite.insert
    statement = insert(table)
    total = table.c[value] + statement.excluded[value]
    return statement.on_conflict_do_update(index_elements=list(table.primary_key.columns), set_={value: total})

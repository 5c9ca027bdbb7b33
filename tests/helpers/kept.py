"""All that a store holds, to be searched for what should be gone."""

from collections.abc import Iterator

from sqlalchemy import select

from coachbot.store import Store, Transaction, UnsealError
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import metadata
from conftest import KEY

SEALER = Sealer(KEY)


def kept(store: Store) -> str:
    """All that is in all tables, with everything opened that the key opens."""

    def work(tx: Transaction) -> Iterator[str]:
        for table in metadata.sorted_tables:
            for row in tx._connection.execute(select(table)):
                yield table.name + repr([opened(value) if isinstance(value, bytes) else value for value in row])

    return store.run(lambda tx: "\n".join(work(tx)))


def opened(value: bytes) -> bytes:
    """What was sealed, whatever for; a lookup's bytes as they are."""
    for purpose in Purpose:
        try:
            return SEALER.open(purpose, value)
        except UnsealError:
            continue
    return value


def sealed(store: Store) -> set[bytes]:
    """Every sealed value that is in any table, as its bytes lie there."""

    def work(tx: Transaction) -> Iterator[bytes]:
        for table in metadata.sorted_tables:
            for row in tx._connection.execute(select(table)):
                yield from (value for value in row if isinstance(value, bytes) and opened(value) != value)

    return store.run(lambda tx: set(work(tx)))

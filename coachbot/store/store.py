"""The store: the only truth, and the only way to it."""

import asyncio
from collections.abc import Callable, Iterator
from functools import partial
from time import monotonic
from typing import TypeVar

from sqlalchemy import URL, Connection

from coachbot.measures import TRANSACTION
from coachbot.store import schema
from coachbot.store.engine import is_sqlite, make_file, parse, postgres_engine, sqlite_engine
from coachbot.store.errors import UnavailableError, translated
from coachbot.store.rotation import Place
from coachbot.store.runners import Runner, SqliteWriter, Threads
from coachbot.store.sealing import Sealer
from coachbot.store.transaction import Transaction

T = TypeVar("T")
Work = Callable[[Transaction], T]
"""What is done within one transaction. It may be run more than once, so it must change nothing but the store."""

WRITERS = 4
READERS = 2
LANES = 2
RESEAL_BATCH = 500

LATELY = 60.0
"""Seconds."""


class Store:
    """One database, SQLite or PostgreSQL, and the clinic's key to it. Use `open`.

    `lanes` is how many long transactions are worth having under way at once: one where one thread writes, and on
    PostgreSQL some, but fewer than its threads, so that a reply finds one free.
    """

    def __init__(self, writer: Runner, reader: Runner, sealer: Sealer, *, lanes: int = 1) -> None:
        self.lanes = lanes
        self._writer = writer
        self._reader = reader
        self._sealer = sealer
        self._refused: float | None = None

    @classmethod
    def open(cls, url: str, key: str) -> "Store":
        """Open the database at `url` with the clinic's key or keys; see `Sealer` for their form.

        It says nothing of the tables: call `check` before any work, or `upgrade` to make them.

        Raises:
            BadKeyError: if the key is none.
            StoreError: if the URL is neither SQLite's nor PostgreSQL's.
        """
        sealer = Sealer(key)
        parsed = parse(url)
        if is_sqlite(parsed):
            return cls(*_sqlite(parsed), sealer)
        return cls(*_postgres(parsed), sealer, lanes=LANES)

    async def transact(self, work: Work[T], *, patient: bool = False) -> T:
        """Do `work` in one transaction, in another thread. When this returns, what was written is durable.

        Work that is `patient` lets all that waits go first: it takes long, and nobody looks at a phone for it.

        Raises:
            StoreError: one of its kinds; nothing was kept.
            Exception: whatever `work` raises; nothing was kept.
        """
        try:
            with translated(), TRANSACTION.time():
                return await asyncio.wrap_future(self._writer.submit(self._job(work, writable=True), patient=patient))
        except UnavailableError:
            self._refused = monotonic()
            raise

    @property
    def refused_lately(self) -> bool:
        """Whether the database could not take a transaction of this process within the last minute."""
        return self._refused is not None and monotonic() - self._refused < LATELY

    async def read(self, work: Work[T]) -> T:
        """Do `work`, which only reads, over one instant of the database. Writers and it do not wait for each other."""
        with translated():
            return await asyncio.wrap_future(self._reader.submit(self._job(work, writable=False)))

    def run(self, work: Work[T]) -> T:
        """Like `transact`, for commands and tests outside a loop."""
        with translated():
            return self._writer.submit(self._job(work, writable=True)).result()

    def upgrade(self) -> None:
        """Make the tables, or bring them to what this program needs."""
        with translated():
            self._writer.submit(schema.upgrade).result()

    def check(self) -> None:
        """Refuse tables that are not what this program needs, and a key that does not open what is kept.

        Raises:
            SchemaError: saying what to do.
            UnsealError: saying what to do.
        """
        with translated():
            self._reader.submit(schema.check).result()
            self._reader.submit(self._job(lambda tx: next(tx.cases.all(), None), writable=False)).result()
            if self._reader.submit(self._job(Transaction.unnamed_key, writable=False)).result():
                self._writer.submit(self._job(Transaction.remember_key, writable=True)).result()

    def reseal(self) -> int:
        """Seal everything anew with the first key. May be broken off and begun again at any point.

        Returns how many values it was. The earlier key may be dropped when the invitations given under it have run out:
        their codes are not kept, so what they are found by cannot be made anew.
        """
        self.run(lambda tx: tx.remember_key())
        total = 0
        while count := sum(self._round()):
            total += count
        return total

    def _round(self) -> Iterator[int]:
        """Go through all that is sealed, a batch a transaction; what others have sealed meanwhile is the next one's."""
        place: Place | None = Place()
        while place is not None:
            step = self.run(partial(Transaction.reseal, limit=RESEAL_BATCH, place=place))
            yield step.count
            place = step.following

    async def scrub(self) -> None:
        """Have the database let go of its own traces of what was erased.

        SQLite overwrites what is deleted (`secure_delete`), but its write-ahead log holds earlier pages until it is
        emptied. PostgreSQL's vacuum does it by itself.
        """
        with translated():
            await asyncio.to_thread(self._writer.scrub)

    def close(self) -> None:
        """Finish what was handed over, then let go of the database."""
        self._writer.close()
        self._reader.close()

    def _job(self, work: Work[T], *, writable: bool) -> Callable[[Connection], T]:
        return lambda connection: work(Transaction(connection, self._sealer, writable=writable))


def _sqlite(url: URL) -> tuple[Runner, Runner]:
    make_file(url)
    writer = SqliteWriter(sqlite_engine(url, read_only=False))
    return writer, Threads(sqlite_engine(url, read_only=True), READERS)


def _postgres(url: URL) -> tuple[Runner, Runner]:
    writer = Threads(postgres_engine(url, WRITERS, read_only=False), WRITERS)
    return writer, Threads(postgres_engine(url, READERS, read_only=True), READERS)

"""Who runs transactions: one thread on SQLite, several on PostgreSQL. Each is one call, handed over whole."""

import random
import time
from collections import deque
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from queue import Empty, SimpleQueue
from threading import Thread
from typing import Any, Generic, Protocol, TypeVar

from sqlalchemy import Connection, Engine
from sqlalchemy.exc import DBAPIError

from coachbot.store.errors import UnavailableError

T = TypeVar("T")
Job = Callable[[Connection], T]

BATCH = 64
"""The most transactions that share one commit on SQLite."""

TRIES = 6
_SERIALIZATION, _DEADLOCK = "40001", "40P01"
_IN_FLIGHT = "uq_outbox_in_flight"  # two processes claimed for one recipient at the same instant
_UNCOMMITTED = "nothing of the transaction was committed"


class Runner(Protocol):
    """Runs jobs, each in a transaction of its own or as good as that. A job may be run again, so it must bear it."""

    def submit(self, job: Job[T], *, patient: bool = False) -> Future[T]:
        """Hand over one job. Its future is done only when what it wrote is durable, or wholly undone.

        Where jobs wait for each other, a `patient` one, which takes long, lets the others go first.
        """

    def scrub(self) -> None:
        """Have the database let go of its own traces of what was deleted, if that is for us to do."""

    def close(self) -> None:
        """Finish what was handed over, then let go of the database."""


class SqliteWriter:
    """The one thread that writes. Jobs that come while it is at work share the next commit, each behind a savepoint."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine
        self._queue: SimpleQueue[_Pending[Any] | None] = SimpleQueue()
        self._patient: deque[_Pending[Any]] = deque()
        self._closed = False
        self._thread = Thread(target=self._serve, name="store-writer", daemon=True)
        self._thread.start()

    def submit(self, job: Job[T], *, patient: bool = False) -> Future[T]:
        """Put it in line."""
        if self._closed:
            raise UnavailableError("the store is closed")
        pending = _Pending(job, patient=patient)
        self._queue.put(pending)
        return pending.future

    def scrub(self) -> None:
        """Write the write-ahead log into the file and empty it; if readers are in the way, the next time."""
        connection = self._engine.raw_connection()
        try:
            connection.cursor().execute("PRAGMA wal_checkpoint(TRUNCATE)")
        finally:
            connection.close()

    def close(self) -> None:
        """Finish the line, then end the thread."""
        self._closed = True
        self._queue.put(None)
        self._thread.join()
        self._engine.dispose()

    def _serve(self) -> None:
        last = False
        while not last or self._patient:
            if not last:
                batch, last = self._gather()
                self._commit([one for one in batch if one.future.set_running_or_notify_cancel()])
            if self._patient and (one := self._patient.popleft()).future.set_running_or_notify_cancel():
                self._commit([one])

    def _gather(self) -> "tuple[list[_Pending[Any]], bool]":
        """What shares the next commit, and whether it is the last. Waits for it, unless a patient job is in line."""
        batch: list[_Pending[Any]] = []
        while len(batch) < BATCH:
            try:
                following = self._queue.get(block=not batch and not self._patient)
            except Empty:
                return batch, False
            if following is None:
                return batch, True
            (self._patient if following.patient else batch).append(following)
        return batch, False

    def _commit(self, batch: "list[_Pending[Any]]") -> None:
        if not batch:
            return
        try:
            with self._engine.begin() as connection:
                for pending in batch:
                    pending.try_in(connection, alone=len(batch) == 1)
        except Exception as error:  # noqa: BLE001 - whatever it is, those who wait must hear of it
            self._rescue(batch, error)
        else:
            for pending in batch:
                pending.settle()

    def _rescue(self, batch: "list[_Pending[Any]]", error: Exception) -> None:
        """The commit itself failed: nothing was kept. Run each alone, so that one's fault is not another's."""
        if len(batch) == 1:
            batch[0].future.set_exception(error)
            return
        for pending in batch:
            self._commit([pending])


class _Pending(Generic[T]):
    """One job that waits, and how it went."""

    def __init__(self, job: Job[T], *, patient: bool) -> None:
        self.future: Future[T] = Future()
        self.patient = patient
        self._job = job
        self._result: T | None = None
        self._error: Exception | None = None

    def try_in(self, connection: Connection, *, alone: bool) -> None:
        """Run it; in company, a failure undoes this job only."""
        self._error = None
        if alone:
            self._result = self._job(connection)
            return
        savepoint = connection.begin_nested()
        try:
            self._result = self._job(connection)
        except Exception as error:  # noqa: BLE001 - handed on in `settle`
            savepoint.rollback()
            self._error = error
        else:
            savepoint.commit()

    def settle(self) -> None:
        """Tell who waits, after the commit."""
        if self._error:
            self.future.set_exception(self._error)
        else:
            self.future.set_result(self._result)  # type: ignore[arg-type]


class Threads:
    """A few threads; each job is a transaction on one connection, tried again whole where PostgreSQL asks for it."""

    def __init__(self, engine: Engine, threads: int) -> None:
        self._engine = engine
        self._executor = ThreadPoolExecutor(threads, thread_name_prefix="store")

    def submit(self, job: Job[T], *, patient: bool = False) -> Future[T]:  # noqa: ARG002 - threads do not wait
        """Put it in line."""
        return self._executor.submit(self._run, job)

    def scrub(self) -> None:
        """Nothing: vacuum does it."""

    def close(self) -> None:
        """Finish the line, then end the threads."""
        self._executor.shutdown()
        self._engine.dispose()

    def _run(self, job: Job[T]) -> T:
        for attempt in range(1, TRIES):
            try:
                return self._once(job)
            except DBAPIError as error:
                if not _worth_again(error):
                    raise
            time.sleep(random.uniform(0, 0.01 * 2**attempt))  # noqa: S311 - so that two do not collide for ever
        return self._once(job)

    def _once(self, job: Job[T]) -> T:
        with self._engine.connect() as connection:
            try:
                result = job(connection)
            except DBAPIError as error:
                error.add_detail(_UNCOMMITTED)
                raise
            connection.commit()
            return result


def _worth_again(error: DBAPIError) -> bool:
    """Whether PostgreSQL undid it for another's sake, or went away before the commit was asked for."""
    if _UNCOMMITTED not in error.detail:
        return False
    state = getattr(error.orig, "sqlstate", None)
    constraint = getattr(getattr(error.orig, "diag", None), "constraint_name", None)
    return error.connection_invalidated or state in (_SERIALIZATION, _DEADLOCK) or constraint == _IN_FLIGHT

"""Promises about transactions: whole or not at all, side by side, durable before anybody hears of it."""

import asyncio
import sqlite3
import threading
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import psycopg
import pytest
from sqlalchemy import text

from coachbot.coach.actions import Urgency
from coachbot.coach.events import Pressed, Ticked
from coachbot.store import (
    Change,
    Envelope,
    LawError,
    Store,
    StoreError,
    Transaction,
    UnavailableError,
)
from conftest import KEY
from helpers.cases import EVENING, MINUTE, draft, save, with_night

if TYPE_CHECKING:
    from concurrent.futures import Future


def put(key: str, tx: Transaction) -> None:
    """Write something small."""
    tx.clinic.put(key, "kept")


def add(envelope: Envelope, tx: Transaction) -> None:
    """Put a message in."""
    tx.outbox.add([envelope], EVENING)


async def test_work_is_done_in_another_thread_and_its_answer_comes_back(store: Store) -> None:
    """The loop goes on meanwhile; what was written can be read."""
    case = await store.transact(lambda tx: tx.cases.add(draft(), EVENING))
    thread = await store.transact(lambda _tx: threading.current_thread())

    assert thread is not threading.current_thread()
    assert await store.read(lambda tx: tx.cases.load(case.id)) == case


async def test_an_error_of_the_work_reaches_who_waits(store: Store) -> None:
    """As it was raised, and nothing was kept."""

    def work(tx: Transaction) -> None:
        tx.clinic.put("a", "1")
        raise ZeroDivisionError("mine")

    with pytest.raises(ZeroDivisionError, match="mine"):
        await store.transact(work)
    assert await store.read(lambda tx: tx.clinic.get("a")) is None


async def test_reading_cannot_write(store: Store) -> None:
    """A read that would write is refused by the database itself."""
    with pytest.raises(UnavailableError, match=r"read-?only"):
        await store.read(lambda tx: tx.clinic.put("a", "1"))


async def test_reading_locks_nothing(store: Store) -> None:
    """Who is due, and a case, can be looked at where nothing may be written."""
    case = await store.transact(lambda tx: tx.cases.add(draft(), EVENING, EVENING))

    assert await store.read(lambda tx: [*tx.cases.claim_due(EVENING, 5), tx.cases.load(case.id)]) == [case, case]


@pytest.mark.postgres
def test_a_value_that_cannot_be_kept_is_not_taken_for_a_broken_database(postgres_url: str) -> None:
    """PostgreSQL's text holds no NUL: trying the same again would never help, so the error says that it was refused."""
    store = Store.open(postgres_url, KEY)
    with pytest.raises(LawError, match="NUL"):
        store.run(lambda tx: tx.clinicians.add("An\0a", EVENING))
    store.close()


async def test_a_long_read_holds_up_no_writer_and_sees_one_instant(store: Store) -> None:
    """The desk reads on while a family's reply is kept, and does not see it half way."""
    reading, written = threading.Event(), threading.Event()

    def look_twice(tx: Transaction) -> tuple[str | None, str | None]:
        first = tx.clinic.get("a")
        reading.set()
        assert written.wait(10)
        return first, tx.clinic.get("a")

    reader = asyncio.create_task(store.read(look_twice))
    await asyncio.to_thread(reading.wait, 10)
    await store.transact(lambda tx: tx.clinic.put("a", "1"))
    written.set()

    assert await reader == (None, None)
    assert await store.read(lambda tx: tx.clinic.get("a")) == "1"


async def test_the_clock_fifty_replies_and_the_desk_at_once(store: Store) -> None:
    """No lock error, no lost change: every event of every case stands in its history, once."""
    cases = [await store.transact(lambda tx: tx.cases.add(draft(), EVENING, EVENING)) for _ in range(10)]

    def tick(tx: Transaction) -> int:
        due = tx.cases.claim_due(EVENING, 4)
        changes = [Change(old=one, new=with_night(one), event=Ticked(), due_at=None) for one in due]
        tx.cases.save(changes, EVENING)
        said = [
            Envelope(case_id=one.id, key="night:1", urgency=Urgency.PROMPT, text="…", contact_id=one.id) for one in due
        ]
        tx.outbox.add(said, EVENING)
        return len(due)

    def reply(number: int, tx: Transaction) -> None:
        message = tx.messages.receive("chat", str(number), "777", text=str(number), button=None, at=EVENING)
        assert message
        case = tx.cases.load(cases[number % 10].id)
        event = Pressed(contact=1, data=str(number), message=message)
        save(tx, case, case, event, None if case.nights else EVENING)
        tx.messages.settle(message, "decided", case_id=case.id)

    ticks = [store.transact(tick) for _ in range(4)]
    replies = [store.transact(partial(reply, number)) for number in range(50)]
    desk = [store.transact(partial(put, str(number))) for number in range(20)]
    looks = [store.read(lambda tx: len(list(tx.cases.all()))) for _ in range(10)]
    done = await asyncio.gather(*ticks, *replies, *desk, *looks)
    while await store.transact(tick):
        pass

    assert done[-10:] == [10] * 10
    events = await store.read(lambda tx: [event for case in cases for _, event in tx.cases.history(case.id)])
    assert sorted(int(event.data) for event in events if isinstance(event, Pressed)) == list(range(50))
    assert sum(isinstance(event, Ticked) for event in events) == 10
    assert len(await store.transact(lambda tx: tx.outbox.claim(EVENING, 99, MINUTE))) == 10


async def test_of_two_processes_each_claims_its_own(store_url: str, store: Store) -> None:
    """Two programs on one database never take the same case or message twice."""
    other = Store.open(store_url, KEY)
    for number in range(40):
        prompt = Envelope(case_id=None, key=str(number), urgency=Urgency.PROMPT, text="…", contact_id=number + 1)
        await store.transact(partial(add, prompt))
    claims = [
        which.transact(lambda tx: tx.outbox.claim(EVENING, 3, MINUTE)) for _ in range(10) for which in (store, other)
    ]
    claimed = [one.key for batch in await asyncio.gather(*claims) for one in batch]
    other.close()

    assert sorted(map(int, claimed)) == list(range(40))


async def test_a_caller_who_gives_up_leaves_the_store_in_order(store: Store) -> None:
    """A cancelled task's transaction is kept whole or not begun; the next one goes on."""
    task = asyncio.create_task(store.transact(lambda tx: tx.clinic.put("a", "1")))
    await asyncio.sleep(0)
    task.cancel()
    with pytest.raises(asyncio.CancelledError):
        await task

    await store.transact(lambda tx: tx.clinic.put("b", "2"))
    assert await store.read(lambda tx: (tx.clinic.get("a") in (None, "1"), tx.clinic.get("b"))) == (True, "2")


def test_jobs_that_wait_share_a_commit_and_fail_alone(sqlite_url: str) -> None:
    """On SQLite one job's error undoes that job only, though the commit is the others' too."""
    store = Store.open(sqlite_url, KEY)
    gate = threading.Event()
    first: Future[bool] = store._writer.submit(lambda _connection: gate.wait(10))

    def work(number: int, tx: Transaction) -> int:
        tx.clinic.put(str(number), "kept")
        if number == 1:
            raise ZeroDivisionError
        if number == 2:
            tx.clinicians.change("nobody", active=True)
            tx._connection.execute(text("INSERT INTO clinicians (id) VALUES (1)"))
        return number

    jobs = [store._writer.submit(store._job(partial(work, n), writable=True)) for n in range(4)]
    gate.set()

    assert first.result(10)
    assert [jobs[0].result(10), jobs[3].result(10)] == [0, 3]
    with pytest.raises(ZeroDivisionError):
        jobs[1].result(10)
    with pytest.raises(Exception, match="NOT NULL"):
        jobs[2].result(10)
    assert store.run(lambda tx: [tx.clinic.get(str(n)) for n in range(4)]) == ["kept", None, None, "kept"]
    store.close()


def test_when_the_shared_commit_fails_each_job_is_tried_alone(sqlite_url: str) -> None:
    """One job that spoils the whole transaction costs the others nothing."""
    store = Store.open(sqlite_url, KEY)
    gate = threading.Event()
    store._writer.submit(lambda _connection: gate.wait(10))

    def spoil(tx: Transaction) -> None:
        tx._connection.execute(text("PRAGMA defer_foreign_keys = ON"))
        tx._connection.execute(text("INSERT INTO history VALUES (99, 0, 'x', 'x', '2026-01-01', x'00')"))

    def good(tx: Transaction) -> None:
        tx.clinic.put("good", "kept")

    bad_job = store._writer.submit(store._job(spoil, writable=True))
    good_job = store._writer.submit(store._job(good, writable=True))
    gate.set()

    assert good_job.result(10) is None
    with pytest.raises(Exception, match="FOREIGN KEY"):
        bad_job.result(10)
    assert store.run(lambda tx: tx.clinic.get("good")) == "kept"
    store.close()


def test_closing_finishes_what_was_handed_over(sqlite_url: str) -> None:
    """No transaction is dropped by a graceful stop; a later one is refused."""
    store = Store.open(sqlite_url, KEY)
    jobs = [store._writer.submit(store._job(partial(put, str(n)), writable=True)) for n in range(200)]
    store.close()

    assert all(job.done() and job.exception() is None for job in jobs)
    with pytest.raises(UnavailableError, match="closed"):
        store.run(lambda tx: tx.clinic.get("1"))


def test_sqlite_brings_each_commit_to_the_disk(sqlite_url: str) -> None:
    """WAL with synchronous=FULL (2), so that power may fail after any answer: https://www.sqlite.org/pragma.html."""
    store = Store.open(sqlite_url, KEY)
    names = ("journal_mode", "synchronous", "foreign_keys", "secure_delete", "busy_timeout")
    values = store.run(lambda tx: [tx._connection.execute(text(f"PRAGMA {name}")).scalar() for name in names])
    store.close()

    assert values == ["wal", 2, 1, 1, 30_000]


@pytest.mark.postgres
def test_postgresql_brings_each_commit_to_the_disk(postgres_url: str) -> None:
    """Whatever the server's default, our commits wait for its log, and its times are UTC."""
    store = Store.open(postgres_url, KEY)
    names = ("synchronous_commit", "TimeZone", "lock_timeout")
    values = store.run(lambda tx: [tx._connection.execute(text(f"SHOW {name}")).scalar() for name in names])
    store.close()

    assert values == ["on", "UTC", "30s"]


@pytest.mark.postgres
async def test_what_postgresql_undoes_is_tried_again_whole(postgres_url: str) -> None:
    """Two transactions in each other's way both succeed: the one undone by the deadlock runs again."""
    store = Store.open(postgres_url, KEY)
    one, two = [await store.transact(lambda tx: tx.cases.add(draft(), EVENING)) for _ in range(2)]
    both = threading.Barrier(2)
    runs: list[str] = []

    def cross(first: int, second: int, tx: Transaction) -> None:
        runs.append("run")
        tx.cases.load(first)
        if len(runs) <= 2:
            both.wait(10)
        tx.cases.load(second)

    await asyncio.gather(
        store.transact(lambda tx: cross(one.id, two.id, tx)), store.transact(lambda tx: cross(two.id, one.id, tx))
    )
    store.close()

    assert len(runs) == 3


@pytest.mark.postgres
async def test_a_connection_lost_before_the_commit_costs_nothing(postgres_url: str) -> None:
    """A server that drops its connections, as at a restart, is asked again: nothing had been committed."""
    store = Store.open(postgres_url, KEY)
    await asyncio.gather(*[store.transact(lambda tx: tx.clinic.put("a", "1")) for _ in range(8)])
    with psycopg.connect(postgres_url.replace("+psycopg", ""), autocommit=True) as other:
        other.execute(
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
            " WHERE datname = current_database() AND pid <> pg_backend_pid()"
        )
    await store.transact(lambda tx: tx.clinic.put("a", "2"))

    assert await store.read(lambda tx: tx.clinic.get("a")) == "2"
    store.close()


@pytest.mark.postgres
def test_a_server_that_is_not_there_is_said_so() -> None:
    """The error says that nothing was kept, not which line of a driver failed."""
    store = Store.open("postgresql+psycopg://root@127.0.0.1:1/none", KEY)
    with pytest.raises(UnavailableError, match="did not take it"):
        store.run(lambda tx: tx.clinic.get("a"))
    store.close()


def test_a_full_disk_is_said_so_and_keeps_nothing(sqlite_url: str) -> None:
    """Where the database can grow no more, the transaction fails and the next small one still succeeds."""
    store = Store.open(sqlite_url, KEY)
    pages = store.run(lambda tx: tx._connection.execute(text("PRAGMA page_count")).scalar_one())
    store.run(lambda tx: tx._connection.execute(text(f"PRAGMA max_page_count = {pages + 2}")))
    with pytest.raises(UnavailableError, match="full"):
        store.run(lambda tx: tx.clinic.put("big", "x" * 100_000))

    assert store.run(lambda tx: tx.clinic.get("big")) is None
    store.close()


def test_another_program_s_lock_is_waited_for(sqlite_url: str) -> None:
    """A backup or a second process that holds the lock for a moment causes no error."""
    store = Store.open(sqlite_url, KEY)
    other = sqlite3.connect(sqlite_url.removeprefix("sqlite:///"), isolation_level=None, check_same_thread=False)
    other.execute("BEGIN IMMEDIATE")
    threading.Timer(0.3, lambda: other.execute("COMMIT")).start()
    store.run(lambda tx: tx.clinic.put("a", "1"))
    store.close()
    other.close()


@pytest.mark.parametrize("url", ["sqlite://", "sqlite:///:memory:", "mysql://x/y", "postgresql://x/y"])
def test_another_kind_of_database_is_refused(url: str) -> None:
    """With the two forms that are understood."""
    with pytest.raises(StoreError, match="sqlite:///a-file or postgresql"):
        Store.open(url, KEY)


def test_a_new_file_is_its_owner_s_only(tmp_path: Path) -> None:
    """The folder is made, and nobody else on the machine may read in it."""
    path = tmp_path / "data" / "store.sqlite3"
    store = Store.open(f"sqlite:///{path}", KEY)
    store.upgrade()
    store.close()

    assert path.stat().st_mode & 0o077 == 0
    assert path.parent.stat().st_mode & 0o077 == 0


def test_on_sqlite_patient_work_lets_the_others_go_first_and_gets_its_turn(sqlite_url: str) -> None:
    """An alarm does not wait for the wave, nor the wave for ever; what was handed over is finished at the end."""
    store, gate, order = Store.open(sqlite_url, KEY), threading.Event(), list[str]()
    first = store._writer.submit(lambda _connection: gate.wait(10))
    waits: list[Future[None]]
    waits = [store._writer.submit(lambda _connection: order.append("wave"), patient=True) for _ in range(2)]
    waits += [store._writer.submit(lambda _connection: order.append("alarm")) for _ in range(3)]
    gate.set()
    store.close()

    assert first.done()
    assert all(one.done() for one in waits)
    assert order == ["alarm", "alarm", "alarm", "wave", "wave"]

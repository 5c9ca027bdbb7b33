"""How fast the store is, against baselines in the same run: `python tests/bench/bench_store.py --help`.

1. One reply's transaction (a case read and updated; one row each of history, messages, outbox) by `Store.transact`,
   one at a time and many at once, against plain sqlite3 and bare SQLAlchemy Core in one thread. These run the same
   statements with the same durability on the same bytes, but seal and encode nothing.
2. The bedtime wave: due cases claimed, saved and prompted in chunks, against the bare bulk insert of as many rows.
3. One claim from the outbox while that many prompts wait.

Prints a table and the same numbers as JSON.
"""

import asyncio
import sqlite3
import statistics
from collections.abc import Iterator
from datetime import timedelta
from time import perf_counter
from typing import Any

from sqlalchemy import bindparam, insert, select, update

from bench.figures import Figure, apart, core, databases, fresh_store, parser, sample_rows, show
from coachbot.coach.actions import Urgency
from coachbot.coach.events import Outcome, Pressed, Ticked
from coachbot.store import Change, Envelope, Store, Transaction
from coachbot.store.tables import cases, history, messages, nights, outbox
from helpers.cases import EVENING, MINUTE, draft, save, with_night

REPLIES = 2000
TEXT = "Tonight: center, left, right, up, down. Sit up straight, small sip, look where the picture looks. " * 3
CHUNK = 500


# --- one reply's transaction ------------------------------------------------------------------------------------------


def reply(number: int, case_id: int, tx: Transaction) -> None:
    """What the inbox does for one reply, without the deciding."""
    message = tx.messages.receive("chat", str(number), "777", text="4", button=None, at=EVENING)
    assert message
    case = tx.cases.load(case_id)
    save(tx, case, case, Pressed(contact=1, data="rate:1:up:4", message=message), EVENING)
    said = Envelope(case_id=case_id, key=f"say:{number}", urgency=Urgency.REPLY, text=TEXT, contact_id=case_id)
    tx.outbox.add([said], EVENING)


def through_the_store(store: Store, ids: list[int], at_once: int) -> float:
    """Replies a second through `transact`, with so many under way at a time."""

    async def worker(numbers: range) -> None:
        for number in numbers:
            await store.transact(lambda tx, number=number: reply(number, ids[number % len(ids)], tx))  # type: ignore[misc]

    async def all_workers() -> None:
        await asyncio.gather(*[worker(range(start, REPLIES, at_once)) for start in range(at_once)])

    store.run(lambda tx: (tx._connection.execute(outbox.delete()), tx._connection.execute(messages.delete())))
    begin = perf_counter()
    asyncio.run(all_workers())
    return REPLIES / (perf_counter() - begin)


def by_core(url: str, rows: dict[str, dict[str, Any]], ids: list[int]) -> float:
    """The same statements by bare SQLAlchemy Core, one commit each, in this thread."""
    changed = update(cases).where(cases.c.id == bindparam("same_id"))
    values = {name: rows["cases"][name] for name in ("version", "state", "due_at", "document", "changed_at")}
    fresh = {name: {k: v for k, v in rows[name].items() if k != "id"} for name in ("messages", "outbox")}
    with core(url).connect() as connection:
        begin = perf_counter()
        for number in range(REPLIES):
            case_id = ids[number % len(ids)]
            connection.execute(
                insert(messages).returning(messages.c.id), fresh["messages"] | {"channel_id": f"core{number}"}
            ).scalar_one()
            connection.execute(select(cases).where(cases.c.id == case_id)).one()
            connection.execute(changed, values | {"same_id": case_id})
            connection.execute(insert(history), rows["history"] | {"case_id": case_id, "seq": 10**6 + number})
            connection.execute(insert(outbox), fresh["outbox"] | {"case_id": case_id, "key": f"core:{number}"})
            connection.commit()
        return REPLIES / (perf_counter() - begin)


def by_sqlite3(path: str, rows: dict[str, dict[str, Any]], ids: list[int]) -> float:
    """The same statements by plain sqlite3, one commit each, in this thread."""
    connection = sqlite3.connect(path, isolation_level=None)
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA secure_delete = ON")
    plain = {name: {k: _plain(v) for k, v in row.items()} for name, row in rows.items()}
    fresh = {name: {k: v for k, v in plain[name].items() if k != "id"} for name in ("messages", "outbox")}
    sql = {name: _insert(name, row) for name, row in (fresh | {"history": plain["history"]}).items()}
    values = {name: plain["cases"][name] for name in ("version", "state", "due_at", "document", "changed_at")}
    changed = f"UPDATE cases SET {', '.join(f'{name} = :{name}' for name in values)} WHERE id = :same_id"
    begin = perf_counter()
    for number in range(REPLIES):
        case_id = ids[number % len(ids)]
        connection.execute("BEGIN IMMEDIATE")
        connection.execute(sql["messages"], fresh["messages"] | {"channel_id": f"plain{number}"})
        connection.execute("SELECT * FROM cases WHERE id = ?", (case_id,)).fetchone()
        connection.execute(changed, values | {"same_id": case_id})
        connection.execute(sql["history"], plain["history"] | {"case_id": case_id, "seq": 2 * 10**6 + number})
        connection.execute(sql["outbox"], fresh["outbox"] | {"case_id": case_id, "key": f"plain:{number}"})
        connection.execute("COMMIT")
    rate = REPLIES / (perf_counter() - begin)
    connection.close()
    return rate


def _plain(value: Any) -> Any:
    return value.strftime("%Y-%m-%d %H:%M:%S.%f") if hasattr(value, "strftime") else value


def _insert(table: str, row: dict[str, Any]) -> str:
    return f"INSERT INTO {table} ({', '.join(row)}) VALUES ({', '.join(f':{name}' for name in row)})"


def replies(store: Store, url: str) -> Iterator[Figure]:
    """Replies a second, ours and the baselines'."""
    ids = store.run(lambda tx: [tx.cases.add(draft(), EVENING).id for _ in range(200)])
    ours = {at_once: through_the_store(store, ids, at_once) for at_once in (1, 32)}
    rows = sample_rows(store, cases, history, messages, outbox)
    bare = by_core(url, rows, ids)
    yield Figure("reply", "bare SQLAlchemy Core, one thread", bare, "/s", 1.0)
    for at_once, rate in ours.items():
        yield Figure("reply", f"Store.transact, {at_once} at once", rate, "/s", rate / bare)
    if url.startswith("sqlite"):
        plain = by_sqlite3(url.removeprefix("sqlite:///"), rows, ids)
        yield Figure("reply", "plain sqlite3, one thread", plain, "/s", plain / bare)


# --- the bedtime wave -------------------------------------------------------------------------------------------------


def wave_chunk(tx: Transaction) -> int:
    """What the heartbeat does for some families, without the deciding."""
    due = tx.cases.claim_due(EVENING, CHUNK)
    changes = [Change(old=one, new=with_night(one), event=Ticked(), due_at=EVENING + timedelta(days=1)) for one in due]
    tx.cases.save(changes, EVENING)
    late = EVENING + timedelta(hours=2)
    prompts = [
        Envelope(case_id=one.id, key="n:1", urgency=Urgency.PROMPT, text=TEXT, contact_id=one.id, expires=late)
        for one in due
    ]
    tx.outbox.add(prompts, EVENING)
    return len(due)


def wave(store: Store, families: int) -> float:
    """Seconds from due to all prompts in the outbox."""
    for start in range(0, families, 5000):
        some = range(min(5000, families - start))
        store.run(lambda tx, some=some: [tx.cases.add(draft(), EVENING, EVENING).id for _ in some] and None)  # type: ignore[misc]
    begin = perf_counter()
    while store.run(wave_chunk):
        pass
    return perf_counter() - begin


def bare_inserts(url: str, families: int, rows: dict[str, dict[str, Any]]) -> tuple[float, float]:
    """Seconds to insert as many prompts, and as many rows of all that a wave writes, by Core's executemany."""
    prompts = [
        rows["outbox"] | {"id": 10**9 + n, "key": f"bare:{n}", "recipient": f"contact:{10**9 + n}"}
        for n in range(families)
    ]
    events = [rows["history"] | {"seq": 10**7 + n} for n in range(families)]
    documents = [rows["cases"] | {"id": 10**9 + n} for n in range(families)]
    evenings = [rows["nights"] | {"case_id": 10**9 + n} for n in range(families)]
    times = []
    with core(url).connect() as connection:
        for table, some in ((outbox, prompts), (cases, documents), (history, events), (nights, evenings)):
            begin = perf_counter()
            connection.execute(insert(table), some)
            connection.commit()
            times.append(perf_counter() - begin)
    return times[0], sum(times)


def bedtime(store: Store, url: str, families: int) -> Iterator[Figure]:
    """The wave, its baselines, and claims while its prompts wait."""
    ours = wave(store, families)
    rows = sample_rows(store, cases, history, nights, outbox)
    yield from claims(store, families)
    prompts, everything = bare_inserts(url, families, rows)
    group = f"wave of {families}"
    yield Figure(group, "bare Core insert of the prompts alone", prompts, "s", 1.0)
    yield Figure(group, "bare Core insert of all the wave's rows", everything, "s", everything / prompts)
    yield Figure(group, "claimed, saved and prompted", ours, "s", ours / prompts)


def claims(store: Store, waiting: int) -> Iterator[Figure]:
    """How long it takes to claim 30, and to settle one, while so many wait."""
    claiming, settling = [], []
    for _ in range(20):
        begin = perf_counter()
        claimed = store.run(lambda tx: tx.outbox.claim(EVENING, 30, MINUTE))
        claiming.append(perf_counter() - begin)
        begin = perf_counter()
        for one in claimed:
            store.run(lambda tx, id=one.id: tx.outbox.settle(id, Outcome.SENT, EVENING))  # type: ignore[misc]  # noqa: A006
        settling.append((perf_counter() - begin) / len(claimed))
    group = f"outbox of {waiting}"
    yield Figure(group, "claim of 30, median", statistics.median(claiming) * 1000, "ms")
    yield Figure(group, "claim of 30, worst of 20", max(claiming) * 1000, "ms")
    yield Figure(group, "settle of one, median", statistics.median(settling) * 1000, "ms")


# --- the run ----------------------------------------------------------------------------------------------------------


def measure(url: str, families: list[int]) -> Iterator[Figure]:
    """All figures of one database."""
    with fresh_store(apart(url, "replies")) as store:
        yield from replies(store, apart(url, "replies"))
    for count in families:
        with fresh_store(apart(url, str(count))) as store:
            yield from bedtime(store, apart(url, str(count)), count)


def main() -> None:
    """Measure, then print the table and the JSON."""
    chosen = parser(__doc__, [1_000, 10_000]).parse_args()
    with databases(chosen.postgres) as urls:
        show({name: measure(url, chosen.families) for name, url in urls.items()})


if __name__ == "__main__":
    main()

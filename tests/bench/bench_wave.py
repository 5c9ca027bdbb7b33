"""The bedtime wave: so many families due in the same minute: `python tests/bench/bench_wave.py --help`.

Measured is one beat of the real heartbeat, from due to all prompts in the outbox, with its peak memory, in a process of
its own. The baseline, on an empty database of the same kind: SQLAlchemy Core's bulk insert of as many rows as the wave
has written (a night's prompt, and for some a cheer before it), with the bytes of the last of them over and over, in one
transaction a table, nothing read, decided, rendered or sealed. Promise: at most 4 times it, and under 300 MB whatever
the number. What the outbox's rows alone take is printed too.
"""

import asyncio
from collections.abc import Iterator
from time import perf_counter, process_time
from typing import Any

from sqlalchemy import Table, func, insert, select

from bench.clinics import Wire, coachbot, fill, quiet_logs, scalar
from bench.figures import Figure, alone, apart, core, empty, measured, parser, peak_megabytes
from coachbot.coach.actions import Urgency
from coachbot.store import Store, Transaction, new_key
from coachbot.store.tables import cases, history, nights, outbox

WRITTEN = (cases, history, nights, outbox)
"""What the wave writes: each family's case is updated, the others get a row."""

SAMPLE = 420
"""How many rows of each table the baseline repeats: ten of each kind of family of `clinics`, which differ in size."""

Rows = list[dict[str, Any]]


def seeded(url: str, key: str, families: int) -> None:
    """A clinic of so many families at that URL."""
    store = empty(url, key)
    fill(store, families)
    store.close()


def wave(url: str, key: str) -> tuple[float, float, float, dict[str, Rows], int]:
    """Seconds of one beat, the processor's and megabytes, rows of each table that it wrote, and how many messages."""
    quiet_logs()
    store = Store.open(url, key)
    beat = coachbot(store, Wire()).heartbeat.beat
    begin, worked = perf_counter(), process_time()
    asyncio.run(beat())
    seconds, cpu = perf_counter() - begin, process_time() - worked
    memory = peak_megabytes()
    rows = latest_rows(store)
    written = scalar(store, select(func.count()).where(outbox.c.urgency == int(Urgency.PROMPT)))
    store.close()
    return seconds, cpu, memory, rows, written


def latest_rows(store: Store) -> dict[str, Rows]:
    """The rows of the last families in each table, as the store has written them."""

    def latest(tx: Transaction, table: Table) -> Rows:
        query = select(table).order_by(*[column.desc() for column in table.primary_key.columns]).limit(SAMPLE)
        return [dict(row) for row in tx._connection.execute(query).mappings()]

    return store.run(lambda tx: {table.name: latest(tx, table) for table in WRITTEN})


def bare(url: str, rows: dict[str, Rows], families: int, messages: int) -> tuple[dict[str, float], float]:
    """Seconds to insert as many rows into each table by Core, and the processor's for all of them."""
    empty(url, new_key()).close()
    counts = {table.name: messages if table is outbox else families for table in WRITTEN}
    with core(url).connect() as connection:
        done = {
            table.name: _inserted(connection, table, copies(rows[table.name], counts[table.name])) for table in WRITTEN
        }
    return {name: seconds for name, (seconds, _) in done.items()}, sum(cpu for _, cpu in done.values())


def copies(rows: Rows, count: int) -> Rows:
    """So many rows, these over and over, told apart by their number."""
    own = [name for name in ("id", "case_id", "contact_id") if name in rows[0]]
    marked = [name for name in ("recipient",) if name in rows[0]]
    return [
        rows[number % len(rows)] | dict.fromkeys(own, number) | dict.fromkeys(marked, f"contact:{number}")
        for number in range(1, count + 1)
    ]


def _inserted(connection: Any, table: Table, rows: list[dict[str, Any]]) -> tuple[float, float]:
    begin, worked = perf_counter(), process_time()
    connection.execute(insert(table), rows)
    connection.commit()
    return perf_counter() - begin, process_time() - worked


def measure(url: str, families: int) -> Iterator[Figure]:
    """The wave of one size on one database, and its baseline."""
    key = new_key()
    alone(seeded, apart(url, str(families)), key, families)
    seconds, cpu, memory, rows, written = alone(wave, apart(url, str(families)), key)
    assert written >= families, f"{families - written} families have no prompt"
    times, bare_cpu = alone(bare, apart(url, f"bare{families}"), rows, families, written)
    group, everything = f"wave of {families}", sum(times.values())
    yield Figure(group, "bare Core insert of as many rows", everything, "s", 1.0)
    yield Figure(
        group, "bare Core insert of the outbox's rows alone", times["outbox"], "s", times["outbox"] / everything
    )
    yield Figure(group, "from due to all prompts in the outbox", seconds, "s", seconds / everything)
    yield Figure(group, "the same by this process's share of the processor", cpu, "s", cpu / bare_cpu)
    yield Figure(group, "a family", seconds / families * 1e6, "us")
    yield Figure(group, "peak memory", memory, "MB")


def main() -> None:
    """Measure, then print the table and the JSON."""
    measured(measure, parser(__doc__, [1_000, 10_000, 100_000]).parse_args())


if __name__ == "__main__":
    main()

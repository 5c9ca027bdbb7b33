"""The bedtime wave: so many families due in the same minute: `python tests/bench/bench_wave.py --help`.

Measured is one beat of the real heartbeat, from due to all prompts in the outbox, with its peak memory, in a process of
its own. The baseline, on an empty database of the same kind: SQLAlchemy Core's bulk insert of as many rows as the wave
has written, the same bytes, in one transaction a table, nothing read, decided, rendered or sealed. Promise: at most 4
times it, and under 300 MB whatever the number. What the prompts' rows alone take is printed too.
"""

import asyncio
from collections.abc import Iterator
from time import perf_counter, process_time
from typing import Any

from sqlalchemy import Table, func, insert, select

from bench.clinics import Wire, coachbot, fill, quiet_logs, scalar
from bench.figures import Figure, alone, apart, core, empty, measured, parser, peak_megabytes, sample_rows
from coachbot.coach.actions import Urgency
from coachbot.store import Store, new_key
from coachbot.store.tables import cases, history, nights, outbox

WRITTEN = (cases, history, nights, outbox)
"""What the wave writes: each family's case is updated, the others get a row."""


def seeded(url: str, key: str, families: int) -> None:
    """A clinic of so many families at that URL."""
    store = empty(url, key)
    fill(store, families)
    store.close()


def wave(url: str, key: str) -> tuple[float, float, float, dict[str, dict[str, Any]], int]:
    """Seconds of one beat, the processor's and megabytes, a row of each table that it wrote, and how many prompts."""
    quiet_logs()
    store = Store.open(url, key)
    beat = coachbot(store, Wire()).heartbeat.beat
    begin, worked = perf_counter(), process_time()
    asyncio.run(beat())
    seconds, cpu = perf_counter() - begin, process_time() - worked
    memory = peak_megabytes()
    rows = sample_rows(store, *WRITTEN)
    written = scalar(store, select(func.count()).where(outbox.c.urgency == int(Urgency.PROMPT)))
    store.close()
    return seconds, cpu, memory, rows, written


def bare(url: str, rows: dict[str, dict[str, Any]], families: int) -> tuple[dict[str, float], float]:
    """Seconds to insert as many rows into each table by Core, and the processor's for all of them."""
    empty(url, new_key()).close()
    with core(url).connect() as connection:
        done = {table.name: _inserted(connection, table, copies(rows[table.name], families)) for table in WRITTEN}
    return {name: seconds for name, (seconds, _) in done.items()}, sum(cpu for _, cpu in done.values())


def copies(row: dict[str, Any], families: int) -> list[dict[str, Any]]:
    """A row for each family, told apart by the family's number."""
    own = [name for name in ("id", "case_id", "contact_id") if name in row]
    marked = [name for name in ("recipient",) if name in row]
    return [
        row | dict.fromkeys(own, number) | dict.fromkeys(marked, f"contact:{number}")
        for number in range(1, families + 1)
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
    times, bare_cpu = alone(bare, apart(url, f"bare{families}"), rows, families)
    group, everything = f"wave of {families}", sum(times.values())
    yield Figure(group, "bare Core insert of as many rows", everything, "s", 1.0)
    yield Figure(
        group, "bare Core insert of the prompts' rows alone", times["outbox"], "s", times["outbox"] / everything
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

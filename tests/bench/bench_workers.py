"""Several processes on one PostgreSQL: `python tests/bench/bench_workers.py --help`.

Each process beats and sends as `coachbot serve` does, over the same bedtime wave: due cases are claimed, prompts
written, claimed, handed to a channel that notes them, and settled. The baseline is one process doing all of it.
Checked: every family was sent its prompt, and no message was sent twice.
"""

import asyncio
import multiprocessing
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from multiprocessing.synchronize import Barrier
from time import perf_counter

from bench.bench_wave import seeded
from bench.clinics import Wire, coachbot, quiet_logs
from bench.figures import Figure, alone, measured, parser
from coachbot.store import Store, new_key

WORKERS = (1, 2, 4)
Sent = tuple[str, str]

_together: Barrier


def _begin_together(barrier: Barrier) -> None:
    global _together  # noqa: PLW0603 - how a pool hands its processes what cannot be pickled
    _together = barrier


def work(url: str, key: str) -> tuple[float, float, list[Sent]]:
    """Beat and send until nothing is left. Returns when it began and ended, and (address, words) of all it sent."""
    quiet_logs()
    store, wire = Store.open(url, key), Wire()
    bot = coachbot(store, wire)
    _together.wait()
    begin = perf_counter()
    asyncio.run(bot.settle())
    end = perf_counter()
    store.close()
    return begin, end, [(message.address, message.text) for _, message in wire.handed]


def together(url: str, key: str, workers: int) -> tuple[float, list[list[Sent]]]:
    """Seconds until the last of so many processes has ended, and what each has sent."""
    context = multiprocessing.get_context("spawn")
    barrier = context.Barrier(workers)
    with ProcessPoolExecutor(workers, mp_context=context, initializer=_begin_together, initargs=(barrier,)) as pool:
        done = [one.result() for one in [pool.submit(work, url, key) for _ in range(workers)]]
    return max(end for _, end, _ in done) - min(begin for begin, _, _ in done), [sent for _, _, sent in done]


def check(sent: Sequence[Sequence[Sent]], families: int) -> int:
    """How many messages were sent, if every family was sent a prompt and nobody anything twice."""
    counts = Counter(one for some in sent for one in some)
    twice = [one for one, count in counts.items() if count > 1]
    assert not twice, f"sent twice: {len(twice)}, such as {twice[0]}"
    missing = families - len({address for address, _ in counts})
    assert not missing, f"{missing} families were sent nothing"
    return len(counts)


def measure(url: str, families: int) -> Iterator[Figure]:
    """One, two and four processes over a wave of one size."""
    group, first = f"wave of {families}", 0.0
    for workers in WORKERS:
        key = new_key()
        alone(seeded, url, key, families)
        seconds, sent = together(url, key, workers)
        rate = check(sent, families) / seconds
        first = first or rate
        yield Figure(group, f"{workers} processes, nothing sent twice: messages", rate, "/s", rate / first)
        least = 100 * min(map(len, sent)) / sum(map(len, sent))
        yield Figure(group, f"{workers} processes: the least that one of them sent", least, "%")


def main() -> None:
    """Measure, then print the table and the JSON."""
    wanted = parser(__doc__, [1_000, 10_000])
    chosen = wanted.parse_args()
    if not chosen.postgres:
        wanted.error("several processes need --postgres: on SQLite one process writes")
    measured(measure, chosen, sqlite=False)


if __name__ == "__main__":
    main()

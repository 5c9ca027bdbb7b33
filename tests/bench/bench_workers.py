"""Several processes on one PostgreSQL: `python tests/bench/bench_workers.py --help`.

Each process beats and sends as `coachbot serve` does, over the same bedtime wave: due cases are claimed, prompts
written, claimed, handed to a channel that notes them, and settled. The baseline is one process doing all of it. Each
has drawn the pictures of all orders before, as on every evening but its first.

Two channels: one takes a message in no time, so that only the machine's cores are measured, which PostgreSQL shares;
the other takes 50 ms for each, as a network does (common practice, no source), so that senders mostly wait.
Checked: every family was sent its prompt, and no message was sent twice.
"""

import asyncio
import multiprocessing
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from itertools import permutations, product
from multiprocessing.synchronize import Barrier
from time import perf_counter
from typing import Any

from bench.bench_wave import seeded
from bench.clinics import Wire, coachbot, quiet_logs
from bench.figures import Figure, alone, measured, parser
from coachbot.programme.positions import Position
from coachbot.store import Store, new_key
from coachbot.voice.drawings import picture
from coachbot.voice.vocabulary import LANGUAGES

WORKERS = (1, 2, 4)
LATENCIES = (0.0, 0.05)
Sent = tuple[str, str]

_together: Barrier


def _begin_together(barrier: Barrier) -> None:
    global _together  # noqa: PLW0603 - how a pool hands its processes what cannot be pickled
    _together = barrier


def draw() -> None:
    """Draw what goes along with a prompt, for every order and language."""
    for order, language in product(permutations(Position), LANGUAGES):
        picture("order-" + "-".join(order), language)


def work(url: str, key: str, latency: float) -> tuple[float, float, list[Sent]]:
    """Beat and send until nothing is left. Returns when it began and ended, and (address, words) of all it sent."""
    quiet_logs()
    store, wire = Store.open(url, key), Wire(latency=latency)
    bot = coachbot(store, wire)
    _together.wait()
    begin = perf_counter()
    asyncio.run(bot.settle())
    end = perf_counter()
    store.close()
    return begin, end, [(message.address, message.text) for _, message in wire.handed]


def together(
    url: str, key: str, workers: int, latency: float = 0.0, *, start: str = "spawn"
) -> tuple[float, list[list[Sent]]]:
    """Seconds until the last of so many processes has ended, and what each has sent."""
    context: Any = multiprocessing.get_context(start)
    barrier = context.Barrier(workers)
    with ProcessPoolExecutor(workers, mp_context=context, initializer=_begin_together, initargs=(barrier,)) as pool:
        started = [pool.submit(work, url, key, latency) for _ in range(workers)]
        done = [one.result() for one in started]
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
    """One, two and four processes over a wave of one size, on each channel; forked, so as to draw everything once."""
    draw()
    for latency in LATENCIES:
        yield from _measure(url, families, latency)


def _measure(url: str, families: int, latency: float) -> Iterator[Figure]:
    group, first = f"{families}, {latency * 1000:.0f} ms a send", 0.0
    for workers in WORKERS:
        key = new_key()
        alone(seeded, url, key, families)
        seconds, sent = together(url, key, workers, latency, start="fork")
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

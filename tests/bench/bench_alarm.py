"""An emergency reply in the middle of the bedtime wave: `python tests/bench/bench_alarm.py --help`.

Measured is the time from a reply's arrival to both the safety text and the clinician's alert being handed to the
channel, which lets 30 messages a second through, while the heartbeat writes all the prompts and while they wait. The
baseline, in the same process before bedtime: the same replies while nothing waits. Promise: the 99th percentile stays
under a second. A queue without urgency would take the time that is printed last: all prompts at 30 a second.
"""

import asyncio
from collections.abc import Callable, Iterator
from datetime import datetime, timedelta
from statistics import quantiles
from time import perf_counter

from sqlalchemy import func, select

from bench.bench_wave import seeded
from bench.clinics import BEDTIME, CHANNEL, CLINICIAN_ADDRESS, Clock, Wire, address, coachbot, quiet_logs, scalar
from bench.figures import Figure, alone, apart, measured, parser
from coachbot.bootstrap import Coachbot
from coachbot.channels.base import Incoming, Outgoing
from coachbot.channels.pace import Pace
from coachbot.programme.protocol import Protocol
from coachbot.store import Store, new_key
from coachbot.store.tables import outbox

PER_SECOND = 30
EVERY = 0.6
"""Seconds between two alarms. A chat's own limit is left out: they all go to one clinician, and would wait for it."""

BEFORE = 20
"""Alarms while nothing waits."""

EMERGENCY = Protocol().emergency_number
WORDS = "she is choking and cant breathe"
PATIENCE = 60.0


def alarms(url: str, key: str, families: int, most: int) -> tuple[list[float], list[float], int]:
    """Seconds from arrival to both being handed over, before the wave and in it, and how many prompts then waited."""
    quiet_logs()
    store = Store.open(url, key)
    try:
        return asyncio.run(_play(store, families, most))
    finally:
        store.close()


async def _play(store: Store, families: int, most: int) -> tuple[list[float], list[float], int]:
    clock = Clock(BEDTIME - timedelta(seconds=BEFORE * (EVERY + 1)))
    wire = Wire(clock, Pace(per_second=PER_SECOND, burst=5, per_address=timedelta(0)))
    bot = coachbot(store, wire, clock)
    stopped = asyncio.Event()
    sending = asyncio.create_task(bot.sender.run(stopped))
    waiting = iter(range(families, 0, -1))
    calm = [await _alarm(bot, wire, clock, next(waiting)) for _ in range(min(BEFORE, families // 10))]
    clock.start = BEDTIME - timedelta(seconds=perf_counter() - clock.made)
    beating = asyncio.create_task(bot.heartbeat.beat())
    ends = perf_counter() + families / PER_SECOND
    busy: list[float] = []
    while len(busy) < most and perf_counter() < ends:
        busy.append(await _alarm(bot, wire, clock, next(waiting)))
    still = scalar(store, select(func.count()).where(outbox.c.status == "waiting"))
    beating.cancel()
    stopped.set()
    await asyncio.gather(sending, beating, return_exceptions=True)
    return calm, busy, still


async def _alarm(bot: Coachbot, wire: Wire, clock: Callable[[], datetime], family: int) -> float:
    """One alarm: how long until both were handed over. Takes `EVERY` seconds or more."""
    begin, before = perf_counter(), len(wire.handed)
    incoming = Incoming(channel=CHANNEL, channel_id=f"alarm-{family}", address=address(family), at=clock(), text=WORDS)
    await bot.inbox.receive(incoming)
    while not (times := _handed(wire.handed[before:], family)):
        await asyncio.sleep(0.005)
        assert perf_counter() - begin < PATIENCE, f"the alarm of family {family} was not sent"
    await asyncio.sleep(max(0.0, begin + EVERY - perf_counter()))
    return max(times) - begin


def _handed(sent: list[tuple[float, Outgoing]], family: int) -> list[float]:
    """When the safety text and the alert were handed over; nothing until both were."""
    alert = f"{family}:acknowledge:1"
    safety = [at for at, message in sent if message.address == address(family) and EMERGENCY in message.text]
    told = [at for at, one in sent if one.address == CLINICIAN_ADDRESS and alert in str(one.buttons)]
    return [safety[0], told[0]] if safety and told else []


def measure(url: str, families: int, most: int) -> Iterator[Figure]:
    """The alarms in a wave of one size on one database."""
    key, at = new_key(), apart(url, str(families))
    alone(seeded, at, key, families)
    calm, busy, still = alone(alarms, at, key, families, most)
    group = f"wave of {families}"
    baseline = _percentile(calm)
    yield Figure(group, f"nothing waits: 99th percentile of {len(calm)}", baseline * 1000, "ms", 1.0)
    yield Figure(group, f"in the wave: median of {len(busy)}", quantiles(busy, n=2)[0] * 1000, "ms")
    yield Figure(group, "in the wave: 99th percentile", _percentile(busy) * 1000, "ms", _percentile(busy) / baseline)
    yield Figure(group, "in the wave: worst", max(busy) * 1000, "ms")
    yield Figure(group, "prompts that still waited at the end", still, "")
    yield Figure(
        group, "behind all prompts, without urgency", families / PER_SECOND, "s", families / PER_SECOND / baseline
    )


def _percentile(times: list[float]) -> float:
    return quantiles(times, n=100, method="inclusive")[98]


def main() -> None:
    """Measure, then print the table and the JSON."""
    wanted = parser(__doc__, [1_000, 10_000, 100_000])
    wanted.add_argument("--alarms", type=int, default=100, help="at most so many, one every 0.6 seconds")
    chosen = wanted.parse_args()
    measured(measure, chosen, chosen.alarms)


if __name__ == "__main__":
    main()

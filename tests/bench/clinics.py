"""Clinics of any size for the benchmarks: families in the midst of their programme, all with the same bedtime."""

import asyncio
import gc
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta
from functools import cache
from itertools import islice
from time import perf_counter
from typing import Any

from coachbot.bootstrap import Coachbot, build, read_ahead
from coachbot.channels.base import Ending, Outgoing, Receipt
from coachbot.channels.pace import Pace
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.coach.case import Case
from coachbot.coach.due import due_at
from coachbot.programme.orders import plan
from coachbot.programme.zones import instant
from coachbot.store import Store, Transaction, projections
from coachbot.store.documents import OPENED, encode
from coachbot.store.people import _address
from coachbot.store.sealing import Purpose
from coachbot.store.tables import cases, contacts, history
from coachbot.voice.vocabulary import LANGUAGES
from helpers.conversation import Conversation, invited

CHANNEL = "bench"
DAY, ZONE = date(2026, 10, 5), "America/New_York"
BEDTIME = instant(DAY, time(19, 30), ZONE)
CLINICIAN, CLINICIAN_ADDRESS = "Dr Imani Osei", "clinician"
PLANS = 500
CHUNK = 1000


def address(family: int) -> str:
    """Where the parent of a family is reached."""
    return f"parent-{family}"


@cache
def families() -> list[Case]:
    """Families that have practised for none to thirteen nights, some of which they missed, in each language."""
    return [replace(_played(nights), language=language) for nights in range(14) for language in LANGUAGES]


def _played(nights: int) -> Case:
    talk = Conversation(invited(zone=ZONE), start=DAY - timedelta(days=nights + 1)).learns()
    for night in range(nights):
        talk.misses() if night % 7 == 5 else talk.practises()
    talk.at("12:00")
    assert due_at(talk.case) == BEDTIME, talk.case
    return talk.case


def clones(most: int) -> Iterator[Case]:
    """So many families, numbered from 1, each with a child and orders of its own and one parent's chat."""
    orders = [plan(families()[0].protocol.positions, 14, seed=seed) for seed in range(PLANS)]
    for number in range(1, most + 1):
        case = families()[number % len(families())]
        parent = replace(case.contacts[0], id=number, channel=CHANNEL, language=case.language)
        child = replace(case.child, name=f"Kid {number}")
        yield replace(case, id=number, child=child, contacts=(parent,), orders=orders[number % PLANS])


def fill(store: Store, most: int) -> None:
    """Put so many families into an empty store, and the clinician on call."""
    reach = (CHANNEL, CLINICIAN_ADDRESS)
    store.run(lambda tx: tx.clinicians.add(CLINICIAN, BEDTIME, duty="on_call", reach=reach) and None)
    left = clones(most)
    while some := tuple(islice(left, CHUNK)):
        store.run(lambda tx, some=some: _keep(tx, some))  # type: ignore[misc]
    if store.run(lambda tx: tx._connection.dialect.name) == "postgresql":
        store.run(lambda tx: tx._connection.exec_driver_sql("ANALYZE").close())


def _keep(tx: Transaction, some: tuple[Case, ...]) -> None:
    """As enrolment and fourteen nights of events would have left them, but for the events."""
    sealer, connection = tx._sealer, tx._connection
    row = {"version": 0, "created_at": BEDTIME, "changed_at": BEDTIME, "due_at": BEDTIME}
    opening = {"seq": 0, "kind": OPENED, "actor": "clinician", "at": BEDTIME}
    linked = {"role": "parent", "channel": CHANNEL, "active": True, "joined_at": BEDTIME}
    documents = [(case, encode(case)) for case in some]
    rows = [
        row
        | {"id": case.id, "state": case.state, "language": case.language}
        | {"document": sealer.seal(Purpose.CASE, document)}
        for case, document in documents
    ]
    connection.execute(cases.insert(), rows)
    openings = [
        opening | {"case_id": case.id, "payload": sealer.seal(Purpose.EVENT, document)} for case, document in documents
    ]
    connection.execute(history.insert(), openings)
    chats = [
        linked
        | {"id": case.id, "case_id": case.id, "language": case.language}
        | _address(sealer, CHANNEL, address(case.id))
        for case in some
    ]
    connection.execute(contacts.insert(), chats)
    projections.write(connection, [(None, case) for case in some])


# --- a coachbot over it -----------------------------------------------------------------------------------------------


@dataclass
class Clock:
    """A clock that shows bedtime when it is made and runs from there."""

    start: datetime = BEDTIME
    made: float = field(default_factory=perf_counter)

    def __call__(self) -> datetime:
        return self.start + timedelta(seconds=perf_counter() - self.made)


class Wire(RehearsalChannel):
    """A channel to nowhere that notes what it was handed and when."""

    def __init__(
        self, clock: Callable[[], datetime] = lambda: BEDTIME, pace: Pace | None = None, latency: float = 0.0
    ) -> None:
        super().__init__(clock, name=CHANNEL)
        self.pace = pace
        self.latency = latency
        self.handed: list[tuple[float, Outgoing]] = []

    async def send(self, message: Outgoing) -> Receipt:
        """Note it, after so many seconds on the way."""
        if self.latency:
            await asyncio.sleep(self.latency)
        self.handed.append((perf_counter(), message))
        return Receipt(ending=Ending.SENT, channel_id=str(len(self.handed)))


def coachbot(store: Store, wire: Wire, clock: Callable[[], datetime] | None = None) -> Coachbot:
    """The whole service over a filled store, with all loaded and laid aside as `coachbot serve` does."""
    made = build(store, {wire.name: wire}, emergency_number="911", clock=clock or (lambda: BEDTIME))
    read_ahead()
    gc.freeze()
    return made


def quiet_logs() -> None:
    """Let nothing be logged: a hundred thousand lines would be measured with it."""
    import structlog  # noqa: PLC0415

    structlog.configure(wrapper_class=structlog.make_filtering_bound_logger(40))


def scalar(store: Store, query: Any) -> Any:
    """One value out of the tables."""
    return store.run(lambda tx: tx._connection.execute(query).scalar_one())

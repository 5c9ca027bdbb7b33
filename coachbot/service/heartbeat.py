"""The clock: whose time has come? Beats in any number of processes; each case is claimed by one (law 10)."""

import asyncio
from collections.abc import Awaitable, Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta

import structlog

from coachbot.coach.case import Case
from coachbot.coach.due import due_at
from coachbot.coach.events import Ticked
from coachbot.service.deciding import Deciding
from coachbot.service.faults import Faults
from coachbot.store import Store, Transaction, UnavailableError

log = structlog.get_logger(__name__)

BATCH = 50
"""How many cases one transaction takes: large enough to be quick, small enough that replies get in between."""

SETBACK = timedelta(minutes=10)
"""How long a case that cannot be decided, for a fault of ours, is left alone."""

ASTRAY = timedelta(minutes=1)
"""By how much clocks may differ. A beat further ahead than that was felt before the clock was set back."""


@dataclass(frozen=True, slots=True)
class Heartbeat:
    """Ticks the cases that are due and ends the sends that nobody will end any more.

    `overdue` takes in what the inbox has waited for too long.
    """

    store: Store
    deciding: Deciding
    faults: Faults
    clock: Callable[[], datetime]
    process: str
    overdue: Callable[[], Awaitable[int]]
    woken: Callable[[], None] = field(default=lambda: None)

    async def beat(self) -> int:
        """Do all that is due now. Returns how many cases were ticked; what the store could not take is done later."""
        try:
            return await self._beat(self.clock())
        except UnavailableError:
            log.exception("heartbeat_unavailable")
            return 0

    async def _beat(self, now: datetime) -> int:
        await self._mind_the_clock(now)
        await self.overdue()
        # Before the ticks: a night whose order could not be sent must not close as one that the family missed.
        while await self.store.transact(lambda tx: self._lapse(tx, now)):
            self.woken()
        ticked = await self._tick_all(now)
        await self.store.transact(lambda tx: tx.clinic.beat(self.process, now))
        if ticked:
            log.info("heartbeat", ticked=ticked)
        return ticked

    async def _mind_the_clock(self, now: datetime) -> None:
        """Where the clock was set back, look again at all that was decided since: it waits for what will not come."""
        latest = await self.store.read(lambda tx: max(tx.clinic.beats().values(), default=now))
        if latest <= now + ASTRAY:
            return
        log.warning("clock_set_back", seconds=round((latest - now).total_seconds()))
        await self.store.transact(lambda tx: tx.outbox.set_back(now))
        await self._tick_singly(await self.store.read(lambda tx: tx.cases.changed_after(now + ASTRAY)), now)
        self.woken()

    async def _tick_all(self, now: datetime) -> int:
        """Tick in as many lanes as the store has: while the database writes what one decided, another decides."""
        lanes = await asyncio.gather(*(self._lane(now) for _ in range(self.store.lanes)), return_exceptions=True)
        for one in lanes:
            if isinstance(one, BaseException):
                raise one
        return sum(one for one in lanes if isinstance(one, int))

    async def _lane(self, now: datetime) -> int:
        ticked = 0
        while count := await self._tick_some(now):
            ticked += count
            self.woken()
        return ticked

    async def _tick_some(self, now: datetime) -> int:
        try:
            return await self.store.transact(
                lambda tx: self._tick(tx, tx.cases.claim_due(now, BATCH), now), patient=True
            )
        except UnavailableError:
            raise
        except Exception:
            log.exception("ticks_failed")
            due = await self.store.read(lambda tx: tx.cases.due(now, BATCH))
            return await self._tick_singly(due, now)

    async def _tick_singly(self, case_ids: Sequence[int], now: datetime) -> int:
        """One of them is at fault, or may be: take them one by one, and leave that one for a while."""
        for case_id in case_ids:
            await self._tick_one(case_id, now)
        return len(case_ids)

    async def _tick_one(self, case_id: int, now: datetime) -> None:
        try:
            await self.store.transact(lambda tx: self._tick(tx, [tx.cases.load(case_id)], now))
        except UnavailableError:
            raise
        except Exception:
            log.exception("tick_failed", case=case_id)
            await self.store.transact(lambda tx: self._put_off(tx, case_id, now))

    def _tick(self, tx: Transaction, cases: Sequence[Case], now: datetime) -> int:
        after = self.deciding.happen_many(tx, [(case, Ticked()) for case in cases], now)
        for before, case in zip(cases, after, strict=True):
            due = due_at(case) if case is before else None
            if due and due <= now:  # it would be due again at once, and for ever
                log.error("tick_without_effect", case=case.id)
                tx.cases.postpone(case.id, now + SETBACK)
        return len(cases)

    def _put_off(self, tx: Transaction, case_id: int, now: datetime) -> None:
        tx.cases.postpone(case_id, now + SETBACK)
        self.faults.stuck(tx, case_id, now)

    def _lapse(self, tx: Transaction, now: datetime) -> int:
        ended = tx.outbox.lapse(now)
        for one in ended:
            self.faults.tell(tx, one, now)
        return len(ended)

"""The clock: whose time has come? Beats in any number of processes; each case is claimed by one (law 10)."""

from collections.abc import Awaitable, Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta

import structlog

from coachbot.coach.case import Case
from coachbot.coach.events import SendEnded, Ticked
from coachbot.service.deciding import Deciding
from coachbot.store import EndedSend, NoSuchCaseError, Store, Transaction

log = structlog.get_logger(__name__)

BATCH = 200
"""How many cases one transaction takes: large enough to be quick, small enough that replies get in between."""

SETBACK = timedelta(minutes=10)
"""How long a case that cannot be decided, for a fault of ours, is left alone."""


@dataclass(frozen=True, slots=True)
class Heartbeat:
    """Ticks the cases that are due and ends the sends that nobody will end any more.

    `overdue` takes in what the inbox has waited for too long.
    """

    store: Store
    deciding: Deciding
    clock: Callable[[], datetime]
    process: str
    overdue: Callable[[], Awaitable[int]]
    woken: Callable[[], None] = field(default=lambda: None)

    async def beat(self) -> int:
        """Do all that is due now. Returns how many cases were ticked."""
        now, ticked = self.clock(), 0
        await self.overdue()
        while count := await self._tick_some(now):
            ticked += count
            self.woken()
        while await self.store.transact(lambda tx: self._lapse(tx, now)):
            self.woken()
        await self.store.transact(lambda tx: tx.clinic.beat(self.process, now))
        if ticked:
            log.info("heartbeat", ticked=ticked)
        return ticked

    async def _tick_some(self, now: datetime) -> int:
        try:
            return await self.store.transact(lambda tx: self._tick(tx, tx.cases.claim_due(now, BATCH), now))
        except (ValueError, KeyError, TypeError, ArithmeticError, LookupError):
            log.exception("ticks_failed")
            return await self._tick_singly(now)

    async def _tick_singly(self, now: datetime) -> int:
        """One of a batch is at fault: take them one by one, and leave that one for a while."""
        due = await self.store.read(lambda tx: [case.id for case in tx.cases.claim_due(now, BATCH)])
        for case_id in due:
            await self._tick_one(case_id, now)
        return len(due)

    async def _tick_one(self, case_id: int, now: datetime) -> None:
        try:
            await self.store.transact(lambda tx: self._tick(tx, [tx.cases.load(case_id)], now))
        except Exception:
            log.exception("tick_failed", case=case_id)
            await self.store.transact(lambda tx: tx.cases.postpone(case_id, now + SETBACK))

    def _tick(self, tx: Transaction, cases: Sequence[Case], now: datetime) -> int:
        self.deciding.happen_many(tx, [(case, Ticked()) for case in cases], now)
        return len(cases)

    def _lapse(self, tx: Transaction, now: datetime) -> int:
        ended = tx.outbox.lapse(now)
        for one in ended:
            tell(tx, self.deciding, one, now)
        return len(ended)


def tell(tx: Transaction, deciding: Deciding, ended: EndedSend, now: datetime) -> None:
    """Let a case hear how a send ended; an erased case hears nothing any more."""
    if ended.case_id is None:
        return
    try:
        case = tx.cases.load(ended.case_id)
    except NoSuchCaseError:
        return
    if ended.contact_id is None or any(contact.id == ended.contact_id for contact in case.contacts):
        deciding.happen(tx, case, SendEnded(key=ended.key, contact=ended.contact_id, outcome=ended.outcome), now)

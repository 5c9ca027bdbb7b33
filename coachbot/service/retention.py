"""Nothing is kept for ever: what has been finished for as long as the clinic has set is erased, with the same proof.

A family's record goes the way that it goes at the desk, but unsaid: after so long its number may be somebody else's.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

import structlog

from coachbot.coach.events import Erased
from coachbot.service.deciding import Deciding
from coachbot.service.front_desk import SETTING as FRONT_DESK
from coachbot.store import Accessed, Store, Tombstone, Transaction, UnavailableError

log = structlog.get_logger(__name__)

BY = "coachbot"
"""Who erases, in the log of access."""


@dataclass(frozen=True, slots=True)
class Retention:
    """Erases what is past its time; `keep` is how long a family that has finished or stopped is kept, None for ever."""

    store: Store
    deciding: Deciding
    clock: Callable[[], datetime]
    keep: timedelta | None

    async def run(self) -> int:
        """Erase all that is past its time. Returns how many families it was; what the store cannot do is done later.

        The database's own traces of whatever was erased, here or at the desk, go too.
        """
        try:
            erased = await self._run(self.clock() - self.keep) if self.keep else 0
            await self.store.scrub()
        except UnavailableError:
            log.exception("retention_unavailable")
            return 0
        return erased

    async def _run(self, before: datetime) -> int:
        await self.store.transact(lambda tx: forget_strangers(tx, before))
        idle = await self.store.read(lambda tx: tx.cases.idle_since(before))
        return sum([await self._erase(case_id, before) for case_id in idle])

    async def _erase(self, case_id: int, before: datetime) -> bool:
        now = self.clock()

        def work(tx: Transaction) -> bool:
            if not tx.cases.idle_since(before, only=case_id):
                return False
            erase(tx, self.deciding, case_id, now)
            return True

        try:
            return await self.store.transact(work)
        except UnavailableError:
            raise
        except Exception:
            log.exception("erasure_failed", case=case_id)
            return False


def erase(tx: Transaction, deciding: Deciding, case_id: int, now: datetime) -> None:
    """Erase one case unsaid and write down that it was done.

    Raises:
        NoSuchCaseError: if there is none, or it was erased before.
    """
    case = tx.cases.load(case_id)
    deciding.happen(tx, case, Erased(by=BY, told=False), now)
    if tx.clinic.get(FRONT_DESK) == str(case_id):
        tx.clinic.put(FRONT_DESK, "")
    tx.access.add([Accessed(at=now, by=BY, case_id=case_id, what="retention.erased")])


def erase_again(tx: Transaction, deciding: Deciding, stones: Iterable[Tombstone], now: datetime) -> int:
    """After a backup was restored: erase anew what had been erased since it was made. Returns how many it was.

    A number alone does not prove that it is the same family: the time of its opening must fit too.
    """
    count = 0
    for stone in stones:
        if tx.cases.opened_at(stone.case_id) == stone.created_at:
            erase(tx, deciding, stone.case_id, now)
            count += 1
    return count


def forget_strangers(tx: Transaction, before: datetime) -> None:
    """What people wrote whom no family knows, and what they were answered, unless one of their alerts is open."""
    desk = tx.clinic.get(FRONT_DESK)
    if not desk or not any(case_id == int(desk) for case_id, _, _ in tx.board.open_alerts()):
        tx.forget_strangers(int(desk) if desk else None, before)

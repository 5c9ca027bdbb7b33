"""Faults of ours: a case at fault holds up no other, and the clinicians are told that it needs them."""

from dataclasses import dataclass
from datetime import datetime

import structlog

from coachbot.coach.events import SendEnded, Stuck
from coachbot.service.deciding import Deciding
from coachbot.service.front_desk import FrontDesk
from coachbot.store import EndedSend, NoSuchCaseError, Transaction

log = structlog.get_logger(__name__)


@dataclass(frozen=True, slots=True)
class Faults:
    """Does what can still be done where a case cannot take an event."""

    deciding: Deciding
    front_desk: FrontDesk

    def tell(self, tx: Transaction, ended: EndedSend, now: datetime) -> None:
        """Let a case hear how a send ended; an erased case hears nothing any more, and one at fault cannot."""
        case_id = ended.case_id
        if case_id is None:
            return
        if error := tx.alone(lambda: self._hear(tx, case_id, ended, now)):
            log.error("ending_unheard", case=case_id, exc_info=error)
            self.stuck(tx, case_id, now)

    def stuck(self, tx: Transaction, case_id: int, now: datetime) -> None:
        """Have the clinic's own case raise an alert over one that cannot go on, once while that alert stands open."""
        event = Stuck(case=case_id)
        if error := tx.alone(lambda: self.deciding.happen(tx, self.front_desk.case(tx, now), event, now)):
            log.error("fault_untold", case=case_id, exc_info=error)

    def _hear(self, tx: Transaction, case_id: int, ended: EndedSend, now: datetime) -> None:
        try:
            case = tx.cases.load(case_id)
        except NoSuchCaseError:
            return
        if ended.contact_id is None or any(contact.id == ended.contact_id for contact in case.contacts):
            event = SendEnded(key=ended.key, contact=ended.contact_id, outcome=ended.outcome)
            self.deciding.happen(tx, case, event, now)

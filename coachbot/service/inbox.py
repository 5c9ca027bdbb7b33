"""What came in: kept once, given to whom it concerns, settled; one transaction a message (laws 2, 3 and 5)."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime

import structlog

from coachbot.channels.base import Incoming
from coachbot.coach.actions import Line, Say, Urgency
from coachbot.coach.case import Case, State
from coachbot.coach.events import Event, Pressed, Replied
from coachbot.service.clinicians import Clinicians
from coachbot.service.codes import find_code
from coachbot.service.deciding import Deciding
from coachbot.service.strangers import Strangers
from coachbot.store import ContactRow, Store, Transaction, UnavailableError
from coachbot.triage import Level, assess

log = structlog.get_logger(__name__)


@dataclass(frozen=True, slots=True)
class Inbox:
    """Takes in messages from every channel. `woken` is called once something may wait in the outbox."""

    store: Store
    deciding: Deciding
    strangers: Strangers
    clinicians: Clinicians
    clock: Callable[[], datetime]
    woken: Callable[[], None] = field(default=lambda: None)

    async def receive(self, incoming: Incoming) -> None:
        """Keep a message and all that comes of it. When this returns, both are durable.

        A message that cannot be decided because of a fault of ours is kept as unread for the clinician instead.
        """
        try:
            outcome = await self.store.transact(lambda tx: self._take(tx, incoming))
        except UnavailableError:
            raise
        except Exception:
            log.exception("message_failed", channel=incoming.channel)
            outcome = await self.store.transact(lambda tx: self._put_by(tx, incoming))
        log.info("message_received", channel=incoming.channel, outcome=outcome)
        self.woken()

    def _take(self, tx: Transaction, incoming: Incoming) -> str:
        message = _keep(tx, incoming)
        if message is None:
            return "duplicate"
        now = self.clock()
        if clinician := tx.clinicians.find(incoming.channel, incoming.address):
            return self.clinicians.take(tx, clinician, incoming, message, now)
        contacts = tx.people.find(incoming.channel, incoming.address)
        if not contacts or find_code(incoming.text or "", bare=False):
            return self.strangers.take(tx, incoming, message, now)
        return self._from_family(tx, contacts, incoming, message, now)

    def _from_family(
        self, tx: Transaction, contacts: Sequence[ContactRow], incoming: Incoming, message: int, now: datetime
    ) -> str:
        if incoming.button is not None:
            number, _, data = incoming.button.partition(":")
            contact = next((one for one in contacts if str(one.case_id) == number), contacts[0])
            event: Event = Pressed(contact=contact.id, data=data, message=message)
            self.deciding.happen(tx, tx.cases.load(contact.case_id), event, now)
            tx.messages.settle(message, "pressed", case_id=contact.case_id, contact_id=contact.id)
            return "pressed"
        return self._words(tx, contacts, incoming.text or "", message, now)

    def _words(self, tx: Transaction, contacts: Sequence[ContactRow], text: str, message: int, now: datetime) -> str:
        meant = [(one, tx.cases.load(one.case_id)) for one in contacts]
        assessment = assess(text, lang=contacts[0].language, sender=contacts[0].role)
        if len(meant) > 1:
            meant = _meant(meant, text)
        if len(meant) > 1 and assessment.level < Level.CONCERN:
            self._ask_which(tx, meant, message, now)
            return "which"
        for contact, case in meant:
            self.deciding.happen(tx, case, Replied(contact=contact.id, text=text, message=message), now)
        tx.messages.settle(
            message,
            "replied",
            case_id=meant[0][1].id,
            contact_id=meant[0][0].id,
            level=assessment.level,
            category=assessment.category,
            evidence=assessment.evidence,
        )
        return "replied"

    def _ask_which(
        self, tx: Transaction, meant: Sequence[tuple[ContactRow, Case]], message: int, now: datetime
    ) -> None:
        """A parent of several children wrote words that fit more than one: ask, and show them to the clinician."""
        contact, case = meant[0]
        names = ", ".join(sorted(one.child.name for _, one in meant))
        line = Line(id="which-child", args={"names": names})
        say = Say(to=contact.id, lines=(line,), key=f"which:{message}", urgency=Urgency.REPLY)
        tx.outbox.add(list(self.deciding.writer.envelopes(tx, case, say, now)), now)
        tx.messages.mark_unread(message, now)
        tx.messages.settle(message, "which", case_id=case.id, contact_id=contact.id)

    def _put_by(self, tx: Transaction, incoming: Incoming) -> str:
        message = _keep(tx, incoming)
        if message is not None:
            contacts = tx.people.find(incoming.channel, incoming.address)
            tx.messages.mark_unread(message, self.clock())
            tx.messages.settle(message, "failed", case_id=contacts[0].case_id if contacts else None)
        return "failed"


def _keep(tx: Transaction, incoming: Incoming) -> int | None:
    return tx.messages.receive(
        incoming.channel,
        incoming.channel_id,
        incoming.address,
        text=incoming.text,
        button=incoming.button,
        at=incoming.at,
    )


def _meant(meant: list[tuple[ContactRow, Case]], text: str) -> list[tuple[ContactRow, Case]]:
    """Narrow siblings' cases down: to the child that is named, else to the one that waits for an answer."""
    words = text.casefold()
    named = [one for one in meant if one[1].child.name.casefold() in words]
    waiting = [one for one in meant if one[1].open_night or one[1].lesson_open or one[1].state is State.INVITED]
    return next((some for some in (named, waiting) if len(some) == 1), meant)

"""What came in: kept once, given to whom it concerns, settled; one transaction a message (laws 2, 3 and 5)."""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from functools import partial

import structlog

from coachbot.channels.base import Incoming
from coachbot.coach.actions import Line, Say, Urgency
from coachbot.coach.case import Case, State
from coachbot.coach.events import Event, Pressed, Replied
from coachbot.measures import RECEIVED
from coachbot.service.clinicians import Clinicians
from coachbot.service.codes import find_code
from coachbot.service.deciding import Deciding
from coachbot.service.faults import Faults
from coachbot.service.limits import Limit
from coachbot.service.strangers import Strangers, same_alarm
from coachbot.store import WHICH, ContactRow, Gathered, Longer, Store, Transaction, UnavailableError
from coachbot.triage import Level, assess

log = structlog.get_logger(__name__)

PATIENCE = timedelta(minutes=1)
"""How long the last piece of a message may take; after that it is read without."""

ANSWERED = timedelta(hours=12)
"""For how long words wait for the answer to whom they concern."""


@dataclass(frozen=True, slots=True)
class Inbox:
    """Takes in messages from every channel. `woken` is called once something may wait in the outbox.

    Words of one sender beyond `flood` are kept for the clinician and not answered, so that nobody else waits for them;
    an alarm is heard among any number of them.
    """

    store: Store
    deciding: Deciding
    faults: Faults
    strangers: Strangers
    clinicians: Clinicians
    clock: Callable[[], datetime]
    woken: Callable[[], None] = field(default=lambda: None)
    flood: Limit = field(default_factory=lambda: Limit(30, timedelta(minutes=1)))

    async def receive(self, incoming: Incoming) -> None:
        """Keep a message and all that comes of it. When this returns, both are durable.

        A message that cannot be decided because of a fault of ours is kept as unread for the clinician instead. A piece
        of a longer one is kept until the others have come.
        """
        counts = incoming.part is None and incoming.button is None
        flood = counts and not self.flood.allows(f"{incoming.channel}:{incoming.address}", incoming.at)
        await self._receive(lambda tx: _whole(tx, incoming), flood=flood)

    async def take_overdue(self) -> int:
        """Take messages as they are whose last piece does not come. Returns how many."""
        before = self.clock() - PATIENCE
        overdue = await self.store.read(lambda tx: tx.pieces.overdue(before))
        for longer in overdue:
            try:
                await self._receive(partial(_so_far, longer=longer))
            except UnavailableError:
                raise
            except Exception:
                log.exception("pieces_failed")
        return len(overdue)

    async def _receive(self, gather: Callable[[Transaction], Incoming | None], *, flood: bool = False) -> None:
        try:
            outcome = await self._decided(gather, flood=flood)
        except UnavailableError:
            log.exception("message_not_kept")
            raise
        RECEIVED.labels(outcome).inc()
        log.info("message_received", outcome=outcome)
        self.woken()

    async def _decided(self, gather: Callable[[Transaction], Incoming | None], *, flood: bool) -> str:
        try:
            return await self.store.transact(lambda tx: self._take(tx, gather(tx), flood=flood))
        except UnavailableError:
            raise
        except Exception:
            log.exception("message_failed")
            return await self.store.transact(lambda tx: self._put_by(tx, gather(tx)))

    def _take(self, tx: Transaction, incoming: Incoming | None, *, flood: bool) -> str:
        if incoming is None:
            return "piece"
        message = _keep(tx, incoming)
        if message is None:
            return "duplicate"
        now = self.clock()
        if clinician := tx.clinicians.find(incoming.channel, incoming.address):
            return self.clinicians.take(tx, clinician, incoming, message, now)
        contacts = tx.people.find(incoming.channel, incoming.address)
        if not contacts or find_code(incoming.text or "", bare=False):
            return self.strangers.take(tx, incoming, message, now, flood=flood)
        if flood and self._put_off(tx, contacts, incoming, message, now):
            return "flood"
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
        return self._words(tx, contacts, incoming, message, now)

    def _put_off(
        self, tx: Transaction, contacts: Sequence[ContactRow], incoming: Incoming, message: int, now: datetime
    ) -> bool:
        """Leave words of a flood to the clinician, unanswered, unless they are an alarm that is not open yet."""
        assessment = assess(incoming.text or "", lang=contacts[0].language, sender=contacts[0].role)
        if assessment.level >= Level.CONCERN:
            cases = [tx.cases.load(contact.case_id) for contact in contacts]
            if not all(any(same_alarm(alert, assessment) for alert in case.open_alerts) for case in cases):
                return False
        tx.messages.mark_unread(message, now)
        tx.messages.settle(
            message,
            "flood",
            case_id=contacts[0].case_id,
            contact_id=contacts[0].id,
            level=assessment.level,
            category=assessment.category,
            evidence=assessment.evidence,
        )
        return True

    def _words(
        self, tx: Transaction, contacts: Sequence[ContactRow], incoming: Incoming, message: int, now: datetime
    ) -> str:
        text = incoming.text or ""
        meant = [(one, tx.cases.load(one.case_id)) for one in contacts]
        assessment = assess(text, lang=contacts[0].language, sender=contacts[0].role)
        if len(meant) > 1:
            named = _named(meant, text)
            if len(named) == 1 and assessment.level < Level.CONCERN:
                return self._about(tx, named[0], incoming, message, now)
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

    def _about(
        self, tx: Transaction, meant: tuple[ContactRow, Case], incoming: Incoming, message: int, now: datetime
    ) -> str:
        """Words that name one of several children, be it only to say whom the words before concerned: those first."""
        contact, case = meant
        text = _without(case.child.name, incoming.text or "")
        asked = tx.messages.asked_which(incoming.channel, incoming.address, now - ANSWERED)
        before = (asked.text or "") if asked else ""
        if asked and before.casefold() != text.casefold():
            case = self.deciding.happen(tx, case, Replied(contact=contact.id, text=before, message=asked.id), now)
        if asked:
            tx.messages.mark_understood(asked.id)
            tx.messages.settle(asked.id, "replied", case_id=case.id, contact_id=contact.id, level=Level.NONE)
        if text or not asked:
            said = text or (incoming.text or "")
            self.deciding.happen(tx, case, Replied(contact=contact.id, text=said, message=message), now)
        tx.messages.settle(message, "replied", case_id=case.id, contact_id=contact.id, level=Level.NONE)
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
        tx.messages.settle(message, WHICH, case_id=case.id, contact_id=contact.id)

    def _put_by(self, tx: Transaction, incoming: Incoming | None) -> str:
        """Keep what could not be decided for the clinician; what sounds like an alarm is one all the same."""
        message = _keep(tx, incoming) if incoming else None
        if incoming is None or message is None:
            return "failed"
        now = self.clock()
        contacts = tx.people.find(incoming.channel, incoming.address)
        tx.messages.mark_unread(message, now)
        tx.messages.settle(message, "failed", case_id=contacts[0].case_id if contacts else None)
        if tx.clinicians.find(incoming.channel, incoming.address):
            return "failed"
        for case_id in {contact.case_id for contact in contacts}:
            self.faults.stuck(tx, case_id, now)
        heard = replace(incoming, language=contacts[0].language) if contacts else incoming
        if error := tx.alone(lambda: self.strangers.rescue(tx, heard, message, now)):
            log.error("message_not_rescued", message=message, exc_info=error)
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


def _whole(tx: Transaction, incoming: Incoming) -> Incoming | None:
    part = incoming.part
    if part is None:
        return replace(incoming, text=_whole_letters(incoming.text))
    found = tx.pieces.add(
        incoming.channel,
        incoming.address,
        reference=part.reference,
        total=part.total,
        number=part.number,
        text=incoming.text or "",
        at=incoming.at,
    )
    return _put_together(found)


def _whole_letters(text: str | None) -> str | None:
    """The text with a mark for each half of a letter: a phone may send one alone, and nothing can write it down."""
    return text and text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")


def _so_far(tx: Transaction, longer: Longer) -> Incoming | None:
    return _put_together(tx.pieces.take(longer))


def _put_together(found: Gathered | None) -> Incoming | None:
    if found is None:
        return None
    return Incoming(channel=found.channel, channel_id=None, address=found.address, at=found.at, text=found.text)


def _named(meant: list[tuple[ContactRow, Case]], text: str) -> list[tuple[ContactRow, Case]]:
    return [one for one in meant if _without(one[1].child.name, text) != text]


def _without(name: str, text: str) -> str:
    """What is said besides a child's name; the text itself if it does not name the child."""
    word = re.compile(rf"\W*(?<!\w){re.escape(name)}(?!\w)\W*", re.IGNORECASE)
    return word.sub(" ", text, count=1).strip() if word.search(text) else text


def _meant(meant: list[tuple[ContactRow, Case]], text: str) -> list[tuple[ContactRow, Case]]:
    """Narrow siblings' cases down: to the child that is named, else to the one that waits for an answer."""
    named = _named(meant, text)
    waiting = [one for one in meant if one[1].open_night or one[1].lesson_open or one[1].state is State.INVITED]
    return next((some for some in (named, waiting) if len(some) == 1), meant)

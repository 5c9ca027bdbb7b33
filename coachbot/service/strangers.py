"""Messages from somebody whom no family knows: an invitation code, or words that may still be an alarm."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta

import structlog

from coachbot.channels.base import Incoming
from coachbot.coach.actions import Line, Urgency
from coachbot.coach.case import Alert, Case
from coachbot.coach.events import Joined, StrangerWrote
from coachbot.coach.hold import safety_line
from coachbot.coach.texts import Audience
from coachbot.reading import Wish, request
from coachbot.service.codes import find_code
from coachbot.service.deciding import Deciding
from coachbot.service.front_desk import FrontDesk
from coachbot.service.limits import Limit
from coachbot.service.writer import Reader
from coachbot.store import Invite, InviteFault, Transaction
from coachbot.triage import Assessment, Level, assess

log = structlog.get_logger(__name__)

LANGUAGES = ("en", "es", "fr")

EVERYBODY = "everybody"

UNANSWERED = (Wish.STOP, Wish.DELETE, Wish.WRONG_NUMBER)
"""What a stranger may wish that silence grants."""

UNTRIAGED = Assessment(level=Level.CONCERN, category="unread")
"""What counts for words that triage itself fails over: nobody knows what they say, so a clinician must look."""

FAULTS = {
    InviteFault.UNKNOWN: "code-unknown",
    InviteFault.USED: "code-used",
    InviteFault.EXPIRED: "code-expired",
}


@dataclass(frozen=True, slots=True)
class Strangers:
    """Answers strangers. `guesses` bounds each sender's tries at codes, `wrong` those that fail before `first` does.

    `hellos` and `waits` bound answers that are no alarm. All are kept in memory: 65 random bits are safe by themselves.
    A million accounts with one try an hour each, against a thousand open codes, would need some four million years.
    """

    deciding: Deciding
    front_desk: FrontDesk
    guesses: Limit = field(default_factory=lambda: Limit(5, timedelta(hours=1)))
    first: Limit = field(default_factory=lambda: Limit(1, timedelta(hours=1)))
    wrong: Limit = field(default_factory=lambda: Limit(100, timedelta(hours=1)))
    hellos: Limit = field(default_factory=lambda: Limit(3, timedelta(hours=1)))
    waits: Limit = field(default_factory=lambda: Limit(3, timedelta(hours=1)))

    def take(self, tx: Transaction, incoming: Incoming, message: int, now: datetime, *, flood: bool = False) -> str:
        """Link the chat if the words are a code that opens; else see whether they are an alarm."""
        code = find_code(incoming.text or "", bare=True)
        if code is None:
            self._heed(tx, incoming, message, now, flood=flood)
            return "stranger"
        if not self._may_guess(incoming, now):
            if self.waits.allows(f"{incoming.channel}:{incoming.address}", now):
                self._say(tx, incoming, message, "code-wait", now)
            tx.messages.settle(message, "code_wait")
            return "code_wait"
        opened = tx.invites.use(code, now)
        if isinstance(opened, InviteFault):
            self.wrong.allows(EVERYBODY, now)
            self._say(tx, incoming, message, FAULTS[opened], now)
            tx.messages.settle(message, f"code_{opened}")
            return f"code_{opened}"
        self._join(tx, incoming, message, opened, now)
        return "joined"

    def rescue(self, tx: Transaction, incoming: Incoming, message: int, now: datetime) -> None:
        """Words of a family that its case could not take, for a fault of ours: they may still be an alarm."""
        assessment = _triaged(incoming)
        if assessment.level >= Level.CONCERN:
            self._alarm(tx, incoming, message, assessment, now)

    def _join(self, tx: Transaction, incoming: Incoming, message: int, invite: Invite, now: datetime) -> None:
        case = tx.cases.load(invite.case_id)
        known = [one.id for one in tx.people.find(incoming.channel, incoming.address) if one.case_id == case.id]
        contact = known[0] if known else self._link(tx, incoming, invite, case, now)
        event = Joined(contact=contact, role=invite.role, channel=incoming.channel, language=case.language)
        self.deciding.happen(tx, case, event, now)
        tx.messages.settle(message, "joined", case_id=case.id, contact_id=contact)

    def _link(self, tx: Transaction, incoming: Incoming, invite: Invite, case: Case, now: datetime) -> int:
        return tx.people.add_contact(
            case.id,
            invite.role,
            channel=incoming.channel,
            address=incoming.address,
            language=case.language,
            now=now,
        )

    def _may_guess(self, incoming: Incoming, now: datetime) -> bool:
        """While many wrong codes come from all sides each sender has one try; those who hold a code need no more."""
        limit = self.first if self.wrong.full(EVERYBODY, now) else self.guesses
        return limit.allows(f"{incoming.channel}:{incoming.address}", now)

    def _rings(self, tx: Transaction, incoming: Incoming, assessment: Assessment, now: datetime) -> bool:
        """Whether the same alarm of the same sender stands open already."""
        same = (alert.message for alert in self.front_desk.case(tx, now).open_alerts if same_alarm(alert, assessment))
        found = (tx.messages.get(message) for message in same if message is not None)
        here = (incoming.channel, incoming.address)
        return any((one.channel, one.address) == here for one in found if one)

    def _heed(self, tx: Transaction, incoming: Incoming, message: int, now: datetime, *, flood: bool) -> None:
        text, language = incoming.text or "", _language(incoming)
        assessment = assess(text, lang=language, sender="parent")
        wish = request(text, lang=language)
        if wish and wish.wish in UNANSWERED and assessment.level < Level.URGENT:
            pass  # nothing is sent to a stranger anyway, and who wants no messages gets none about that
        elif assessment.level >= Level.CONCERN and flood and self._rings(tx, incoming, assessment, now):
            tx.messages.mark_unread(message, now)
        elif assessment.level >= Level.CONCERN:
            self._alarm(tx, incoming, message, assessment, now)
            if assessment.level < Level.URGENT:
                self._say(tx, incoming, message, "stranger-hello", now)
        elif self.hellos.allows(f"{incoming.channel}:{incoming.address}", now):
            self._say(tx, incoming, message, "stranger-hello", now)
        tx.messages.settle(message, "stranger", level=assessment.level, category=assessment.category)

    def _alarm(self, tx: Transaction, incoming: Incoming, message: int, assessment: Assessment, now: datetime) -> None:
        if assessment.level >= Level.URGENT:
            self._send(tx, incoming, message, safety_line(assessment), Urgency.SAFETY, now)
        tx.messages.mark_unread(message, now)
        event = StrangerWrote(message=message, assessment=assessment)
        self.deciding.happen(tx, self.front_desk.case(tx, now), event, now)

    def _say(self, tx: Transaction, incoming: Incoming, message: int, text: str, now: datetime) -> None:
        self._send(tx, incoming, message, Line(id=text), Urgency.REPLY, now)

    def _send(
        self, tx: Transaction, incoming: Incoming, message: int, line: Line, urgency: Urgency, now: datetime
    ) -> None:
        reader = Reader(
            audience=Audience.PARENT,
            language=_language(incoming),
            channel=incoming.channel,
            to={"stranger": (incoming.channel, incoming.address)},
        )
        self.front_desk.say(tx, reader, line, f"stranger:{message}", urgency, now)


def same_alarm(alert: Alert, assessment: Assessment) -> bool:
    """Whether an alert tells already what this would."""
    return alert.category == assessment.category and alert.level >= assessment.level


def _language(incoming: Incoming) -> str:
    spoken = (incoming.language or "")[:2]
    return spoken if spoken in LANGUAGES else "en"


def _triaged(incoming: Incoming) -> Assessment:
    try:
        return assess(incoming.text or "", lang=_language(incoming), sender="parent")
    except Exception:
        log.exception("triage_failed")
        return UNTRIAGED

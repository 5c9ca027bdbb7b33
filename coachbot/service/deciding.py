"""Gives events to the coach and carries out, in the same transaction, what it decides."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

import structlog

from coachbot.coach.actions import Action, AwaitNote, Decision, Forget, MarkUnread, Say, Summarise, TakeBack, Urgency
from coachbot.coach.case import Case
from coachbot.coach.decide import decide
from coachbot.coach.due import due_at
from coachbot.coach.events import Event
from coachbot.measures import DECIDE
from coachbot.service.summary import summary
from coachbot.service.writer import Writer
from coachbot.store import Change, Envelope, Transaction

ASKING = (Urgency.REPLY, Urgency.PROMPT)
"""Urgencies at which a family may be asked to practise; taken back when practice stops."""

log = structlog.get_logger(__name__)


@dataclass(frozen=True, slots=True)
class Deciding:
    """The one path by which a case changes."""

    writer: Writer

    def happen(self, tx: Transaction, case: Case, event: Event, now: datetime) -> Case:
        """Let one event happen to a case loaded in this transaction, and keep all that comes of it."""
        return self.happen_many(tx, [(case, event)], now)[0]

    def happen_many(self, tx: Transaction, pairs: Sequence[tuple[Case, Event]], now: datetime) -> list[Case]:
        """The same for many cases, each another, in a few statements."""
        decisions = [_decide(case, event, now) for case, event in pairs]
        changes = [
            Change(old=case, new=decision.case, event=event, due_at=due_at(decision.case))
            for (case, event), decision in zip(pairs, decisions, strict=True)
        ]
        tx.cases.save(changes, now)
        envelopes: list[Envelope] = []
        for decision in decisions:
            for action in decision.actions:
                envelopes += self._carry_out(tx, decision.case, action, now)
        tx.outbox.add(envelopes, now)
        for decision in decisions:
            if any(isinstance(action, Forget) for action in decision.actions):
                tx.erase(decision.case.id, now)
                log.info("family_erased", case=decision.case.id)
        return [decision.case for decision in decisions]

    def _carry_out(self, tx: Transaction, case: Case, action: Action, now: datetime) -> list[Envelope]:
        match action:
            case Say():
                return list(self.writer.envelopes(tx, case, action, now))
            case Summarise():
                return [one for say in summary(case, action.key) for one in self.writer.envelopes(tx, case, say, now)]
            case TakeBack():
                tx.outbox.take_back(case.id, ASKING, now)
            case MarkUnread():
                tx.messages.mark_unread(action.message, now)
            case AwaitNote():
                tx.clinicians.await_note(action.by, case.id)
            case Forget():
                pass
        return []


def _decide(case: Case, event: Event, now: datetime) -> Decision:
    with DECIDE.time():
        return decide(case, event, now)

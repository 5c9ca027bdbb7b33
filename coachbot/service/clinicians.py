"""Messages from a clinician's own chat: buttons under alerts, the notes they need, and the typed forms of both."""

import re
from dataclasses import dataclass
from datetime import datetime

from coachbot.channels.base import Incoming
from coachbot.coach.actions import Line, Urgency
from coachbot.coach.events import Acknowledged, ClinicianPressed, ClinicianWrote, Ended, Event, HoldLifted
from coachbot.coach.turn import Refused
from coachbot.service.deciding import Deciding
from coachbot.service.front_desk import FrontDesk
from coachbot.service.writer import clinician_reader
from coachbot.store import Clinician, NoSuchCaseError, Transaction

LIFT = frozenset({"lift", "reabrir", "rouvrir"})
END = frozenset({"end", "terminar", "finir"})
TAKE = frozenset({"take", "ack", "acknowledge", "tomar", "prendre"})
"""The words that the texts tell clinicians to write, in any language that one of them may have."""

_TYPED = re.compile(
    rf"\W*({'|'.join(sorted(TAKE | LIFT | END))})\W+(\d{{1,18}})\s*-\s*(\d{{1,9}})\b\W*(.*)", re.IGNORECASE | re.DOTALL
)
"""``TAKE 7-2``, ``LIFT 7-2 spoke with the family, all well``."""


@dataclass(frozen=True, slots=True)
class Clinicians:
    """Turns what a clinician sends into events of the case that is meant."""

    deciding: Deciding
    front_desk: FrontDesk

    def take(self, tx: Transaction, clinician: Clinician, incoming: Incoming, message: int, now: datetime) -> str:
        """Carry it out, or show how to write it. A refusal is told in the clinician's language."""
        case_id, event = _meant(clinician, incoming)
        try:
            if case_id is None:
                raise Refused("clinician-help")
            case = tx.cases.load(case_id)
            if isinstance(event, ClinicianWrote):
                tx.clinicians.await_note(clinician.name, None)
            self.deciding.happen(tx, case, event, now)
        except NoSuchCaseError:
            self._say(tx, clinician, Line(id="no-such-alert"), message, now)
        except Refused as refused:
            self._say(tx, clinician, refused.line, message, now)
        tx.messages.settle(message, "clinician", case_id=case_id)
        return "clinician"

    def _say(self, tx: Transaction, clinician: Clinician, line: Line, message: int, now: datetime) -> None:
        if reader := clinician_reader(clinician):
            self.front_desk.say(tx, reader, line, f"clinician:{message}", Urgency.REPLY, now)


def _meant(clinician: Clinician, incoming: Incoming) -> tuple[int | None, Event]:
    if incoming.button is not None:
        number, _, data = incoming.button.partition(":")
        return int(number) if number.isdecimal() else None, ClinicianPressed(by=clinician.name, data=data)
    text = incoming.text or ""
    if typed := _TYPED.fullmatch(text):
        return int(typed[2]), _typed(clinician.name, typed[1].lower(), int(typed[3]), typed[4])
    return clinician.awaiting_case_id, ClinicianWrote(by=clinician.name, text=text)


def _typed(name: str, word: str, alert: int, note: str) -> Event:
    if word in LIFT:
        return HoldLifted(by=name, note=note)
    if word in END:
        return Ended(by=name, note=note)
    return Acknowledged(by=name, alert=alert, note=note)

"""The clinic's own case: it has no child and no nights, only the alerts of those whom no family knows."""

from dataclasses import dataclass
from datetime import datetime, time

from coachbot.coach.actions import Line, Say, Urgency
from coachbot.coach.case import Case, Child, State
from coachbot.programme.protocol import Protocol
from coachbot.service.writer import Reader, Writer
from coachbot.store import Transaction

SETTING = "front_desk"
"""The setting that holds the case's id."""


@dataclass(frozen=True, slots=True)
class FrontDesk:
    """Finds or opens the clinic's own case, and writes to people who belong to no other."""

    writer: Writer
    emergency_number: str

    def case(self, tx: Transaction, now: datetime) -> Case:
        """The clinic's own case, locked like any other."""
        if known := tx.clinic.get(SETTING):
            return tx.cases.load(int(known))
        draft = Case(
            id=0,
            child=Child(name="—", birth_year=now.year),
            protocol=Protocol(emergency_number=self.emergency_number),
            orders=(),
            bedtime=time(19, 30),
            zone="Etc/UTC",
            language="en",
            state=State.WITHDRAWN,
        )
        case = tx.cases.add(draft, now)
        tx.clinic.put(SETTING, str(case.id))
        return case

    def say(self, tx: Transaction, reader: Reader, line: Line, key: str, urgency: Urgency, now: datetime) -> None:
        """Write one text to a reader outside any family's case."""
        say = Say(to=0, lines=(line,), key=key, urgency=urgency)
        tx.outbox.add([self.writer.envelope(self.case(tx, now), say, reader, now)], now)

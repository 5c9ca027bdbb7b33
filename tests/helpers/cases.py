"""Cases for tests of the store and what stands on it: invented families, as values."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

from coachbot.coach.case import Alert, Case, Child, Night, Status, Swallow
from coachbot.coach.events import Event, Ticked
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Protocol
from coachbot.reading.readings import Mark
from coachbot.store import Change, Transaction
from coachbot.triage.levels import Level

EVENING = datetime(2026, 3, 2, 19, 30, tzinfo=UTC)
MINUTE = timedelta(minutes=1)
CHILD = "Zebulonia"
"""A name that stands nowhere else, to be searched for on the disk."""


def draft(name: str = CHILD) -> Case:
    """A case as enrolment drafts it, before the store has numbered it."""
    protocol = Protocol()
    return Case(
        id=0,
        child=Child(name=name, birth_year=2018),
        protocol=protocol,
        orders=(protocol.positions,) * protocol.nights,
        bedtime=time(19, 30),
        zone="Europe/Lisbon",
        language="en",
    )


def with_night(case: Case, now: datetime = EVENING) -> Case:
    """The case with one more evening, on the day after the last, or on the day of `now`."""
    number = len(case.nights) + 1
    night = Night(
        number=number,
        turn=number,
        day=case.nights[-1].day + timedelta(days=1) if case.nights else now.date(),
        order=case.orders[(number - 1) % len(case.orders)],
        candy=case.protocol.candy(number),
        prompted=now,
        touched=now,
        recipients=1,
    )
    return replace(case, nights=(*case.nights, night))


def with_mark(case: Case, position: Position, mark: Mark, note: str | None = None) -> Case:
    """The case with one swallow of its latest night rated."""
    night = case.nights[-1].record(Swallow(position=position, mark=mark, note=note))
    return replace(case, nights=(*case.nights[:-1], replace(night, status=Status.PARTIAL)))


def with_alert(case: Case, now: datetime = EVENING) -> Case:
    """The case with one more alert, about choking."""
    evidence = ("she choked",)
    number = len(case.alerts) + 1
    alert = Alert(number=number, level=Level.EMERGENCY, category="choking", evidence=evidence, raised=now)
    return replace(case, alerts=(*case.alerts, alert))


def save(tx: Transaction, old: Case, new: Case, event: Event | None = None, due_at: datetime | None = None) -> None:
    """Keep one case in place of what was loaded."""
    tx.cases.save([Change(old=old, new=new, event=event or Ticked(), due_at=due_at)], EVENING)


def on_day(case: Case, number: int, day: date) -> Case:
    """The case with one night moved to another day."""
    nights = tuple(replace(night, day=day) if night.number == number else night for night in case.nights)
    return replace(case, nights=nights)

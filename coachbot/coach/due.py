"""When a case next needs the clock. Derived from the case, so that no timer can disagree with it."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta

from coachbot.coach.case import Case, Night, State
from coachbot.programme.zones import instant, local


def due_at(case: Case) -> datetime | None:
    """The earliest instant at which `decide(case, Ticked(), now)` would do something, or None if it never will."""
    return min(_timers(case), default=None)


def bedtime_on(case: Case, day: date) -> datetime:
    """The instant of bedtime on a local date."""
    return instant(day, case.bedtime, case.zone)


def evening_day(case: Case) -> date | None:
    """The local date of the next evening, or None where none is planned."""
    if case.state is State.PAUSED:
        return case.paused_until
    return case.next_evening if case.state in (State.LESSON, State.PRACTISING) else None


def reminder_due(case: Case, night: Night) -> datetime | None:
    """When the one reminder of an open night is due: so long after the family was last heard of."""
    due = night.touched + case.protocol.reminder_after
    return due if not night.reminded and due < closing(case, night) else None


def closing(case: Case, night: Night) -> datetime:
    """When an open night closes."""
    return night.prompted + case.protocol.close_after


def last_useful(case: Case, day: date) -> datetime:
    """Until when that evening's prompt is still worth sending: not too late, and within the family's hours."""
    latest = instant(day, case.protocol.latest, case.zone)
    return min(bedtime_on(case, day) + case.protocol.late_limit, latest)


def next_free_evening(case: Case, now: datetime) -> date:
    """The first local date whose evening is still to come and has neither a night nor the lesson yet."""
    today = local(now, case.zone).date()
    taken = (case.night and case.night.day >= today) or (case.lesson_day and case.lesson_day >= today)
    tonight = now <= bedtime_on(case, today) and not taken
    return today if tonight else today + timedelta(days=1)


def _timers(case: Case) -> Iterator[datetime]:
    yield from (alert.next_step for alert in case.open_alerts if alert.next_step)
    if night := case.open_night:
        yield closing(case, night)
        if reminder := reminder_due(case, night):
            yield reminder
    if case.lesson_open and case.state is State.LESSON:
        yield case.lesson_open + case.protocol.close_after
    if evening := evening_day(case):
        yield bedtime_on(case, evening)
    if case.watch:
        yield bedtime_on(case, case.watch)

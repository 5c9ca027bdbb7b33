"""What a family may ask of the programme in its own words: pause, another bedtime, stop, erase, help."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, time, timedelta

from coachbot.coach import evening, lesson
from coachbot.coach.actions import Button, Forget, Line, TakeBack, Urgency
from coachbot.coach.case import Contact, Question, Role, State
from coachbot.coach.due import last_useful, next_free_evening
from coachbot.coach.turn import Turn, line
from coachbot.programme.protocol import Who
from coachbot.programme.zones import local
from coachbot.reading import Request, Wish
from coachbot.triage import Level

ACTIVE = (State.LESSON, State.PRACTISING, State.PAUSED)
"""States in which the calendar may be changed by the family."""


def grant(turn: Turn, contact: Contact, request: Request) -> bool:
    """Do what is wished, and say so. False where the wish means nothing in this state: the words are read on."""
    granted = _GRANTS.get(request.wish)
    if granted is None or turn.case.state not in granted.states:
        return False
    if request.wish is Wish.NOT_TONIGHT and not _tonight(turn):
        return False
    if contact.role is Role.CHILD and granted.adult:
        if request.wish is Wish.STOP and _tonight(turn):
            _not_tonight(turn, contact, request)
        turn.say(contact.id, line("only-parent"))
    else:
        granted.do(turn, contact, request)
    return True


def _tell(turn: Turn, by: Contact | None, words: Line) -> None:
    """Say what was done to all; whoever did not ask for it also hears that somebody of the family did."""
    if by is None:
        turn.say_all(words)
        return
    turn.say(by.id, words)
    turn.say_all(line("asked-for"), words, to=[one for one in turn.case.contacts if one.id != by.id])


def _help(turn: Turn, contact: Contact, _: Request) -> None:
    turn.say(contact.id, line("help", bedtime=turn.case.bedtime))


def _pause(turn: Turn, contact: Contact, request: Request) -> None:
    until = local(turn.now, turn.case.zone).date() + timedelta(days=request.days) if request.days else None
    pause(turn, until, by=contact)


def pause(turn: Turn, until: date | None = None, by: Contact | None = None) -> None:
    """Stop for a while, tonight included; with a date, practice goes on by itself that evening."""
    turn.act(TakeBack())
    evening.close(turn)
    lesson.put_off(turn)
    turn.change(state=State.PAUSED, paused_until=until, next_evening=None)
    _tell(turn, by, line("paused-until", day=until) if until else line("paused"))


def _resume(turn: Turn, contact: Contact, _: Request) -> None:
    resume(turn)
    _tell(turn, contact, line("resumed", bedtime=turn.case.bedtime))


def resume(turn: Turn) -> None:
    """Go on after a pause, at the next bedtime."""
    if turn.case.state is State.PAUSED:
        turn.change(state=turn.case.running, paused_until=None, came_back=True)
        turn.change(next_evening=next_free_evening(turn.case, turn.now))


def _bedtime(turn: Turn, contact: Contact, request: Request) -> None:
    protocol = turn.case.protocol
    if request.at is None or not protocol.earliest <= request.at <= protocol.latest:
        turn.say(contact.id, line("bedtime-outside", earliest=protocol.earliest, latest=protocol.latest))
        return
    set_bedtime(turn, request.at, by=contact)


def set_bedtime(turn: Turn, at: time, by: Contact | None = None) -> None:
    """Change the bedtime. Tonight still counts if the new time is not long past."""
    turn.change(bedtime=at)
    evening_date = turn.case.next_evening
    if evening_date and turn.now > last_useful(turn.case, evening_date):
        turn.change(next_evening=next_free_evening(turn.case, turn.now))
    _tell(turn, by, line("bedtime-changed", bedtime=at))


def _stop(turn: Turn, contact: Contact, _: Request) -> None:
    withdraw(turn)
    _tell(turn, contact, line("stopped"))
    turn.say(Who.ON_CALL, line("news-stopped"), urgency=Urgency.NEWS)


def withdraw(turn: Turn) -> None:
    """Nothing more is asked of the family. A hold stays until a clinician lifts it, and then leads nowhere."""
    turn.act(TakeBack())
    evening.close(turn)
    turn.change(lesson_open=None, next_evening=None, paused_until=None, question=None)
    if turn.case.state is State.ON_HOLD:
        turn.change(back_to=State.WITHDRAWN)
    else:
        turn.change(state=State.WITHDRAWN)


def _start(turn: Turn, contact: Contact, _: Request) -> None:
    case = turn.case
    if case.state is not State.WITHDRAWN:
        _resume(turn, contact, Request(wish=Wish.RESUME))
    elif case.ended_by or case.consent is None or case.complete:
        turn.say(contact.id, line("start-closed"))
    else:
        turn.change(state=case.running, came_back=True)
        turn.change(next_evening=next_free_evening(turn.case, turn.now))
        _tell(turn, contact, line("started", bedtime=case.bedtime))


def _ask_delete(turn: Turn, contact: Contact, _: Request) -> None:
    turn.change(question=Question.DELETE)
    buttons = tuple((Button(data=f"delete:{answer}", label=line(f"button-{answer}")),) for answer in ("yes", "no"))
    turn.say(contact.id, line("delete-ask"), buttons=buttons)


def delete_answer(turn: Turn, contact: Contact, *, sure: bool) -> None:
    """The answer to "are you sure". Where a grave alert is open, a clinician must have seen it before anything goes."""
    turn.change(question=None)
    if not sure:
        turn.say(contact.id, line("delete-kept"))
        return
    withdraw(turn)
    turn.say(Who.ON_CALL, line("news-deleted"), urgency=Urgency.NEWS)
    if any(alert.level >= Level.URGENT for alert in turn.case.open_alerts):
        turn.change(forget_asked=True)
        turn.say(contact.id, line("delete-waits"))
    else:
        forget(turn)


def forget(turn: Turn) -> None:
    """Say that all is erased, and have it erased."""
    turn.say_all(line("deleted"))
    turn.act(Forget())


def _lesson(turn: Turn, contact: Contact, _: Request) -> None:
    if turn.case.open_night or turn.case.lesson_open:
        turn.say(contact.id, line("help", bedtime=turn.case.bedtime))
    else:
        lesson.repeat(turn)


def _tonight(turn: Turn) -> bool:
    """Whether there is still something of tonight to leave out."""
    today = local(turn.now, turn.case.zone).date()
    return bool(turn.case.open_night or turn.case.lesson_open or turn.case.next_evening == today)


def _not_tonight(turn: Turn, contact: Contact, _: Request) -> None:
    """End what is open; before bedtime, leave tonight out, which is not a missed night."""
    evening.close(turn)
    lesson.put_off(turn)
    today = local(turn.now, turn.case.zone).date()
    if turn.case.next_evening == today:
        turn.change(next_evening=today + timedelta(days=1))
    turn.say_all(line("tonight-over"))


def _wrong_number(turn: Turn, contact: Contact, _: Request) -> None:
    turn.say(contact.id, line("wrong-number"))
    turn.change_contact(contact.id, left=True)


@dataclass(frozen=True, slots=True)
class _Grant:
    """What a wish does, in which states it means something, and whether an adult must say it."""

    do: Callable[[Turn, Contact, Request], None]
    states: tuple[State, ...]
    adult: bool = True


_GRANTS = {
    Wish.HELP: _Grant(_help, tuple(State), adult=False),
    Wish.PAUSE: _Grant(_pause, ACTIVE),
    Wish.RESUME: _Grant(_resume, ACTIVE),
    Wish.BEDTIME: _Grant(_bedtime, (*ACTIVE, State.ON_HOLD)),
    Wish.STOP: _Grant(_stop, (State.INVITED, *ACTIVE, State.ON_HOLD)),
    Wish.START: _Grant(_start, (State.WITHDRAWN, *ACTIVE)),
    Wish.DELETE: _Grant(_ask_delete, tuple(State)),
    Wish.LESSON: _Grant(_lesson, (State.PRACTISING,), adult=False),
    Wish.NOT_TONIGHT: _Grant(_not_tonight, (State.LESSON, State.PRACTISING), adult=False),
    Wish.WRONG_NUMBER: _Grant(_wrong_number, tuple(State)),
}

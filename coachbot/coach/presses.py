"""Buttons from a family. A tap says exactly which question it answers, so that an old one is recognised."""

from collections.abc import Callable

from coachbot.coach import enrolment, evening, hold, lesson, wishes
from coachbot.coach.case import Contact, Question, Role, State, Status
from coachbot.coach.events import Pressed
from coachbot.coach.replies import CORRECTABLE
from coachbot.coach.turn import Turn, line
from coachbot.programme.positions import Position
from coachbot.reading import Mark, Word


def pressed(turn: Turn, event: Pressed) -> None:
    """Do what the button says, if its question is still open; say kindly if it is not."""
    contact = turn.case.contact(event.contact)
    name, _, rest = event.data.partition(":")
    press = _PRESSES.get(name)
    if press is None or not press(turn, contact, event, rest.split(":")):
        turn.say(contact.id, line("stale-button"))


def _consent(turn: Turn, contact: Contact, _: Pressed, parts: list[str]) -> bool:
    if contact.role is not Role.PARENT or turn.case.state is not State.INVITED:
        return False
    if parts == ["agree"]:
        enrolment.consent(turn, contact)
    else:
        enrolment.decline(turn, contact)
    return True


def _next(turn: Turn, _: Contact, __: Pressed, parts: list[str]) -> bool:
    case = turn.case
    if not case.lesson_open or lesson.at_candy(case) or parts != [str(case.lesson_step)]:
        return False
    lesson.go_on(turn)
    return True


def _candy(turn: Turn, _: Contact, __: Pressed, parts: list[str]) -> bool:
    case = turn.case
    fits = case.state is State.LESSON and case.lesson_open and lesson.at_candy(case)
    if not fits or parts[0] not in (lesson.DOWN, lesson.NOT_DOWN, lesson.LATER):
        return False
    lesson.candy_done(turn, parts[0])
    return True


def _rate(turn: Turn, contact: Contact, _: Pressed, parts: list[str]) -> bool:
    night = turn.case.night
    if night is None or len(parts) != 3 or not _current(turn, parts[0]):  # noqa: PLR2004 - night, position, mark
        return False
    position, mark = _position(parts[1]), _mark(parts[2])
    if position not in night.order or mark is None:
        return False
    before = night.mark(position)
    evening.record(turn, position, mark)
    changed = [line("corrected", marks=((position, mark),))] if before is not None or not turn.case.open_night else []
    if turn.case.open_night:
        evening.ask(turn, contact, first=tuple(changed))
    else:
        turn.change_night(status=evening.settled(turn.case.nights[-1]))
        turn.say(contact.id, *changed)
    return True


def _best(turn: Turn, contact: Contact, _: Pressed, parts: list[str]) -> bool:
    night = turn.case.night
    if night is None or len(parts) != 2 or not _current(turn, parts[0]):  # noqa: PLR2004 - night, position
        return False
    position = _position(parts[1])
    if position not in night.order and parts[1] != "none":
        return False
    again = night.best_asked or not turn.case.open_night
    turn.change_night(best=position, best_asked=True, touched=turn.now)
    changed = (line("corrected-best", position=position),) if again and position else ()
    if turn.case.open_night:
        evening.ask(turn, contact, first=changed)
    elif changed:
        turn.say(contact.id, *changed)
    return True


def _note(turn: Turn, contact: Contact, _: Pressed, parts: list[str]) -> bool:
    if turn.case.open_night is None or evening.asking(turn.case.open_night) != "note" or not _current(turn, parts[0]):
        return False
    turn.change_night(note_asked=True)
    evening.ask(turn, contact)
    return True


def _delete(turn: Turn, contact: Contact, _: Pressed, parts: list[str]) -> bool:
    if turn.case.question is not Question.DELETE or contact.role is not Role.PARENT:
        return False
    wishes.delete_answer(turn, contact, sure=parts == ["yes"])
    return True


def _watch(turn: Turn, contact: Contact, event: Pressed, parts: list[str]) -> bool:
    if turn.case.question is not Question.WATCH or contact.role is not Role.PARENT:
        return False
    hold.watch_answer(turn, contact, event.message, signs=parts[-1] == "yes")
    return True


def _current(turn: Turn, number: str) -> bool:
    night = turn.case.night
    fits = night is not None and number == str(night.number) and night.status is not Status.UNSENT
    return fits and turn.case.state in CORRECTABLE


def _position(word: str) -> Position | None:
    return Position(word) if word in set(Position) else None


def _mark(word: str) -> Mark | None:
    if word in set(Word):
        return Word(word)
    return int(word) if word in ("1", "2", "3", "4", "5") else None


_PRESSES: dict[str, Callable[[Turn, Contact, Pressed, list[str]], bool]] = {
    "consent": _consent,
    "next": _next,
    "candy": _candy,
    "rate": _rate,
    "best": _best,
    "note": _note,
    "delete": _delete,
    "watch": _watch,
}

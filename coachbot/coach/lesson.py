"""The first evening: what a throat is like, water in each position, then one candy. One step at a time.

The lesson can be had again later; then it ends before the candy, which belongs to the nights.
"""

from datetime import date, timedelta
from typing import Unpack

from coachbot.coach import alerts
from coachbot.coach.actions import Button, Line, Urgency
from coachbot.coach.case import Case, State
from coachbot.coach.due import last_useful, next_free_evening
from coachbot.coach.turn import Post, Rows, Turn, line
from coachbot.programme.protocol import Protocol
from coachbot.programme.zones import local
from coachbot.reading import Mark, Word

DOWN, NOT_DOWN, LATER = "down", "not-down", "later"


def steps(protocol: Protocol) -> list[Line]:
    """The lesson's steps in order; the last is the candy."""
    candy = protocol.candy(1)
    return [
        line("lesson-throat"),
        line("lesson-posture"),
        *(line("lesson-water", position=position) for position in protocol.positions),
        line("lesson-tongue"),
        line("lesson-sip"),
        line("lesson-candy", candy=candy.kind, size=candy.size_mm),
    ]


def open_lesson(turn: Turn, day: date) -> None:
    """Bedtime on `day`, a lesson evening: begin, or go on where it stopped."""
    case = turn.case
    if turn.now > last_useful(case, day):
        turn.change(next_evening=next_free_evening(case, turn.now))
        return
    first = line("lesson-again" if case.lesson_day else "lesson-intro")
    turn.change(lesson_open=turn.now, lesson_day=day, next_evening=None, came_back=False)
    _step(
        turn, first, line("night-safety"), urgency=Urgency.PROMPT, key=f"lesson:{day}", expires=last_useful(case, day)
    )


def repeat(turn: Turn) -> None:
    """Start over on request, where no night and no lesson is open."""
    turn.change(lesson_open=turn.now, lesson_step=0)
    _step(turn, line("lesson-again"))


def close_if_over(turn: Turn) -> None:
    """An evening's lesson that was not ended goes on tomorrow; a clinician hears of it when it keeps not happening."""
    case = turn.case
    if case.state is State.LESSON and case.lesson_open and case.lesson_open + case.protocol.close_after <= turn.now:
        put_off(turn)
        turn.change(lesson_missed=case.lesson_missed + 1)
        if turn.case.lesson_missed % case.protocol.missed_limit == 0:
            alerts.raise_once(turn, alerts.LESSON)


def put_off(turn: Turn) -> None:
    """Stop for tonight; go on at the next bedtime from the same step."""
    if turn.case.lesson_open:
        turn.change(lesson_open=None)
        if turn.case.state is State.LESSON:
            turn.change(next_evening=next_free_evening(turn.case, turn.now))


def go_on(turn: Turn) -> None:
    """The family is ready for the next step."""
    turn.change(lesson_step=turn.case.lesson_step + 1)
    if turn.case.learned and at_candy(turn.case):
        turn.change(lesson_open=None)
        turn.say_all(line("lesson-done", bedtime=turn.case.bedtime, nights=turn.case.protocol.nights))
    else:
        _step(turn)


def at_candy(case: Case) -> bool:
    """Whether the step now open is the last, which asks how the candy went."""
    return case.lesson_step >= len(steps(case.protocol)) - 1


def candy_done(turn: Turn, how: str) -> None:
    """The candy of the lesson was tried, or left for later; either way the lesson is done."""
    words = {DOWN: "lesson-went-down", NOT_DOWN: "lesson-not-down", LATER: "lesson-later"}
    case = turn.case
    today = local(turn.now, case.zone).date()
    turn.change(state=State.PRACTISING, learned=today, lesson_open=None, next_evening=today + timedelta(days=1))
    done = line("lesson-done", bedtime=case.bedtime, nights=case.protocol.nights)
    turn.say_all(line(words[how]), done)


def how_it_went(mark: Mark) -> str:
    """Turn a mark into one of the candy's three answers: a rating says that it went down."""
    return {Word.NOT_DOWN: NOT_DOWN, Word.SKIPPED: LATER}[mark] if isinstance(mark, Word) else DOWN


def _step(turn: Turn, *first: Line, **how: Unpack[Post]) -> None:
    words = steps(turn.case.protocol)[turn.case.lesson_step]
    turn.say_all(*first, words, buttons=_buttons(turn.case), picture=_picture(words), **how)


def _buttons(case: Case) -> Rows:
    if at_candy(case):
        return tuple((Button(data=f"candy:{how}", label=line(f"button-{how}")),) for how in (DOWN, NOT_DOWN, LATER))
    return ((Button(data=f"next:{case.lesson_step}", label=line("button-next")),),)


def _picture(words: Line) -> str | None:
    if words.id == "lesson-water":
        return f"position-{words.args['position']}"
    name = words.id.removeprefix("lesson-")
    return name if name in ("throat", "posture", "tongue", "sip") else None

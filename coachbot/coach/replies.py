"""Words from a family: triaged first, always (law 2), and only then read as a wish, an answer or a correction."""

from coachbot.coach import enrolment, evening, hold, lesson, wishes
from coachbot.coach.actions import Line, MarkUnread, Urgency
from coachbot.coach.case import Contact, Night, Question, Role, State, Status
from coachbot.coach.encourage import tip
from coachbot.coach.events import Replied
from coachbot.coach.turn import Rows, Turn, line
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Who
from coachbot.reading import Asking, Reading, Request, Wish, causes, read, request
from coachbot.triage import Assessment, Level, assess

CORRECTABLE = (State.PRACTISING, State.PAUSED, State.FINISHED)
"""States in which the latest night takes answers and corrections."""

INTERRUPTING = (Wish.DELETE, Wish.WRONG_NUMBER, Wish.STOP, Wish.PAUSE, Wish.BEDTIME, Wish.HELP)
"""Wishes that come before any answer; the others wait, so that "too tired tonight" may be a night's note."""

UNREAD_LIMIT = 2
"""How many replies running may stay unread before a clinician is told (law 5)."""

TROUBLE = {
    Level.EMERGENCY: hold.troubled,
    Level.URGENT: hold.troubled,
    Level.CONCERN: hold.concerned,
    Level.MEDICINE: hold.medicine,
}


def replied(turn: Turn, event: Replied) -> None:
    """Triage, then whatever the case is waiting for."""
    contact = turn.case.contact(event.contact)
    assessment = assess(event.text, lang=contact.language, sender=contact.role)
    wish = request(event.text, lang=contact.language)
    if assessment.level is not Level.NONE and not _merely_wished(contact, wish, assessment):
        turn.change(unread=0)
        _keep_answers(turn, contact, event, assessment)
        TROUBLE[assessment.level](turn, contact, assessment, event.message)
    elif not contact.left:
        _heed(turn, contact, event, wish)


def _keep_answers(turn: Turn, contact: Contact, event: Replied, assessment: Assessment) -> None:
    """A rating that stands beside a worry or a question about medicine is still a rating: nothing written is lost.

    Graver words are for people alone: whoever is frightened must not be read for numbers.
    """
    night = turn.case.open_night
    if night is None or assessment.level >= Level.URGENT:
        return
    asked = evening.asking(night)
    if asked not in (None, "note") and evening.last_asked(night, contact) == asked:
        reading = _read(contact, event.text, night, asked)
        if reading.ratings or reading.best:
            _keep(turn, reading, asked)


def _merely_wished(contact: Contact, wish: Request | None, assessment: Assessment) -> bool:
    """Whether words that are a wish and nothing else were only guessed to be trouble; a list of words knows."""
    grown = contact.role is Role.PARENT or (wish is not None and wish.wish in (Wish.YES, Wish.NO, Wish.READY))
    return wish is not None and grown and assessment.rule.startswith("model:")


def _heed(turn: Turn, contact: Contact, event: Replied, wish: Request | None) -> None:
    asked = turn.case.question
    if wish and asked and wish.wish in (Wish.YES, Wish.NO) and contact.role is Role.PARENT:
        answer_question(turn, contact, asked, event.message, yes=wish.wish is Wish.YES)
    elif _granted_or_answered(turn, contact, event, wish):
        return
    elif turn.case.consent is None:
        _before_consent(turn, contact, wish.wish if wish else None, event.message)
    elif turn.case.state is State.ON_HOLD:
        hold.reply(turn, contact, event.message)
    elif turn.case.lesson_open:
        _in_lesson(turn, contact, event, wish.wish if wish else None)
    else:
        _in_practice(turn, contact, event)


def _granted_or_answered(turn: Turn, contact: Contact, event: Replied, wish: Request | None) -> bool:
    """Wishes that interrupt, then a plain answer to the open question, then the other wishes."""
    if wish and wish.wish in INTERRUPTING and wishes.grant(turn, contact, wish):
        return True
    return _answered(turn, contact, event) or (wish is not None and wishes.grant(turn, contact, wish))


def _answered(turn: Turn, contact: Contact, event: Replied) -> bool:
    """Take a plain answer to the question that is open: "skip" skips a swallow before it can mean the whole night."""
    if turn.case.state is State.LESSON and turn.case.lesson_open and lesson.at_candy(turn.case):
        positions = turn.case.protocol.positions
        mark = read(event.text, lang=contact.language, order=positions, asking=positions[0]).ratings.get(positions[0])
        if mark:
            lesson.candy_done(turn, lesson.how_it_went(mark))
        return mark is not None
    night = turn.case.open_night
    if night is None:
        return False
    asked = evening.asking(night) or "all"
    if evening.last_asked(night, contact) != asked:
        return _overtaken(turn, contact, event, night)
    reading = _read(contact, event.text, night, asked)
    if reading.ratings or reading.best or asked == "note":
        _answer(turn, contact, event, asked, reading)
        return True
    return False


def _overtaken(turn: Turn, contact: Contact, event: Replied, night: Night) -> bool:
    """Another phone has answered what this one was asked: take what says by itself what it is about, else ask anew."""
    reading = read(event.text, lang=contact.language, order=night.order, asking="all")
    if reading.ratings or reading.best:
        _answer(turn, contact, event, "all", reading)
        return True
    asked = evening.last_asked(night, contact)
    bare = read(event.text, lang=contact.language, order=night.order, asking=asked or "all")
    if bare.ratings or bare.best or asked == "note":
        evening.ask(turn, contact)
        return True
    return False


def answer_question(turn: Turn, contact: Contact, asked: Question, message: int, *, yes: bool) -> None:
    """A yes or no to the question that stands open."""
    if asked is Question.DELETE:
        wishes.delete_answer(turn, contact, sure=yes)
    else:
        hold.watch_answer(turn, contact, message, signs=yes)


def _before_consent(turn: Turn, contact: Contact, wish: Wish | None, message: int) -> None:
    if turn.case.state is not State.INVITED:
        pass_on(turn, contact, message)
    elif contact.role is Role.PARENT and wish is Wish.YES:
        enrolment.consent(turn, contact)
    elif contact.role is Role.PARENT and wish is Wish.NO:
        enrolment.decline(turn, contact)
    else:
        turn.act(MarkUnread(message=message))
        enrolment.ask_consent(turn, contact, "consent-needed")


def _in_lesson(turn: Turn, contact: Contact, event: Replied, wish: Wish | None) -> None:
    if not lesson.at_candy(turn.case) and wish in (Wish.READY, Wish.YES):
        lesson.go_on(turn)
    elif lesson.at_candy(turn.case) and wish in (Wish.READY, Wish.YES, Wish.NO):
        lesson.candy_done(turn, lesson.NOT_DOWN if wish is Wish.NO else lesson.DOWN)
    else:
        unread(turn, contact, event.message, line("lesson-unclear"))


def _in_practice(turn: Turn, contact: Contact, event: Replied) -> None:
    night = turn.case.night
    if night is None or night.status is Status.UNSENT or turn.case.state not in CORRECTABLE:
        pass_on(turn, contact, event.message)
        return
    asked = evening.asking(night) or "all"
    reading = _read(contact, event.text, night, asked)
    if night.status is Status.OPEN:
        _answer(turn, contact, event, asked, reading)
    elif reading.ratings or reading.best:
        _correct(turn, contact, reading)
    else:
        pass_on(turn, contact, event.message)


def _read(contact: Contact, text: str, night: Night, asked: Asking) -> Reading:
    """Read the answer to what was asked; whoever was asked for one swallow may also give all that are left at once."""
    left = [position for position in night.order if night.mark(position) is None]
    if isinstance(asked, Position) and len(left) > 1:
        whole = read(text, lang=contact.language, order=left, asking="all")
        if len(whole.ratings) == len(left):
            return whole
    return read(text, lang=contact.language, order=night.order, asking=asked)


def _answer(turn: Turn, contact: Contact, event: Replied, asked: Asking, reading: Reading) -> None:
    nothing = not (reading.ratings or reading.best or reading.note)
    if reading.unclear or (nothing and isinstance(asked, Position)):
        words, buttons = evening.unclear(turn.case.nights[-1])
        unread(
            turn, contact, event.message, *tip(turn, causes(event.text, lang=contact.language)), words, buttons=buttons
        )
        return
    first = _corrected(turn, reading, again_only=True)
    _keep(turn, reading, asked)
    evening.ask(turn, contact, first=tuple(first))


def _correct(turn: Turn, contact: Contact, reading: Reading) -> None:
    lines = _corrected(turn, reading, again_only=False)
    _keep(turn, reading, "all")
    turn.change_night(status=evening.settled(turn.case.nights[-1]))
    turn.say(contact.id, *lines)


def _corrected(turn: Turn, reading: Reading, *, again_only: bool) -> list[Line]:
    night = turn.case.nights[-1]
    marks = [(one, mark) for one, mark in reading.ratings.items() if night.mark(one) is not None or not again_only]
    lines = [line("corrected", marks=tuple(marks))] if marks else []
    if reading.best and (night.best or not again_only):
        lines.append(line("corrected-best", position=reading.best))
    return lines


def _keep(turn: Turn, reading: Reading, asked: Asking) -> None:
    turn.change(unread=0)
    own = reading.note if isinstance(asked, Position) and asked in reading.ratings else None
    for position, mark in reading.ratings.items():
        evening.record(turn, position, mark, own if position == asked else None)
    answered = not reading.ratings and asked in ("best", "note")
    night = turn.case.nights[-1]
    turn.change_night(
        touched=turn.now,
        best=reading.best or night.best,
        best_asked=night.best_asked or reading.best is not None or (answered and asked == "best"),
        note="\n".join(filter(None, [night.note, None if own else reading.note])) or None,
        note_asked=night.note_asked or reading.note is not None or (answered and asked == "note" and not reading.best),
    )


def unread(turn: Turn, contact: Contact, message: int, *words: Line, buttons: Rows = ()) -> None:
    """Ask again, showing how to answer; keep the words for the clinician, who is told when it happens twice running."""
    turn.change(unread=turn.case.unread + 1)
    turn.act(MarkUnread(message=message))
    turn.say(contact.id, *words, buttons=buttons)
    if turn.case.unread % UNREAD_LIMIT == 0:
        turn.say(Who.ON_CALL, line("news-unread"), urgency=Urgency.NEWS)


def pass_on(turn: Turn, contact: Contact, message: int) -> None:
    """Words that answer no question go to the clinician. Someone who stopped is not written to, except for safety."""
    turn.act(MarkUnread(message=message))
    if turn.case.state is not State.WITHDRAWN:
        turn.say(contact.id, line("paused-reply" if turn.case.state is State.PAUSED else "passed-on"))

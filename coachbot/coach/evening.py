"""A night, from the prompt at bedtime to its close."""

from collections.abc import Iterable
from datetime import date, timedelta
from typing import Unpack, cast

from coachbot.coach import alerts, encourage
from coachbot.coach.actions import Button, Line, Urgency
from coachbot.coach.case import Contact, Night, Status, Swallow
from coachbot.coach.due import closing, last_useful, next_free_evening, reminder_due
from coachbot.coach.finish import finish
from coachbot.coach.texts import HOW_TO
from coachbot.coach.turn import Post, Rows, Turn, line
from coachbot.programme.positions import Position
from coachbot.programme.zones import instant, local
from coachbot.reading import Asking, Mark, Word

PROMPT, CHEER = "prompt", "cheer"
"""What the keys of a night's two messages begin with: the cheer goes before, so that the order stays short."""


def asking(night: Night) -> Asking | None:
    """What an open night still asks, or None when it has it all. A closed night only takes corrections: "all"."""
    if night.status is not Status.OPEN:
        return "all"
    if night.next_position:
        return night.next_position
    if not night.best_asked:
        return "best"
    return None if night.note_asked else "note"


def open_evening(turn: Turn, day: date) -> None:
    """Bedtime on `day`: send the night's order, unless that comes too late to be of use or nothing is left to do."""
    case = turn.case
    if case.complete:
        finish(turn)
    elif turn.now > last_useful(case, day):
        turn.change(late=True, next_evening=next_free_evening(case, turn.now))
    elif any(contact.open for contact in case.contacts):
        _prompt(turn)
    else:
        turn.change(next_evening=day + timedelta(days=1))


def remind(turn: Turn) -> None:
    """Ask once more for what is still missing, within the family's hours."""
    night = turn.case.open_night
    due = reminder_due(turn.case, night) if night else None
    if night is None or due is None or due > turn.now:
        return
    turn.change_night(reminded=True)
    if turn.now > instant(night.day, turn.case.protocol.latest, turn.case.zone):
        return
    if asking(night) == "note":
        # All that counts is here, and nobody need be asked twice for a note: the night is told and done.
        turn.change_night(note_asked=True)
        complete(turn)
    else:
        ask(turn, *turn.case.contacts, first=(line("night-reminder"),), expires=closing(turn.case, night))


def close_if_over(turn: Turn) -> None:
    """Close the open night when its time is up, without a word: it is late, and the next bedtime speaks of it."""
    night = turn.case.open_night
    if night and closing(turn.case, night) <= turn.now:
        close(turn)


def close(turn: Turn) -> None:
    """End the open night with what was said so far. Nothing happens where none is open."""
    night = turn.case.open_night
    if night is None:
        return
    status = settled(night)
    turn.change_night(status=status)
    following = night.day + timedelta(days=1)
    useful = turn.now <= last_useful(turn.case, following)
    turn.change(next_evening=following if useful else next_free_evening(turn.case, turn.now))
    if status is Status.MISSED and turn.case.missed_in_a_row % turn.case.protocol.missed_limit == 0:
        alerts.raise_once(turn, alerts.MISSED)


def settled(night: Night) -> Status:
    """What a night amounts to by its swallows: a night of nothing but skips was not practised."""
    tried = [swallow for swallow in night.swallows if swallow.mark is not Word.SKIPPED]
    if not tried:
        return Status.MISSED
    return Status.PARTIAL if night.next_position else Status.FINISHED


def record(turn: Turn, position: Position, mark: Mark, note: str | None = None) -> None:
    """Put one swallow into the latest night."""
    night = turn.case.nights[-1]
    turn.change_night(
        swallows=night.record(Swallow(position=position, mark=mark, note=note)).swallows, touched=turn.now
    )


def ask(turn: Turn, *contacts: Contact, first: tuple[Line, ...] = (), **how: Unpack[Post]) -> None:
    """Ask for what the open night wants next, or end the night when it has everything."""
    night = turn.case.nights[-1]
    asked = asking(night)
    if asked is None:
        complete(turn, first)
        return
    words, buttons = _question(night, asked)
    turn.say_all(*first, words, to=contacts, buttons=buttons, **how)
    _put(turn, contacts, asked)


def last_asked(night: Night, contact: Contact) -> Asking | None:
    """What this chat was asked last: with two phones, one may still show a question that the other has answered."""
    asked = dict(night.asked).get(contact.id)
    if asked in ("best", "note"):
        return cast("Asking", asked)
    return Position(asked) if asked else None


def _put(turn: Turn, contacts: Iterable[Contact], asked: Asking) -> None:
    put = {**dict(turn.case.nights[-1].asked), **{contact.id: str(asked) for contact in contacts}}
    turn.change_night(asked=tuple(put.items()))


def complete(turn: Turn, first: tuple[Line, ...] = ()) -> None:
    """Every answer is in: tell the family how the night was, cheer, give a tip; after the last night, finish."""
    night = turn.change_night(status=settled(turn.case.nights[-1]))
    turn.change(next_evening=night.day + timedelta(days=1))
    lines = [*first, line("night-done", marks=tuple((swallow.position, swallow.mark) for swallow in night.swallows))]
    if night.best:
        lines.append(line("night-best", position=night.best))
    if not turn.case.complete:
        lines += encourage.closing_words(turn)
    turn.say_all(*lines)
    if turn.case.complete:
        finish(turn)


def _prompt(turn: Turn) -> None:
    case, day = turn.case, local(turn.now, turn.case.zone).date()
    order = case.orders[case.finished_orders]
    candy = case.protocol.candy(case.practised + 1)
    first = [*([line("night-late")] if case.late else []), *encourage.opening_words(turn)]
    night = Night(
        number=len(case.nights) + 1,
        turn=case.finished_orders + 1,
        day=day,
        order=order,
        candy=candy,
        prompted=turn.now,
        touched=turn.now,
        recipients=sum(contact.open for contact in case.contacts),
        asked=tuple((contact.id, str(order[0])) for contact in case.contacts),
    )
    ended = {"late": False, "came_back": False, "lesson_open": None, "next_evening": None, "question": None}
    turn.change(nights=(*case.nights, night), **ended)
    question, buttons = _question(night, order[0])
    told = line(
        "night-prompt",
        night=case.practised + 1,
        nights=case.protocol.nights,
        order=order,
        candy=candy.kind,
        size=candy.size_mm,
    )
    if first:
        turn.say_all(*first, urgency=Urgency.PROMPT, key=f"{CHEER}:{day}", expires=last_useful(case, day))
    turn.say_all(
        told,
        line(f"night-howto-{case.practised % HOW_TO + 1}"),
        line("night-safety"),
        question,
        urgency=Urgency.PROMPT,
        key=f"{PROMPT}:{day}",
        buttons=buttons,
        picture="order-" + "-".join(order),
        expires=last_useful(case, day),
    )


def undelivered(turn: Turn) -> None:
    """A prompt could not be sent in time. When none could, the evening was lost by us and not by the family."""
    night = turn.case.open_night
    if night is None or night.swallows:
        return
    lost = turn.change_night(undelivered=night.undelivered + 1)
    if lost.undelivered >= lost.recipients:
        turn.change_night(status=Status.UNSENT)
        turn.change(late=True, next_evening=night.day + timedelta(days=1))


def unclear(night: Night) -> tuple[Line, Rows]:
    """The open question once more: what was not clear, and the shortest way to answer."""
    words, buttons = _question(night, asking(night) or "note")
    return line(words.id.replace("ask-", "unclear-"), **words.args), buttons


def _question(night: Night, asked: Asking) -> tuple[Line, Rows]:
    if asked == "best":
        return line("ask-best"), _best_buttons(night)
    if asked == "note":
        return line("ask-note"), ((Button(data=f"note:{night.number}:none", label=line("button-no-note")),),)
    position = Position(asked)
    return line("ask-swallow", position=position), _rating_buttons(night, position)


def _rating_buttons(night: Night, position: Position) -> Rows:
    stem = f"rate:{night.number}:{position}"
    rates = tuple(Button(data=f"{stem}:{rating}", label=line("button-rate", rating=rating)) for rating in range(1, 6))
    return (
        rates,
        (
            Button(data=f"{stem}:{Word.NOT_DOWN}", label=line("button-not-down")),
            Button(data=f"{stem}:{Word.SKIPPED}", label=line("button-skip")),
        ),
    )


def _best_buttons(night: Night) -> Rows:
    stem = f"best:{night.number}"
    rows = [(Button(data=f"{stem}:{one}", label=line("button-position", position=one)),) for one in night.order]
    return (*rows, (Button(data=f"{stem}:none", label=line("button-no-best")),))

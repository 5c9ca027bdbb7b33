"""What to say of what happened: cheer that fits and does not repeat itself, tips for what went wrong.

Praise goes to practice, never to results; nothing shames. Common practice, no source.
"""

from collections.abc import Iterator, Sequence
from datetime import timedelta
from statistics import fmean

from coachbot.coach.actions import Line
from coachbot.coach.case import Case, Night, Spoken, Status
from coachbot.coach.texts import TIPS, WORDINGS, Situation
from coachbot.coach.turn import Turn, line
from coachbot.programme.zones import local
from coachbot.reading import Cause, Word, causes

REST = timedelta(days=7)
"""How long a wording rests before it may come again."""

LAST_FEW = 3
"""Nights left when the family first hears that the end is near."""

STEP_UP = 0.5
"""By how much of a rating a night must beat the one before to be called easier."""

HARD = 2.5
"""The mean rating up to which a night was a hard one, and `LOW` the single rating that deserves a tip."""

LOW = 1

USUAL_CAUSES = (Cause.FRONT, Cause.WATER, Cause.SLOUCH)
"""The usual troubles, tried in turn where nobody said what went wrong."""


def opening_words(turn: Turn) -> list[Line]:
    """The cheer before a night's order, where there is a reason for one."""
    return _cheer(turn, list(_opening(turn.case)), night=turn.case.practised + 1)


def closing_words(turn: Turn) -> list[Line]:
    """The cheer after a night, and a tip if something went wrong."""
    night = turn.case.nights[-1]
    told = " ".join(_notes(night))
    said = causes(told, lang=turn.case.language) if told else ()
    cheer = _cheer(turn, list(_closing(turn.case, night, said)), night=turn.case.practised)
    return [*cheer, *tip(turn, said or _guessed(night))]


def tip(turn: Turn, said: Sequence[Cause]) -> list[Line]:
    """One tip for the causes in the order given, never the same one twice running."""
    first = len(turn.case.nights) // len(USUAL_CAUSES)
    candidates = [f"tip-{cause}-{(first + number) % TIPS + 1}" for cause in said for number in range(TIPS)]
    chosen = next((text for text in candidates if text != turn.case.tip), None)
    if chosen is None:
        return []
    turn.change(tip=chosen)
    return [line(chosen)]


def _opening(case: Case) -> Iterator[Situation]:
    coming = case.practised + 1
    if case.came_back:
        yield Situation.COMING_BACK
    elif case.missed_in_a_row > 1:
        yield Situation.SEVERAL_MISSED
    elif case.missed_in_a_row == 1:
        yield Situation.ONE_MISSED
    elif case.night and case.night.status is Status.PARTIAL:
        yield Situation.PARTIAL
    elif coming == case.protocol.nights:
        yield Situation.LAST_NIGHT
    elif coming == case.protocol.nights - LAST_FEW + 1:
        yield Situation.LAST_NIGHTS


def _closing(case: Case, night: Night, said: Sequence[Cause]) -> Iterator[Situation]:
    earlier = [one for one in case.nights[:-1] if one.status in (Status.FINISHED, Status.PARTIAL)]
    if night.status is Status.MISSED:
        return
    down = [swallow.mark for swallow in night.swallows if isinstance(swallow.mark, int)]
    if not down:
        yield Situation.NOTHING_DOWN
    if not earlier:
        yield Situation.FIRST_NIGHT_HARD if not down or fmean(down) <= HARD else Situation.FIRST_NIGHT
    if Cause.TASTE in said:
        yield Situation.YUCKY
    if Cause.TIRED in said:
        yield Situation.TIRED
    if case.practised == case.protocol.nights // 2:
        yield Situation.HALF_WAY
    if earlier:
        yield from _compared(earlier[-1], night, down)
    if any(swallow.mark is Word.SKIPPED for swallow in night.swallows):
        yield Situation.SKIPPED
    if earlier:
        yield Situation.STEADY


def _compared(before: Night, night: Night, down: Sequence[int]) -> Iterator[Situation]:
    then = [swallow.mark for swallow in before.swallows if isinstance(swallow.mark, int)]
    if night.best and before.best and night.best is not before.best:
        yield Situation.FAVOURITE_CHANGED
    if down and then and fmean(down) >= fmean(then) + STEP_UP:
        yield Situation.IMPROVING


def _cheer(turn: Turn, situations: Sequence[Situation], *, night: int) -> list[Line]:
    today = local(turn.now, turn.case.zone).date()
    nights = turn.case.protocol.nights
    recent = tuple(spoken for spoken in turn.case.spoken if today - spoken.day < REST)
    used = {spoken.text for spoken in recent}
    wordings = (f"cheer-{one}-{number}" for one in situations for number in range(1, WORDINGS[one] + 1))
    chosen = next((text for text in wordings if text not in used), None)
    if chosen is None:
        return []
    turn.change(spoken=(*recent, Spoken(text=chosen, day=today)))
    return [line(chosen, night=night, nights=nights, left=max(nights - night, 0))]


def _guessed(night: Night) -> Sequence[Cause]:
    hard = any(swallow.mark is Word.NOT_DOWN or swallow.mark == LOW for swallow in night.swallows)
    first = night.number % len(USUAL_CAUSES)
    return (*USUAL_CAUSES[first:], *USUAL_CAUSES[:first]) if hard else ()


def _notes(night: Night) -> Iterator[str]:
    yield from (swallow.note for swallow in night.swallows if swallow.note)
    if night.note:
        yield night.note

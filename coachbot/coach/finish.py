"""The end: what the family hears, and what the clinician gets for the follow-up visit."""

from coachbot.coach.actions import Line, Summarise
from coachbot.coach.case import Case, Night, Role, State, Status
from coachbot.coach.turn import Turn, line
from coachbot.programme.positions import Position


def finish(turn: Turn) -> None:
    """Practice is over: wrap up with parent and child, give the certificate, send the summary to the clinician."""
    case = turn.case
    turn.change(state=State.FINISHED, next_evening=None, question=None, lesson_open=None)
    told = line("finish", practised=case.practised, nights=case.protocol.nights)
    turn.say_all(told, *_favourites(case), line("finish-next"), key="finish")
    children = [contact for contact in case.contacts if contact.role is Role.CHILD and contact.open]
    if case.practised:
        turn.say_all(line("certificate"), to=children or case.parents, attachment="certificate", key="certificate")
    turn.act(Summarise(key="summary"))


def first_and_last(case: Case) -> tuple[Position | None, Position | None]:
    """The favourites of the first and of the last practised night that has one."""
    named = [one for one in map(favourite, _practised(case)) if one]
    return (named[0], named[-1]) if named else (None, None)


def favourite(night: Night) -> Position | None:
    """The position that the child named, else the one with the best mark if there is just one such."""
    if night.best:
        return night.best
    marks = {swallow.position: swallow.mark for swallow in night.swallows if isinstance(swallow.mark, int)}
    best = [position for position, mark in marks.items() if mark == max(marks.values())]
    return best[0] if len(best) == 1 else None


def _favourites(case: Case) -> list[Line]:
    first, last = first_and_last(case)
    if first is None or last is None:
        return []
    if first is last:
        return [line("finish-same", last=last)]
    return [line("finish-favourites", first=first, last=last)]


def _practised(case: Case) -> list[Night]:
    return [night for night in case.nights if night.status in (Status.FINISHED, Status.PARTIAL)]

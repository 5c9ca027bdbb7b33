"""Rating sheets on paper, for the nights still to come of a family without a phone."""

from coachbot.coach.case import Case, State
from coachbot.programme.positions import Position
from coachbot.report.heads import drawn
from coachbot.report.names import called, name_line
from coachbot.report.setting import printed
from coachbot.report.wording import Part, Say

OPEN_STATES = (State.INVITED, State.LESSON, State.PRACTISING, State.PAUSED)
"""The states in which nights may still come. In no other does a paper ask anyone to swallow anything."""


class NothingToPrintError(ValueError):
    """There are no nights to print sheets for; the message says why and what to do."""


def sheets(case: Case, *, language: str) -> bytes:
    """A4 pages as a PDF (tagged, PDF/UA-1): a box for each night still to come, in the order fixed for it.

    Orders are taken as they would be by message: a night that is not practised whole keeps its order for the next.

    Raises:
        NothingToPrintError: the case is in a state without practice, or all its nights are used.
        KeyError: there is no such language.
    """
    say = Say(language)
    data = {**_head(case, say), "nights": _nights(case, say), "words": _words(case, say)}
    return printed("sheets", data, language=language, form="pdf")


def _head(case: Case, say: Say) -> Part:
    return {
        "title": say("sheet-title", child=called(case.child.name, say)),
        "aside": [say("sheet-kind")],
        "name_line": name_line(case.child.name, say),
        "how": say("sheet-how"),
        "under": [
            say("sheet-missed"),
            say("left-right", child=called(case.child.name, say)),
            say("sheet-trouble", emergency=case.protocol.emergency_number),
            say("sheet-bring"),
        ],
    }


def _nights(case: Case, say: Say) -> list[Part]:
    if case.state not in OPEN_STATES:
        raise NothingToPrintError(
            f"no sheets while the case is {case.state}: practice must be open; see the case first"
        )
    left = min(case.protocol.nights - case.practised, case.protocol.max_nights - len(case.nights))
    if left < 1:
        raise NothingToPrintError("all nights of this case are used; there is nothing left to print")
    orders = case.orders[case.finished_orders :][:left]
    return [_night(case, case.practised + place, order, say) for place, order in enumerate(orders, start=1)]


def _night(case: Case, number: int, order: tuple[Position, ...], say: Say) -> Part:
    return {
        "night": say("sheet-night", night=number, nights=case.protocol.nights),
        "candy": say("sheet-candy", candy=say.candy(case.protocol.candy(number))),
        "order": [{"name": say.position(position), "head": drawn(position)} for position in order],
    }


def _words(case: Case, say: Say) -> Part:
    plain = {
        name: say(f"sheet-{name}") for name in ("date", "hard", "easy", "down", "skip", "best", "best-none", "note")
    }
    return {**plain, "safety": say("sheet-safety", emergency=case.protocol.emergency_number)}

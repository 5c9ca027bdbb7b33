"""A case's record as the estimates take it."""

from coachbot.coach.case import Case, Night, Status
from coachbot.insight.swallows import Swallow
from coachbot.reading.readings import Word


def swallows(case: Case) -> tuple[Swallow, ...]:
    """All swallows that were tried, in order. Skipped positions say nothing, and an open night is not yet a record."""
    return tuple(one for night in case.nights if night.status is not Status.OPEN for one in _of_night(night))


def _of_night(night: Night) -> list[Swallow]:
    return [
        Swallow(
            night=night.number,
            place=night.order.index(swallow.position) + 1,
            position=swallow.position,
            rating=None if isinstance(swallow.mark, Word) else swallow.mark,
            went_down=swallow.mark is not Word.NOT_DOWN,
        )
        for swallow in night.swallows
        if swallow.mark is not Word.SKIPPED
    ]

"""The nights of the follow-up report: all in a grid, and each position's course."""

from collections.abc import Iterator

from coachbot.coach.case import Status
from coachbot.programme.positions import Position
from coachbot.reading.readings import Mark, Word
from coachbot.report.heads import drawn
from coachbot.report.names import called
from coachbot.report.numbers import numbers
from coachbot.report.printable import shortened
from coachbot.report.view import Evening, View
from coachbot.report.wording import Part, Say

BAND = 30
"""The most evenings that stand side by side in the grid; more go on in a second band."""

CANDIES = 120
"""The most letters that the candies may take."""

MARKS = {Word.NOT_DOWN: "✕", Word.SKIPPED: "–"}

MOONS = {
    Status.FINISHED: "●",
    Status.PARTIAL: "◐",
    Status.MISSED: "○",
    Status.UNSENT: "✉",
    Status.OPEN: "…",
}
"""How an evening went, to be read without colour."""


def grid(shown: View, say: Say) -> Part:
    """The grid of nights by positions, in bands, with the key to its signs."""
    evenings = shown.evenings
    return {
        "title": say("grid"),
        "night": say("grid-night"),
        "none": say("grid-none"),
        "bands": [_band(evenings[start : start + BAND], shown, say) for start in range(0, len(evenings), BAND)],
        "key": list(_grid_key(shown, say)),
        "under": " ".join([*_candies(shown, say), *_sides(shown, say)]),
    }


def _band(evenings: tuple[Evening, ...], shown: View, say: Say) -> Part:
    return {
        "evenings": [{"number": one.number, "moon": MOONS[one.status], "status": str(one.status)} for one in evenings],
        "rows": [
            {
                "name": say.position(position),
                "cells": [{"mark": _mark(one.marks.get(position)), "best": one.best is position} for one in evenings],
            }
            for position in shown.positions
        ],
    }


def _mark(mark: Mark | None) -> str:
    if isinstance(mark, Word):
        return MARKS[mark]
    return "" if mark is None else str(mark)


def _grid_key(shown: View, say: Say) -> Iterator[str]:
    marks = {mark for evening in shown.evenings for mark in evening.marks.values()}
    yield say("key-rating")
    yield say("key-best")
    yield from (say(f"key-{word.replace('_', '-')}", sign=sign) for word, sign in MARKS.items() if word in marks)
    yield from (say(f"key-{status}", sign=sign) for status, sign in MOONS.items() if shown.count(status))


def _candies(shown: View, say: Say) -> Iterator[str]:
    parts = [say.candy(candy) for _, candy in shown.candies[:1]]
    parts += [say("candy-later", night=night, candy=say.candy(candy)) for night, candy in shown.candies[1:]]
    if parts:
        yield say("grid-candy", candies=shortened("; ".join(parts), CANDIES))


def _sides(shown: View, say: Say) -> Iterator[str]:
    if {Position.LEFT, Position.RIGHT} & set(shown.positions):
        yield say("left-right", child=called(shown.name, say))


def courses(shown: View, say: Say) -> Part:
    """Each position's ratings, where they are heading, and how often the candy went down."""
    tried = any(shown.summary.courses.values())
    keys = {"courses-key": True, "courses-line": tried, "courses-ahead": shown.ahead}
    return {
        "title": say("courses"),
        "key": " ".join(say(name) for name, there in keys.items() if there),
        "numbers": " ".join(numbers(shown.summary, say)) if tried else None,
        "nights": len(shown.evenings),
        "plots": [_course(position, shown, say) | {"ahead": position is shown.ahead} for position in shown.positions],
    }


def _course(position: Position, shown: View, say: Say) -> Part:
    rated = [(evening.number, evening.marks[position]) for evening in shown.evenings if position in evening.marks]
    tried = [(night, mark) for night, mark in rated if mark is not Word.SKIPPED]
    points = [say("course-point", night=night, mark=say.mark(mark)) for night, mark in tried]
    went = shown.summary.got_down[position]
    return {
        "name": say.position(position),
        "head": drawn(position),
        "points": [[night, 0 if isinstance(mark, Word) else mark] for night, mark in tried],
        "levels": [[one.night, one.level, one.low, one.high] for one in shown.summary.courses[position]],
        "down": say("down", down=went.down, tries=went.tried) if went.tried else say("down-none"),
        "alt": ". ".join([say("course-alt", position=position), ", ".join(points)]),
    }

"""The parts of the follow-up report in words, as its layout takes them."""

from collections.abc import Iterator

from coachbot.coach.case import Status
from coachbot.programme.positions import Position
from coachbot.reading.readings import Mark, Word
from coachbot.report.heads import drawn
from coachbot.report.names import called, name_line
from coachbot.report.numbers import numbers
from coachbot.report.printable import printable, shortened
from coachbot.report.view import Evening, Note, View
from coachbot.report.wording import Say

Part = dict[str, object]

BAND = 30
"""The most evenings that stand side by side in the grid; more go on in a second band."""

NOTE = 160
"""The most letters of a note."""

STOPS = 3
"""The most signs of choking that are listed, the latest ones."""

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


def page(shown: View, say: Say) -> Part:
    """All that stands on the page."""
    return {
        "head": _head(shown, say),
        "answer": _answer(shown, say),
        "grid": _grid(shown, say),
        "courses": _courses(shown, say),
        "facts": [
            {"title": say("ready"), "lines": list(_ready(shown, say))},
            {"title": say("adherence"), "lines": list(_adherence(shown, say))},
        ],
        "stops": {"title": say("stops"), "lines": list(_stops(shown, say))},
        "notes": _notes(shown.notes, say),
        "choice": _choice(shown, say),
        "cautions": {"title": say("cautions"), "lines": list(_cautions(shown, say))},
    }


def _head(shown: View, say: Say) -> Part:
    days = [evening.day for evening in shown.evenings]
    period = [say("report-period", first=say.date(days[0]), last=say.date(days[-1]))] if days else []
    practised = say("report-practised", practised=shown.practised, planned=shown.planned)
    return {
        "title": say("report-title", child=called(shown.name, say)),
        "aside": [say("report-kind"), *period, practised],
        "name_line": name_line(shown.name, say),
        "held": say("report-held") if shown.held else None,
    }


def _answer(shown: View, say: Say) -> Part:
    found = shown.summary.estimate
    told = list(_answer_lines(shown, say))
    bars = [
        {
            "name": say.position(position),
            "share": chance,
            "label": say("bar", **_chance(chance)),
            "ahead": position is shown.ahead,
        }
        for position, chance in found.probability.items()
    ]
    return {
        "clear": found.clear,
        "told": told[0],
        "why": told[1:],
        "bars": bars if found.favourite else [],
        "bars_title": say("bars"),
        "favourites": say("favourites"),
        "named": [_favourite(label, one, say) for label, one in _named(shown).items() if one],
    }


def _answer_lines(shown: View, say: Say) -> Iterator[str]:
    found = shown.summary.estimate
    if found.favourite is None:
        yield say("answer-none")
        yield say("answer-none-why")
        return
    chance = say("chance", **_chance(found.probability[found.favourite]))
    if found.clear:
        yield say("answer-clear", favourite=found.favourite)
        yield say("answer-clear-why", child=called(shown.name, say), favourite=found.favourite, chance=chance)
        return
    yield say("answer-unclear")
    if shown.ahead:
        yield say("answer-unclear-why", favourite=shown.ahead, chance=chance)
    else:
        yield say("answer-level")
    if not shown.held:
        yield say("answer-more", more=found.more_nights) if found.more_nights else say("answer-no-more")


def _chance(share: float) -> dict[str, str | int]:
    """A probability as whole hundredths; one that would round to none or to all is called less or more than that."""
    percent = round(100 * share)
    return {"percent": percent, "edge": {0: "least", 100: "most"}.get(percent, "between")}


def _named(shown: View) -> dict[str, Position | None]:
    return {"first": shown.first, "last": shown.last if shown.practised > 1 else None}


def _favourite(label: str, position: Position, say: Say) -> Part:
    return {"label": say(label), "name": say.position(position), "head": drawn(position)}


def _grid(shown: View, say: Say) -> Part:
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


def _courses(shown: View, say: Say) -> Part:
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


def _ready(shown: View, say: Say) -> Iterator[str]:
    if shown.ahead is None:
        yield say("ready-none")
        return
    lately = shown.summary.lately
    yield say("ready-answer", position=shown.ahead, down=lately.down, tries=lately.tried)
    yield say(f"ready-{shown.readiness}")


def _adherence(shown: View, say: Say) -> Iterator[str]:
    counts = {"practised": shown.practised, "planned": shown.planned, "evenings": len(shown.evenings)}
    yield say("adherence-done", **counts)
    for status in (Status.PARTIAL, Status.MISSED, Status.UNSENT):
        if count := shown.count(status):
            yield say(f"adherence-{status}", count=count)


def _stops(shown: View, say: Say) -> Iterator[str]:
    if not shown.stops:
        yield say("stops-none")
    for stop in shown.stops[-STOPS:]:
        name = "stop-seen" if stop.seen else "stop-open"
        yield say(name, date=say.date(stop.day), category=say.category(stop.category))
    if len(shown.stops) > STOPS:
        yield say("stops-more", count=len(shown.stops) - STOPS)


def _notes(notes: tuple[Note, ...], say: Say) -> Part:
    shown = [(note, shortened(text, NOTE)) for note in notes if (text := printable(note.text))]
    entries = [{"where": _where(note, say), "text": text} for note, text in shown]
    rest = [len(notes) - fitting for fitting in range(len(entries) + 1)]
    left = [say("notes-more", count=count) if count else "" for count in rest]
    return {"title": say("notes"), "none": say("notes-none"), "entries": entries, "left": left}


def _where(note: Note, say: Say) -> str:
    if note.position is None:
        return say("note-night", night=note.night)
    return say("note-position", night=note.night, position=note.position)


def _choice(shown: View, say: Say) -> Part:
    return {
        "title": say("choice"),
        "positions": [
            {"name": say.position(position), "chosen": position is shown.chosen} for position in shown.positions
        ],
        "other": say("choice-other"),
        "date": say("choice-date"),
    }


def _cautions(shown: View, say: Say) -> Iterator[str]:
    yield say("caution-medicine")
    if Position.UP in shown.positions:
        yield say("caution-up", position=Position.UP)
    yield say("caution-description")
    yield say("caution-adult", emergency=shown.emergency)
    yield say("caution-desk")

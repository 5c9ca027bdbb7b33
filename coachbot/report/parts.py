"""The parts of the follow-up report in words, as its layout takes them."""

from collections.abc import Iterator

from coachbot.coach.case import Status
from coachbot.programme.positions import Position
from coachbot.report.heads import drawn
from coachbot.report.names import called, name_line
from coachbot.report.nights import courses, grid
from coachbot.report.printable import printable, shortened
from coachbot.report.view import Note, View
from coachbot.report.wording import Part, Say

NOTE = 160
"""The most letters of a note."""

STOPS = 3
"""The most signs of choking that are listed, the latest ones."""


def page(shown: View, say: Say) -> Part:
    """All that stands on the page."""
    return {
        "head": _head(shown, say),
        "answer": _answer(shown, say),
        "grid": grid(shown, say),
        "courses": courses(shown, say),
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

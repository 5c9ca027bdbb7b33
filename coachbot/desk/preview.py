"""What families are told, filled in with an invented child, for a clinic to look over."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, time

from coachbot.coach.actions import Line, Value
from coachbot.coach.texts import TEXTS, Audience
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Protocol
from coachbot.voice.catalogue import Catalogue

ORDER = tuple(Position)


@dataclass(frozen=True, slots=True)
class Preview:
    """One text as one audience reads it."""

    id: str
    audience: Audience
    words: str


def preview(catalogue: Catalogue, language: str, protocol: Protocol) -> list[Preview]:
    """All texts in one language."""
    return list(_all(catalogue, language, protocol))


def _all(catalogue: Catalogue, language: str, protocol: Protocol) -> Iterator[Preview]:
    sample = _sample(protocol)
    common: dict[str, Value] = {"child": "Noor", "emergency": protocol.emergency_number, "tone": "middle"}
    for audience in Audience:
        for name, text in TEXTS.items():
            if audience in text.audiences:
                line = Line(id=name, args={variable: sample[variable] for variable in text.variables})
                words = catalogue.render(line, language=language, audience=audience, common=common)
                yield Preview(name, audience, words)


def _sample(protocol: Protocol) -> dict[str, Value]:
    candy = protocol.candy(1)
    return {
        "names": "Noor, Ilse",
        "bedtime": time(19, 30),
        "nights": protocol.nights,
        "night": 3,
        "left": protocol.nights - 3,
        "position": Position.LEFT,
        "candy": candy.kind,
        "size": candy.size_mm,
        "order": ORDER,
        "marks": tuple(zip(ORDER, (4, 3, 5, 2, 4), strict=True)),
        "day": date(2026, 3, 2),
        "earliest": protocol.earliest,
        "latest": protocol.latest,
        "words": "…",
        "practised": protocol.nights - 1,
        "first": Position.CENTER,
        "last": Position.LEFT,
        "level": "urgent",
        "category": "choked",
        "code": "12-1",
        "steps": 2,
        "count": 3,
        "by": "Dr Imani Osei",
        "evenings": protocol.nights + 1,
        "favourite": Position.LEFT,
        "percent": 93,
        "rating": 4,
    }

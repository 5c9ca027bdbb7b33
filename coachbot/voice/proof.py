"""Every text and picture on one page, for a clinician to read and sign off before any family sees it."""

from base64 import b64encode
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, time
from importlib.resources import files

from jinja2 import Environment, select_autoescape

from coachbot.coach.actions import Line, Value
from coachbot.coach.texts import TEXTS, Audience
from coachbot.programme.positions import Position
from coachbot.reading.readings import Word
from coachbot.voice.catalogue import JOINERS, Catalogue, Form
from coachbot.voice.drawings import SCENES, picture
from coachbot.voice.gsm import segments

TONES = ("young", "middle", "teen")

COMMON: Mapping[str, Value] = {"child": "Sam", "emergency": "112"}

SAMPLES: Mapping[str, Value] = {
    "bedtime": time(19, 30),
    "by": "Dr. Okoro",
    "candy": "mint",
    "category": "choked",
    "code": "12-1",
    "count": 3,
    "day": date(2026, 12, 1),
    "earliest": time(16, 0),
    "evenings": 17,
    "favourite": Position.LEFT,
    "first": Position.CENTER,
    "last": Position.LEFT,
    "latest": time(21, 30),
    "left": 7,
    "level": "urgent",
    "marks": ((Position.LEFT, 4), (Position.UP, Word.NOT_DOWN), (Position.DOWN, Word.SKIPPED)),
    "names": "Ana, Sam",
    "night": 7,
    "nights": 14,
    "order": (Position.LEFT, Position.UP, Position.CENTER, Position.DOWN, Position.RIGHT),
    "percent": 84,
    "position": Position.LEFT,
    "practised": 13,
    "rating": 4,
    "size": 8,
    "steps": 2,
    "words": "...",
}
"""An example of each variable. Invented."""

ORDER = "order-" + "-".join(Position)

TEMPLATE = Environment(autoescape=select_autoescape(default=True), trim_blocks=True, lstrip_blocks=True).from_string(
    files("coachbot.voice").joinpath("proof.html").read_text(encoding="utf-8")
)


@dataclass(frozen=True, slots=True)
class Shown:
    """Words as somebody gets them: at which ages, and in which forms."""

    words: str
    tones: tuple[str, ...]
    forms: tuple[Form, ...]

    @property
    def segments(self) -> int:
        """How many segments it takes as a text message."""
        return segments(self.words)


def proof(catalogue: Catalogue, language: str) -> str:
    """All texts of a language, for every audience, age and form, and all pictures, as one page of HTML."""
    return TEMPLATE.render(
        word=lambda name, **args: catalogue.word(f"proof-{name}", language, **args),
        language=language,
        rooms={audience: list(_room(catalogue, language, audience)) for audience in Audience},
        pictures={name: b64encode(picture(name, language)).decode() for name in (*SCENES, ORDER)},
        tones=TONES,
    )


def _room(catalogue: Catalogue, language: str, audience: Audience) -> Iterator[tuple[str, list[Shown]]]:
    for name, text in TEXTS.items():
        if audience in text.audiences:
            yield name, list(shown(catalogue, name, language, audience))


def shown(catalogue: Catalogue, name: str, language: str, audience: Audience) -> Iterator[Shown]:
    """The versions of one text with example values; ages and forms that get the same words stand together."""
    forms: dict[tuple[str, tuple[str, ...]], list[Form]] = {}
    for form in JOINERS:
        for words, tones in _by_words(catalogue, name, language, audience, form).items():
            forms.setdefault((words, tuple(tones)), []).append(form)
    yield from (Shown(words, tones, tuple(one)) for (words, tones), one in forms.items())


def _by_words(
    catalogue: Catalogue, name: str, language: str, audience: Audience, form: Form
) -> Mapping[str, Sequence[str]]:
    line = Line(id=name, args={variable: SAMPLES[variable] for variable in TEXTS[name].variables})
    found: dict[str, list[str]] = {}
    for tone in TONES:
        common = {**COMMON, "tone": tone}
        words = catalogue.render(line, language=language, audience=audience, common=common, form=form)
        found.setdefault(words, []).append(tone)
    return found

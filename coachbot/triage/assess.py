"""The one question that triage answers: how bad is the worst thing in this reply?"""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from coachbot.triage.levels import Assessment, Level
from coachbot.triage.rulebook import LANGUAGES, rulebook
from coachbot.triage.second_reader import Opinion, second_reader
from coachbot.triage.signs import Signs, signs
from coachbot.triage.words import BREAK, QUESTION, Words, fold, split

SENDERS = ("parent", "child")
LONGEST = 24
"""Words that the second reader takes at once; a longer sentence is read in windows that overlap by half."""
_EVIDENCE = 3
_PLAIN_ENDS = " \n.?¿"
_LONGEST_ALONE = 40


# Remembered for a moment: of the same reply the inbox asks for its record, and then the coach to decide.
@lru_cache(maxsize=64)
def assess(text: str, *, lang: str, sender: str) -> Assessment:
    """The worst thing said in `text`, by the rules or by the second reader, whichever is worse.

    `lang` is the case's language (``en``, ``es``, ``fr``); a reply may be in another. `sender` is ``parent`` or
    ``child``; both are read alike, since children write from their parents' phones and parents for their children.

    Raises:
        ValueError: `lang` or `sender` is none of these.
    """
    if sender not in SENDERS:
        raise ValueError(f"sender {sender!r} is neither parent nor child")
    words = split(text)
    if _asks_or_answers(words.text):
        return Assessment(level=Level.NONE)
    found = signs(words, lang)
    by_rules = _by_rules(found, words)
    by_reading = _by_reading(by_rules.level, found, words)
    return by_reading or by_rules


def _asks_or_answers(text: str) -> bool:
    """Whether the whole reply is a word for the programme, in any language ("HELP?", "not tonight.")."""
    reply = " ".join(map(fold, text.strip(_PLAIN_ENDS).split()))
    return len(text) <= _LONGEST_ALONE and any(reply in rulebook(language).alone for language in LANGUAGES)


def _by_rules(found: Signs, words: Words) -> Assessment:
    if not found.kept:
        return Assessment(level=Level.NONE)
    worst = max(found.kept, key=lambda hit: (hit.meaning.level, -hit.first))
    places = sorted({(hit.first, hit.last) for hit in found.kept if hit.meaning.level == worst.meaning.level})
    return Assessment(
        level=worst.meaning.level,
        category=worst.meaning.category,
        evidence=tuple(dict.fromkeys(words.written(first, last) for first, last in places)),
        rule=worst.meaning.id,
    )


def _by_reading(level: Level, found: Signs, words: Words) -> Assessment | None:
    """The second reader's verdict if it is worse than `level`."""
    if level == Level.EMERGENCY:
        return None
    reader = second_reader()
    opinions = [
        (reader.opinion([words.folded[n] for n in places], level), places)
        for places in sentences(words, found.explained)
    ]
    worst, places = max(opinions, default=(Opinion(Level.NONE, ""), ()))
    if worst.level <= level:
        return None
    return Assessment(
        level=worst.level,
        category=worst.category,
        evidence=_weightiest(worst.category, places, words),
        rule=f"model:{worst.level.word}",
    )


def sentences(words: Words, explained: set[int]) -> Iterator[list[int]]:
    """The places of the words of each sentence, without what the rules explained; long ones in windows."""
    places: list[int] = []
    for place, word in enumerate(words.folded):
        if word == BREAK:
            yield from _windows(places)
            places = []
        elif place not in explained:
            places.append(place)
            if word == QUESTION:
                yield from _windows(places)
                places = []


def _windows(places: list[int]) -> Iterator[list[int]]:
    for start in range(0, max(len(places) - LONGEST // 2, min(len(places), 1)), LONGEST // 2):
        yield places[start : start + LONGEST]


def _weightiest(category: str, places: Sequence[int], words: Words) -> tuple[str, ...]:
    """The words that speak most for the category, in the order written."""
    reader = second_reader()
    spoken = [place for place in places if words.folded[place] != QUESTION]
    heaviest = sorted(spoken, key=lambda place: -reader.weight(words.folded[place], category))[:_EVIDENCE]
    return tuple(words.written(place, place) for place in sorted(heaviest))

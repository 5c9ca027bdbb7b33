"""The one question that triage answers: how bad is the worst thing in this reply?"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from coachbot.triage.levels import Assessment, Level
from coachbot.triage.matching import Hit
from coachbot.triage.rulebook import LANGUAGES, Rule, rulebook
from coachbot.triage.second_reader import LONGEST, Opinion, second_reader
from coachbot.triage.signs import signs
from coachbot.triage.words import BREAK, QUESTION, Words, fold, split

SENDERS = ("parent", "child")
_EVIDENCE = 3
_PLAIN_ENDS = " \n.?¿"
_LONGEST_ALONE = 40


class View(NamedTuple):
    """What the second reader makes of a stretch of words: their places, and the probability of each category.

    `part` says that it is one sentence of several.
    """

    places: Sequence[int]
    chances: Sequence[float]
    part: bool


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
    firm = [hit for hit in found.kept if hit.meaning.firm]
    by_firm = _by_rules(firm, words)
    if by_firm.level == Level.EMERGENCY:
        return by_firm
    views = _views(words, found.explained)
    agreed = _agreed([hit for hit in found.kept if not hit.meaning.firm], views)
    by_rules = _by_rules(firm + agreed, words) if agreed else by_firm
    return _by_reading(by_rules.level, views, words) or by_rules


def _asks_or_answers(text: str) -> bool:
    """Whether the whole reply is a word for the programme, in any language ("HELP?", "not tonight.")."""
    reply = " ".join(map(fold, text.strip(_PLAIN_ENDS).split()))
    return len(text) <= _LONGEST_ALONE and any(reply in rulebook(language).alone for language in LANGUAGES)


def _by_rules(hits: list[Hit[Rule]], words: Words) -> Assessment:
    if not hits:
        return Assessment(level=Level.NONE)
    worst = max(hits, key=lambda hit: (hit.meaning.level, -hit.first))
    places = sorted({(hit.first, hit.last) for hit in hits if hit.meaning.level == worst.meaning.level})
    return Assessment(
        level=worst.meaning.level,
        category=worst.meaning.category,
        evidence=tuple(dict.fromkeys(words.written(first, last) for first, last in places)),
        rule=worst.meaning.id,
    )


def _views(words: Words, explained: set[int]) -> list[View]:
    """The reply as a whole, and each sentence of several, so that nothing is lost among everyday words."""
    chances = second_reader().chances
    places = unexplained(words, explained)
    parts = list(_sentences(words, places))
    stretches = [(places, False), *((part, True) for part in parts if len(parts) > 1)]
    return [
        View(window, chances([words.folded[n] for n in window]), part)
        for stretch, part in stretches
        for window in _windows(stretch)
    ]


def _windows(places: list[int]) -> Iterator[list[int]]:
    """As many words as the reader takes, overlapping by half."""
    for start in range(0, max(len(places) - LONGEST // 2, min(len(places), 1)), LONGEST // 2):
        yield places[start : start + LONGEST]


def _sentences(words: Words, places: list[int]) -> Iterator[list[int]]:
    sentence: list[int] = []
    for place in places:
        sentence.append(place)
        if words.folded[place] in (BREAK, QUESTION):
            yield sentence
            sentence = []
    if sentence:
        yield sentence


def unexplained(words: Words, explained: set[int]) -> list[int]:
    """The places of the words and ends of sentences without what the rules explained, one end after the other once."""
    places: list[int] = []
    for place in range(1, len(words.folded) - 1):
        ends = words.folded[place] == BREAK
        if place not in explained and not (ends and (not places or words.folded[places[-1]] == BREAK)):
            places.append(place)
    return places


def _agreed(hits: list[Hit[Rule]], views: list[View]) -> list[Hit[Rule]]:
    """The signs that the second reader does not rule out where they stand."""
    agrees = second_reader().agrees
    places = {
        level: {place for view in views if agrees(level, view.chances) for place in view.places}
        for level in {hit.meaning.level for hit in hits}
    }
    return [hit for hit in hits if not places[hit.meaning.level].isdisjoint(range(hit.first, hit.last + 1))]


def _by_reading(level: Level, views: list[View], words: Words) -> Assessment | None:
    """The second reader's verdict if it is worse than `level`."""
    reader = second_reader()
    opinions = [(reader.opinion(view.chances, level, part=view.part), view.places) for view in views]
    worst, places = max(opinions, default=(Opinion(Level.NONE, ""), ()))
    if worst.level <= level:
        return None
    return Assessment(
        level=worst.level,
        category=worst.category,
        evidence=_weightiest(worst.category, places, words),
        rule=f"model:{worst.level.word}",
    )


def _weightiest(category: str, places: Sequence[int], words: Words) -> tuple[str, ...]:
    """The words that speak most for the category, in the order written."""
    reader = second_reader()
    spoken = [place for place in places if words.folded[place] not in (BREAK, QUESTION)]
    heaviest = sorted(spoken, key=lambda place: -reader.weight(words.folded[place], category))[:_EVIDENCE]
    return tuple(words.written(place, place) for place in sorted(heaviest))

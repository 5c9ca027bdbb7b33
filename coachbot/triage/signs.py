"""The signs that the rules find in a reply, in the case's language and in any other that its words belong to."""

from functools import lru_cache

from coachbot.triage.context import contexts
from coachbot.triage.lexicon import lexicon
from coachbot.triage.matching import Hit, Matcher, Symbols
from coachbot.triage.rulebook import LANGUAGES, Context, Rule, rulebook
from coachbot.triage.words import Words


def signs(words: Words, language: str) -> list[Hit[Rule]]:
    """Each rule that stands in the reply and keeps its weight."""
    symbols = {language: _symbols(words, language)}
    hits = _hits(symbols[language], language)
    foreign = [place for place, word in enumerate(words.folded) if not lexicon(language).knows(word)]
    if foreign:
        for other in LANGUAGES:
            if other != language:
                symbols[other] = _exact(words, other)
                hits += [hit for hit in _hits(symbols[other], other) if _touches(hit, foreign)]
    return [hit for hit in hits if hit.meaning.always or not _weakened(hit, symbols, words)] if hits else []


def _symbols(words: Words, language: str) -> Symbols:
    return list(map(lexicon(language).symbols, words.folded))


def _exact(words: Words, language: str) -> Symbols:
    return list(map(lexicon(language).exact, words.folded))


def _hits(symbols: Symbols, language: str) -> list[Hit[Rule]]:
    main, also = _matchers(language)
    hits = list(main.find(symbols))
    if not any(hit.meaning.also for hit in hits):
        return hits
    beside = {hit.meaning.id for hit in also.find(symbols)}
    return [hit for hit in hits if not hit.meaning.also or hit.meaning.id in beside]


def _touches(hit: Hit[Rule], places: list[int]) -> bool:
    return any(hit.first <= place <= hit.last for place in places)


def _weakened(sign: Hit[Rule], symbols: dict[str, Symbols], words: Words) -> bool:
    return any(
        contexts(language).weakens(phrase, sign, words)
        for language in symbols
        for phrase in _phrases(symbols[language], language)
    )


def _phrases(symbols: Symbols, language: str) -> list[Hit[Context]]:
    return contexts(language).found(symbols)


@lru_cache(maxsize=None)
def _matchers(language: str) -> tuple[Matcher[Rule], Matcher[Rule]]:
    rules = rulebook(language).rules
    return (
        Matcher((row, rule) for rule in rules for row in rule.patterns),
        Matcher((row, rule) for rule in rules for row in rule.also),
    )

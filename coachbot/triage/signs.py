"""The signs that the rules find in a reply, in the case's language and in any other that its words belong to."""

from bisect import bisect_left, bisect_right
from functools import cache
from typing import NamedTuple

from coachbot.triage.context import contexts
from coachbot.triage.lexicon import lexicon
from coachbot.triage.matching import Hit, Matcher, Symbols
from coachbot.triage.rulebook import LANGUAGES, Context, Rule, rulebook
from coachbot.triage.words import Words

_NEAR = 32
"""Words around a sign where phrases are looked for: the longest reach and the longest phrase together are fewer."""


class Signs(NamedTuple):
    """The rules that stand in a reply and keep their weight, and the places of the words that lost it."""

    kept: list[Hit[Rule]]
    explained: set[int]


def signs(words: Words, language: str) -> Signs:
    """Weigh each rule that stands in the reply against the phrases around it."""
    symbols = {language: list(map(lexicon(language).symbols, words.folded))}
    hits = _hits(symbols[language], language)
    foreign = [place for place, word in enumerate(words.folded) if not lexicon(language).knows(word)]
    if foreign:
        for other in LANGUAGES:
            if other != language:
                symbols[other] = list(map(lexicon(other).exact, words.folded))
                hits += [hit for hit in _hits(symbols[other], other) if _touches(hit, foreign)]
    if not hits:
        return Signs([], set())
    phrases = [
        (known, phrase)
        for known in symbols
        for phrase in contexts(known).found(symbols[known])
        if known == language or _touches(phrase, foreign)
    ]
    return _weighed(hits, phrases, words)


def _hits(symbols: Symbols, language: str) -> list[Hit[Rule]]:
    main, also = _matchers(language)
    hits = list(main.find(symbols))
    if not any(hit.meaning.also for hit in hits):
        return hits
    beside = {hit.meaning.id for hit in also.find(symbols)}
    return [hit for hit in hits if not hit.meaning.also or hit.meaning.id in beside]


def _touches(hit: Hit[Rule] | Hit[Context], places: list[int]) -> bool:
    return any(hit.first <= place <= hit.last for place in places)


def _weighed(hits: list[Hit[Rule]], phrases: list[tuple[str, Hit[Context]]], words: Words) -> Signs:
    phrases.sort(key=_start)
    kept: list[Hit[Rule]] = []
    explained: set[int] = set()
    for hit in hits:
        against = None if hit.meaning.always else _against(hit, phrases, words)
        if against is None:
            kept.append(hit)
        else:
            explained.update(range(hit.first, hit.last + 1), range(against.first, against.last + 1))
    for hit in kept:
        explained.difference_update(range(hit.first, hit.last + 1))
    return Signs(kept, explained)


def _against(sign: Hit[Rule], phrases: list[tuple[str, Hit[Context]]], words: Words) -> Hit[Context] | None:
    """The first phrase that takes the weight from `sign`; a sign with a negation of its own ("no air") has no other."""
    start = bisect_left(phrases, sign.first - _NEAR, key=_start)
    stop = bisect_right(phrases, sign.last + _NEAR, key=_start)
    near = phrases[start:stop]
    if any(phrase.meaning.negates and phrase.first == sign.first for _, phrase in near):
        near = [(language, phrase) for language, phrase in near if not phrase.meaning.negates]
    return next((phrase for language, phrase in near if contexts(language).weakens(phrase, sign, words)), None)


def _start(phrase: tuple[str, Hit[Context]]) -> int:
    return phrase[1].first


@cache
def _matchers(language: str) -> tuple[Matcher[Rule], Matcher[Rule]]:
    rules = rulebook(language).rules
    return (
        Matcher((row, rule) for rule in rules for row in rule.patterns),
        Matcher((row, rule) for rule in rules for row in rule.also),
    )

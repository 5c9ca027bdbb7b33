"""What takes the weight from a sign: negation, history, the hypothetical, jokes and figures of speech.

Negation follows NegEx (Chapman et al. 2001, J Biomed Inform 34(5):301-310): a trigger reaches over at most five words
to a sign, before or after it, unless a terminating word or the end of the sentence stands between; a pseudo-trigger is
none. A phrase takes the weight only from the signs that it reaches, never from another sign in the reply.
"""

from functools import cache

from coachbot.triage.matching import Hit, Matcher, Symbols
from coachbot.triage.rulebook import LANGUAGES, Context, Rule, Rulebook, rulebook
from coachbot.triage.words import BREAK, QUESTION, Words

PSEUDO = "pseudo"


class Contexts:
    """The context phrases of one language."""

    def __init__(self, book: Rulebook) -> None:
        self._matcher = Matcher((row, context) for context in book.contexts for row in context.patterns)
        self._subjects = book.subjects
        self._openers = book.subjects | book.articles
        foreign = frozenset().union(*(rulebook(other).enders for other in LANGUAGES)) - book.ordinary
        self._enders = book.enders | foreign | {BREAK, QUESTION}

    def found(self, symbols: Symbols) -> list[Hit[Context]]:
        """The phrases that count, without those inside a pseudo-trigger."""
        hits = list(self._matcher.find(symbols))
        pseudo = {place for hit in hits if hit.meaning.kind == PSEUDO for place in range(hit.first, hit.last + 1)}
        return [hit for hit in hits if hit.meaning.kind != PSEUDO and pseudo.isdisjoint(range(hit.first, hit.last + 1))]

    def weakens(self, phrase: Hit[Context], sign: Hit[Rule], words: Words) -> bool:
        """Whether `phrase` takes the weight from `sign`."""
        side = phrase.meaning.side
        if sign.meaning.level > phrase.meaning.at_most:
            return False
        if side == "self":
            return _overlap(phrase, sign)
        if phrase.last < sign.first and side in ("before", "around"):
            return self._reaches(phrase.meaning, phrase.last + 1, sign.first, words)
        if sign.last < phrase.first and side in ("after", "around"):
            return self._reaches(phrase.meaning, sign.last + 1, phrase.first, words)
        return side == "around" and _overlap(phrase, sign)

    def _reaches(self, context: Context, start: int, stop: int, words: Words) -> bool:
        """Whether nothing between word `start` and word `stop` ends the reach of a phrase."""
        if stop - start > context.reach or (start in words.commas and context.side == "before" and not context.clausal):
            return False
        if any(self._parts(place, stop, words) for place in range(start + 1, stop + 1)):
            return False
        between = words.folded[start:stop]
        if not self._enders.isdisjoint(between):
            return False
        return context.clausal or self._subjects.isdisjoint(between)

    def _parts(self, place: int, stop: int, words: Words) -> bool:
        """Whether a comma before word `place` begins something new, rather than going on with a list of signs."""
        return place in words.commas and (words.folded[place] in self._openers or stop - place > 1)


def _overlap(one: Hit[Context], other: Hit[Rule] | Hit[Context]) -> bool:
    return one.first <= other.last and other.first <= one.last


@cache
def contexts(language: str) -> Contexts:
    """The context phrases of `language`, made once."""
    return Contexts(rulebook(language))

"""The one question that triage answers: how bad is the worst thing in this reply?"""

from coachbot.triage.levels import Assessment, Level
from coachbot.triage.matching import Hit
from coachbot.triage.rulebook import Rule
from coachbot.triage.signs import signs
from coachbot.triage.words import Words, split


def assess(text: str, *, lang: str, sender: str) -> Assessment:
    """The worst thing said in `text`.

    `lang` is the case's language (``en``, ``es``, ``fr``); a reply may be in another. `sender` is ``parent`` or
    ``child``; both are read by the same rules, since children write from their parents' phones.

    Raises:
        ValueError: `lang` or `sender` is none of these.
    """
    if sender not in ("parent", "child"):
        raise ValueError(f"sender {sender!r} is neither parent nor child")
    words = split(text)
    found = signs(words, lang)
    if not found:
        return Assessment(level=Level.NONE)
    worst = max(found, key=lambda hit: (hit.meaning.level, -hit.first))
    return Assessment(
        level=worst.meaning.level,
        category=worst.meaning.category,
        evidence=_evidence(found, worst.meaning, words),
        rule=worst.meaning.id,
    )


def _evidence(found: list[Hit[Rule]], rule: Rule, words: Words) -> tuple[str, ...]:
    """The places that decided, in the order written."""
    places = sorted({(hit.first, hit.last) for hit in found if hit.meaning.level == rule.level})
    return tuple(dict.fromkeys(words.written(first, last) for first, last in places))

"""Read a reply for ratings, the best position and a note."""

import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from contextlib import suppress
from itertools import pairwise
from typing import Literal

from coachbot.programme.positions import Position
from coachbot.reading.binding import Unbound
from coachbot.reading.choosing import choices
from coachbot.reading.items import Item, Manner, items, manners, words
from coachbot.reading.lexicon import Found
from coachbot.reading.neighbours import after, before, is_kind
from coachbot.reading.numerals import numerals
from coachbot.reading.pointing import SAYS_NOTHING, is_nothing, last_word, leading_choice, pointed_at, trailing_choice
from coachbot.reading.ratings import bound, used
from coachbot.reading.readings import Reading
from coachbot.reading.remarks import aside, remark
from coachbot.reading.settling import settle

Asking = Literal["all", "best", "note"] | Position
"""What the coach asked last: all ratings of the night, the best, a note, or the rating of one position."""

_LONGEST = 1500
"""Characters beyond which a reply is read as a note or not at all."""
_UNCLEAR = Reading(unclear=True)


def read(text: str, *, lang: str, order: Sequence[Position], asking: Asking) -> Reading:
    """What `text` says of tonight's swallows.

    Conventions: a named position may always be told or put right, whatever was asked; the later of two marks counts
    only where words put the first right. "The rest" and "the others" leave out positions that were named, and those
    that are only said to have gone down. "The sides" are left and right. "The middle one" is unclear where the center
    is not the middle of the night, unless the place there is named besides. Counts of candies ("two were 4"), two
    marks for one position, a mark of "all but one", doubts and questions are unclear.

    Args:
        text: a reply, already triaged.
        lang: ``en``, ``es`` or ``fr``; words of the other two are understood where they cannot mean anything else.
        order: tonight's positions, in the order they were swallowed.
        asking: what the coach asked last.

    Returns:
        What a careful reader would be sure of. Anything less is unclear and records nothing.

    Raises:
        LexiconError: there are no words for `lang`, or its file is mis-formed.
    """
    written = unicodedata.normalize("NFC", text)
    if len(written) <= _LONGEST:
        return _surest(_readings(written, words(lang).scan(written), order, asking))
    return Reading(note=text.strip()) if asking == "note" else _UNCLEAR


def _readings(
    text: str, scanned: Sequence[Found], order: Sequence[Position], asking: Asking
) -> Iterator[tuple[Reading, int]]:
    """What the reply says, in each manner that makes sense of it, the plain one first; and how much it leaves over."""
    ways = manners(scanned)
    for manner in ways:
        found: list[Item] = []
        with suppress(Unbound):
            found = _heard(scanned, order, manner)
            reading = _reading(text, found, order, asking)
            yield reading, _left_over(found, reading) if len(ways) > 1 else 0
        if any(item.kind == "bad" and "not" not in item.roles for item in found):
            return  # what is in doubt is not to be taken for something else


def _left_over(found: Sequence[Item], reading: Reading) -> int:
    """How many words were not understood and how many positions got nothing."""
    told = {*reading.ratings, reading.best}
    named = {position for item in found if item.kind == "position" and isinstance(item.value, tuple)
             for position in item.value}  # fmt: skip
    return sum(item.kind == "word" for item in found) + len(named - told)


def _surest(readings: Iterator[tuple[Reading, int]]) -> Reading:
    """The first reading; where that leaves something over, a later one that says as much, rates more, leaves less."""
    first, left = next(readings, (_UNCLEAR, 0))
    if not left or not first.ratings:
        return first
    return next((later for later, over in readings if over < left and _says_more(later, first)), first)


def _says_more(later: Reading, first: Reading) -> bool:
    more = len(later.ratings) > len(first.ratings) and first.ratings.items() <= later.ratings.items()
    same_best = later.best == first.best or (later.best is None and first.best in later.ratings)
    return more and later.note is None and same_best


def _heard(scanned: Sequence[Found], order: Sequence[Position], manner: Manner) -> list[Item]:
    """What the reply says when it is taken in one manner; a daring manner needs a reply that is nothing but marks."""
    found = numerals(items(scanned, order=order, manner=manner), order)
    if _is_lettered([item.kind for item in found if item.kind != "symbol"]):
        raise Unbound  # "L3 R-4": bare marks they are not
    if manner is Manner.ARTICLES and any(item.kind == "word" for item in found):
        raise Unbound
    if manner in _DARING and not _is_bare(found, _DARING[manner]):
        raise Unbound
    return settle(found, len(order))


def _is_lettered(kinds: Sequence[str]) -> bool:
    """Whether half of the marks or more follow a letter."""
    return "letter" in kinds and 2 * sum(pair == ("letter", "mark") for pair in pairwise(kinds)) >= max(
        kinds.count("mark"), 1
    )


_DARING = {Manner.FOREIGN: "foreign", Manner.SOUNDS: "sounds", Manner.INITIALS: "initials"}
"""The manners that guess, and the role of the items that they guess."""
_BARE = frozenset(("mark", "position", "comma", "newline", "stop", "and", "symbol", "pause", "fix", "not"))


_JOINING = frozenset(("copula", "determiner", "article"))


_A_LIST = 3
"""So many positions and marks are a list, whatever words stand around it."""


def _is_bare(found: Sequence[Item], guessed: str) -> bool:
    """Whether a reply is nothing but positions and marks, of which some are `guessed`.

    What joins a position to its mark may stand between them ("rite wuz too"); a guess must then follow a position, or
    an article ("its a too").
    """
    told = [at for at, item in enumerate(found) if item.kind in ("mark", "position")]
    guesses = [at for at in told if guessed in found[at].roles]
    if not guesses or not _is_framed(found, told):
        return False
    if guessed == "foreign" and sum(found[at].kind == "mark" for at in told) == 1:
        return False
    if all(item.kind in _BARE for item in found[told[0] : told[-1]]):
        return True
    led_up_to = all(found[at].kind == "position" or _is_led_up_to(found, at) for at in guesses)
    return led_up_to and guessed != "initials"


def _is_framed(found: Sequence[Item], told: Sequence[int]) -> bool:
    """Whether what else is said stands around a list, and not within: one word before it, and what says nothing."""
    strange = [at for at, item in enumerate(found) if item.kind not in _BARE and not item.roles & _JOINING]
    words = [at for at in strange if found[at].kind != "filler"]
    if any(told[0] < at < told[-1] for at in strange) or len(words) > 1:
        return False
    if any(found[at].kind != "word" or at > told[0] for at in words):
        return False
    led = found[-1] is found[told[-1]] and "article" in found[told[-1] - 1].roles and "sounds" in found[told[-1]].roles
    return not strange or len(told) >= _A_LIST or (led and not words)  # "for sure" is none, "I say a sinc" is


def _is_led_up_to(found: Sequence[Item], at: int) -> bool:
    return bool(at) and ("article" in found[at - 1].roles or is_kind(found, before(found, at), "position", "fix"))


def _reading(text: str, found: Sequence[Item], order: Sequence[Position], asking: Asking) -> Reading:
    kinds = {item.kind for item in found}
    if asking == "note":
        return _note(text, found, order, kinds)
    if asking == "best" and (is_nothing(found) or ({"nothing", "best"} <= kinds and not kinds & _POINTING)):
        return Reading()
    if asking == "best" and not kinds & {"mark", "best", "bad", "negated", "stranger", "mixed"}:
        return Reading(best=pointed_at(found), note=aside(text, found))
    return _answer(text, found, kinds, order, asking)


_POINTING = frozenset(("position", "all", "mark", "bad", "negated", "stranger", "mixed", "middle"))


def _note(text: str, found: Sequence[Item], order: Sequence[Position], kinds: set[str]) -> Reading:
    """A note is kept as it was written, unless the reply says "nothing" or is plainly an answer to something else."""
    wordy = bool(kinds & _WORDY)
    if is_nothing(found, "closing"):
        return Reading()
    if wordy and not ("fix" in kinds and (_has_number(found) or {"position", "mark"} <= kinds)):
        return Reading(note=text.strip())
    if kinds & {"mark", "best", "bad"}:
        return _answer(text, found, kinds, order, "note")
    if kinds <= {"yes", *SAYS_NOTHING} and "yes" in kinds:
        raise Unbound  # there is something to say, but not what
    if not any(character.isalnum() or ord(character) > _EMOJI for character in text):
        raise Unbound
    return Reading(note=text.strip())


_WORDY = frozenset(("word", "other", "worst", "quality", "half"))
_EMOJI = 0x2000


def _has_number(found: Iterable[Item]) -> bool:
    return any(item.kind == "mark" and isinstance(item.value, int) for item in found)


def _answer(text: str, found: Sequence[Item], kinds: set[str], order: Sequence[Position], asking: Asking) -> Reading:
    """Ratings, best and note of a reply.

    Raises:
        Unbound: anything in it is not clear.
    """
    if kinds & _UNSURE or ("stranger" in kinds and any(_is_strange(found, at) for at in range(len(found)))):
        raise Unbound
    picks = choices(found) if "best" in kinds else []
    picks = picks or trailing_choice(found, len(order))
    if not picks and asking == "best":
        picks = leading_choice(found)
    best = last_word(picks, found)
    pairs, ratings = bound(found, picks, order, asking if isinstance(asking, Position) else None)
    if not ratings and best is None:
        raise Unbound
    note = remark(text, found, used(pairs, picks), reasons=asking == "all", qualities=asking != "best")
    return Reading(ratings=ratings, best=best, note=note)


_UNSURE = frozenset(("bad", "negated", "mixed"))


def _is_strange(found: Sequence[Item], at: int) -> bool:
    """Whether a position that is not in tonight's order is spoken of, not just met in a phrase of other words."""
    if found[at].kind != "stranger":
        return False
    near = [found[i].kind for i in (before(found, at), after(found, at)) if i is not None]
    return "word" not in near or "mark" in near

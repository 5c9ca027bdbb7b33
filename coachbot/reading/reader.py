"""Read a reply for ratings, the best position and a note."""

import unicodedata
from collections.abc import Iterable, Sequence
from contextlib import suppress
from itertools import pairwise
from typing import Literal

from coachbot.programme.positions import Position
from coachbot.reading.binding import Unbound
from coachbot.reading.choosing import Choice, choices, clause, single
from coachbot.reading.items import Item, Manner, items, manners, words
from coachbot.reading.lexicon import Found
from coachbot.reading.neighbours import QUIET, after, before
from coachbot.reading.numerals import numerals
from coachbot.reading.ratings import bound, used
from coachbot.reading.readings import Reading
from coachbot.reading.remarks import remark
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
        scanned = words(lang).scan(written)
        for manner in manners(scanned):
            found: list[Item] = []
            with suppress(Unbound):
                found = _heard(scanned, order, manner)
                return _reading(written, found, order, asking)
            if any(item.kind == "bad" for item in found):
                return _UNCLEAR
    elif asking == "note":
        return Reading(note=text.strip())
    return _UNCLEAR


def _heard(scanned: Sequence[Found], order: Sequence[Position], manner: Manner) -> list[Item]:
    """What the reply says when it is taken in one manner; a daring manner needs a reply that is nothing but marks."""
    found = numerals(items(scanned, order=order, manner=manner), order)
    spoken = [item.kind for item in found if item.kind != "symbol"]
    lettered = sum(pair == ("letter", "mark") for pair in pairwise(spoken))
    if lettered and 2 * lettered >= spoken.count("mark"):
        raise Unbound  # "L3 R-4": bare marks they are not
    if manner is Manner.PLAIN:
        return settle(found, len(order))
    daring = [item for item in found if item.kind in ("sound", "initial")]
    if manner is not Manner.ARTICLES and (not daring or any(item.kind not in _BARE for item in found)):
        raise Unbound
    if any(item.kind == "word" for item in found):
        raise Unbound
    return settle([_plain(item) for item in found], len(order))


_BARE = frozenset(("sound", "initial", "mark", "position", "comma", "newline", "stop", "and", "symbol", "pause"))


def _plain(item: Item) -> Item:
    if item.kind == "sound":
        return item._replace(kind="mark", value=int(str(item.value)))
    return item._replace(kind="position") if item.kind == "initial" else item


def _reading(text: str, found: Sequence[Item], order: Sequence[Position], asking: Asking) -> Reading:
    kinds = {item.kind for item in found}
    if asking == "note":
        return _note(text, found, order, kinds)
    if asking == "best" and (_is_nothing(found) or ({"nothing", "best"} <= kinds and not kinds & _POINTING)):
        return Reading()
    if asking == "best" and not kinds & {"mark", "best", "bad", "negated", "stranger", "mixed"}:
        return Reading(best=_pointed_at(found))
    return _answer(text, found, order, asking)


_POINTING = frozenset(("position", "all", "mark", "bad", "negated", "stranger", "mixed", "middle"))


def _note(text: str, found: Sequence[Item], order: Sequence[Position], kinds: set[str]) -> Reading:
    """A note is kept as it was written, unless the reply says "nothing" or is plainly an answer to something else."""
    wordy = bool(kinds & _WORDY)
    if _is_nothing(found, "closing"):
        return Reading()
    if wordy and not ("fix" in kinds and (_has_number(found) or {"position", "mark"} <= kinds)):
        return Reading(note=text.strip())
    if kinds & {"mark", "best", "bad"}:
        return _answer(text, found, order, "note")
    if kinds <= {"yes", *_SAYS_NOTHING} and "yes" in kinds:
        raise Unbound  # there is something to say, but not what
    if not any(character.isalnum() or ord(character) > _EMOJI for character in text):
        raise Unbound
    return Reading(note=text.strip())


_WORDY = frozenset(("word", "other", "worst", "quality", "half"))
_NOTHING_MORE = frozenset(
    ("filler", "letter", "because", "symbol", "comma", "stop", "newline", "pause", "fix", "quality", "article", "not")
)
_EMOJI = 0x2000


def _is_nothing(found: Sequence[Item], *also: str) -> bool:
    """Whether the reply says that there is nothing to say, or only words of the roles `also`."""
    roles = {"nothing", *also}
    silent = [item for item in found if item.kind == "nothing" or item.roles & roles]
    return bool(silent) and all(item in silent or item.kind in _NOTHING_MORE for item in found)


def _has_number(found: Iterable[Item]) -> bool:
    return any(item.kind == "mark" and isinstance(item.value, int) for item in found)


def _pointed_at(found: Sequence[Item]) -> Position | None:
    """The best position of a reply that only points at it; None where it says that there is none.

    Raises:
        Unbound: it points at several, or says something else.
    """
    named = [at for at, item in enumerate(found) if item.kind == "position"]
    if not named:
        if _is_nothing(found) or any(item.kind == "nothing" for item in found):
            return None
        raise Unbound
    if {"all", "except"} <= {item.kind for item in found}:
        raise Unbound  # "everything but up" is no best
    fixed = [at for at in named if any(item.kind == "fix" for item in found[named[0] : at])]
    named = fixed or named
    alone = [at for at in named if not any(found[i].kind in ("word", "worst", "other") for i in clause(found, at))]
    pointed = {single(found[at]) for at in (alone or named)}
    if any(_is_doubted(found, at) for at in (alone or named)):
        raise Unbound
    if len(pointed) != 1 or any(found[i].kind == "worst" for at in (alone or named) for i in clause(found, at)):
        raise Unbound
    return pointed.pop()


def _is_doubted(found: Sequence[Item], at: int) -> bool:
    """Whether a position is only asked about or refused: "not sure, left?", "left no"."""
    following = after(found, at)
    if following is None:
        return False
    unsure = any(item.roles & {"nothing", "hedge"} for item in found[:at])
    refused = found[following].kind in ("nothing", "not") and after(found, following) is None
    return refused or (unsure and found[following].kind == "ask")


def _answer(text: str, found: Sequence[Item], order: Sequence[Position], asking: Asking) -> Reading:
    """Ratings, best and note of a reply.

    Raises:
        Unbound: anything in it is not clear.
    """
    if any(item.kind in ("bad", "negated", "mixed") or _is_strange(found, at) for at, item in enumerate(found)):
        raise Unbound
    picks = choices(found) or _trailing_choice(found, len(order))
    if not picks and asking == "best":
        picks = _leading_choice(found)
    best = _last_word(picks, found)
    pairs, ratings = bound(found, picks, order, asking if isinstance(asking, Position) else None)
    if not ratings and best is None:
        raise Unbound
    note = remark(text, found, used(pairs, picks), reasons=asking == "all")
    return Reading(ratings=ratings, best=best, note=note)


def _trailing_choice(found: Sequence[Item], places: int) -> list[Choice]:
    """A lone position after a mark for each place of the night ("4 3 5 2 4 left") is the best."""
    said = [at for at, item in enumerate(found) if item.kind not in _SAYS_NOTHING]
    kinds = [found[at].kind for at in said]
    if kinds != ["mark"] * places + ["position"] or not all(type(found[at].value) is int for at in said[:-1]):
        return []
    return [Choice(single(found[said[-1]]), said[-1], said[-1], said[-1])]


def _leading_choice(found: Sequence[Item]) -> list[Choice]:
    """A lone position where the best was asked for, before marks of other positions: "down. And up was a 3"."""
    said = [at for at, item in enumerate(found) if item.kind not in _SAYS_NOTHING]
    kinds = [found[at].kind for at in said]
    ended = any(item.kind in ("stop", "newline") for item in found[said[0] : said[1]]) if len(said) > 1 else False
    if not ended or kinds[0] != "position" or kinds.count("position") != kinds.count("mark") + 1:
        return []
    return [Choice(single(found[said[0]]), said[0], said[0], said[0])]


_SAYS_NOTHING = QUIET | {"comma", "stop", "newline", "and"}


def _is_strange(found: Sequence[Item], at: int) -> bool:
    """Whether a position that is not in tonight's order is spoken of, not just met in a phrase of other words."""
    if found[at].kind != "stranger":
        return False
    near = [found[i].kind for i in (before(found, at), after(found, at)) if i is not None]
    return "word" not in near or "mark" in near


def _last_word(picks: Sequence[Choice], found: Sequence[Item]) -> Position | None:
    """The best position; of two that differ the later, if a correction stands between."""
    best = {pick.position for pick in picks}
    if len(best) < 2:  # noqa: PLR2004
        return next(iter(best), None)
    if any(item.kind == "fix" for item in found[picks[-2].at : picks[-1].at]):
        return picks[-1].position
    raise Unbound

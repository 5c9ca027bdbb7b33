"""Which position a reply points at as the best without calling it so, and when it says that there is none."""

from collections.abc import Sequence

from coachbot.programme.positions import Position
from coachbot.reading.binding import Unbound
from coachbot.reading.choosing import Choice, clause, single
from coachbot.reading.items import Item
from coachbot.reading.neighbours import QUIET, after

SAYS_NOTHING = QUIET | {"comma", "stop", "newline", "and"}
"""Kinds of items that do not change what the others say."""
_NOTHING_MORE = frozenset(
    ("filler", "letter", "because", "symbol", "comma", "stop", "newline", "pause", "fix", "quality", "article", "not")
)


def is_nothing(found: Sequence[Item], *also: str) -> bool:
    """Whether the reply says that there is nothing to say, or only words of the roles `also`."""
    roles = {"nothing", *also}
    silent = [item for item in found if item.kind == "nothing" or item.roles & roles]
    return bool(silent) and all(item in silent or item.kind in _NOTHING_MORE for item in found)


def pointed_at(found: Sequence[Item]) -> Position | None:
    """The best position of a reply that only points at it; None where it says that there is none.

    Raises:
        Unbound: it points at several, or says something else.
    """
    named = [at for at, item in enumerate(found) if item.kind == "position"]
    if not named:
        if is_nothing(found) or any(item.kind == "nothing" for item in found):
            return None
        raise Unbound
    if any(item.kind == "except" for item in found) and any(
        item.kind == "all" or "whatever" in item.roles for item in found
    ):
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
    """Whether a position is only asked about or refused: "left?", "left no"."""
    following = after(found, at)
    if following is None:
        return False
    refused = found[following].kind in ("nothing", "not") and after(found, following) is None
    return refused or found[following].kind == "ask"


def trailing_choice(found: Sequence[Item], places: int) -> list[Choice]:
    """A lone position after a mark for each place of the night ("4 3 5 2 4 left") is the best."""
    if [item.kind for item in found].count("position") != 1:
        return []
    said = [at for at, item in enumerate(found) if item.kind not in SAYS_NOTHING]
    kinds = [found[at].kind for at in said]
    if kinds != ["mark"] * places + ["position"] or not all(type(found[at].value) is int for at in said[:-1]):
        return []
    return [Choice(single(found[said[-1]]), said[-1], said[-1], said[-1])]


def leading_choice(found: Sequence[Item]) -> list[Choice]:
    """A lone position where the best was asked for, before marks of other positions: "down. And up was a 3"."""
    said = [at for at, item in enumerate(found) if item.kind not in SAYS_NOTHING]
    kinds = [found[at].kind for at in said]
    ended = any(item.kind in ("stop", "newline") for item in found[said[0] : said[1]]) if len(said) > 1 else False
    if not ended or kinds[0] != "position" or kinds.count("position") != kinds.count("mark") + 1:
        return []
    return [Choice(single(found[said[0]]), said[0], said[0], said[0])]


def last_word(picks: Sequence[Choice], found: Sequence[Item]) -> Position | None:
    """The best position; of two that differ the later, if a correction stands between."""
    best = {pick.position for pick in picks}
    if len(best) < 2:  # noqa: PLR2004
        return next(iter(best), None)
    if any(item.kind == "fix" for item in found[picks[-2].at : picks[-1].at]):
        return picks[-1].position
    raise Unbound

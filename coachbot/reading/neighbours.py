"""What stands beside an item of a reply, past what says nothing; and lists of items with one changed."""

from collections.abc import Collection, Sequence

from coachbot.reading.items import Item

QUIET = frozenset(("filler", "yes", "symbol", "pause", "both", "letter"))
SLIP = QUIET | {"comma", "stop", "newline", "fix", "except"}
"""What may stand between the two sides of a correction."""


def after(found: Sequence[Item], at: int, skip: Collection[str] = QUIET) -> int | None:
    """Where the next item after `at` is that says something."""
    return next((i for i in range(at + 1, len(found)) if found[i].kind not in skip), None)


def before(found: Sequence[Item], at: int, skip: Collection[str] = QUIET) -> int | None:
    """Where the last item before `at` is that says something."""
    return next((i for i in range(at - 1, -1, -1) if found[i].kind not in skip), None)


def is_kind(found: Sequence[Item], at: int | None, *kinds: str) -> bool:
    """Whether there is an item at `at`, of one of `kinds`."""
    return at is not None and found[at].kind in kinds


def is_number(found: Sequence[Item], at: int | None) -> bool:
    """Whether the item at `at` is a mark from 1 to 5."""
    return is_kind(found, at, "mark") and at is not None and type(found[at].value) is int


def become(found: Sequence[Item], at: int, kind: str) -> list[Item]:
    """`found` with the item at `at` of another kind."""
    return [*found[:at], found[at]._replace(kind=kind), *found[at + 1 :]]


def without(found: Sequence[Item], first: int, last: int) -> list[Item]:
    """`found` with the items from `first` to `last` said to be nothing."""
    quiet = [item._replace(kind="denied") for item in found[first : last + 1]]
    return [*found[:first], *quiet, *found[last + 1 :]]

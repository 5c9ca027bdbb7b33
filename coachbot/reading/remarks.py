"""The free words of a reply that also says something else."""

from collections.abc import Collection, Iterator, Sequence

from coachbot.reading.items import Item

_JOINTS = frozenset(
    (
        "comma",
        "stop",
        "newline",
        "symbol",
        "pause",
        "and",
        "except",
        "fix",
        "label",
        "because",
        "ask",
        "denied",
        "to",
    )
)
_MEANT = frozenset(("word", "other", "number", "hedge"))
_SAID = _MEANT | {"worst", "quality"}
_SENTENCE = 3


def remark(text: str, found: Sequence[Item], used: Collection[int], *, reasons: bool, qualities: bool) -> str | None:
    """The words of `text` outside the items `used`, as they were written; None if they say nothing of weight.

    `reasons` tells whether a mere reason ("because it tickled") is worth keeping, `qualities` whether mere praise or
    blame is ("left was good").
    """
    if _SAID.isdisjoint(item.kind for item in found):
        return None
    parts = []
    for run in _runs(found, {*used, *_excuses(found)}):
        said = _trimmed(run)
        if not reasons and run and run[0].kind == "because":
            continue
        if _weighs(said, qualities=qualities) and (len(said) > 1 or _is_weighty(run, said)):
            parts.append(text[said[0].start : said[-1].end])
    return " ".join(parts) or None


def aside(text: str, found: Sequence[Item]) -> str | None:
    """What is told of the one position that a reply points at, in a part of its own: "left, it just slides"."""
    named = next((at for at, item in enumerate(found) if item.kind == "position"), len(found))
    rest = found[named + 1 :]
    if not rest or rest[0].kind not in ("comma", "stop", "newline") or any(i.kind == "position" for i in rest):
        return None
    return remark(text, [*found[:named], *rest], range(named + 1), reasons=False, qualities=False)


def _excuses(found: Sequence[Item]) -> set[int]:
    """The items of each clause that only says why something is put right: "my thumb slipped, center is 1".

    What is said of the phone is such a reason where it stands before the first mark.
    """
    first = next((at for at, item in enumerate(found) if item.kind == "mark"), 0)
    slips = [at for at, item in enumerate(found) if "slip" in item.roles or (at < first and "device" in item.roles)]
    return {i for at in slips for i in _sentence_part(found, at)}


def _sentence_part(found: Sequence[Item], at: int) -> range:
    """The items around `at` up to the next comma, end of sentence or line on both sides."""
    ends = [-1, *(i for i, item in enumerate(found) if item.kind in ("comma", "stop", "newline")), len(found)]
    return range(max(end for end in ends if end < at) + 1, min(end for end in ends if end > at))


def _runs(found: Sequence[Item], used: Collection[int]) -> Iterator[list[Item]]:
    """Stretches of items between the used ones, without what only leads up to a mark or opens with few words."""
    run: list[Item] = []
    met = False
    for at, item in enumerate(found):
        if at not in used:
            run.append(item)
            continue
        if run and (_ends(run) if met else len(run) > _SENTENCE and (_ends(run) or _is_told(run))):
            yield run
        met = True
        run = []
    yield run


def _ends(run: Sequence[Item]) -> bool:
    return run[-1].kind in ("comma", "stop", "newline", "and", "except")


def _is_told(run: Sequence[Item]) -> bool:
    """Whether a stretch is a tale of two parts ("it was scary but I did it"), and not what leads up to a mark."""
    turn = next((at for at, item in enumerate(run) if item.kind == "except"), None)
    return turn is not None and _weighs(run[:turn], qualities=True)


def _trimmed(run: Sequence[Item]) -> list[Item]:
    """`run` without joints at either end, but with its question mark."""
    said = [at for at, item in enumerate(run) if item.kind not in _JOINTS]
    if not said:
        return []
    end = said[-1] + 2 if [item.kind for item in run[said[-1] + 1 : said[-1] + 2]] == ["ask"] else said[-1] + 1
    return list(run[said[0] : end])


def _is_weighty(run: Sequence[Item], said: Sequence[Item]) -> bool:
    """Whether a lone word is worth keeping: one such as "tired", or one after "note:"."""
    return "weighty" in said[0].roles or run[0].kind == "label"


def _weighs(run: Sequence[Item], *, qualities: bool) -> bool:
    kinds = [item.kind for item in run]
    judged = "worst" in kinds or (qualities and "quality" in kinds)
    return any(kind in _MEANT for kind in kinds) or (judged and len(kinds) >= _SENTENCE)

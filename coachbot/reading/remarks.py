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
_SENTENCE = 3


def remark(text: str, found: Sequence[Item], used: Collection[int], *, reasons: bool) -> str | None:
    """The words of `text` outside the items `used`, as they were written; None if they say nothing of weight.

    `reasons` tells whether a mere reason ("because it tickled") is worth keeping.
    """
    parts = []
    for run in _runs(found, used):
        said = _trimmed(run)
        if _weighs(said) and (reasons or run[0].kind != "because") and (len(said) > 1 or _is_weighty(run, said)):
            parts.append(text[said[0].start : said[-1].end])
    return " ".join(parts) or None


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
    return turn is not None and _weighs(run[:turn])


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


def _weighs(run: Sequence[Item]) -> bool:
    kinds = [item.kind for item in run]
    return any(kind in _MEANT for kind in kinds) or (bool({"quality", "worst"} & {*kinds}) and len(kinds) >= _SENTENCE)

"""Triage as an engine that can be called alone: JSON Lines in, verdicts out, and a score against labelled replies."""

import json
from collections import Counter
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from coachbot import jsonlines
from coachbot.jsonlines import Record, text_field
from coachbot.triage.assess import assess
from coachbot.triage.levels import Level

_WORST_FIRST = sorted(Level, reverse=True)


class Labelled(NamedTuple):
    """A reply with the level that people gave it, and the level that triage gives."""

    id: str
    language: str
    text: str
    wanted: Level
    given: Level
    rule: str


def run(lines: Iterable[str]) -> Iterator[str]:
    """``{"id","lang","sender","text"}`` a line in, ``{"id","level","category","evidence"}`` a line out, in order."""
    return jsonlines.run(lines, _verdict)


def _verdict(record: Record) -> Record:
    found = assess(text_field(record, "text"), lang=text_field(record, "lang"), sender=text_field(record, "sender"))
    return {"level": found.level.word, "category": found.category, "evidence": list(found.evidence)}


def score(path: str) -> str:
    """How triage does on the labelled JSON Lines at `path` (fields as for `run`, and ``level``): misses, then tables.

    Raises:
        ValueError: a line that is not a labelled reply; the message names its number.
        OSError: the file cannot be read.
    """
    replies = list(_labelled(Path(path)))
    languages = sorted({reply.language for reply in replies})
    tables = [_table(language, [r for r in replies if r.language == language]) for language in languages]
    return "\n".join([*_misses(replies), *tables, _table("all", replies)])


def _labelled(path: Path) -> Iterator[Labelled]:
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        try:
            record = json.loads(line)
            text, language = text_field(record, "text"), text_field(record, "lang")
            found = assess(text, lang=language, sender=text_field(record, "sender"))
            wanted = Level[text_field(record, "level").upper()]
            yield Labelled(str(record["id"]), language, text, wanted, found.level, found.rule)
        except (KeyError, TypeError, ValueError) as error:
            raise ValueError(f"{path}, line {number}: not a labelled reply ({error!r})") from error


def _misses(replies: list[Labelled]) -> Iterator[str]:
    """Every reply given another level than wanted, the worst wanted level first."""
    for reply in sorted(replies, key=lambda r: (-r.wanted, r.given)):
        if reply.wanted != reply.given:
            why = f" [{reply.rule}]" if reply.rule else ""
            yield f"{reply.wanted.word:>9} -> {reply.given.word:<9} {reply.language} {reply.id}: {reply.text}{why}"


def _table(title: str, replies: list[Labelled]) -> str:
    counts = Counter((reply.wanted, reply.given) for reply in replies)
    heading = (
        f"\n{title:<11}{'n':>6}"
        + "".join(f"{level.word:>11}" for level in _WORST_FIRST)
        + f"{'exact %':>10}{'found %':>10}"
    )
    return "\n".join([heading, *(_row(level, counts) for level in _WORST_FIRST)])


def _row(wanted: Level, counts: Counter[tuple[Level, Level]]) -> str:
    """One wanted level; found means given that level or a worse one (for urgent and emergency: either)."""
    row = [counts[wanted, given] for given in _WORST_FIRST]
    total = sum(row)
    least = min(wanted, Level.URGENT)
    found = sum(counts[wanted, given] for given in Level if given >= least)
    share = (
        (f"{100 * counts[wanted, wanted] / total:>10.1f}{100 * found / total:>10.1f}")
        if total
        else f"{'-':>10}{'-':>10}"
    )
    return f"{wanted.word:<11}{total:>6}" + "".join(f"{n:>11}" for n in row) + share

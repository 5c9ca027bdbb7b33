"""The engine ``coachbot read``: JSON Lines in, JSON Lines out; and its scorer."""

import json
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any, cast

from coachbot import jsonlines
from coachbot.programme.positions import Position
from coachbot.reading.reader import Asking, read
from coachbot.reading.readings import Reading
from coachbot.reading.wordfiles import LANGUAGES

Record = dict[str, Any]
_FEWEST, _MOST = 2, 5
_POSITIONS = {str(position): position for position in Position}


def run(lines: Iterable[str]) -> Iterator[str]:
    """One reading, as a line of JSON, for each line ``{"id", "lang", "order", "asking", "text"}``."""
    return jsonlines.run(lines, answer)


def answer(record: Record) -> Record:
    """The reading of one record, ready for JSON.

    Raises:
        KeyError: a field is missing.
        TypeError: a field is of the wrong kind.
        ValueError: a field holds what is not known; the message says what is.
    """
    text, lang = jsonlines.text_field(record, "text"), jsonlines.text_field(record, "lang")
    if lang not in LANGUAGES:
        raise ValueError(f"the language {lang!r} is not known; write one of {', '.join(LANGUAGES)}")
    return as_record(read(text, lang=lang, order=_order(record), asking=_asking(record)))


def as_record(reading: Reading) -> Record:
    """`reading` as the plain values of a line."""
    ratings = {str(position): mark for position, mark in reading.ratings.items()}
    return {"ratings": ratings, "best": reading.best, "note": reading.note, "unclear": reading.unclear}


def _order(record: Record) -> list[Position]:
    order = record["order"]
    if not isinstance(order, list) or not _FEWEST <= len(order) <= _MOST or len(set(map(str, order))) != len(order):
        raise ValueError(
            f"the order must be a list of {_FEWEST} to {_MOST} different positions, not {json.dumps(order)}"
        )
    return [_position(position, "position") for position in order]


def _asking(record: Record) -> Asking:
    asking = jsonlines.text_field(record, "asking")
    if asking in ("all", "best", "note"):
        return cast("Asking", asking)
    return _position(asking, '"asking", besides all, best and note,')


def _position(name: object, what: str) -> Position:
    position = _POSITIONS.get(str(name))
    if position is None:
        raise ValueError(f"the {what} {name!r} is not known; write one of {', '.join(Position)}")
    return position


def score(path: Path) -> str:
    """A table of how well labelled replies are read, by language and by what was asked; each miss before it.

    Args:
        path: JSON Lines of records with a field ``expected`` beside those that `run` takes. What that leaves out (such
            as the note) is not judged.
    """
    records = [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines() if line.strip()]
    results = [(record, answer(record)) for record in records]
    misses = [_miss(record, got) for record, got in results if not _is_exact(record, got)]
    groups = {
        "all": results,
        **{lang: [r for r in results if r[0]["lang"] == lang] for lang in LANGUAGES},
        **{
            f"asking {kind}": [r for r in results if _kind(r[0]) == kind]
            for kind in ("all", "best", "note", "position")
        },
    }
    rows = [_row(name, group) for name, group in groups.items() if group]
    return "\n".join([*misses, _row_of_heads(), *rows])


def _kind(record: Record) -> str:
    return str(record["asking"]) if record["asking"] in ("all", "best", "note") else "position"


def _miss(record: Record, got: Record) -> str:
    expected = json.dumps(record["expected"], ensure_ascii=False)
    said = json.dumps({key: record[key] for key in ("id", "lang", "asking", "text")}, ensure_ascii=False)
    return f"{said}\n    wanted {expected}\n    got    {json.dumps(got, ensure_ascii=False)}"


def _is_exact(record: Record, got: Record) -> bool:
    return all(got[field] == value for field, value in record["expected"].items())


def tally(results: Sequence[tuple[Record, Record]]) -> Counter[str]:
    """Counts over pairs of a labelled record and what was read.

    ``exact`` readings; ``values`` recorded and those of them that are ``wrong``; ``unclear`` replies and those of them
    of which something was ``recorded``; ``clear`` replies and those of them that were ``missed`` as unclear.
    """
    counts: Counter[str] = Counter()
    for record, got in results:
        expected = record["expected"]
        counts["exact"] += _is_exact(record, got)
        counts["values"] += len(got["ratings"]) + (got["best"] is not None)
        counts["wrong"] += sum(expected["ratings"].get(key) != mark for key, mark in got["ratings"].items())
        counts["wrong"] += got["best"] not in (None, expected["best"])
        counts["unclear"] += expected["unclear"]
        counts["recorded"] += expected["unclear"] and not got["unclear"]
        counts["missed"] += got["unclear"] and not expected["unclear"]
    return counts


def _row_of_heads() -> str:
    return f"{'':16}{'replies':>8}{'exact':>9}{'wrong values':>14}{'recorded on unclear':>21}{'missed as unclear':>19}"


def _row(name: str, results: Sequence[tuple[Record, Record]]) -> str:
    counts, total = tally(results), len(results)
    return (
        f"{name:16}{total:>8}{_share(counts['exact'], total):>9}{_share(counts['wrong'], counts['values']):>14}"
        f"{_share(counts['recorded'], counts['unclear']):>21}{_share(counts['missed'], total - counts['unclear']):>19}"
    )


def _share(part: int, whole: int) -> str:
    return f"{part / whole:.2%}" if whole else "-"

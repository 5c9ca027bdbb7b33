"""The study export: what all children did, in files that name nobody; refused if anything in them still might."""

import csv
import secrets
from collections.abc import Iterable, Sequence
from pathlib import Path

from coachbot.coach.case import Case, State
from coachbot.insight.cohort import Participant
from coachbot.insight.export import dictionary, identifiers, table
from coachbot.insight.record import swallows
from coachbot.store import Transaction


class ExportError(RuntimeError):
    """The export would tell who somebody is; nothing was written."""


def export(tx: Transaction, folder: Path) -> list[Path]:
    """Write ``swallows.csv`` and its ``dictionary.csv`` into `folder`, made if missing. Returns their paths.

    Raises:
        ExportError: naming the cells that the check found, by their place only.
    """
    cases = [case for case in tx.cases.all() if case.nights]
    rows = list(table(_participants(cases)))
    if found := identifiers(rows):
        places = ", ".join(f"row {one.row} {one.column} ({one.what})" for one in found[:10])
        raise ExportError(f"{len(found)} cells may identify somebody, so nothing was written: {places}")
    folder.mkdir(parents=True, exist_ok=True)
    return [_write(folder / "swallows.csv", rows), _write(folder / "dictionary.csv", dictionary())]


def _participants(cases: Sequence[Case]) -> list[Participant]:
    """Codes are drawn anew at every export, so that two exports cannot be laid side by side."""
    codes = [f"C{number}" for number in range(1, len(cases) + 1)]
    secrets.SystemRandom().shuffle(codes)
    return [_participant(case, code) for case, code in zip(cases, codes, strict=True)]


def _participant(case: Case, code: str) -> Participant:
    return Participant(
        code=code,
        positions=case.protocol.positions,
        swallows=swallows(case),
        evenings=len(case.nights),
        named={night.number: night.best for night in case.nights if night.best},
        dropped_out=case.state is State.WITHDRAWN and not case.complete,
        age=case.nights[0].day.year - case.child.birth_year,
    )


def _write(path: Path, rows: Iterable[Sequence[str]]) -> Path:
    with path.open("w", encoding="utf-8", newline="") as stream:
        csv.writer(stream).writerows(rows)
    return path

"""The study export: what all children did, in files that name nobody; refused if anything in them still might."""

import csv
import secrets
from collections.abc import Iterable, Sequence
from pathlib import Path

from coachbot.coach.case import Case, State, Status
from coachbot.insight.cohort import Participant
from coachbot.insight.export import COLUMNS, Column, dictionary, identifiers, table
from coachbot.insight.figures import COLUMNS as FIGURES
from coachbot.insight.figures import figures, figures_table
from coachbot.insight.record import swallows
from coachbot.store import Transaction


class ExportError(RuntimeError):
    """The export would tell who somebody is; nothing was written."""


def export(tx: Transaction, folder: Path) -> list[Path]:
    """Write the swallows and the cohort's figures, each with a dictionary, into `folder`, made if missing.

    Returns their paths. Of a cohort too small to be told of there are no figures.

    Raises:
        ExportError: naming the cells that the check found, by their place only.
    """
    cohort = participants(tx)
    found = figures(cohort)
    tables = {"swallows": (COLUMNS, list(table(cohort)))}
    if found:
        tables["cohort"] = (FIGURES, list(figures_table(found)))
    for name, (columns, rows) in tables.items():
        _check(name, rows, columns)
    folder.mkdir(parents=True, exist_ok=True)
    return [path for name, (columns, rows) in tables.items() for path in _write_both(folder, name, rows, columns)]


def participants(tx: Transaction) -> list[Participant]:
    """Every child with a night that is over, by codes drawn anew each time.

    So two exports cannot be laid side by side.
    """
    cases = [case for case in tx.cases.all() if any(night.status is not Status.OPEN for night in case.nights)]
    codes = [f"C{number}" for number in range(1, len(cases) + 1)]
    secrets.SystemRandom().shuffle(codes)
    return [_participant(case, code) for case, code in zip(cases, codes, strict=True)]


def _participant(case: Case, code: str) -> Participant:
    """A child as the study has it. Whom a clinician ended has not dropped out, and is followed until then."""
    over = [night for night in case.nights if night.status is not Status.OPEN]
    return Participant(
        code=code,
        positions=case.protocol.positions,
        swallows=swallows(case),
        evenings=len(over),
        named={night.number: night.best for night in over if night.best},
        unsent=frozenset(night.number for night in over if night.status is Status.UNSENT),
        dropped_out=case.state is State.WITHDRAWN and case.ended_by is None and not case.complete,
        age=case.nights[0].day.year - case.child.birth_year,
    )


def _check(name: str, rows: Sequence[Sequence[str]], columns: Sequence[Column]) -> None:
    if found := identifiers(rows, columns):
        places = ", ".join(f"{name} row {one.row} {one.column} ({one.what})" for one in found[:10])
        raise ExportError(f"{len(found)} cells may identify somebody, so nothing was written: {places}")


def _write_both(folder: Path, name: str, rows: Iterable[Sequence[str]], columns: Sequence[Column]) -> list[Path]:
    about = "dictionary.csv" if name == "swallows" else f"{name}-dictionary.csv"
    return [_write(folder / f"{name}.csv", rows), _write(folder / about, dictionary(columns))]


def _write(path: Path, rows: Iterable[Sequence[str]]) -> Path:
    with path.open("w", encoding="utf-8", newline="") as stream:
        csv.writer(stream).writerows(rows)
    return path

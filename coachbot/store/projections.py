"""The rows that a case is also kept in, for queries and for the laws that a database can hold.

They follow from the case alone and are written only where the case has changed.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import chain, zip_longest
from typing import Any

from sqlalchemy import Connection, Delete, Table, Update, bindparam

from coachbot.coach.case import Alert, Case, Night, Swallow
from coachbot.reading.readings import Word
from coachbot.store.tables import alerts, nights, swallows

Row = dict[str, Any]
Key = tuple[Any, ...]
Pair = tuple[Case | None, Case]
"""A case as it was kept, None if it is new, and as it is to be kept."""


def write(connection: Connection, pairs: Sequence[Pair]) -> None:
    """Bring the rows of these cases from the first of each pair to the second."""
    changes = [(projection, projection.changes(pairs)) for projection in (NIGHTS, SWALLOWS, ALERTS)]
    for projection, change in reversed(changes):
        projection.remove(connection, change.gone)
    for projection, change in changes:
        projection.update(connection, change.changed)
        projection.insert(connection, change.fresh)


@dataclass(slots=True)
class Change:
    """What differs: rows to delete, to update, to insert."""

    gone: list[Row] = field(default_factory=list)
    changed: list[Row] = field(default_factory=list)
    fresh: list[Row] = field(default_factory=list)


class Projection:
    """One table that follows from the case: which part of a case, into which rows, told apart by which columns."""

    def __init__(
        self,
        table: Table,
        identity: tuple[str, ...],
        parts: Callable[[Case], tuple[Any, ...]],
        rows: Callable[[int, Any], Iterable[Row]],
    ) -> None:
        self._table = table
        self._identity = identity
        self._parts = parts
        self._rows = rows
        same = [table.c[column] == bindparam(f"same_{column}") for column in identity]
        self._delete: Delete = table.delete().where(*same)
        self._update: Update = table.update().where(*same)

    def changes(self, pairs: Iterable[Pair]) -> Change:
        """What differs in this table between the two of each pair."""
        change = Change()
        for old, new in pairs:
            before, after = self._differing(old, new)
            change.gone += [row for key, row in before.items() if key not in after]
            change.fresh += [row for key, row in after.items() if key not in before]
            change.changed += [row for key, row in after.items() if key in before and row != before[key]]
        return change

    def remove(self, connection: Connection, rows: list[Row]) -> None:
        """Delete these rows."""
        if rows:
            connection.execute(self._delete, [self._same(row) for row in rows])

    def update(self, connection: Connection, rows: list[Row]) -> None:
        """Write these rows over those of the same identity."""
        if rows:
            rest = [{name: value for name, value in row.items() if name not in self._identity} for row in rows]
            connection.execute(self._update, [self._same(row) | others for row, others in zip(rows, rest, strict=True)])

    def insert(self, connection: Connection, rows: list[Row]) -> None:
        """Add these rows. A second one for the same night, day or position is refused by the database."""
        if rows:
            connection.execute(self._table.insert(), rows)

    def _differing(self, old: Case | None, new: Case) -> tuple[dict[Key, Row], dict[Key, Row]]:
        """The rows of the parts that are not the very same; most of a case is, so most is never looked at."""
        pairs = zip_longest(self._parts(old) if old else (), self._parts(new))
        differing = [pair for pair in pairs if pair[0] is not pair[1]]
        return self._keyed(new.id, (one for one, _ in differing)), self._keyed(new.id, (one for _, one in differing))

    def _keyed(self, case_id: int, parts: Iterable[Any]) -> dict[Key, Row]:
        rows = chain.from_iterable(self._rows(case_id, part) for part in parts if part is not None)
        return {tuple(row[column] for column in self._identity): row for row in rows}

    def _same(self, row: Row) -> Row:
        return {f"same_{column}": row[column] for column in self._identity}


def _night_rows(case_id: int, night: Night) -> Iterator[Row]:
    yield {
        "case_id": case_id,
        "number": night.number,
        "day": night.day,
        "turn": night.turn,
        "status": night.status,
        "prompted_at": night.prompted,
        "candy_kind": night.candy.kind,
        "candy_mm": night.candy.size_mm,
        "best": night.best,
    }


def _swallow_rows(case_id: int, night: Night) -> Iterator[Row]:
    for swallow in night.swallows:
        yield {
            "case_id": case_id,
            "night": night.number,
            "day": night.day,
            "position": swallow.position,
            "place": night.order.index(swallow.position) + 1,
        } | _mark(swallow)


def _mark(swallow: Swallow) -> Row:
    rating = swallow.mark if not isinstance(swallow.mark, Word) else None
    return {"rating": rating, "went_down": rating is not None, "skipped": swallow.mark == Word.SKIPPED}


def _alert_rows(case_id: int, alert: Alert) -> Iterator[Row]:
    yield {
        "case_id": case_id,
        "number": alert.number,
        "level": int(alert.level),
        "category": alert.category,
        "raised_at": alert.raised,
        "steps": alert.steps,
        "next_step_at": alert.next_step,
        "acknowledged_at": alert.acknowledged,
        "acknowledged_by": alert.acknowledged_by,
    }


# The day is part of who a night is: where a night entered from paper moves the later ones on, their rows are deleted
# and inserted, for an update one by one would meet the same day twice on its way.
NIGHTS = Projection(nights, ("case_id", "number", "day"), lambda case: case.nights, _night_rows)
SWALLOWS = Projection(swallows, ("case_id", "night", "day", "position"), lambda case: case.nights, _swallow_rows)
ALERTS = Projection(alerts, ("case_id", "number"), lambda case: case.alerts, _alert_rows)

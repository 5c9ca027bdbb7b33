"""Cases: one sealed document each, the history that led to it, and the rows that follow from it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Select, bindparam, exists, func, select, text

from coachbot.coach.case import Case, State
from coachbot.coach.events import Event
from coachbot.store import projections
from coachbot.store.documents import OPENED, actor_of, decode_case, decode_event, encode, kind_of
from coachbot.store.errors import NoSuchCaseError, StaleCaseError
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import IDLE, alerts, cases, history

CHUNK = 200
"""How many cases a stream holds at a time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One case's change: as it was loaded, as it is to be kept, by which event, and when it next needs the clock."""

    old: Case
    new: Case
    event: Event
    due_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Summary:
    """What a list of cases shows without opening any."""

    id: int
    state: State
    language: str
    created_at: datetime
    changed_at: datetime
    due_at: datetime | None
    open_alerts: int


class Cases:
    """The cases of one transaction. It remembers which version of a case it loaded, and saves only over that one."""

    def __init__(self, connection: Connection, sealer: Sealer, *, writable: bool) -> None:
        self._connection = connection
        self._sealer = sealer
        self._writable = writable
        self._versions: dict[int, int] = {}

    def add(self, draft: Case, now: datetime, due_at: datetime | None = None) -> Case:
        """Keep a new case, whose id is still 0, and open its history. Returns it with its id."""
        row = {"version": 0, "state": draft.state, "language": draft.language, "document": b""}
        row |= {"created_at": now, "changed_at": now, "due_at": due_at}
        case_id = self._connection.execute(cases.insert().returning(cases.c.id), row).scalar_one()
        case = replace(draft, id=case_id)
        document = encode(case)
        self._connection.execute(
            cases.update().where(cases.c.id == case_id), {"document": self._sealer.seal(Purpose.CASE, document)}
        )
        opening = {"case_id": case_id, "seq": 0, "kind": OPENED, "actor": "clinician", "at": now}
        self._connection.execute(history.insert(), opening | {"payload": self._sealer.seal(Purpose.EVENT, document)})
        projections.write(self._connection, [(None, case)])
        self._versions[case_id] = 0
        return case

    def load(self, case_id: int) -> Case:
        """The case; in a transaction that may write it is locked until the end.

        Raises:
            NoSuchCaseError: if there is none, or it was erased.
        """
        found = self._take(_LOCKED if self._writable else _LOADED, {"same_id": case_id})
        if not found:
            raise NoSuchCaseError(case_id)
        return found[0]

    def claim_due(self, now: datetime, limit: int) -> list[Case]:
        """The cases whose time has come, longest due first.

        In a transaction that may write they are locked until its end, and those that others hold are passed by.
        """
        query = (
            select(cases.c.id, cases.c.version, cases.c.document)
            .where(cases.c.due_at <= now)
            .order_by(cases.c.due_at, cases.c.id)
            .limit(limit)
        )
        return self._take(query.with_for_update(key_share=True, skip_locked=True) if self._writable else query)

    def due(self, now: datetime, limit: int) -> list[int]:
        """Which cases' time has come, longest due first, without opening any."""
        query = select(cases.c.id).where(cases.c.due_at <= now).order_by(cases.c.due_at, cases.c.id).limit(limit)
        return list(self._connection.execute(query).scalars())

    def changed_after(self, at: datetime) -> list[int]:
        """Which cases were changed after then."""
        return list(self._connection.execute(select(cases.c.id).where(cases.c.changed_at > at)).scalars())

    def save(self, changes: Sequence[Change], now: datetime) -> None:
        """Keep what events made of cases that were loaded here, each of another case, with a row of its history.

        Raises:
            StaleCaseError: if one was not loaded here, or has been changed since.
        """
        if not changes:
            return
        rows = [self._row(change, now) for change in changes]
        if self._connection.execute(_SAVE, rows).rowcount != len(rows):
            raise StaleCaseError("a case was changed by somebody else: load it and decide anew")
        self._connection.execute(history.insert(), [self._history_row(change, now) for change in changes])
        projections.write(self._connection, [(change.old, change.new) for change in changes])
        for change in changes:
            self._versions[change.new.id] += 1

    def postpone(self, case_id: int, due_at: datetime | None) -> None:
        """Leave the case as it is and look at it again at another time: for one whose event cannot be carried out."""
        self._connection.execute(cases.update().where(cases.c.id == case_id), {"due_at": due_at})

    def history(self, case_id: int) -> Iterator[tuple[datetime, Case | Event]]:
        """When what happened, in order. The first is the case as it was opened."""
        query = select(history.c.at, history.c.kind, history.c.payload).where(history.c.case_id == case_id)
        for at, kind, payload in self._connection.execute(query.order_by(history.c.seq)):
            text = self._sealer.open(Purpose.EVENT, payload)
            yield at, decode_case(text) if kind == OPENED else decode_event(kind, text)

    def all(self) -> Iterator[Case]:
        """Every case, by id, opened one after the other."""
        query = select(cases.c.document).order_by(cases.c.id).execution_options(yield_per=CHUNK)
        with self._connection.execute(query).scalars() as documents:
            yield from map(self._open, documents)

    def summaries(self) -> Iterator[Summary]:
        """Every case, by id, as far as it can be told without opening it."""
        open_alerts = (
            select(func.count())
            .where(alerts.c.case_id == cases.c.id, alerts.c.acknowledged_at.is_(None))
            .scalar_subquery()
            .label("open_alerts")
        )
        columns = [cases.c[name] for name in ("id", "state", "language", "created_at", "changed_at", "due_at")]
        query = select(*columns, open_alerts).order_by(cases.c.id).execution_options(yield_per=CHUNK)
        with self._connection.execute(query).mappings() as rows:
            for row in rows:
                yield Summary(**{**row, "state": State(row["state"])})

    def idle_since(self, before: datetime, *, only: int | None = None) -> list[int]:
        """Cases that have finished, stopped or never begun, without an open alert, unchanged since before then.

        With `only` that one, if it is.
        """
        opened = exists().where(alerts.c.case_id == cases.c.id, alerts.c.acknowledged_at.is_(None))
        query = select(cases.c.id).where(text(f"cases.{IDLE}"), cases.c.changed_at < before, ~opened)
        query = query if only is None else query.where(cases.c.id == only)
        return sorted(self._connection.execute(query).scalars())  # not ordered by SQLite, or it would not use the index

    def opened_at(self, case_id: int) -> datetime | None:
        """When a case was opened; None if there is none."""
        query = select(cases.c.created_at).where(cases.c.id == case_id)
        return self._connection.execute(query).scalar_one_or_none()

    def next_due(self) -> datetime | None:
        """When the next case needs the clock."""
        due_at: datetime | None = self._connection.execute(select(func.min(cases.c.due_at))).scalar_one()
        return due_at

    def _take(self, query: Select[Any], values: Mapping[str, object] | None = None) -> list[Case]:
        rows = self._connection.execute(query, values).all()
        self._versions.update({case_id: version for case_id, version, _ in rows})
        return [self._open(document) for _, _, document in rows]

    def _open(self, document: bytes) -> Case:
        return decode_case(self._sealer.open(Purpose.CASE, document))

    def _row(self, change: Change, now: datetime) -> dict[str, object]:
        version = self._versions.get(change.new.id)
        if version is None:
            raise StaleCaseError(f"case {change.new.id} was not loaded in this transaction: load it and decide anew")
        return {
            "same_id": change.new.id,
            "same_version": version,
            "version": version + 1,
            "state": change.new.state,
            "language": change.new.language,
            "changed_at": now,
            "due_at": change.due_at,
            "unreachable": change.new.unreachable,
            "document": self._sealer.seal(Purpose.CASE, encode(change.new)),
        }

    def _history_row(self, change: Change, now: datetime) -> dict[str, object]:
        return {
            "case_id": change.new.id,
            "seq": self._versions[change.new.id] + 1,
            "kind": kind_of(change.event),
            "actor": actor_of(change.event),
            "at": now,
            "payload": self._sealer.seal(Purpose.EVENT, encode(change.event)),
        }


# Made once: in the way of every message, making a statement costs as much as running it.
_LOADED = select(cases.c.id, cases.c.version, cases.c.document).where(cases.c.id == bindparam("same_id"))
_LOCKED = _LOADED.with_for_update(key_share=True)
_SAVE = cases.update().where(cases.c.id == bindparam("same_id"), cases.c.version == bindparam("same_version"))

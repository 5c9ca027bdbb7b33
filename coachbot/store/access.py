"""The log of access: who looked at, took out or changed a child's record, and when. It can only be added to."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, RowMapping, select

from coachbot.store.erasing import Tombstone
from coachbot.store.tables import access, tombstones


@dataclass(frozen=True, slots=True, kw_only=True)
class Accessed:
    """One entry: `what` is a stable word of the desk; `case_id` is None where it was about no one family."""

    at: datetime
    by: str
    case_id: int | None
    what: str


class Access:
    """The log of access of one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, entries: Iterable[Accessed]) -> None:
        """Write entries down, for good."""
        rows = [{"at": one.at, "by": one.by, "case_id": one.case_id, "what": one.what} for one in entries]
        if rows:
            self._connection.execute(access.insert(), rows)

    def of_case(self, case_id: int) -> list[Accessed]:
        """All entries about one family, oldest first."""
        query = select(access).where(access.c.case_id == case_id).order_by(access.c.id)
        return [_entry(row) for row in self._connection.execute(query).mappings()]

    def latest(self, limit: int) -> list[Accessed]:
        """The newest entries, newest first."""
        query = select(access).order_by(access.c.id.desc()).limit(limit)
        return [_entry(row) for row in self._connection.execute(query).mappings()]

    def tombstone(self, case_id: int) -> Tombstone | None:
        """What stays of an erased family, or None if none of that number was erased."""
        row = self._connection.execute(select(tombstones).where(tombstones.c.case_id == case_id)).mappings().first()
        return Tombstone(**row) if row else None


def _entry(row: RowMapping) -> Accessed:
    return Accessed(at=row["at"], by=row["by"], case_id=row["case_id"], what=row["what"])

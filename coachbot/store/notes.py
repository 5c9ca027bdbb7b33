"""What clinicians write about a family for each other: notes, calls made, the screening as it was confirmed. Sealed."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import notes


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """One note: of kind ``note``, ``call`` or ``screening``; about one alert of the case, or the case as a whole."""

    case_id: int
    alert: int | None
    at: datetime
    by: str
    kind: str
    words: str


class Notes:
    """The notes of one transaction."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def add(self, note: Note) -> None:
        """Keep a note."""
        words = self._sealer.seal(Purpose.NOTE, note.words.encode())
        row = {"case_id": note.case_id, "alert": note.alert, "at": note.at, "by": note.by, "kind": note.kind}
        self._connection.execute(notes.insert(), row | {"words": words})

    def of_case(self, case_id: int) -> list[Note]:
        """All notes about a family, oldest first."""
        query = select(notes).where(notes.c.case_id == case_id).order_by(notes.c.id)
        return [
            Note(
                case_id=row.case_id,
                alert=row.alert,
                at=row.at,
                by=row.by,
                kind=row.kind,
                words=self._sealer.open(Purpose.NOTE, row.words).decode(),
            )
            for row in self._connection.execute(query)
        ]

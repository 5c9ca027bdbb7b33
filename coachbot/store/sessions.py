"""Who is signed in at the desk. A session's token is never kept, only its SHA-256, which cannot be turned back."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from coachbot.store.dialects import insert_or_update
from coachbot.store.tables import clinicians, one_time_codes, sessions


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """A session, and the account it belongs to as that account is now."""

    clinician_id: int
    name: str
    role: str
    language: str
    begun_at: datetime
    seen_at: datetime


class Sessions:
    """The sessions of one transaction, and the one-time codes that opened them."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def begin(self, token_hash: bytes, clinician_id: int, now: datetime) -> None:
        """Open a session."""
        row = {"token_hash": token_hash, "clinician_id": clinician_id, "begun_at": now, "seen_at": now}
        self._connection.execute(sessions.insert(), row)

    def get(self, token_hash: bytes) -> Session | None:
        """The session of that token, as long as its clinician is active."""
        account = (clinicians.c.name, clinicians.c.role, clinicians.c.language)
        query = (
            select(sessions.c.clinician_id, *account, sessions.c.begun_at, sessions.c.seen_at)
            .join(clinicians, clinicians.c.id == sessions.c.clinician_id)
            .where(sessions.c.token_hash == token_hash, clinicians.c.active)
        )
        row = self._connection.execute(query).mappings().first()
        return Session(**row) if row else None

    def seen(self, token_hash: bytes, now: datetime) -> None:
        """Note that it was used."""
        self._connection.execute(sessions.update().where(sessions.c.token_hash == token_hash), {"seen_at": now})

    def end(self, token_hash: bytes) -> None:
        """End one session."""
        self._connection.execute(sessions.delete().where(sessions.c.token_hash == token_hash))

    def end_all(self, clinician_id: int, but: bytes = b"") -> None:
        """End all sessions of a clinician, save one if given."""
        theirs = (sessions.c.clinician_id == clinician_id) & (sessions.c.token_hash != but)
        self._connection.execute(sessions.delete().where(theirs))

    def sweep(self, begun_before: datetime, seen_before: datetime) -> None:
        """Forget what is past its limits."""
        past = (sessions.c.begun_at <= begun_before) | (sessions.c.seen_at <= seen_before)
        self._connection.execute(sessions.delete().where(past))

    def use_code(self, clinician_id: int, step: int) -> bool:
        """Use up a one-time code by its time step. False if that step, or a later one, has been used already."""
        last = select(one_time_codes.c.step).where(one_time_codes.c.clinician_id == clinician_id)
        used = self._connection.execute(last.with_for_update()).scalar()
        if used is not None and step <= used:
            return False
        statement = insert_or_update(self._connection, one_time_codes, "clinician_id", "step")
        self._connection.execute(statement, {"clinician_id": clinician_id, "step": step})
        return True

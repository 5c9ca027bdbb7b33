"""What one transaction can reach."""

from collections.abc import Callable
from datetime import datetime

from sqlalchemy import Connection
from sqlalchemy.exc import DataError, DBAPIError, IntegrityError

from coachbot.store import rotation
from coachbot.store.access import Access
from coachbot.store.board import Board
from coachbot.store.cases import Cases
from coachbot.store.clinic import Clinic
from coachbot.store.deliveries import Deliveries
from coachbot.store.envelopes import Written
from coachbot.store.erasing import Tombstone, erase, forget_strangers, tombs
from coachbot.store.messages import Message, Messages
from coachbot.store.notes import Notes
from coachbot.store.outbox import Outbox
from coachbot.store.people import Clinicians, Invites, People
from coachbot.store.pieces import Pieces
from coachbot.store.sealing import Sealer
from coachbot.store.sessions import Sessions
from coachbot.store.signs import Signs


class Transaction:
    """All tables, by subject, within one transaction: kept together when its work returns, or not at all."""

    def __init__(self, connection: Connection, sealer: Sealer, *, writable: bool) -> None:
        self._connection = connection
        self._sealer = sealer
        self.cases = Cases(connection, sealer, writable=writable)
        self.messages = Messages(connection, sealer)
        self.pieces = Pieces(connection, sealer)
        self.outbox = Outbox(connection, sealer)
        self.deliveries = Deliveries(connection, sealer)
        self.people = People(connection, sealer)
        self.invites = Invites(connection, sealer)
        self.clinicians = Clinicians(connection, sealer)
        self.clinic = Clinic(connection)
        self.signs = Signs(connection)
        self.sessions = Sessions(connection)
        self.access = Access(connection)
        self.notes = Notes(connection, sealer)
        self.board = Board(connection, sealer)

    def alone(self, work: Callable[[], object]) -> Exception | None:
        """Do `work` so that its failure undoes nothing else of this transaction. Returns what it raised, if anything.

        Trouble of the database itself is raised: it concerns the whole transaction.
        """
        savepoint = self._connection.begin_nested()
        try:
            work()
        except Exception as error:
            if isinstance(error, DBAPIError) and not isinstance(error, DataError | IntegrityError):
                raise
            savepoint.rollback()
            return error
        savepoint.commit()
        return None

    def erase(self, case_id: int, now: datetime) -> Tombstone:
        """Erase what is kept about a family; see `erasing`."""
        return erase(self._connection, case_id, now)

    def forget_strangers(self, desk: int | None, before: datetime) -> None:
        """Erase what was said with people of no family before then; `desk` is the clinic's own case."""
        forget_strangers(self._connection, desk, before)

    def tombstones(self) -> list[Tombstone]:
        """The proof of every erasure."""
        return tombs(self._connection)

    def reseal(self, limit: int, place: rotation.Place) -> rotation.Step:
        """Seal anew, with the first key, up to `limit` values that an earlier one sealed, from `place` on."""
        return rotation.reseal(self._connection, self._sealer, limit, place)

    def unnamed_key(self) -> bool:
        """Whether the keys have changed since they were last remembered; see `rotation`."""
        return rotation.unnamed(self._connection, self._sealer)

    def remember_key(self) -> None:
        """The first key seals from now on."""
        rotation.remember(self._connection, self._sealer)

    def conversation(self, case_id: int) -> list[Message | Written]:
        """All that was written to and fro about a case, in order of time."""
        spoken: list[Message | Written] = [*self.messages.of_case(case_id), *self.outbox.of_case(case_id)]
        return sorted(spoken, key=lambda one: one.at if isinstance(one, Message) else one.created_at)

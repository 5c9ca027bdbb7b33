"""What a channel learns later about what was sent. The first final report on each name counts."""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import Connection, func, or_, select

from coachbot.coach.events import Outcome
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import clinicians, contacts, deliveries, outbox


class Deliveries:
    """The deliveries of one transaction."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def expect(self, outbox_id: int, channel: str, names: Sequence[str]) -> None:
        """Reports may come about a message under these names."""
        rows = [{"outbox_id": outbox_id, "channel": channel, "name": name} for name in names]
        if rows:
            self._connection.execute(deliveries.insert(), rows)

    def find(self, channel: str, names: Sequence[str], address: str) -> tuple[int, int] | None:
        """The delivery that is meant and its message, both by id, or None if it is not known.

        The first name is certain; under any other only a message to that address is meant.
        """
        hashes = self._sealer.lookups(Purpose.ADDRESS, f"{channel}:{address}")
        there = func.coalesce(contacts.c.address_hash, clinicians.c.address_hash).in_(hashes)
        query = (
            select(deliveries.c.id, deliveries.c.outbox_id)
            .join(outbox, outbox.c.id == deliveries.c.outbox_id)
            .outerjoin(contacts, contacts.c.id == outbox.c.contact_id)
            .outerjoin(clinicians, clinicians.c.id == outbox.c.clinician_id)
            .where(deliveries.c.channel == channel, deliveries.c.name.in_(names))
            .where(or_(deliveries.c.name == names[0], there))
            .order_by((deliveries.c.name == names[0]).desc(), deliveries.c.id.desc())
        )
        row = self._connection.execute(query.limit(1)).first()
        return (row.id, row.outbox_id) if row else None

    def report(self, delivery_id: int, outcome: Outcome, at: datetime) -> bool:
        """Keep a final report. False if there was one before."""
        first = (deliveries.c.id == delivery_id) & deliveries.c.outcome.is_(None)
        done = self._connection.execute(deliveries.update().where(first).values(outcome=outcome, at=at))
        return bool(done.rowcount)

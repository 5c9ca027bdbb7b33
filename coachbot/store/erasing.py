"""Erasing a family: everything goes but the fact that there was one, and what it is still to be told."""

from dataclasses import asdict, dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, Connection, Table, func, or_, select

from coachbot.coach.actions import Urgency
from coachbot.store.errors import NoSuchCaseError
from coachbot.store.outbox import CLAIMED, WAITING
from coachbot.store.tables import (
    alerts,
    cases,
    clinicians,
    contacts,
    history,
    invites,
    messages,
    nights,
    notes,
    outbox,
    pieces,
    swallows,
    tombstones,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tombstone:
    """The proof of an erasure, and all that stays: counts and times."""

    case_id: int
    created_at: datetime
    erased_at: datetime
    events: int
    nights: int
    received: int
    sent: int


def erase(connection: Connection, case_id: int, now: datetime) -> Tombstone:
    """Erase a family. Messages that wait (not prompts to practise) are still sent, then they and their address go too.

    Raises:
        NoSuchCaseError: if there is no such case, or it was erased before.
    """
    created = connection.execute(select(cases.c.created_at).where(cases.c.id == case_id).with_for_update()).scalar()
    if created is None:
        raise NoSuchCaseError(case_id)
    stone = Tombstone(
        case_id=case_id,
        created_at=created,
        erased_at=now,
        events=_count(connection, history, history.c.case_id == case_id),
        nights=_count(connection, nights, nights.c.case_id == case_id),
        received=_count(connection, messages, messages.c.case_id == case_id),
        sent=_count(connection, outbox, (outbox.c.case_id == case_id) & (outbox.c.status == "sent")),
    )
    _delete_messages(connection, case_id)
    _delete_outgoing(connection, case_id)
    for table in (swallows, nights, alerts, history, invites, notes):
        connection.execute(table.delete().where(table.c.case_id == case_id))
    connection.execute(clinicians.update().where(clinicians.c.awaiting_case_id == case_id), {"awaiting_case_id": None})
    connection.execute(cases.delete().where(cases.c.id == case_id))
    connection.execute(tombstones.insert(), asdict(stone))
    return stone


def forget_strangers(connection: Connection, desk: int | None, before: datetime) -> None:
    """What no family's case has to do with: messages of strangers, and what they were answered; `desk` is theirs."""
    strangers = (
        messages.c.case_id.is_(None) if desk is None else or_(messages.c.case_id.is_(None), messages.c.case_id == desk)
    )
    connection.execute(messages.delete().where(strangers, messages.c.received_at < before))
    answers = outbox.c.case_id.is_(None) if desk is None else or_(outbox.c.case_id.is_(None), outbox.c.case_id == desk)
    connection.execute(outbox.delete().where(answers, outbox.c.settled_at < before))


def tombs(connection: Connection) -> list[Tombstone]:
    """The proof of every erasure."""
    return [
        Tombstone(**row) for row in connection.execute(select(tombstones).order_by(tombstones.c.case_id)).mappings()
    ]


def _count(connection: Connection, table: Table, condition: ColumnElement[bool]) -> int:
    return connection.execute(select(func.count()).select_from(table).where(condition)).scalar_one()


def _delete_messages(connection: Connection, case_id: int) -> None:
    """What the family wrote, and from its addresses before they were linked, unless another case has the address."""
    own = contacts.c.case_id == case_id
    others = select(contacts.c.address_hash).where(contacts.c.case_id != case_id)
    addresses = select(contacts.c.address_hash).where(own, contacts.c.address_hash.not_in(others))
    unlinked = messages.c.case_id.is_(None) & messages.c.address_hash.in_(addresses)
    connection.execute(messages.delete().where((messages.c.case_id == case_id) | unlinked))
    connection.execute(pieces.delete().where(pieces.c.address_hash.in_(addresses)))


def _delete_outgoing(connection: Connection, case_id: int) -> None:
    own: Any = outbox.c.case_id == case_id
    stays = outbox.c.status.in_([WAITING, CLAIMED]) & (outbox.c.urgency != int(Urgency.PROMPT))
    connection.execute(outbox.delete().where(own, ~stays))
    connection.execute(outbox.update().where(own), {"farewell": True})
    addressed = select(outbox.c.contact_id).where(own, outbox.c.contact_id.is_not(None))
    connection.execute(contacts.update().where(contacts.c.case_id == case_id), {"active": False})
    connection.execute(contacts.delete().where(contacts.c.case_id == case_id, contacts.c.id.not_in(addressed)))

"""What people wrote: each message once, as it came, with what became of it."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

import msgspec
from sqlalchemy import Connection, Row, Select, and_, bindparam, func, select

from coachbot.store.dialects import insert_or_ignore
from coachbot.store.documents import encode
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import cases, contacts, messages, outbox
from coachbot.triage.levels import Level

REPEATED = timedelta(minutes=10)
"""For how long a network may bring the same message again."""

READING = timedelta(seconds=2)
"""The least time in which somebody reads a message and answers it."""

WHICH = "which"
"""The outcome of words that fit several children, until it is known whom they concern."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """The sealed part of a message."""

    address: str
    text: str | None
    button: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A message that came in. `outcome` is None until it has been decided what becomes of it."""

    id: int
    channel: str
    channel_id: str
    address: str
    text: str | None
    button: str | None
    at: datetime
    outcome: str | None
    case_id: int | None
    contact_id: int | None
    level: Level | None
    category: str | None
    evidence: tuple[str, ...]
    unread_at: datetime | None
    read_at: datetime | None
    read_by: str | None


decode_body = msgspec.json.Decoder(Body).decode


class Messages:
    """The incoming messages of one transaction."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def receive(
        self, channel: str, channel_id: str | None, address: str, *, text: str | None, button: str | None, at: datetime
    ) -> int | None:
        """Keep a message as it came. Returns its id, or None if the channel had brought it before.

        A channel that gives it no `channel_id` cannot tell a message brought twice from the same words written twice.
        The latter answer something: they count if the writer has been written to since, and could have read it.
        """
        name = f"{self._sealer.lookup(Purpose.MESSAGE, f'{channel}:{address}:{text}').hex()}:"
        if channel_id is None and self._again(channel, address, name, at):
            return None
        row = {
            "channel": channel,
            "channel_id": channel_id or f"{name}{at.astimezone(UTC):%Y%m%dT%H%M%S.%f}",
            "address_hash": self._sealer.lookup(Purpose.ADDRESS, f"{channel}:{address}"),
            "body": self._sealer.seal(Purpose.MESSAGE, encode(Body(address=address, text=text, button=button))),
            "received_at": at,
        }
        statement = insert_or_ignore(self._connection, messages).returning(messages.c.id)
        return self._connection.execute(statement, row).scalar_one_or_none()

    def _again(self, channel: str, address: str, name: str, at: datetime) -> bool:
        here = and_(messages.c.channel == channel, messages.c.address_hash.in_(self._hashes(channel, address)))
        query = select(func.max(messages.c.received_at)).where(here, messages.c.channel_id.startswith(name))
        lately = messages.c.received_at.between(at - REPEATED, at + REPEATED)  # no later: clocks are set back
        last = self._connection.execute(query.where(lately)).scalar()
        return last is not None and not self._written_to(channel, address, last, at - READING)

    def _written_to(self, channel: str, address: str, after: datetime, before: datetime) -> bool:
        hashes = self._hashes(channel, address)
        writer = select(contacts.c.id, contacts.c.case_id).where(
            contacts.c.address_hash.in_(hashes), contacts.c.channel == channel
        )
        found = self._connection.execute(writer).all()
        if not found:
            return False
        theirs = and_(
            outbox.c.case_id.in_([row.case_id for row in found]), outbox.c.contact_id.in_([row.id for row in found])
        )
        sent = and_(outbox.c.status.in_(["sent", "unknown"]), outbox.c.settled_at.between(after, before))
        return self._connection.execute(select(outbox.c.id).where(theirs, sent).limit(1)).first() is not None

    def _hashes(self, channel: str, address: str) -> list[bytes]:
        return self._sealer.lookups(Purpose.ADDRESS, f"{channel}:{address}")

    def asked_which(self, channel: str, address: str, since: datetime) -> Message | None:
        """The latest words from there of which it was asked whom they concern, and is not known yet."""
        here = and_(messages.c.channel == channel, messages.c.address_hash.in_(self._hashes(channel, address)))
        asked = and_(here, messages.c.outcome == WHICH, messages.c.received_at >= since)
        return next(iter(self._select(select(messages).where(asked).order_by(messages.c.id.desc()).limit(1))), None)

    def mark_understood(self, message_id: int) -> None:
        """It need not be put before the clinician after all."""
        self._update(message_id, {"unread_at": None})

    def settle(
        self,
        message_id: int,
        outcome: str,
        *,
        case_id: int | None = None,
        contact_id: int | None = None,
        level: Level | None = None,
        category: str | None = None,
        evidence: tuple[str, ...] = (),
    ) -> None:
        """Say what became of a message: a stable word of the inbox, whose it was, and what triage found.

        A case that has been erased meanwhile is left out.
        """
        row = {
            "same_id": message_id,
            "same_case": case_id,
            "outcome": outcome,
            "contact_id": contact_id,
            "level": level if level is None else int(level),
            "category": category,
            "evidence": self._sealer.seal(Purpose.EVIDENCE, encode(evidence)) if evidence else None,
        }
        self._connection.execute(_SETTLE, row)

    def mark_unread(self, message_id: int, at: datetime) -> None:
        """Put it before the clinician as one that could not be read."""
        self._update(message_id, {"unread_at": at, "read_at": None, "read_by": None})

    def mark_read(self, message_id: int, by: str, at: datetime) -> None:
        """A clinician has read it."""
        self._update(message_id, {"read_at": at, "read_by": by})

    def get(self, message_id: int) -> Message | None:
        """One message."""
        return next(iter(self._select(select(messages).where(messages.c.id == message_id))), None)

    def unread(self) -> list[Message]:
        """What waits for a clinician to read it, oldest first."""
        waits = messages.c.unread_at.is_not(None) & messages.c.read_at.is_(None)
        return self._select(select(messages).where(waits).order_by(messages.c.unread_at, messages.c.id))

    def of_case(self, case_id: int) -> list[Message]:
        """All that was received of a case, in order."""
        return self._select(select(messages).where(messages.c.case_id == case_id).order_by(messages.c.id))

    def _update(self, message_id: int, values: dict[str, Any]) -> None:
        self._connection.execute(_UPDATE, values | {"same_id": message_id})

    def _select(self, query: Select[Any]) -> list[Message]:
        return [self._message(row) for row in self._connection.execute(query)]

    def _message(self, row: Row[Any]) -> Message:
        body = decode_body(self._sealer.open(Purpose.MESSAGE, row.body))
        evidence = _decode_evidence(self._sealer.open(Purpose.EVIDENCE, row.evidence)) if row.evidence else ()
        return Message(
            id=row.id,
            channel=row.channel,
            channel_id=row.channel_id,
            address=body.address,
            text=body.text,
            button=body.button,
            at=row.received_at,
            outcome=row.outcome,
            case_id=row.case_id,
            contact_id=row.contact_id,
            level=None if row.level is None else Level(row.level),
            category=row.category,
            evidence=evidence,
            unread_at=row.unread_at,
            read_at=row.read_at,
            read_by=row.read_by,
        )


# Made once: in the way of every message, making a statement costs as much as running it.
_UPDATE = messages.update().where(messages.c.id == bindparam("same_id"))
_SETTLE = _UPDATE.values(case_id=select(cases.c.id).where(cases.c.id == bindparam("same_case")).scalar_subquery())
_decode_evidence = msgspec.json.Decoder(tuple[str, ...]).decode

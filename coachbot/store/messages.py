"""What people wrote: each message once, as it came, with what became of it."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

import msgspec
from sqlalchemy import Connection, Row, Select, select

from coachbot.store.dialects import insert_or_ignore
from coachbot.store.documents import encode
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import cases, messages
from coachbot.triage.levels import Level


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
        self, channel: str, channel_id: str, address: str, *, text: str | None, button: str | None, at: datetime
    ) -> int | None:
        """Keep a message as it came. Returns its id, or None if the channel had brought it before."""
        row = {
            "channel": channel,
            "channel_id": channel_id,
            "address_hash": self._sealer.lookup(Purpose.ADDRESS, f"{channel}:{address}"),
            "body": self._sealer.seal(Purpose.MESSAGE, encode(Body(address=address, text=text, button=button))),
            "received_at": at,
        }
        statement = insert_or_ignore(self._connection, messages).returning(messages.c.id)
        return self._connection.execute(statement, row).scalar_one_or_none()

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
            "outcome": outcome,
            "case_id": select(cases.c.id).where(cases.c.id == case_id).scalar_subquery(),
            "contact_id": contact_id,
            "level": level if level is None else int(level),
            "category": category,
            "evidence": self._sealer.seal(Purpose.EVIDENCE, encode(evidence)) if evidence else None,
        }
        self._update(message_id, row)

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

    def unsettled(self, limit: int) -> list[Message]:
        """What was received but never decided, because the program stopped in between; oldest first."""
        return self._select(select(messages).where(messages.c.outcome.is_(None)).order_by(messages.c.id).limit(limit))

    def of_case(self, case_id: int) -> list[Message]:
        """All that was received of a case, in order."""
        return self._select(select(messages).where(messages.c.case_id == case_id).order_by(messages.c.id))

    def _update(self, message_id: int, values: dict[str, Any]) -> None:
        self._connection.execute(messages.update().where(messages.c.id == message_id).values(values))

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


_decode_evidence = msgspec.json.Decoder(tuple[str, ...]).decode

"""What lies in the outbox: a message as it is put in, as it is claimed, and how it ended."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from coachbot.coach.actions import Urgency
from coachbot.coach.events import Outcome

Buttons = tuple[tuple[tuple[str, str], ...], ...]
"""Rows of (label, data)."""


class Status(StrEnum):
    """Where an outgoing message is. The first two may still change; a message ends in one of the others."""

    WAITING = "waiting"
    CLAIMED = "claimed"
    SENT = "sent"
    NEVER = "never"
    GONE = "gone"
    UNKNOWN = "unknown"
    EXPIRED = "expired"
    CANCELLED = "cancelled"


@dataclass(frozen=True, slots=True, kw_only=True)
class Envelope:
    """A message to be sent, in its reader's words.

    To exactly one of: a contact, a clinician, or a stranger's (channel, address). `key` is unique for ever within the
    case and recipient. `picture` names a drawing and `attachment` a file that is made when it is sent.
    """

    case_id: int | None
    key: str
    urgency: Urgency
    text: str
    contact_id: int | None = None
    clinician_id: int | None = None
    stranger: tuple[str, str] | None = None
    buttons: Buttons = ()
    picture: str | None = None
    attachment: str | None = None
    not_before: datetime | None = None
    expires: datetime | None = None
    alert: int | None = None

    def __post_init__(self) -> None:
        if [self.contact_id, self.clinician_id, self.stranger].count(None) != 2:  # noqa: PLR2004 - one of the three
            raise ValueError(f"message {self.key!r} must go to one of a contact, a clinician or a stranger")


def recipient(*, contact_id: int | None = None, clinician_id: int | None = None) -> str:
    """The word under which the outbox keeps one person's messages in line."""
    return f"contact:{contact_id}" if contact_id is not None else f"clinician:{clinician_id}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """The sealed part of an outgoing message."""

    text: str
    buttons: Buttons = ()
    picture: str | None = None
    attachment: str | None = None
    stranger: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Claimed:
    """A message to send now. `attempts` counts this one; `address` is None if the recipient has none any more."""

    id: int
    case_id: int | None
    key: str
    contact_id: int | None
    clinician_id: int | None
    channel: str | None
    address: str | None
    urgency: Urgency
    attempts: int
    created_at: datetime
    expires: datetime | None
    body: Body
    alert: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class EndedSend:
    """A message that the outbox has done with, as the coach is to hear of it."""

    case_id: int | None
    key: str
    contact_id: int | None
    outcome: Outcome


@dataclass(frozen=True, slots=True, kw_only=True)
class Backlog:
    """What waits for one thing: how many, and since when the oldest."""

    count: int
    oldest: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """A message of the outbox as a part of the conversation.

    `delivered`: its channel has reported since that all of it arrived. Many a channel never does.
    """

    id: int
    key: str
    contact_id: int | None
    clinician_id: int | None
    status: Status
    delivered: bool
    created_at: datetime
    settled_at: datetime | None
    body: Body

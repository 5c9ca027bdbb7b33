"""What every channel understands: a message that came, a message to send, how the send ended."""

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Protocol

from coachbot.channels.pace import Pace


class ChannelError(RuntimeError):
    """A channel cannot begin as it is set up; the message says what to do."""


class Ending(StrEnum):
    """How one try to send ended: law 7's outcomes, `failed` split by what to do next."""

    SENT = "sent"
    LATER = "later"
    NEVER = "never"
    GONE = "gone"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True)
class Incoming:
    """A message as it came: `channel_id` is the channel's own, the same when the channel delivers it twice.

    Exactly one of `text` and `button` is set; words that are none, such as a voice message, are named by their kind in
    brackets, ``[voice]``. `language` is what the channel knows of the writer's language, if anything.
    """

    channel: str
    channel_id: str
    address: str
    at: datetime
    text: str | None = None
    button: str | None = None
    language: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class File:
    """A picture or document to send along: `media` is its MIME type."""

    name: str
    media: str
    data: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Outgoing:
    """A message to send. `buttons` are rows of (label, data).

    Buttons whose data differ only after the last colon answer one question: once one is pressed they may all go.
    """

    address: str
    text: str
    buttons: tuple[tuple[tuple[str, str], ...], ...] = ()
    file: File | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """How a send ended; `channel_id` is the channel's name for what was sent, `wait` how long LATER means."""

    ending: Ending
    channel_id: str | None = None
    wait: timedelta | None = None


Receive = Callable[[Incoming], Awaitable[None]]
"""Keeps one message for good. Only when it returns may the channel tell its own side that the message was taken."""


class Channel(Protocol):
    """One way to reach people."""

    name: str

    @property
    def pace(self) -> Pace | None:
        """How fast messages may be sent; None: as fast as they can."""

    async def start(self, receive: Receive) -> None:
        """Begin to take messages in; each goes to `receive`, in order per address."""

    async def send(self, message: Outgoing) -> Receipt:
        """Try once to send; never raises for what the other side does, and never tries again by itself."""

    async def stop(self) -> None:
        """Stop taking messages in; what `receive` has not kept will come again."""

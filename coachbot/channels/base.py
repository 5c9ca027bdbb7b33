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
class Part:
    """Which piece of a longer message: `number` counts from 1 to `total`, `reference` is the same for all of them."""

    reference: int
    total: int
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Incoming:
    """A message as it came: `channel_id` is the channel's own, the same when the channel delivers it twice.

    It is None where the channel gives no name by which a second delivery could be told from the same words written
    again. `part` is set where this is only a piece of a longer message.

    Exactly one of `text` and `button` is set; words that are none, such as a voice message, are named by their kind in
    brackets, ``[voice]``. `language` is what the channel knows of the writer's language, if anything.
    """

    channel: str
    channel_id: str | None
    address: str
    at: datetime
    text: str | None = None
    button: str | None = None
    language: str | None = None
    part: Part | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class File:
    """A picture or document to send along: `media` is its MIME type."""

    name: str
    media: str
    data: bytes


Rows = tuple[tuple[tuple[str, str], ...], ...]
"""Rows of buttons, each a (label, data)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outgoing:
    """A message to send.

    Buttons whose data differ only after the last colon answer one question: once one is pressed they may all go. After
    `expires` the message is of no use: a channel that can hold it back for a phone that is off lets it go then.
    """

    address: str
    text: str
    expires: datetime | None = None
    buttons: Rows = ()
    file: File | None = None


def left_over(rows: Rows, pressed: str) -> Rows:
    """The buttons that stay once one was pressed: those that do not answer the same question."""
    question = pressed.rpartition(":")[0]
    rest = (tuple(one for one in row if one[1].rpartition(":")[0] != question) for row in rows)
    return tuple(row for row in rest if row)


@dataclass(frozen=True, slots=True, kw_only=True)
class Receipt:
    """How a send ended; `channel_id` is the channel's name for what was sent, `wait` how long LATER means.

    `names` are those under which the channel may report later how what was sent has fared, one for each of its pieces.
    """

    ending: Ending
    channel_id: str | None = None
    wait: timedelta | None = None
    names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """How a message that was SENT has fared since: SENT if it arrived, NEVER or GONE if it will not.

    `names` are the channel's own, one of which is among the receipt's: the first is certain, another only counts where
    `address` fits too.
    """

    channel: str
    names: tuple[str, ...]
    address: str
    ending: Ending


Receive = Callable[[Incoming], Awaitable[None]]
"""Keeps one message for good. Only when it returns may the channel tell its own side that the message was taken."""

Hear = Callable[[Report], Awaitable[bool]]
"""Keeps for good how a message has fared. False where no such message is known, or not yet."""


class Channel(Protocol):
    """One way to reach people."""

    name: str

    @property
    def pace(self) -> Pace | None:
        """How fast messages may be sent; None: as fast as they can."""

    def canonical(self, address: str) -> str | None:
        """The address as messages from there will name it; None where it is no address of this channel."""

    @property
    def up(self) -> bool:
        """Whether messages can come in here now, as far as this process can tell."""

    async def start(self, receive: Receive, hear: Hear | None = None, /) -> None:
        """Begin to take messages in; each goes to `receive`, in order per address.

        A channel that learns later how messages fared tells `hear`.
        """

    async def send(self, message: Outgoing) -> Receipt:
        """Try once to send; never raises for what the other side does, and never tries again by itself."""

    async def stop(self) -> None:
        """Stop taking messages in; what `receive` has not kept will come again."""

"""What the coach wants done. Imperative, frozen; all are carried out in the one transaction that keeps the case."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time
from enum import IntEnum
from types import MappingProxyType

from coachbot.coach.case import Case
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Who
from coachbot.reading.readings import Mark

Value = str | int | time | date | Position | tuple[Position, ...] | tuple[tuple[Position, Mark], ...]
"""What a text may be given: voice turns each kind into words of the reader's language."""


class Urgency(IntEnum):
    """The order of the outbox: the smaller goes first."""

    SAFETY = 0
    ALERT = 1
    REPLY = 2
    PROMPT = 3
    NEWS = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One text out of `prompts/`, by its id, with what is to be filled in."""

    id: str
    args: Mapping[str, Value] = field(default_factory=lambda: MappingProxyType({}))


@dataclass(frozen=True, slots=True, kw_only=True)
class Button:
    """A choice under a message: `data` (at most 40 ASCII characters) comes back in `Pressed`, `label` is shown."""

    data: str
    label: Line


@dataclass(frozen=True, slots=True, kw_only=True)
class Say:
    """Send one message: its lines are paragraphs.

    `to` is a contact's id, or a group of clinicians, or one clinician by name. `key` is unique within the case for
    ever, so that no message can be written twice. `buttons` stand in rows. `picture` names a drawing, `attachment` a
    file that is made when it is sent. After `expires` the message is no longer worth sending.
    """

    to: int | Who | str
    lines: tuple[Line, ...]
    key: str
    urgency: Urgency
    buttons: tuple[tuple[Button, ...], ...] = ()
    picture: str | None = None
    attachment: str | None = None
    expires: datetime | None = None
    alert: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkUnread:
    """Put a message before the clinician as one that the coach could not read."""

    message: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeBack:
    """Do not send what still waits for this family and may ask it to practise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Summarise:
    """Tell the clinician on call how it went, as text, picture and file, with the estimate of `insight`."""

    key: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AwaitNote:
    """The next words of this clinician belong to this case, as a note."""

    by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Forget:
    """Erase what is kept about the family, once this transaction's messages have gone."""


Action = Say | TakeBack | Summarise | MarkUnread | AwaitNote | Forget


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """What `decide` answers: the case as it now stands and what is to be done, in order."""

    case: Case
    actions: tuple[Action, ...] = ()

"""What can happen to a case. Past tense, frozen; each is one row of the case's history.

Ids in events are the store's: `contact` and `message` are row numbers, `by` is a clinician's name as signed in.
"""

from dataclasses import dataclass
from datetime import date, time
from enum import StrEnum

from coachbot.coach.case import Role, Swallow
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy
from coachbot.programme.sizes import Target
from coachbot.triage import Assessment


class Outcome(StrEnum):
    """How a send ended, once the outbox has done with it. A send to be tried later is not yet ended."""

    SENT = "sent"
    NEVER = "never"
    GONE = "gone"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True)
class Joined:
    """Somebody opened an invitation and their chat is now linked."""

    contact: int
    role: Role
    channel: str
    language: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Replied:
    """A linked chat wrote words."""

    contact: int
    text: str
    message: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Pressed:
    """A linked chat pressed a button, whose `data` the coach itself had given out."""

    contact: int
    data: str
    message: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Ticked:
    """The clock came round: something of this case is due."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SendEnded:
    """The outbox has done with a message: `key` is the message's own, `contact` None where it was for a clinician."""

    key: str
    contact: int | None
    outcome: Outcome


@dataclass(frozen=True, slots=True, kw_only=True)
class ClinicianWrote:
    """A clinician wrote words in chat: the note that was asked for."""

    by: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ClinicianPressed:
    """A clinician pressed a button under an alert."""

    by: str
    data: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Acknowledged:
    """A clinician took an alert on."""

    by: str
    alert: int
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """A clinician put practice on hold."""

    by: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldLifted:
    """A clinician lifted the hold; the note says why that is safe."""

    by: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Ended:
    """A clinician ended the programme."""

    by: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Paused:
    """A clinician paused practice, until a day or until resumed."""

    by: str
    until: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Resumed:
    """A clinician resumed practice."""

    by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BedtimeSet:
    """A clinician changed the bedtime, and the zone if the family moved."""

    by: str
    at: time
    zone: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CandySet:
    """A clinician changed the candy from the next night on."""

    by: str
    candy: Candy


@dataclass(frozen=True, slots=True, kw_only=True)
class TargetSet:
    """A clinician set how big the real medicine is and the sizes on the way to it, or, None, took that back."""

    by: str
    target: Target | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A clinician sent the family words of their own."""

    by: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NightEntered:
    """A clinician entered a night from a paper sheet."""

    by: str
    day: date
    swallows: tuple[Swallow, ...]
    best: Position | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FollowedUp:
    """Clinician and child chose the position for the real medicine."""

    by: str
    position: Position | None
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Erased:
    """A clinician was asked to erase what is kept about the family; or, not `told`, it had been kept long enough."""

    by: str
    told: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class StrangerWrote:
    """Somebody whom no family knows wrote something troubling; the clinic's own case takes it."""

    message: int
    assessment: Assessment


@dataclass(frozen=True, slots=True, kw_only=True)
class Stuck:
    """A fault of ours keeps a family's case from going on; the clinic's own case takes it."""

    case: int


Event = (
    Joined
    | Replied
    | Pressed
    | Ticked
    | SendEnded
    | ClinicianWrote
    | ClinicianPressed
    | Acknowledged
    | Held
    | HoldLifted
    | Ended
    | Paused
    | Resumed
    | BedtimeSet
    | CandySet
    | TargetSet
    | Told
    | NightEntered
    | FollowedUp
    | Erased
    | StrangerWrote
    | Stuck
)

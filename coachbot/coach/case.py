"""One child's way through the protocol, as a value: everything that `decide` may know, and nothing else."""

from dataclasses import dataclass, replace
from datetime import date, datetime, time
from enum import StrEnum

from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy, Protocol
from coachbot.reading.readings import Mark
from coachbot.reading.requests import Wish
from coachbot.triage.levels import Level


class State(StrEnum):
    """Where a case is."""

    INVITED = "invited"
    LESSON = "lesson"
    PRACTISING = "practising"
    PAUSED = "paused"
    ON_HOLD = "on_hold"
    FINISHED = "finished"
    FOLLOWED_UP = "followed_up"
    WITHDRAWN = "withdrawn"


class Role(StrEnum):
    """Who is at the other end of a family's chat."""

    PARENT = "parent"
    CHILD = "child"


class Status(StrEnum):
    """How a night stands."""

    OPEN = "open"
    FINISHED = "finished"
    PARTIAL = "partial"
    MISSED = "missed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Child:
    """The little that is kept about a child."""

    name: str
    birth_year: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """A family's chat. The address itself stays in the store; `id` is the store's name for it."""

    id: int
    role: Role
    language: str
    joined: datetime
    reachable: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Swallow:
    """What became of one candy in one position."""

    position: Position
    mark: Mark
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Night:
    """One evening. `number` counts evenings from 1; `turn` is which of the fixed orders it took, also from 1."""

    number: int
    turn: int
    day: date
    order: tuple[Position, ...]
    candy: Candy
    prompted: datetime
    status: Status = Status.OPEN
    reminded: bool = False
    swallows: tuple[Swallow, ...] = ()
    best: Position | None = None
    best_asked: bool = False
    note: str | None = None
    note_asked: bool = False

    def mark(self, position: Position) -> Mark | None:
        """The mark of a position, or None while there is none."""
        return next((swallow.mark for swallow in self.swallows if swallow.position == position), None)

    @property
    def next_position(self) -> Position | None:
        """The first position of the order that has no mark yet."""
        return next((position for position in self.order if self.mark(position) is None), None)

    def record(self, swallow: Swallow) -> "Night":
        """The night with this swallow put in, in place of an earlier one of its position, in the night's order."""
        others = [old for old in self.swallows if old.position != swallow.position]
        return replace(self, swallows=tuple(sorted([*others, swallow], key=lambda one: self.order.index(one.position))))


@dataclass(frozen=True, slots=True, kw_only=True)
class Alert:
    """What a clinician must acknowledge. `number` counts within the case from 1; `steps` of its ladder have been taken."""

    number: int
    level: Level
    category: str
    evidence: tuple[str, ...]
    raised: datetime
    contact: int | None = None
    message: int | None = None
    steps: int = 0
    next_step: datetime | None = None
    acknowledged_by: str | None = None
    acknowledged: datetime | None = None

    @property
    def open(self) -> bool:
        """Whether nobody has acknowledged it."""
        return self.acknowledged is None


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """A wording that a family has had, so that it is not used again too soon."""

    text: str
    day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Pending:
    """A wish that waits for a yes: who asked, and what for."""

    wish: Wish
    contact: int


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteAsked:
    """What a clinician began in chat and must finish with a note: `lift` the hold or `end` the programme."""

    clinician: str
    what: str
    alert: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A case. `orders` are all the nights' orders, fixed before the first night and never drawn again."""

    id: int
    child: Child
    protocol: Protocol
    orders: tuple[tuple[Position, ...], ...]
    bedtime: time
    zone: str
    language: str
    state: State = State.INVITED
    back_to: State | None = None
    contacts: tuple[Contact, ...] = ()
    consent: datetime | None = None
    consent_by: int | None = None
    next_evening: date | None = None
    lesson_step: int = 0
    lesson_open: datetime | None = None
    lesson_missed: int = 0
    paused_until: date | None = None
    watch: date | None = None
    watch_until: date | None = None
    nights: tuple[Night, ...] = ()
    alerts: tuple[Alert, ...] = ()
    spoken: tuple[Spoken, ...] = ()
    tip: str | None = None
    unread: int = 0
    pending: Pending | None = None
    note_asked: NoteAsked | None = None
    chosen: Position | None = None

    @property
    def night(self) -> Night | None:
        """The latest night, open or not."""
        return self.nights[-1] if self.nights else None

    @property
    def practised(self) -> int:
        """How many nights have been practised, wholly or in part."""
        return sum(night.status in (Status.FINISHED, Status.PARTIAL) for night in self.nights)

    @property
    def missed_in_a_row(self) -> int:
        """How many nights have been missed since the last practised one."""
        count = 0
        for night in reversed(self.nights):
            if night.status is not Status.MISSED:
                break
            count += 1
        return count

    def contact(self, number: int) -> Contact:
        """The contact with that id.

        Raises:
            KeyError: if the case has none such.
        """
        for contact in self.contacts:
            if contact.id == number:
                return contact
        raise KeyError(number)

    @property
    def parents(self) -> tuple[Contact, ...]:
        """The adults' chats."""
        return tuple(contact for contact in self.contacts if contact.role is Role.PARENT)

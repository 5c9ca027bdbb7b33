"""One child's way through the protocol, as a value: everything that `decide` may know, and nothing else."""

from dataclasses import dataclass, replace
from datetime import date, datetime, time
from enum import StrEnum

from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy, Protocol
from coachbot.programme.sizes import Target
from coachbot.reading.readings import Mark
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


IN_PROGRAMME = (State.LESSON, State.PRACTISING, State.PAUSED, State.ON_HOLD)
"""States of a family that has joined and neither finished nor stopped."""


class Role(StrEnum):
    """Who is at the other end of a family's chat."""

    PARENT = "parent"
    CHILD = "child"


class Status(StrEnum):
    """How a night stands. `UNSENT` is our fault: the order reached nobody in time, and it does not count as missed."""

    OPEN = "open"
    FINISHED = "finished"
    PARTIAL = "partial"
    MISSED = "missed"
    UNSENT = "unsent"


@dataclass(frozen=True, slots=True, kw_only=True)
class Child:
    """The little that is kept about a child."""

    name: str
    birth_year: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """A family's chat. The address itself stays in the store; `id` is the store's name for it.

    Not `reachable`: sends have failed for good, until it writes again. `left`: it is a stranger's, never written to
    again.
    """

    id: int
    role: Role
    channel: str
    language: str
    joined: datetime
    reachable: bool = True
    left: bool = False

    @property
    def open(self) -> bool:
        """Whether anything may be sent there."""
        return self.reachable and not self.left


@dataclass(frozen=True, slots=True, kw_only=True)
class Swallow:
    """What became of one candy in one position."""

    position: Position
    mark: Mark
    note: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Night:
    """One evening. `number` counts evenings from 1; `turn` is which of the fixed orders it took, also from 1.

    `touched` is when the family last said something of it; `undelivered` of its `recipients` could not be sent the
    prompt.
    """

    number: int
    turn: int
    day: date
    order: tuple[Position, ...]
    candy: Candy
    prompted: datetime
    touched: datetime
    recipients: int
    undelivered: int = 0
    status: Status = Status.OPEN
    reminded: bool = False
    swallows: tuple[Swallow, ...] = ()
    best: Position | None = None
    best_asked: bool = False
    note: str | None = None
    note_asked: bool = False
    asked: tuple[tuple[int, str], ...] = ()

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
    """What a clinician must acknowledge. `number` counts within the case from 1, `steps` those taken up the ladder."""

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


class Question(StrEnum):
    """A yes-or-no question that stands open outside the night's own."""

    DELETE = "delete"
    WATCH = "watch"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteAsked:
    """What a clinician began in chat and must finish with a note: `lift` the hold or `end` the programme."""

    clinician: str
    what: str
    alert: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A case. `orders` are all the nights' orders, fixed before the first night and never drawn again.

    `next_evening` is the local date of the next prompt; `lesson_day` that of the last evening with a lesson,
    `learned` the date on which it ended; `back_to` the state that lifting the hold returns to; `ended_by` the
    clinician who ended the programme, None if the family stopped it. `late` says that the last prompt could not be
    sent in time, which the next one will say kindly; `serial` numbers what has been said. `watch` is the next date on
    which the family is asked how the child is after a choke. `target` is for clinicians only; no family is told of it.
    """

    id: int
    child: Child
    protocol: Protocol
    orders: tuple[tuple[Position, ...], ...]
    bedtime: time
    zone: str
    language: str
    state: State = State.INVITED
    back_to: State | None = None
    ended_by: str | None = None
    contacts: tuple[Contact, ...] = ()
    consent: datetime | None = None
    consent_by: int | None = None
    next_evening: date | None = None
    learned: date | None = None
    lesson_step: int = 0
    lesson_open: datetime | None = None
    lesson_day: date | None = None
    lesson_missed: int = 0
    paused_until: date | None = None
    came_back: bool = False
    late: bool = False
    watch: date | None = None
    watch_until: date | None = None
    nights: tuple[Night, ...] = ()
    alerts: tuple[Alert, ...] = ()
    spoken: tuple[Spoken, ...] = ()
    tip: str | None = None
    unread: int = 0
    question: Question | None = None
    note_asked: NoteAsked | None = None
    forget_asked: bool = False
    chosen: Position | None = None
    target: Target | None = None
    serial: int = 0

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
            if night.status in (Status.FINISHED, Status.PARTIAL):
                break
            count += night.status is Status.MISSED
        return count

    @property
    def open_night(self) -> Night | None:
        """Tonight's night, while its answers are awaited."""
        return self.night if self.night and self.night.status is Status.OPEN else None

    @property
    def finished_orders(self) -> int:
        """How many of the orders have been answered whole. A partial or missed night keeps its order for later."""
        return sum(night.status is Status.FINISHED for night in self.nights)

    @property
    def complete(self) -> bool:
        """Whether all the nights have been practised, or the calendar has no evening left."""
        return self.practised >= self.protocol.nights or len(self.nights) >= self.protocol.max_nights

    @property
    def unreachable(self) -> bool:
        """Whether a family in the programme has no adult who can be written to."""
        return self.state in IN_PROGRAMME and not any(contact.open for contact in self.parents)

    @property
    def running(self) -> State:
        """The state that practice goes on in."""
        return State.PRACTISING if self.learned else State.LESSON

    @property
    def open_alerts(self) -> tuple[Alert, ...]:
        """The alerts that nobody has acknowledged."""
        return tuple(alert for alert in self.alerts if alert.open)

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

"""The stage of a rehearsal: the very service, over SQLite in a folder of its own, with an invented family."""

import tempfile
from collections import defaultdict
from collections.abc import AsyncIterator, Collection
from contextlib import asynccontextmanager
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path

from coachbot.bootstrap import Coachbot, build
from coachbot.channels.base import Outgoing
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.coach.case import Case, Role
from coachbot.programme.protocol import Protocol
from coachbot.programme.screening import Neck
from coachbot.programme.zones import instant, local
from coachbot.service import defaults
from coachbot.service.enrolling import Enrolled, Family, Screened, enrol, new_seed
from coachbot.store import Store, Transaction, new_key

PARENT, CHILD, CLINICIAN, BACKUP = "parent", "child", "clinician", "backup"
PHONES = (PARENT, CHILD, CLINICIAN, BACKUP)
"""The phones, by address."""

ON_CALL_NAME, BACKUP_NAME = "Dr Imani Osei", "Nurse Mika Lindqvist"

EMERGENCY_NUMBER = "911"
ZONE = "America/Edmonton"
START = instant(date(2026, 10, 24), time(18, 45), ZONE)
"""A Saturday early evening a week before the clocks go back in much of North America."""

FAMILY = Family(
    child="Noor",
    bedtime=time(19, 30),
    zone=ZONE,
    language="en",
    invite=(Role.PARENT, Role.CHILD),
    screening=Screened(
        born=date(2017, 5, 3),
        swallowing_disorder=False,
        too_ill=False,
        candy_allergy=False,
        neck=Neck.SOUND,
        confirmed_by=ON_CALL_NAME,
    ),
)
"""A family of our own invention."""


@dataclass
class HandClock:
    """A clock that stands still until it is moved."""

    now: datetime = START

    def __call__(self) -> datetime:
        """The instant shown."""
        return self.now


@dataclass(frozen=True, slots=True)
class Spoken:
    """One message as it stands on a phone: what arrived (`sent`), or what its owner wrote or tapped (`own`).

    `pressed` is the data of those of its buttons that its owner has pressed.
    """

    at: datetime
    own: str | None = None
    sent: Outgoing | None = None
    pressed: tuple[str, ...] = ()


@dataclass(frozen=True)
class Stage:
    """Everything on stage. Use `opened`."""

    coachbot: Coachbot
    phones: RehearsalChannel
    texts: RehearsalChannel
    """The phones that have text messages only: those named in `texting`."""
    clock: HandClock
    case_id: int = 0
    codes: dict[Role, str] = field(default_factory=dict)
    texting: frozenset[str] = frozenset()
    spoken: defaultdict[str, list[Spoken]] = field(default_factory=lambda: defaultdict(list))

    @property
    def case(self) -> Case:
        """The family's case as it is kept."""
        return self.coachbot.store.run(lambda tx: tx.cases.load(self.case_id))

    async def write(self, phone: str, text: str) -> None:
        """Somebody writes on a phone, and all that follows at once happens."""
        self.spoken[phone].append(Spoken(at=self.clock.now, own=text))
        await self._channel(phone).write(phone, text)
        await self._settle()

    async def press(self, phone: str, data: str) -> None:
        """Somebody presses a button that stands on the phone, and all that follows at once happens.

        Raises:
            ValueError: if no message on that phone has such a button.
        """
        number, label = self._button(phone, data)
        standing = self.spoken[phone]
        standing[number] = replace(standing[number], pressed=(*standing[number].pressed, data))
        standing.append(Spoken(at=self.clock.now, own=label))
        await self._channel(phone).press(phone, data)
        await self._settle()

    async def forward(self, span: timedelta) -> None:
        """Let time pass; whatever comes due on the way happens in its own time."""
        end = self.clock.now + span
        while (due := await self._next_due()) and due <= end:
            self.clock.now = max(self.clock.now, due)
            await self._settle()
        self.clock.now = end
        await self._settle()

    async def to_bedtime(self) -> None:
        """Go on to the family's next bedtime."""
        case = self.case
        here = local(self.clock.now, case.zone)
        day = here.date() if here.time() < case.bedtime else here.date() + timedelta(days=1)
        await self.forward(instant(day, case.bedtime, case.zone) - self.clock.now)

    def last(self, phone: str) -> Outgoing | None:
        """The message that arrived last on a phone."""
        return next((one.sent for one in reversed(self.spoken[phone]) if one.sent), None)

    async def _settle(self) -> None:
        await self.coachbot.settle()
        for phone, arrived in [*self.phones.phones.items(), *self.texts.phones.items()]:
            self.spoken[phone] += [Spoken(at=self.clock.now, sent=message) for message in arrived]
            arrived.clear()

    def _channel(self, phone: str) -> RehearsalChannel:
        return self.texts if phone in self.texting else self.phones

    def _button(self, phone: str, data: str) -> tuple[int, str]:
        """The last message on the phone that has the button, by its number, and the button's label."""
        for number, one in reversed(list(enumerate(self.spoken[phone]))):
            for label, own in (button for row in (one.sent.buttons if one.sent else ()) for button in row):
                if own == data:
                    return number, label
        raise ValueError(f"there is no such button on the {phone}'s phone")

    async def _next_due(self) -> datetime | None:
        return await self.coachbot.store.read(lambda tx: tx.cases.next_due())


@asynccontextmanager
async def opened(
    wanted: Family = FAMILY, *, start: datetime = START, texting: Collection[str] = ()
) -> AsyncIterator[Stage]:
    """A stage in a folder of its own, which goes when it closes; the phones `texting` have text messages only."""
    with tempfile.TemporaryDirectory(prefix="coachbot-rehearsal-") as folder:
        store = Store.open(f"sqlite:///{Path(folder) / 'rehearsal.sqlite3'}", new_key())
        try:
            store.upgrade()
            yield await cast(store, wanted, start=start, texting=texting)
        finally:
            store.close()


async def cast(
    store: Store, wanted: Family = FAMILY, *, start: datetime = START, texting: Collection[str] = ()
) -> Stage:
    """Put an enrolled family and two clinicians on duty on stage, over an open store."""
    stage = await empty(store, start=start, texting=texting)
    now = stage.clock.now

    def enrolled(tx: Transaction) -> Enrolled:
        for name, duty, phone in ((ON_CALL_NAME, "on_call", CLINICIAN), (BACKUP_NAME, "backup", BACKUP)):
            channel = stage.texts if phone in texting else stage.phones
            tx.clinicians.add(name, now, role="lead", duty=duty, reach=(channel.name, phone))
        usual = Protocol(emergency_number=EMERGENCY_NUMBER)
        defaults.write(tx, defaults.Defaults(zone=wanted.zone, protocol=usual))
        return enrol(tx, wanted, emergency_number=EMERGENCY_NUMBER, seed=new_seed(tx), now=now)

    done = await store.transact(enrolled)
    return replace(stage, case_id=done.case.id, codes=dict(done.codes))


async def empty(store: Store, *, start: datetime, texting: Collection[str] = ()) -> Stage:
    """A stage over an open store, with phones and a clock, to which nobody has come yet."""
    clock = HandClock(start.astimezone(UTC))
    phones, texts = RehearsalChannel(clock), RehearsalChannel(clock, name="sms")
    channels = {channel.name: channel for channel in (phones, texts)}
    coachbot = build(store, channels, emergency_number=EMERGENCY_NUMBER, clock=clock)
    for channel in channels.values():
        await channel.start(coachbot.inbox.receive, coachbot.sender.report)
    return Stage(coachbot, phones, texts, clock, texting=frozenset(texting))

"""A clinic of invented families, each played through the real service up to now: nothing is written past the coach.

Names are invented, from many places; whoever bears one of them is not meant.
"""

import asyncio
import random
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta

from coachbot.bootstrap import Coachbot
from coachbot.channels.base import Incoming
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.coach.case import Case, Night, Role, State
from coachbot.coach.events import Acknowledged, FollowedUp, HoldLifted
from coachbot.coach.finish import first_and_last
from coachbot.programme.positions import Position
from coachbot.programme.screening import Neck
from coachbot.programme.zones import instant
from coachbot.service.enrolling import Enrolled, Family, Screened, enrol, new_seed
from coachbot.service.files import Files
from coachbot.service.heartbeat import Heartbeat
from coachbot.store import Claimed, Transaction

DAYS = 20
"""How many days ago the first families began."""

CLINICIAN = "Dr Imani Osei"

NAMES = (  # noqa: SIM905 - forty names are read more easily so
    "Noor Adelaja Tomasz Yuki Priya Mateo Freya Kofi Leilani Sora "
    "Ines Bodhi Amara Lukas Zainab Niko Anouk Dara Ewa Rafael "
    "Siobhan Tariq Maren Obi Paloma Ravi Signe Thandi Umar Vera "
    "Wen Ximena Yara Zoltan Aiko Bram Chidi Delphine Emil Farah"
).split()
ZONES = ("America/New_York", "America/New_York", "Europe/Paris", "Europe/Madrid")
LANGUAGES = {"Europe/Paris": "fr", "Europe/Madrid": "es"}

GRAVE = {
    "en": "she choked and could not breathe for a moment, she is ok now",
    "es": "se atragantó y no podía respirar un momento, ya está bien",
    "fr": "elle s'est étouffée et ne pouvait plus respirer un moment, ça va maintenant",
}
ODD = {"en": "grandma says blue bicycle??", "es": "la abuela dice bicicleta azul??", "fr": "mamie dit vélo bleu??"}
MEDICINE = {
    "en": "can I crush his antibiotic tablet?",
    "es": "¿puedo triturar la pastilla del antibiótico?",
    "fr": "puis-je écraser son comprimé d'antibiotique ?",
}
TIRED = {"en": "she cried and did not want to", "es": "lloró y no quería", "fr": "elle a pleuré, elle ne voulait pas"}
NOTES = {
    "en": ("took it like a champ", "a bit sticky", "less water was better", "she giggled a lot"),
    "es": ("muy bien hoy", "un poco pegajoso", "con menos agua fue mejor", "se rió mucho"),
    "fr": ("très bien ce soir", "un peu collant", "mieux avec moins d'eau", "elle a beaucoup ri"),
}


PAUSE = {"en": "please pause for a week", "es": "pausa una semana por favor", "fr": "pause une semaine svp"}
STOP = {"en": "stop", "es": "parar", "fr": "arrêter"}

TWISTS = {
    "grave": GRAVE,
    "grave-lifted": GRAVE,
    "odd": ODD,
    "medicine": MEDICINE,
    "tired": TIRED,
    "pauses": PAUSE,
    "stops": STOP,
}
"""What a family writes on its night, by its twist."""

PLOTS = (
    "",
    "grave",
    "",
    "misses",
    "medicine",
    "",
    "pauses",
    "child",
    "grave-lifted",
    "odd",
    "",
    "tired",
    "waits",
    "stops",
)
"""Twists in the order in which families get them."""

NOTED, LOOKED_AT = 0.25, 0.9
"""How often a family adds a note; and how well a family must answer to have been followed up already."""


@dataclass(frozen=True, slots=True)
class Part:
    """How one invented family behaves: on which day it begins, how often it answers, what befalls it on which night.

    `likes` is the position that the child comes to like; `twist` what happens on night `on`, 0 for the last evening.
    """

    name: str
    begins: int
    answers: float
    likes: Position
    twist: str = ""
    on: int = 0


def parts(children: int, draw: random.Random) -> list[Part]:
    """The families, in different states: most go on well, some wait, pause, miss, stop, worry. Some worry tonight."""
    found = []
    for index in range(children):
        begins, twist = draw.randrange(0, DAYS - 2), PLOTS[index % len(PLOTS)]
        on = 0 if index % 2 else draw.randrange(1, 10)
        likes = draw.choice(tuple(Position))
        found.append(Part(NAMES[index % len(NAMES)], begins, draw.uniform(0.75, 1.0), likes, twist, on))
    return found


class NoFiles(Files):
    """Draws nothing: nobody holds these phones."""

    async def of(self, claimed: Claimed) -> None:
        """No file."""


class Past(Heartbeat):
    """Beats on a clock that lies days back for good: it was not set back, and other families are not its concern."""

    async def _mind_the_clock(self, now: datetime) -> None:
        """Whatever was decided later than now stays as it is."""


class Cast:
    """The families on the stage: the service with a clock of its own, and phones that nobody holds."""

    def __init__(self, coachbot: Coachbot, now: datetime, channel: str, draw: random.Random) -> None:
        self.now = now
        self._draw = draw
        self._channel = channel
        self._count = 0
        self._looks = 0
        silent = RehearsalChannel(self._clock)
        channels = dict.fromkeys((*coachbot.channels, channel), silent)
        files = NoFiles(coachbot.store)
        sender = replace(coachbot.sender, channels=channels, clock=self._clock, files=files)
        inbox = replace(coachbot.inbox, clock=self._clock)
        whole = coachbot.heartbeat
        heartbeat = Past(
            whole.store, whole.deciding, whole.faults, self._clock, f"{whole.process} demo", whole.overdue, whole.woken
        )
        self._coachbot = replace(coachbot, sender=sender, inbox=inbox, heartbeat=heartbeat, clock=self._clock)
        self._parts: dict[int, Part] = {}
        self._draws: dict[int, random.Random] = {}
        self._twisted: set[int] = set()
        self.last = False

    async def begin(self, part: Part) -> None:
        """Enrol a family, link its phone, consent."""
        done = await self._coachbot.store.transact(lambda tx: self._enrol(tx, part))
        case = done.case.id
        self._parts[case], self._draws[case] = part, random.Random(case)  # noqa: S311 - invention
        for role, code in done.codes:
            await self._says(case, code, role=role)
        if part.twist != "waits":
            await self._presses(case, "consent:agree")

    async def morning(self) -> None:
        """The clinician takes on what is open, lifts a hold where that is the part, and follows up what is over."""
        await self._catch_up()
        if not self.last:
            await self._coachbot.store.transact(self._look_after)

    async def evening(self) -> None:
        """Let every bedtime of this day come, with the answers to it."""
        cases = await self._coachbot.store.read(lambda tx: [tx.cases.load(case) for case in self._parts])
        moments: dict[datetime, list[int]] = {}
        for case in cases:
            moments.setdefault(instant(self.now.date(), case.bedtime, case.zone), []).append(case.id)
        for moment, called in sorted(moments.items()):
            self.now = max(self.now, moment)
            await self._catch_up()
            self.now += timedelta(minutes=9)
            await asyncio.gather(*map(self._answers, called))
            await self._coachbot.sender.drain()

    async def _catch_up(self) -> None:
        """Do what is due, then send what waits; once each is enough here, and quicker than settling."""
        await self._coachbot.heartbeat.beat()
        await self._coachbot.sender.drain()

    def _clock(self) -> datetime:
        """A thousandth of a second later each time, so that what follows something stands after it."""
        self._looks += 1
        return self.now + timedelta(milliseconds=self._looks)

    def _enrol(self, tx: Transaction, part: Part) -> Enrolled:
        zone = self._draw.choice(ZONES)
        family = Family(
            child=part.name,
            bedtime=time(19, 30),
            zone=zone,
            screening=Screened(
                born=date(self.now.year - self._draw.randrange(6, 13), 5, 17),
                swallowing_disorder=False,
                too_ill=False,
                candy_allergy=False,
                neck=Neck.SOUND,
                confirmed_by=CLINICIAN,
            ),
            language=LANGUAGES.get(zone, "en"),
            invite=(Role.PARENT, Role.CHILD) if part.twist == "child" else (Role.PARENT,),
        )
        return enrol(tx, family, emergency_number="112", seed=new_seed(tx), now=self.now)

    def _look_after(self, tx: Transaction) -> None:
        happen = self._coachbot.deciding.happen
        for case_id, number, _ in tx.board.open_alerts():
            if case_id in self._parts:
                happen(tx, tx.cases.load(case_id), Acknowledged(by=CLINICIAN, alert=number), self.now)
        for case_id, part in self._parts.items():
            case = tx.cases.load(case_id)
            if case.state is State.ON_HOLD and part.twist == "grave-lifted":
                happen(
                    tx, case, HoldLifted(by=CLINICIAN, note="Seen today. Chest clear, eats and drinks well."), self.now
                )
            if case.state is State.FINISHED and part.answers > LOOKED_AT:
                happen(tx, case, FollowedUp(by=CLINICIAN, position=first_and_last(case)[1]), self.now)

    async def _answers(self, case_id: int) -> None:
        case, part = await self._coachbot.store.read(lambda tx: tx.cases.load(case_id)), self._parts[case_id]
        if case.state is State.LESSON and case.lesson_open:
            await self._learns(case)
        elif case.open_night and not self._away(case, part):
            await self._practises(case, case.open_night, part)

    def _away(self, case: Case, part: Part) -> bool:
        if self._turns(case, part):
            return part.twist == "misses"
        return self._draws[case.id].random() > part.answers

    def _turns(self, case: Case, part: Part) -> bool:
        """Whether this is the evening of the family's twist, or for one that misses, after it."""
        if not part.twist or case.id in self._twisted:
            return False
        return case.practised >= part.on if part.on else self.last

    async def _learns(self, case: Case) -> None:
        for step in range(len(case.protocol.positions) + 4):
            await self._presses(case.id, f"next:{step}")
        await self._presses(case.id, "candy:down")

    async def _practises(self, case: Case, night: Night, part: Part) -> None:
        if self._turns(case, part) and (words := TWISTS.get(part.twist)):
            self._twisted.add(case.id)
            await self._says(case.id, words[case.language])
            if part.twist in ("grave", "grave-lifted", "tired", "pauses", "stops"):
                return
        marks = {position: self._mark(case, position, night, part) for position in night.order}
        if None in marks.values():
            for position, mark in marks.items():
                await self._presses(case.id, f"rate:{night.number}:{position}:{mark or 'not_down'}")
        else:
            await self._says(case.id, " ".join(str(mark) for mark in marks.values()))
        best = max(marks, key=lambda position: (marks[position] or 0, position is part.likes))
        await self._presses(case.id, f"best:{night.number}:{best}")
        draw = self._draws[case.id]
        if draw.random() < NOTED:
            await self._says(case.id, draw.choice(NOTES[case.language]))
        else:
            await self._presses(case.id, f"note:{night.number}:none")

    def _mark(self, case: Case, position: Position, night: Night, part: Part) -> int | None:
        """How it went: everything gets easier, what the child likes most of all."""
        ease = 2.0 + 0.08 * night.number + (0.6 + 0.09 * night.number if position is part.likes else 0)
        mark = round(self._draws[case.id].gauss(ease, 0.8))
        return None if mark < 1 else min(mark, 5)

    async def _says(self, case: int, text: str, role: Role = Role.PARENT) -> None:
        await self._take(case, role, text=text)

    async def _presses(self, case: int, data: str) -> None:
        await self._take(case, Role.PARENT, button=f"{case}:{data}")

    async def _take(self, case: int, role: Role, text: str | None = None, button: str | None = None) -> None:
        self._count += 1
        came = f"demo-{self.now:%j}-{self._count}"
        address = f"demo-{case}-{role}"
        await self._coachbot.inbox.receive(
            Incoming(
                channel=self._channel, channel_id=came, address=address, at=self._clock(), text=text, button=button
            )
        )


async def seed(
    coachbot: Coachbot, now: datetime, children: int = 40, *, channel: str = "rehearsal", number: int = 7
) -> None:
    """Invent a clinic: `children` families with phones on `channel`, from `DAYS` days ago until now.

    `CLINICIAN` is expected to have an account. The same `number` gives the same clinic. Takes some seconds, in which
    nothing else may beat or send: other families of the store are left alone, but these live on a clock of their own.
    """
    draw = random.Random(number)  # noqa: S311 - invention
    cast = Cast(coachbot, now - timedelta(days=DAYS), channel, draw)
    family = parts(children, draw)
    for day in range(DAYS):
        cast.now = max(cast.now, now - timedelta(days=DAYS - day))
        cast.last = day == DAYS - 1
        await cast.morning()
        for part in family:
            if part.begins == day:
                await cast.begin(part)
        await cast.evening()
    cast.now = max(cast.now, now)
    await cast.morning()

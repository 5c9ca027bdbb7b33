"""Invented families, each played through its fortnight by the very service, so that the conversation can be read."""

import asyncio
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from pathlib import Path

import msgspec

from coachbot import logs
from coachbot.coach.case import Role, State
from coachbot.programme.positions import Position
from coachbot.programme.zones import instant
from coachbot.rehearsal.child import InventedChild, best
from coachbot.rehearsal.stage import FAMILY, Stage, opened
from coachbot.rehearsal.transcript import transcript
from coachbot.service.codes import new_code
from coachbot.service.enrolling import CODE_LIFE, Family

DAY, HOUR = date(2026, 10, 24), time(18, 0)
"""When each family opens its invitation, by its own clock."""

MOST_EVENINGS = 30
"""Evenings after which a play ends, whatever stands open."""

WAIT, TAPS = "wait", "*"
"""What a line of a family's evening may be besides words: so many minutes pass; all that is asked is tapped."""


class Invented(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """A family of our own invention, as `families.toml` has it.

    `phones` in the order in which they join, the first being a parent's; `by` is the phone that answers on an evening
    of which nothing is said. `likes` are the child's ratings on the first night, and `grows` the position that gets
    easier. `evenings` hold what happens, counted from 0, the lesson: ``phone: words``, ``phone: *`` for taps on
    whatever is asked, ``wait: minutes``. An empty evening passes without a word.
    """

    child: str
    born: date
    bedtime: time
    phones: dict[str, Role]
    by: str
    likes: dict[Position, float]
    grows: Position
    language: str = "en"
    zone: str = FAMILY.zone
    evenings: dict[int, tuple[str, ...]] = {}

    @property
    def wanted(self) -> Family:
        """The family as it is enrolled."""
        return msgspec.structs.replace(
            FAMILY,
            child=self.child,
            bedtime=self.bedtime,
            zone=self.zone,
            language=self.language,
            screening=msgspec.structs.replace(FAMILY.screening, born=self.born),
        )

    @property
    def start(self) -> datetime:
        """The instant at which the play begins."""
        return instant(DAY, HOUR, self.zone)


FAMILIES: dict[str, Invented] = msgspec.toml.decode(
    Path(__file__).with_name("families.toml").read_bytes(), type=dict[str, Invented]
)
"""The families by name."""


@dataclass
class Fortnight:
    """A family's way through the programme. Each deed takes a minute, so that the order of things can be told."""

    invented: Invented
    stage: Stage
    child: InventedChild = field(init=False)

    def __post_init__(self) -> None:
        self.child = InventedChild(self.invented.likes, self.invented.grows)

    async def run(self) -> None:
        """From the invitation to the end of the programme, and to the last words that the family has for us."""
        for phone, role in self.invented.phones.items():
            await self._join(phone, role)
        for evening in range(MOST_EVENINGS):
            await self.stage.to_bedtime()
            for line in self.invented.evenings.get(evening, (f"{self.invented.by}: {TAPS}",)):
                await self._act(line)
            await self.stage.forward(self.stage.case.protocol.close_after)
            if self.stage.case.state is State.FINISHED and evening >= max(self.invented.evenings):
                break

    async def _join(self, phone: str, role: Role) -> None:
        code, now = new_code(), self.stage.clock.now
        await self.stage.coachbot.store.transact(
            lambda tx: tx.invites.add(self.stage.case_id, role, code, now, now + CODE_LIFE)
        )
        await self.stage.write(phone, f"/start {code}")
        if role is Role.PARENT:
            await self._tap(phone)

    async def _act(self, line: str) -> None:
        who, words = line.split(": ", 1)
        if who == WAIT:
            await self.stage.forward(timedelta(minutes=int(words)))
        elif words == TAPS:
            await self._tap(who)
        else:
            await self.stage.forward(timedelta(minutes=1))
            await self.stage.write(who, words)

    async def _tap(self, phone: str) -> None:
        while button := self._button(phone):
            await self.stage.forward(timedelta(minutes=1))
            await self.stage.press(phone, button)

    def _button(self, phone: str) -> str | None:
        """What its owner would tap: a rating or a favourite as the child feels it, else the first button there is."""
        last = self.stage.last(phone)
        offered = [data for row in last.buttons for _, data in row] if last else []
        if not offered:
            return None
        stem, deed = offered[0].rpartition(":")[0], offered[0].split(":")[1]
        if deed == "rate":
            number, position = stem.split(":")[2:]
            return f"{stem}:{self.child.mark(Position(position), int(number))}"
        if deed == "best":
            return f"{stem}:{best(self.stage.case.nights[-1]) or 'none'}"
        return offered[0]


def write(folder: Path) -> list[Path]:
    """Play every family; write ``<name>.md`` into `folder`. Returns the paths."""
    logs.silence()
    folder.mkdir(parents=True, exist_ok=True)
    paths = []
    for name in FAMILIES:
        path = folder / f"{name}.md"
        path.write_text(asyncio.run(played(name)), encoding="utf-8")
        paths.append(path)
    return paths


async def played(name: str) -> str:
    """Play one family, and give its conversation as Markdown.

    Raises:
        KeyError: there is no family of that name.
    """
    invented = FAMILIES[name]
    async with opened(invented.wanted, start=invented.start) as stage:
        await Fortnight(invented, stage).run()
        return transcript(stage)

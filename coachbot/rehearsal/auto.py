"""A fortnight played unattended in the terminal: a missed stretch, one choking reply, the report written at the end."""

import asyncio
from datetime import timedelta
from pathlib import Path

from coachbot import logs
from coachbot.coach.case import Case, Night, Role, State
from coachbot.programme.positions import Position
from coachbot.programme.zones import local
from coachbot.rehearsal.child import InventedChild, best
from coachbot.rehearsal.stage import BACKUP, BACKUP_NAME, CHILD, CLINICIAN, ON_CALL_NAME, PARENT, Stage, opened
from coachbot.report.followup import followup
from coachbot.voice.wording import Wording

MISSED = (4, 5)
"""Evenings that the family lets go by."""

CHOKED = 9
"""The evening that ends in alarm."""

ALARM = "she choked on it, i gave back blows and it came out, she is crying"
ALL_WELL = "Spoke with the parent and saw the child: breathing quietly, eats and drinks."
"""What is typed on the phones of the play; families' own words, not ours to them."""

LIKES = {Position.CENTER: 3.3, Position.LEFT: 3.0, Position.RIGHT: 2.6, Position.UP: 2.0, Position.DOWN: 2.8}
"""What the invented child likes on the first night, of 5."""

WIDTH = 28
"""Signs of the progress bar."""


class Play:
    """The play's director: moves the clock, types for everyone, and tells the terminal."""

    def __init__(self, stage: Stage, language: str) -> None:
        self.stage = stage
        self.language = language
        self.wording = Wording.load("rehearsal.ftl")
        self.child = InventedChild(LIKES, grows=Position.LEFT)
        self.shown = {CLINICIAN: 0, BACKUP: 0}

    async def fortnight(self) -> None:
        """From the invitation to the end of the programme."""
        case_id = self.stage.case_id
        await self.stage.write(PARENT, f"/start {self.stage.codes[Role.PARENT]}")
        await self.stage.write(CHILD, f"/start {self.stage.codes[Role.CHILD]}")
        await self.stage.press(PARENT, f"{case_id}:consent:agree")
        await self._lesson()
        while self.stage.case.state is not State.FINISHED:
            await self._evening()

    def tell(self, text: str, **args: object) -> None:
        """One line in the terminal."""
        print(self.wording.text(self.language, text, **args), flush=True)  # noqa: T201

    async def _lesson(self) -> None:
        await self.stage.to_bedtime()
        while button := self._button(PARENT, "next"):
            await self.stage.press(PARENT, button)
        await self.stage.press(PARENT, f"{self.stage.case_id}:candy:down")
        self.tell("auto-lesson", child=self.stage.case.child.name)

    async def _evening(self) -> None:
        await self.stage.to_bedtime()
        night = self.stage.case.open_night
        if night is None:
            return
        if night.number in MISSED:
            await self.stage.forward(timedelta(hours=4))
        elif night.number == CHOKED:
            await self._alarm(night)
        else:
            await self._practise(night)
        self._progress()

    async def _practise(self, night: Night) -> None:
        for position in night.order:
            mark = self.child.mark(position, night.number)
            await self.stage.press(CHILD, f"{self.stage.case_id}:rate:{night.number}:{position}:{mark}")
        liked = best(self.stage.case.nights[-1]) or "none"
        await self.stage.press(CHILD, f"{self.stage.case_id}:best:{night.number}:{liked}")
        await self.stage.press(CHILD, f"{self.stage.case_id}:note:{night.number}:none")

    async def _alarm(self, night: Night) -> None:
        first = night.order[0]
        await self.stage.press(CHILD, f"{self.stage.case_id}:rate:{night.number}:{first}:3")
        await self.stage.write(PARENT, ALARM)
        self._alerts()
        for minutes in (5, 10, 15):
            await self.stage.forward(timedelta(minutes=minutes))
            self._alerts()
        alert = self.stage.case.open_alerts[0].number
        await self.stage.press(BACKUP, f"{self.stage.case_id}:acknowledge:{alert}")
        self.tell("auto-taken", name=BACKUP_NAME)
        await self.stage.forward(timedelta(hours=14))
        await self.stage.press(CLINICIAN, f"{self.stage.case_id}:lift:{alert}")
        await self.stage.write(CLINICIAN, ALL_WELL)
        self.tell("auto-lifted", name=ON_CALL_NAME, note=ALL_WELL)
        self.shown = {phone: len(self.stage.spoken[phone]) for phone in self.shown}

    def _alerts(self) -> None:
        """Tell what has arrived on the clinicians' phones since the last look."""
        for phone, name in ((CLINICIAN, ON_CALL_NAME), (BACKUP, BACKUP_NAME)):
            for spoken in self.stage.spoken[phone][self.shown[phone] :]:
                if spoken.sent:
                    at = f"{local(spoken.at, self.stage.case.zone):%H:%M}"
                    self.tell("auto-alert", name=name, time=at, words=" ".join(spoken.sent.text.split()))
            self.shown[phone] = len(self.stage.spoken[phone])

    def _progress(self) -> None:
        case = self.stage.case
        night = case.nights[-1]
        filled = round(WIDTH * case.practised / case.protocol.nights)
        self.tell(
            "auto-night",
            bar="█" * filled + "░" * (WIDTH - filled),
            practised=str(case.practised),
            nights=str(case.protocol.nights),
            day=f"{night.day:%d.%m.}",
            status=night.status,
            marks=" ".join(
                f"{one.position[0]}{one.mark if isinstance(one.mark, int) else '×'}" for one in night.swallows
            ),
        )

    def _button(self, phone: str, deed: str) -> str | None:
        last = self.stage.last(phone)
        buttons = [data for row in last.buttons for _, data in row] if last else []
        return next((data for data in buttons if f":{deed}:" in data), None)


def play(folder: Path, language: str = "en") -> Path:
    """Play the fortnight; write ``follow-up.pdf`` and ``follow-up.png`` into `folder`. Returns the paper's path."""
    logs.silence()
    director, case = asyncio.run(_play(language))
    folder.mkdir(parents=True, exist_ok=True)
    for form in ("png", "pdf"):
        path = folder / f"follow-up.{form}"
        path.write_bytes(followup(case, language=language, form=form))
    director.tell("auto-report", path=str(path))
    return path


async def _play(language: str) -> tuple[Play, Case]:
    async with opened() as stage:
        director = Play(stage, language)
        await director.fortnight()
        return director, stage.case

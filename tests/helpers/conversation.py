"""Conversations with the pure coach that read like conversations.

`Conversation(...)` plays one family and its clinician against `decide`, with a clock that `at` moves on to a local
time, ticking at every due time on the way. `hears` names text ids, since the coach itself holds no words.
"""

import itertools
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Self

from coachbot.coach import events as happened
from coachbot.coach.actions import Action, Button, Say, Summarise
from coachbot.coach.case import Case, Child, Role, State
from coachbot.coach.decide import decide
from coachbot.coach.due import due_at
from coachbot.programme.orders import plan
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Protocol, Who
from coachbot.programme.zones import instant, local

PARENT, CHILD, OTHER_PARENT = 1, 2, 3
CLINICIAN = "Dr Imani Osei"


def invited(protocol: Protocol | None = None, *, zone: str = "America/New_York", bedtime: time = time(19, 30)) -> Case:
    """A case as enrolment leaves it."""
    kept = protocol or Protocol()
    return Case(
        id=7,
        child=Child(name="Noor", birth_year=2017),
        protocol=kept,
        orders=plan(kept.positions, kept.nights, seed=7),
        bedtime=bedtime,
        zone=zone,
        language="en",
    )


class Conversation:
    """One family's talk with the coach. Every method that moves something returns the conversation itself."""

    def __init__(self, case: Case | None = None, *, start: date = date(2026, 9, 1), hour: time = time(12, 0)) -> None:
        self.case = case or invited()
        self.now = instant(start, hour, self.case.zone)
        self.heard: list[Say] = []
        self.actions: list[Action] = []
        self.history: list[tuple[datetime, happened.Event]] = []
        self.opening = self.case
        self._messages = itertools.count(1)

    def happens(self, event: happened.Event) -> Self:
        """Give one event to the coach; what it says replaces what was heard before."""
        self.history.append((self.now, event))
        decision = decide(self.case, event, self.now)
        self.case, self.actions = decision.case, list(decision.actions)
        self.heard = [action for action in decision.actions if isinstance(action, Say)]
        return self

    def joins(self, contact: int = PARENT, role: Role = Role.PARENT) -> Self:
        """A chat is linked."""
        return self.happens(happened.Joined(contact=contact, role=role, channel="test", language="en"))

    def says(self, text: str, contact: int = PARENT) -> Self:
        """A family's chat writes."""
        return self.happens(happened.Replied(contact=contact, text=text, message=next(self._messages)))

    def presses(self, data: str, contact: int = PARENT) -> Self:
        """A family's chat taps a button that it was really given, or was given once."""
        return self.happens(happened.Pressed(contact=contact, data=data, message=next(self._messages)))

    def after(self, span: timedelta) -> Self:
        """Let time pass, with a tick at each due time on the way; heard is all that was said meanwhile."""
        return self._until(self.now + span)

    def at(self, clock: str) -> Self:
        """Let time pass until the next such local time."""
        here = local(self.now, self.case.zone)
        day = here.date() if here.time() < time.fromisoformat(clock) else here.date() + timedelta(days=1)
        return self._until(instant(day, time.fromisoformat(clock), self.case.zone))

    def wakes(self, clock: str) -> Self:
        """Let time pass without a single tick, as on a machine asleep, then tick once."""
        here = local(self.now, self.case.zone)
        self.now = instant(here.date(), time.fromisoformat(clock), self.case.zone)
        return self.happens(happened.Ticked())

    def wakes_next_day(self, clock: str) -> Self:
        """The same, a day later."""
        self.now += timedelta(days=1)
        return self.wakes(clock)

    def nothing_is_due(self) -> bool:
        """Whether the clock has nothing more to do here."""
        return due_at(self.case) is None

    def hears(self, *ids: str, contact: int | Who | str | None = None) -> Self:
        """What was heard last includes these texts."""
        said = self.texts(contact)
        missing = [one for one in ids if one not in said]
        assert not missing, f"did not hear {missing}, only {said}"
        return self

    def hears_nothing(self) -> Self:
        """Nothing was said."""
        assert not self.heard, f"heard {self.texts()}"
        return self

    def texts(self, contact: int | Who | str | None = None) -> list[str]:
        """The text ids heard last, by one reader or by all."""
        return [line.id for say in self.heard if contact in (None, say.to) for line in say.lines]

    def buttons(self) -> list[Button]:
        """The buttons under what was heard last."""
        return [button for say in self.heard for row in say.buttons for button in row]

    def learns(self) -> Self:
        """Join, consent, and go through the lesson at the first bedtime."""
        if not self.case.contacts:
            self.joins()
        self.presses("consent:agree").at("19:30")
        for step in range(len(self.case.protocol.positions) + 4):
            self.presses(f"next:{step}")
        self.presses("candy:down")
        assert self.case.state is State.PRACTISING
        return self

    def practises(self, marks: str = "44444", best: str = "center") -> Self:
        """Go to the next bedtime and answer the whole night by buttons; ``-`` is not down, ``s`` skipped."""
        self.at("19:30").hears("night-prompt")
        night = self.case.nights[-1]
        words = {"-": "not_down", "s": "skipped"}
        for position, mark in zip(night.order, marks, strict=True):
            self.presses(f"rate:{night.number}:{position}:{words.get(mark, mark)}")
        return self.presses(f"best:{night.number}:{best}").presses(f"note:{night.number}:none")

    def misses(self) -> Self:
        """Let a bedtime go by without a word, and the night with it."""
        return self.at("19:30").hears("night-prompt").at("23:30")

    @property
    def summarised(self) -> bool:
        """Whether the last event sent the clinician the summary."""
        return any(isinstance(action, Summarise) for action in self.actions)

    def _until(self, end: datetime) -> Self:
        heard: list[Say] = []
        actions: list[Action] = []
        while (due := due_at(self.case)) and due <= end:
            self.now = max(self.now, due)
            before = self.case
            self.happens(happened.Ticked())
            heard += self.heard
            actions += self.actions
            assert self.case != before, f"a tick at {due} changed nothing and stays due"
        self.now, self.heard, self.actions = end.astimezone(UTC), heard, actions
        return self


def with_child(case: Case | None = None) -> Conversation:
    """A family in which parent and child each have a chat of their own, lesson done."""
    talk = Conversation(case).joins().joins(CHILD, Role.CHILD)
    return talk.learns()


def short(nights: int = 3, **changes: object) -> Protocol:
    """A protocol of a few nights, so that the end is near."""
    return replace(Protocol(nights=nights, max_nights=nights + 3), **changes)  # type: ignore[arg-type]


FIVE = tuple(Position)

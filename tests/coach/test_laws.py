"""The design's laws over random families, replies and clocks, by a Hypothesis state machine."""

from datetime import UTC, datetime, time, timedelta

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from coachbot.coach import events as happened
from coachbot.coach.actions import MarkUnread, Say, Urgency
from coachbot.coach.case import Case, Role, State, Status
from coachbot.coach.decide import decide
from coachbot.coach.due import due_at
from coachbot.coach.texts import TEXTS, Audience
from coachbot.coach.turn import Refused
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Protocol
from coachbot.programme.sizes import CAPSULES, Target
from coachbot.programme.zones import local
from coachbot.triage import Level, assess
from helpers.conversation import CLINICIAN, invited

PEOPLE = {1: Role.PARENT, 2: Role.CHILD, 3: Role.PARENT}

TROUBLE = (
    "she is choking and cant breathe",
    "his lips are blue",
    "she choked but is fine now",
    "he is crying and refuses",
    "can I crush his antibiotic tablet?",
    "no choking but her lips look funny",
)
PLAIN = (
    "yes", "no", "ok", "4", "3 4 5 2 1", "4 4 4 4 4", "3 3 3", "left", "left was 3", "it did not go down", "skip",
    "7", "help", "pause", "we are away for 3 days", "resume", "make it 7:00", "make it 11pm", "stop", "start",
    "delete everything", "not tonight", "show me the lesson again", "wrong number", "grandma baked a cake", "", "?",
)  # fmt: skip

ASKS_TO_SWALLOW = {
    "night-prompt", "night-howto-1", "night-howto-2", "night-howto-3", "night-reminder", "ask-swallow",
    "unclear-swallow", "lesson-candy", "lesson-water", "lesson-intro", "lesson-again",
}  # fmt: skip

NO_ANSWER = {text for text in TEXTS if text.startswith("unclear-")} | {"passed-on", "lesson-unclear", "consent-needed"}


class Family(RuleBasedStateMachine):
    """A family of three with its clinician, anything happening to it in any order."""

    case: Case
    now: datetime

    @initialize(
        zone=st.sampled_from(["America/New_York", "Asia/Kolkata", "Europe/Paris", "Australia/Lord_Howe"]),
        nights=st.integers(1, 4),
        extra=st.integers(0, 3),
        positions=st.integers(2, 5),
        start=st.datetimes(datetime(2026, 1, 1), datetime(2027, 12, 31)),  # noqa: DTZ001 - its zone comes below
    )
    def enrolled(self, zone: str, nights: int, extra: int, positions: int, start: datetime) -> None:
        """Any protocol, zone and season."""
        protocol = Protocol(nights=nights, max_nights=nights + extra, positions=tuple(Position)[:positions])
        self.case = invited(protocol, zone=zone)
        self.now = start.replace(tzinfo=UTC)
        self.messages = 0
        self.keys: set[tuple[object, str]] = set()
        self.buttons: list[str] = []
        for contact, role in PEOPLE.items():
            self._happens(happened.Joined(contact=contact, role=role, channel="test", language="en"))

    @rule(contact=st.sampled_from(sorted(PEOPLE)), text=st.sampled_from(PLAIN) | st.text(max_size=40))
    def says(self, contact: int, text: str) -> None:
        """Anyone writes anything; nothing is left without an answer or a place before the clinician."""
        before = self.case
        actions = self._reply(contact, text)
        known = before.contact(contact)
        answered = actions or self.case != before
        assert answered or known.left, f"{text!r} was dropped"

    @rule(contact=st.sampled_from(sorted(PEOPLE)), text=st.sampled_from(TROUBLE))
    def says_something_troubling(self, contact: int, text: str) -> None:
        """Laws 2, 3 and 8."""
        before = self.case
        actions = self._reply(contact, text)
        level = assess(text, lang="en", sender=PEOPLE[contact]).level
        said = [say for say in actions if isinstance(say, Say)]
        assert not {line.id for say in said for line in say.lines} & NO_ANSWER
        assert not [action for action in actions if isinstance(action, MarkUnread)]
        assert len(self.case.alerts) > len(before.alerts) or level is Level.NONE
        assert [night.swallows for night in self.case.nights] == [night.swallows for night in before.nights]
        if level >= Level.URGENT:
            self._held_at_once(contact, said)
        if level is Level.MEDICINE:
            assert said[0].lines[0].id == "medicine"

    @rule(data=st.data())
    def presses(self, data: st.DataObject) -> None:
        """Any button ever given, by anyone."""
        if self.buttons:
            self.messages += 1
            contact = data.draw(st.sampled_from(sorted(PEOPLE)))
            button = data.draw(st.sampled_from(self.buttons[-12:]) | st.sampled_from(self.buttons))
            self._happens(happened.Pressed(contact=contact, data=button, message=self.messages))

    @rule()
    def comes_to_the_next_due_time(self) -> None:
        """A tick at a due time always does something, so that no case is ticked for ever."""
        if due := due_at(self.case):
            self.now = max(self.now, due)
            before = self.case
            self._happens(happened.Ticked())
            after = due_at(self.case)
            assert self.case != before
            assert after is None or after > self.now or self.case != before

    @rule(hours=st.floats(0.1, 60))
    def sleeps(self, hours: float) -> None:
        """The machine is off for a while; then the clock comes round once."""
        self.now += timedelta(hours=hours)
        self._happens(happened.Ticked())

    @rule(contact=st.sampled_from([None, *sorted(PEOPLE)]), outcome=st.sampled_from(list(happened.Outcome)))
    def loses_a_message(self, contact: int | None, outcome: happened.Outcome) -> None:
        """A send ends badly."""
        mine = sorted(key for to, key in self.keys if isinstance(to, int) == (contact is not None))
        if mine:
            self._happens(happened.SendEnded(key=mine[-1], contact=contact, outcome=outcome))

    @precondition(lambda self: self.case.open_alerts)
    @rule()
    def is_acknowledged(self) -> None:
        """A clinician takes the first open alert."""
        self._happens(happened.Acknowledged(by=CLINICIAN, alert=self.case.open_alerts[0].number))

    @precondition(lambda self: self.case.state is State.ON_HOLD)
    @rule()
    def is_lifted(self) -> None:
        """A named clinician lifts the hold with a note."""
        self._happens(happened.HoldLifted(by=CLINICIAN, note="The child is well."))

    @rule(event=st.sampled_from(["Held", "Ended", "Paused", "Resumed", "FollowedUp", "BedtimeSet", "TargetSet"]))
    def is_changed_at_the_desk(self, event: str) -> None:
        """Anything a clinician may try; what does not fit is refused and changes nothing."""
        events: dict[str, happened.Event] = {
            "Held": happened.Held(by=CLINICIAN, note="n"),
            "Ended": happened.Ended(by=CLINICIAN, note="n"),
            "Paused": happened.Paused(by=CLINICIAN),
            "Resumed": happened.Resumed(by=CLINICIAN),
            "FollowedUp": happened.FollowedUp(by=CLINICIAN, position=None),
            "BedtimeSet": happened.BedtimeSet(by=CLINICIAN, at=time(20, 15)),
            "TargetSet": happened.TargetSet(by=CLINICIAN, target=Target(size=CAPSULES["3"].size, capsule="3")),
        }
        before = self.case
        try:
            self._happens(events[event])
        except Refused:
            assert self.case == before

    @invariant()
    def law_6_holds(self) -> None:
        """Never more candies than positions, nor nights than the protocol allows, nor two nights a day."""
        if not hasattr(self, "case"):
            return
        nights = self.case.nights
        assert len(nights) <= self.case.protocol.max_nights
        assert len({night.day for night in nights}) == len(nights)
        assert sum(night.status is Status.OPEN for night in nights) <= 1
        for night in nights:
            assert {swallow.position for swallow in night.swallows} <= set(night.order)
            assert len(night.swallows) <= len(night.order)

    def _reply(self, contact: int, text: str) -> list[object]:
        self.messages += 1
        return self._happens(happened.Replied(contact=contact, text=text, message=self.messages))

    def _happens(self, event: happened.Event) -> list[object]:
        before = self.case
        decision = decide(before, event, self.now)
        self.case = decision.case
        for action in decision.actions:
            if isinstance(action, Say):
                self._checks(action, event)
        if before.state is State.ON_HOLD and self.case.state is not State.ON_HOLD:
            assert isinstance(event, happened.HoldLifted | happened.Ended | happened.ClinicianWrote | happened.Erased)
        return list(decision.actions)

    def _checks(self, say: Say, event: happened.Event) -> None:
        assert (say.to, say.key) not in self.keys, f"{say.key} was written twice"
        self.keys.add((say.to, say.key))
        self.buttons += [button.data for row in say.buttons for button in row]
        audience = {Role.PARENT: Audience.PARENT, Role.CHILD: Audience.CHILD}
        reader = audience[self.case.contact(say.to).role] if isinstance(say.to, int) else Audience.CLINICIAN
        for line in [*say.lines, *(button.label for row in say.buttons for button in row)]:
            assert set(line.args) == TEXTS[line.id].variables, line.id
            assert reader in TEXTS[line.id].audiences, f"{line.id} is not for a {reader}"
        assert all(len(button.data) <= 40 and button.data.isascii() for row in say.buttons for button in row)
        if self.case.state in (State.ON_HOLD, State.WITHDRAWN, State.PAUSED):
            assert not {line.id for line in say.lines} & ASKS_TO_SWALLOW
        if say.urgency is Urgency.PROMPT and not isinstance(event, happened.Pressed | happened.Replied):
            here = local(self.now, self.case.zone).time()
            assert self.case.protocol.earliest <= here <= self.case.protocol.latest or "watch-ask" in say.lines[0].id

    def _held_at_once(self, contact: int, said: list[Say]) -> None:
        assert self.case.state is State.ON_HOLD
        assert said[0].to == contact
        assert said[0].urgency is Urgency.SAFETY
        assert said[0].lines[0].id.startswith("safety-")
        warned = {say.to for say in said if say.urgency is Urgency.SAFETY}
        if PEOPLE[contact] is Role.CHILD:
            assert {parent.id for parent in self.case.parents if parent.open} <= warned


Family.TestCase.settings = settings(max_examples=25, stateful_step_count=40, suppress_health_check=list(HealthCheck))
TestFamily = Family.TestCase

"""Outbox and alerts as a Hypothesis state machine over the real store: whatever happens in whatever order, laws 3 to 7.

Two processes share one SQLite file and a channel that fails as it likes; senders die before and after they have sent;
the clock jumps. What arrived and what was written is noted outside the program.
"""

import asyncio
import itertools
import shutil
import tempfile
from collections import Counter
from collections.abc import Coroutine
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, TypeVar

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, precondition, rule

from coachbot import logs
from coachbot.bootstrap import Coachbot, build
from coachbot.channels.base import Ending, Outgoing, Receipt
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.coach.case import Role
from coachbot.coach.events import Outcome
from coachbot.rehearsal.stage import BACKUP, CHILD, CLINICIAN, PARENT, HandClock, cast
from coachbot.store import Claimed, Store
from conftest import KEY
from helpers.laws import Phone, broken_laws

T = TypeVar("T")
LEASE = timedelta(seconds=60)
TEXTS = (
    "she is choking and cant breathe", "he choked but is fine now", "he is crying and refuses", "4", "3 4 3 4 5",
    "left", "no", "info", "grandma baked a cake", "can I crush his tablet?", "pause", "stop", "start",
    "AAAA-BBBB-CCCCC",
)  # fmt: skip


class Played:
    """The beginning of every example: a family whose lesson is over, played once and copied."""

    def __init__(self) -> None:
        self.folder = tempfile.TemporaryDirectory()
        self.path = Path(self.folder.name) / "played.sqlite3"
        asyncio.run(self._play())

    async def _play(self) -> None:
        store = Store.open(f"sqlite:///{self.path}", KEY)
        store.upgrade()
        stage = await cast(store)
        words = [f"/start {stage.codes[Role.PARENT]}", stage.codes[Role.CHILD], "yes"]
        for phone, text in zip((PARENT, CHILD, PARENT), words, strict=True):
            await stage.write(phone, text)
        await stage.to_bedtime()
        for step in range(9):
            await stage.press(PARENT, f"{stage.case_id}:next:{step}")
        await stage.press(PARENT, f"{stage.case_id}:candy:down")
        store.close()
        self.case_id, self.now, self.written = stage.case_id, stage.clock.now, Counter(words)
        self.arrived = {
            phone: Counter(one.sent.text.strip() for one in spoken if one.sent)
            for phone, spoken in stage.spoken.items()
        }


class Clinic(RuleBasedStateMachine):
    """One family, two clinicians on duty, two processes."""

    played: Played | None = None

    @initialize()
    def begins(self) -> None:
        """With the family's first evening still to come."""
        logs.silence()
        Clinic.played = Clinic.played or Played()
        self.folder = tempfile.TemporaryDirectory()
        self.url = f"sqlite:///{shutil.copy(Clinic.played.path, self.folder.name)}"
        self.loop = asyncio.new_event_loop()
        self.clock = HandClock(Clinic.played.now)
        self.furthest = self.clock.now
        self.phones = RehearsalChannel(self.clock)
        self.written = Counter(Clinic.played.written)
        self.names = (f"message {number}" for number in itertools.count())
        self.latest: tuple[str, str, str] | None = None
        self.dead: list[tuple[Claimed, Receipt, datetime]] = []
        self.processes: list[Coachbot] = []
        self.starts()

    @rule()
    def starts(self) -> None:
        """Both processes are begun anew; nothing but the store is left of what they were."""
        for process in self.processes:
            process.store.close()
        stores = [Store.open(self.url, KEY) for _ in range(2)]
        self.processes = [
            build(store, {"rehearsal": self.phones}, emergency_number="911", clock=self.clock) for store in stores
        ]
        self._run(self.phones.start(self.processes[0].inbox.receive))

    @rule(phone=st.sampled_from([PARENT, CHILD, "stranger"]), text=st.sampled_from(TEXTS))
    def writes(self, phone: str, text: str) -> None:
        """Anybody writes anything."""
        self.latest = (phone, text, next(self.names))
        self._run(self.phones.write(phone, text, channel_id=self.latest[2]))
        self.written[text] += 1

    @precondition(lambda self: self.latest is not None)
    @rule()
    def comes_twice(self) -> None:
        """The channel delivers the last message again."""
        assert self.latest
        phone, text, name = self.latest
        self._run(self.phones.write(phone, text, channel_id=name))

    @rule(by=st.sampled_from([CLINICIAN, BACKUP]), deed=st.sampled_from(["TAKE", "LIFT"]), alert=st.integers(1, 4))
    def clinician_writes(self, by: str, deed: str, alert: int) -> None:
        """An alert is taken on, or the hold lifted with a note."""
        assert Clinic.played
        text = f"{deed} {Clinic.played.case_id}-{alert} saw the child"
        self._run(self.phones.write(by, text))
        self.written[text] += 1

    @rule(data=st.sampled_from(["rate:1:left:4", "rate:1:center:not_down", "best:1:left", "note:1:none", "watch:x:no"]))
    def presses(self, data: str) -> None:
        """Old buttons and new."""
        assert Clinic.played
        self._run(self.phones.press(PARENT, f"{Clinic.played.case_id}:{data}"))

    @rule(minutes=st.integers(1, 24 * 60))
    def time_passes(self, minutes: int) -> None:
        """Nobody does anything."""
        self.clock.now += timedelta(minutes=minutes)

    @rule()
    def comes_to_the_next_due_time(self) -> None:
        """And both hearts beat at the same instant."""
        due = self.processes[0].store.run(lambda tx: tx.cases.next_due())
        self.clock.now = max(self.clock.now, due or self.clock.now)
        self.beat_together()

    @rule(minutes=st.integers(5, 30 * 60))
    def clock_is_set_back(self, minutes: int) -> None:
        """By minutes, or more than a day."""
        self.furthest = max(self.clock.now, self.furthest)
        self.clock.now -= timedelta(minutes=minutes)

    @rule()
    def beat_together(self) -> None:
        """Two processes with the same work."""
        self._run(self._together([process.heartbeat.beat() for process in self.processes]))

    @rule()
    def send_together(self) -> None:
        """Two senders at once."""
        self._run(self._together([process.sender.pump() for process in self.processes]))

    @rule(endings=st.lists(st.sampled_from(list(Ending)), min_size=1, max_size=4))
    def channel_will_fail(self, endings: list[Ending]) -> None:
        """The next sends end like this."""
        self.phones.fail(*[Receipt(ending=ending) for ending in endings])

    @rule(sent=st.booleans())
    def a_sender_dies(self, sent: bool) -> None:
        """It has claimed, and perhaps sent, and does not tell."""
        process = self.processes[1]
        for one in process.store.run(lambda tx: tx.outbox.claim(self.clock.now, 3, LEASE)):
            if sent and one.address:
                receipt = self._run(self.phones.send(Outgoing(address=one.address, text=one.body.text)))
                self.dead.append((one, receipt, self.clock.now))

    @precondition(lambda self: self.dead)
    @rule()
    def a_dead_sender_speaks(self) -> None:
        """It was only slow, and tells now how its send ended."""
        one, receipt, at = self.dead.pop()
        if receipt.ending is not Ending.LATER:
            store = self.processes[1].store
            store.run(lambda tx: tx.outbox.settle(one.id, Outcome(receipt.ending), at))

    @rule()
    def meanwhile_the_laws_hold(self) -> None:
        """In the midst of it."""
        self._check(settled=False)

    def teardown(self) -> None:
        """All comes to rest; then nothing may be under way, lost, late or doubled."""
        if not hasattr(self, "processes"):
            return
        try:
            self.phones._failures.clear()
            self.clock.now = max(self.clock.now, self.furthest)  # a prompt written ahead waits for its own evening
            for _ in range(3):
                self.clock.now += timedelta(minutes=2)
                self._run(self.processes[0].settle())
            self._check(settled=True)
        finally:
            for process in self.processes:
                process.store.close()
            self.loop.close()
            self.folder.cleanup()

    def _check(self, *, settled: bool) -> None:
        assert Clinic.played
        arrived: dict[Phone, Counter[str]] = {
            ("rehearsal", phone): Clinic.played.arrived.get(phone, Counter())
            + Counter(one.text.strip() for one in self.phones.phones[phone])
            for phone in {*Clinic.played.arrived, *self.phones.phones}
        }
        now = self.clock.now if settled else None
        broken = broken_laws(self.processes[0].store, arrived, self.written, now)
        assert not broken, broken

    async def _together(self, work: list[Coroutine[Any, Any, Any]]) -> None:
        await asyncio.gather(*work)

    def _run(self, work: Coroutine[Any, Any, T]) -> T:
        return self.loop.run_until_complete(work)


Clinic.TestCase.settings = settings(max_examples=20, stateful_step_count=30, suppress_health_check=list(HealthCheck))
TestClinic = Clinic.TestCase

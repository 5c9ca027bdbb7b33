"""A clinic under load whose processes are killed, cut off and set back, and what must hold when it has come to rest."""

import asyncio
import json
import os
import random
import re
import signal
import socket
import subprocess
import sys
from collections import Counter
from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager, suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime, time, timedelta
from pathlib import Path
from typing import Any

import msgspec
from sqlalchemy import select

from coachbot.bootstrap import build
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.coach.case import Role, State
from coachbot.programme.zones import instant
from coachbot.rehearsal.stage import FAMILY, HandClock
from coachbot.service.enrolling import Enrolled, enrol, new_seed
from coachbot.store import Store, Transaction, new_key
from coachbot.store.tables import alerts, outbox
from faults.served import CLOCK, TROUBLE
from helpers.laws import Phone, broken_laws
from peers.telegram_peer import TelegramPeer

HERE = Path(__file__).parent
PARTS = ("channels", "heartbeat", "outbox")
CLINICIAN, BACKUP, FIRST_CHAT = 780_000_901, 780_000_902, 780_000_100
CHOKING = "she is choking and cant breathe"
REST = 60.0
"""Seconds after which what has not come to rest will not."""

PLAIN = (
    "4", "3 4 3 4 5", "left", "no", "info", "grandma baked a cake", "5", "4 4 4 4 4", "center", "skip", "ok",
    "it did not go down", "is that normal", "we had fun",
)  # fmt: skip
TROUBLING = (CHOKING, "he choked but is fine now", "he is crying and refuses", "can I crush his tablet?")


@dataclass(frozen=True, slots=True)
class Family:
    """A family of the clinic: its case and its two chats."""

    case_id: int
    parent: int
    child: int


class Forks:
    """The program that forks processes; see `served`."""

    def __init__(self) -> None:
        environment = {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))}
        self._program = subprocess.Popen(
            [sys.executable, str(HERE / "served.py")],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            env=environment,
        )
        assert self._program.stdout
        assert self._program.stdout.readline() == "ready\n"

    def fork(self, order: dict[str, Any]) -> int:
        """A process by that order; its number."""
        assert self._program.stdin
        assert self._program.stdout
        print(json.dumps(order), file=self._program.stdin, flush=True)
        return int(self._program.stdout.readline())

    def close(self) -> None:
        """End the program; what it forked is the caller's to end."""
        self._program.communicate()


@dataclass
class Campaign:
    """One clinic. `written` and the peer's log are what the outside knows; the rest is read from the database."""

    url: str
    peer: TelegramPeer
    folder: Path
    forks: Forks
    chance: random.Random
    key: str = field(default_factory=new_key)
    families: list[Family] = field(default_factory=list)
    written: Counter[str] = field(default_factory=Counter)
    before: dict[Phone, Counter[str]] = field(default_factory=dict)
    pids: list[int] = field(default_factory=list)
    codes: list[str] = field(default_factory=list)
    api_url: str = ""
    desk: str = field(default_factory=lambda: f"http://127.0.0.1:{_free_port()}")

    def __post_init__(self) -> None:
        self.set_clock(timedelta(0))
        store = self.store()
        store.upgrade()
        store.close()

    @property
    def environment(self) -> dict[str, str]:
        """The settings of the clinic's processes."""
        return {
            "COACHBOT_DATA": str(self.folder),
            "COACHBOT_DATABASE_URL": self.url,
            "COACHBOT_KEY": self.key,
            "COACHBOT_EMERGENCY_NUMBER": "911",
            "COACHBOT_TELEGRAM_TOKEN": self.peer.token,
            "COACHBOT_TELEGRAM_API_URL": self.api_url or self.peer.url,
            "COACHBOT_BEAT_SECONDS": "0.3",
            "COACHBOT_DESK_PORT": self.desk.rpartition(":")[2],
            CLOCK: str(self.folder / "clock"),
            TROUBLE: str(self.folder / "trouble"),
        }

    def store(self) -> Store:
        """The clinic's store, beside its processes."""
        return Store.open(self.url, self.key)

    @property
    def ahead(self) -> timedelta:
        """By how much the clinic's clock is ahead."""
        return timedelta(seconds=float((self.folder / "clock").read_text(encoding="ascii")))

    def now(self) -> datetime:
        """The present instant by the clinic's clock."""
        return datetime.now(UTC) + self.ahead

    def set_clock(self, ahead: timedelta) -> None:
        """Set the clinic's clock, at one stroke for all its processes."""
        fresh = self.folder / "clock.new"
        fresh.write_text(str(ahead.total_seconds()), encoding="ascii")
        fresh.rename(self.folder / "clock")

    async def to_bedtime(self) -> None:
        """Set the clock to the beginning of the next evening, if it is still to come."""
        store = self.store()
        try:
            cases = store.run(lambda tx: list(tx.cases.all()))
        finally:
            store.close()
        due = min(instant(case.next_evening, case.bedtime, case.zone) for case in cases if case.next_evening)
        self.set_clock(max(self.ahead, due - datetime.now(UTC)))

    def ail(self, trouble: str) -> None:
        """Let the database be "full" or "read-only", or well again: ""."""
        (self.folder / "trouble").write_text(trouble, encoding="ascii")

    def log(self) -> str:
        """All that the processes have logged."""
        path = self.folder / "log"
        return path.read_text(encoding="utf-8") if path.exists() else ""

    async def enrol(self, count: int) -> None:
        """Families that have their lesson behind them, and two clinicians on duty; evening is soon."""
        store, hand = self.store(), HandClock(datetime.now(UTC) - timedelta(days=1))
        phones = RehearsalChannel(hand, name="telegram")
        coachbot = build(store, {"telegram": phones}, emergency_number="911", clock=hand)
        await phones.start(coachbot.inbox.receive)
        hours = (19 - hand.now.hour + 12) % 24 - 12
        zone = f"Etc/GMT{-hours:+d}"

        def clinicians(tx: Transaction) -> None:
            for name, duty, chat in (("Dr Imani Osei", "on_call", CLINICIAN), ("Mika Lindqvist", "backup", BACKUP)):
                tx.clinicians.add(name, hand.now, duty=duty, reach=("telegram", str(chat)))

        await store.transact(clinicians)
        try:
            for number in range(count):
                self.families.append(await self._enrol(coachbot, phones, hand, zone, number))
        finally:
            store.close()
        self.before = {
            ("telegram", chat): Counter(one.text.strip() for one in sent) for chat, sent in phones.phones.items()
        }

    async def _enrol(self, coachbot: Any, phones: RehearsalChannel, hand: HandClock, zone: str, number: int) -> Family:
        bedtime = time(19, 30 + number % 30)
        wanted = msgspec.structs.replace(FAMILY, child=f"Zebulon{number}", zone=zone, bedtime=bedtime)
        done: Enrolled = await coachbot.store.transact(
            lambda tx: enrol(tx, wanted, emergency_number="911", seed=new_seed(tx), now=hand.now)
        )
        family = Family(done.case.id, FIRST_CHAT + 2 * number, FIRST_CHAT + 2 * number + 1)
        start = hand.now
        for role, code in done.codes:
            chat = family.parent if role is Role.PARENT else family.child
            await phones.write(str(chat), code)
            self.written[code] += 1
            self.codes.append(code)
        await phones.press(str(family.parent), f"{family.case_id}:consent:agree")
        case = await coachbot.store.read(lambda tx: tx.cases.load(family.case_id))
        if case.lesson_open is None:
            due = await coachbot.store.read(lambda tx: tx.cases.next_due())
            hand.now = max(hand.now, due)
            await coachbot.settle()
        for step in range(9):
            await phones.press(str(family.parent), f"{family.case_id}:next:{step}")
        await phones.press(str(family.parent), f"{family.case_id}:candy:down")
        await coachbot.settle()
        case = await coachbot.store.read(lambda tx: tx.cases.load(family.case_id))
        assert case.state is State.PRACTISING, case.state
        hand.now = start
        return family

    def start(self, *, only: Sequence[str] = PARTS, step: int = 0) -> int:
        """A process of the clinic; its number."""
        order = {"environment": self.environment, "log": str(self.folder / "log"), "only": list(only), "step": step}
        self.pids.append(self.forks.fork(order))
        return self.pids[-1]

    def kill(self) -> None:
        """Kill -9 to all the clinic's processes."""
        for pid in self.pids:
            with suppress(ProcessLookupError):
                os.kill(pid, signal.SIGKILL)
        while self.alive():
            pass
        self.pids.clear()

    def there(self) -> list[bool]:
        """Which of the clinic's processes are there."""
        return [Path(f"/proc/{pid}").exists() for pid in self.pids]

    def alive(self) -> bool:
        """Whether any of them is."""
        return any(self.there())

    def beating(self) -> int:
        """How many of the clinic's processes have beaten."""
        store = self.store()
        try:
            beats = store.run(lambda tx: tx.clinic.beats())
        finally:
            store.close()
        return sum(name.endswith(f":{pid}") for name in beats for pid in self.pids)

    async def stop(self) -> None:
        """Tell all processes to stop, as a supervisor does, and see that they do."""
        for pid in self.pids:
            os.kill(pid, signal.SIGTERM)
        await self.until(self.stopped, "it did not stop when told to")
        self.pids.clear()

    async def stopped(self) -> bool:
        """Whether all processes have ended."""
        return not self.alive()

    async def write(self, chat: int, text: str) -> None:
        """Somebody writes."""
        await self.peer.write(chat, text)
        self.written[text] += 1

    async def load(self, count: int, *, trouble: float = 0.05) -> None:
        """So many messages and presses of random people; clinicians take on and lift."""
        for _ in range(count):
            family = self.chance.choice(self.families)
            chat = self.chance.choice((family.parent, family.child))
            draw = self.chance.random()
            if draw < trouble:
                await self.write(chat, self.chance.choice(TROUBLING))
            elif draw < 0.15:
                await self.write(CLINICIAN, await self._deed())
            elif draw < 0.3:
                place = self.chance.choice(("center", "left", "right", "up", "down"))
                night = self.chance.randint(1, 3)
                await self.peer.press(chat, f"{family.case_id}:rate:{night}:{place}:{self.chance.randint(1, 5)}")
            else:
                await self.write(chat, self.chance.choice(PLAIN))

    async def break_channel(self) -> None:
        """Now and then the other side answers badly: a lost answer, a cut line, too fast, a blocked bot."""
        method = self.chance.choice(("sendMessage", "sendPhoto"))
        kind = self.chance.randint(0, 7)
        if kind == 0:
            await self.peer.lose(method)
        elif kind == 1:
            await self.peer.drop(method)
        elif kind == 2:
            await self.peer.refuse(method, 429, "Too Many Requests", retry_after=1)
        elif kind == 3:
            await self.peer.refuse(method, 403, "Forbidden: bot was blocked by the user")

    async def _deed(self) -> str:
        """What the clinician writes: one hold at a time is lifted, or an alert taken on."""
        family = self.chance.choice(self.families)
        number = self.chance.randint(1, 3)
        if self.chance.random() < 0.7:
            return f"LIFT {family.case_id}-{number} saw the child, all well"
        return f"TAKE {family.case_id}-{number}"

    async def comes_to_rest(self) -> None:
        """Let the clinic's processes do all that there is to do; leases run out on the way."""
        await self.until(self._quiet, "it never came to rest")
        self.set_clock(self.ahead + timedelta(minutes=2))
        await asyncio.sleep(1)
        await self.until(self._quiet, "it never came to rest after the leases had run out")

    async def until(self, look: Any, otherwise: str) -> None:
        """Wait until `look` is true."""
        for _ in range(int(REST / 0.1)):
            if await look():
                return
            await asyncio.sleep(0.1)
        raise AssertionError(f"{otherwise}\n{self.log()[-3000:]}")

    async def _quiet(self) -> bool:
        if await self.peer.unconfirmed():
            return False
        store = self.store()
        try:
            return store.run(self._nothing_to_do)
        finally:
            store.close()

    def _nothing_to_do(self, tx: Transaction) -> bool:
        due = (alerts.c.next_step_at <= self.now()) & alerts.c.acknowledged_at.is_(None)
        queries = (
            select(outbox.c.id).where(outbox.c.status.in_(["waiting", "claimed"])),
            select(alerts.c.case_id).where(due),
        )
        return not any(tx._connection.execute(query).first() for query in queries)

    async def arrived(self) -> dict[Phone, Counter[str]]:
        """What stands on all phones, by the channel's own log."""
        found: dict[Phone, Counter[str]] = {phone: Counter(texts) for phone, texts in self.before.items()}
        for one in await self.peer.all_sent():
            text = str(one.get("text") or one.get("caption") or "").strip()
            if text:
                found.setdefault(("telegram", str(one["chat_id"])), Counter())[text] += 1
        return found

    async def broken(self) -> list[str]:
        """What is broken of the laws, now that all has come to rest."""
        store = self.store()
        try:
            return broken_laws(store, await self.arrived(), self.written, self.now())
        finally:
            store.close()

    def told(self) -> list[str]:
        """What the logs tell that must stand in none: token, key, codes, names, words, chats."""
        log = self.log()
        return [one for one in self._secrets() if re.search(rf"(?<![\w.:]){re.escape(one)}(?![\w.])", log)]

    def _secrets(self) -> list[str]:
        chats = [str(chat) for family in self.families for chat in (family.parent, family.child)]
        names = [f"Zebulon{number}" for number in range(len(self.families))]
        words = ["choking", "grandma", "saw the child", "crush"]
        return [self.peer.token, self.key, *self.codes, *names, *words, *chats, str(CLINICIAN), "Imani", "Lindqvist"]


def _free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as free:
        return int(free.getsockname()[1])


@asynccontextmanager
async def running(campaign: Campaign, *more: Sequence[str]) -> AsyncIterator[Campaign]:
    """A clinic whose processes run until the block ends: one with all parts, and one with each of `more`."""
    for only in (PARTS, *more):
        campaign.start(only=only)
    try:
        yield campaign
    finally:
        campaign.kill()


async def killed_rounds(campaign: Campaign, rounds: int) -> None:
    """Rounds of load, each ended by a kill at a random moment or step; time passes in between."""
    for number in range(rounds):
        await campaign.load(campaign.chance.randint(1, 6))
        await campaign.break_channel()
        by_step = number % 2
        campaign.start(step=campaign.chance.randint(1, 60) if by_step else 0)
        if number % 5 == 4:
            campaign.start(only=("heartbeat", "outbox"))
        await campaign.load(campaign.chance.randint(0, 3))
        await asyncio.sleep(campaign.chance.uniform(0.1, 1.5))
        campaign.kill()
        campaign.set_clock(campaign.ahead + timedelta(minutes=campaign.chance.uniform(5, 90)))

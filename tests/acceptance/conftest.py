"""The real program as a process of its own, against a Bot API server that others wrote."""

import asyncio
import os
import signal
import subprocess
import sys
from collections.abc import AsyncIterator, Awaitable, Callable, Mapping
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path
from typing import Any

import msgspec
import pytest

from coachbot.coach.case import Case
from coachbot.rehearsal.stage import FAMILY
from coachbot.service.enrolling import Enrolled, enrol, new_seed
from coachbot.store import Store, Transaction, new_key
from peers.telegram_peer import TelegramPeer, telegram_peer, telegram_server

__all__ = ["telegram_peer", "telegram_server"]

HERE = Path(__file__).parent
SERVE = ("-m", "coachbot", "serve", "--only", "channels", "--only", "heartbeat", "--only", "outbox")
PARENT, CHILD, CLINICIAN = 101, 102, 103
"""Chats at the Bot API server."""

PATIENCE = 30.0
"""Seconds after which what was waited for will not come."""


def beside(environment: Mapping[str, str], work: Callable[[Transaction], Any]) -> Any:
    """Do something in a clinic's store, beside the process that serves it."""
    store = Store.open(environment["COACHBOT_DATABASE_URL"], environment["COACHBOT_KEY"])
    try:
        return store.run(work)
    finally:
        store.close()


@dataclass(frozen=True, slots=True)
class Clinic:
    """A clinic's store and settings, its bot's other side, and how to start its process."""

    environment: Mapping[str, str]
    peer: TelegramPeer
    folder: Path

    def run(self, work: Callable[[Transaction], Any]) -> Any:
        """Do something in the clinic's store, beside the process."""
        return beside(self.environment, work)

    def enrol(self, *, soon: timedelta = timedelta(seconds=3)) -> Enrolled:
        """A family whose bedtime comes soon: its zone is one where it is early evening now."""
        now = datetime.now(UTC)
        hours = (18 - now.hour + 12) % 24 - 12
        here = (now + soon).astimezone(timezone(timedelta(hours=hours)))
        zone = f"Etc/GMT{-hours:+d}"
        wanted = msgspec.structs.replace(FAMILY, zone=zone, bedtime=here.time())

        def work(tx: Transaction) -> Enrolled:
            tx.clinicians.add("Dr Imani Osei", now, duty="on_call", reach=("telegram", str(CLINICIAN)))
            return enrol(tx, wanted, emergency_number="911", seed=new_seed(tx), now=now)

        done: Enrolled = self.run(work)
        return done

    def case(self, case_id: int) -> Case:
        """A case as it is kept."""
        found: Case = self.run(lambda tx: tx.cases.load(case_id))
        return found

    @asynccontextmanager
    async def serving(self, *arguments: str) -> AsyncIterator["subprocess.Popen[bytes]"]:
        """Run the program until the block ends, then stop it as a supervisor would and see that it stops well."""
        with (self.folder / "log").open("ab") as log:
            environment = {**os.environ, **self.environment}
            process = subprocess.Popen([sys.executable, *(arguments or SERVE)], env=environment, stderr=log)  # noqa: ASYNC220
        try:
            yield process
        finally:
            process.send_signal(signal.SIGTERM)
            code = await asyncio.to_thread(process.wait, PATIENCE)
        assert code == 0, self.log()

    async def started(self) -> bool:
        """Whether the process says that it runs."""
        return "started" in self.log()

    def log(self) -> str:
        """All that the process has logged."""
        return (self.folder / "log").read_text(encoding="utf-8")

    async def hears(self, chat: int, words: str, *, times: int = 1) -> dict[str, Any]:
        """Wait until a chat has that many messages with these words; the last of them."""
        otherwise = f"{chat} did not hear {words!r}\n{self.log()[-3000:]}"
        found: dict[str, Any] = await until(lambda: self._heard(chat, words, times), otherwise)
        return found

    async def _heard(self, chat: int, words: str, times: int) -> dict[str, Any] | None:
        found = [one for one in await self.peer.sent(chat) if words in (one.get("text") or one.get("caption") or "")]
        return found[-1] if len(found) >= times else None


async def until(look: Callable[[], Awaitable[Any]], otherwise: str) -> Any:
    """Wait until `look` finds something."""
    for _ in range(int(PATIENCE / 0.1)):
        if found := await look():
            return found
        await asyncio.sleep(0.1)
    raise AssertionError(otherwise)


@pytest.fixture
def clinic(tmp_path: Path, telegram_peer: TelegramPeer) -> Clinic:
    """A clinic with an empty, upgraded store that talks to the peer."""
    environment = {
        "COACHBOT_DATA": str(tmp_path),
        "COACHBOT_DATABASE_URL": f"sqlite:///{tmp_path / 'coachbot.sqlite3'}",
        "COACHBOT_KEY": new_key(),
        "COACHBOT_EMERGENCY_NUMBER": "911",
        "COACHBOT_TELEGRAM_TOKEN": telegram_peer.token,
        "COACHBOT_TELEGRAM_API_URL": telegram_peer.url,
        "COACHBOT_BEAT_SECONDS": "0.5",
    }
    store = Store.open(environment["COACHBOT_DATABASE_URL"], environment["COACHBOT_KEY"])
    store.upgrade()
    store.close()
    return Clinic(environment, telegram_peer, tmp_path)

"""Families and their clinician by text message, with the real process, against an SMSC that others wrote (npm's smpp).

One process serves all tests of this file, each with a family and a telephone of its own: starting it costs most.
"""

import asyncio
import itertools
import json
import os
import subprocess
import sys
from collections.abc import AsyncIterator, Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path
from typing import Any

import httpx
import msgspec
import pytest

from acceptance.conftest import SERVE, beside, until
from coachbot.coach.case import Case, Role, State
from coachbot.rehearsal.stage import FAMILY
from coachbot.service.enrolling import Enrolled, enrol, new_seed
from coachbot.store import Transaction, new_key
from peers.smsc_peer import OWN, SmscPeer, smsc_server

__all__ = ["smsc_server"]

pytestmark = pytest.mark.emulator

CLINICIAN = "+15550177"
ACCOUNT = "acceptance"

_phones = (f"+1555020{number}" for number in itertools.count(1))


@dataclass(frozen=True, slots=True)
class Served:
    """The process's settings and log, and a family that it serves: its case and its parent's telephone."""

    environment: Mapping[str, str]
    folder: Path
    smsc: SmscPeer
    case_id: int = 0
    parent: str = ""

    @property
    def case(self) -> Case:
        """The family's case as it is kept."""
        found: Case = self.run(lambda tx: tx.cases.load(self.case_id))
        return found

    def run(self, work: Callable[[Transaction], Any]) -> Any:
        """Do something in the store, beside the process."""
        return beside(self.environment, work)

    def said(self) -> list[str]:
        """What the family has written, as it was kept."""
        return [str(one.text) for one in self.run(lambda tx: tx.messages.of_case(self.case_id))]

    def log(self) -> str:
        """All that the process has logged."""
        return (self.folder / "log").read_text(encoding="utf-8")

    async def writes(self, words: str, **more: Any) -> None:
        """The parent writes."""
        await self.smsc.write(self.parent, words, **more)

    async def reads(self, words: str, *, phone: str | None = None) -> dict[str, Any]:
        """Wait until these words stand on the parent's phone, or another; the last segment that is there by then."""
        at = phone or self.parent
        otherwise = f"{at} did not read {words!r}\n{self.log()[-3000:]}"
        found: dict[str, Any] = await until(lambda: self._read(at, words), otherwise)
        return found

    async def alerted(self) -> str:
        """Wait for an alert about the family on the clinician's phone; the name that the SMSC gave it."""
        found = await self.reads(f"{self.case_id}-", phone=CLINICIAN)
        return str(found["id"])

    async def stepped(self) -> bool:
        """Whether an alert has been told a second time."""
        return self.case.open_alerts[0].steps > 1

    async def _read(self, phone: str, words: str) -> dict[str, Any] | None:
        """Pieces stand one after the other in the SMSC's log; words may go over from one to the next."""
        sent = await self.smsc.sent(phone, 0)
        whole = "".join(one["text"] for one in sent)
        return sent[-1] if words in whole else None


@pytest.fixture(scope="module")
def process(tmp_path_factory: pytest.TempPathFactory, smsc_server: tuple[int, str]) -> Iterator[Served]:
    """The program over an upgraded store, its one clinician reached by text message."""
    folder = tmp_path_factory.mktemp("sms")
    environment = {
        "COACHBOT_DATA": str(folder),
        "COACHBOT_DATABASE_URL": f"sqlite:///{folder / 'coachbot.sqlite3'}",
        "COACHBOT_KEY": new_key(),
        "COACHBOT_EMERGENCY_NUMBER": "911",
        "COACHBOT_SMS_HOST": "127.0.0.1",
        "COACHBOT_SMS_PORT": str(smsc_server[0]),
        "COACHBOT_SMS_SYSTEM_ID": ACCOUNT,
        "COACHBOT_SMS_PASSWORD": "quiet",
        "COACHBOT_SMS_NUMBER": OWN,
        "COACHBOT_SMS_COUNTRY": "US",
        "COACHBOT_SMS_PER_SECOND": "100",
        "COACHBOT_BEAT_SECONDS": "0.3",
    }
    served = Served(environment, folder, SmscPeer(*smsc_server, ACCOUNT, httpx.AsyncClient(verify=False)))
    command = [sys.executable, "-m", "coachbot"]
    settings = {**os.environ, **environment}
    subprocess.run([*command, "database", "upgrade"], env=settings, check=True, capture_output=True)
    add = [*command, "clinician", "add", "Dr Imani Osei", "--channel", "sms", "--address", "+1 555 0177"]
    subprocess.run(add, env=settings, check=True, capture_output=True)
    with (
        (folder / "log").open("ab") as log,
        subprocess.Popen([sys.executable, *SERVE], env=settings, stderr=log) as one,
    ):
        yield served
        one.terminate()
    assert one.returncode == 0, served.log()


@pytest.fixture
async def family(process: Served) -> AsyncIterator[Served]:
    """A family that has texted its code and agreed, a few seconds before its bedtime."""
    async with httpx.AsyncClient(verify=False) as client:
        served = replace(process, smsc=replace(process.smsc, client=client), parent=next(_phones))
        await served.smsc.bound()  # a bedtime soon is no use to a program that is still starting
        done = served.run(lambda tx: enrolled(tx, datetime.now(UTC)))
        served = replace(served, case_id=done.case.id)
        await served.writes(dict(done.codes)[Role.PARENT].lower())
        await served.reads("Reply YES or NO")
        await served.writes("yes")
        await served.reads("with a lesson")
        yield served


def enrolled(tx: Transaction, now: datetime) -> Enrolled:
    """A family whose bedtime comes soon: its zone is one where it is early evening now."""
    hours = (18 - now.hour + 12) % 24 - 12
    here = (now + timedelta(seconds=4)).astimezone(timezone(timedelta(hours=hours)))
    wanted = msgspec.structs.replace(FAMILY, zone=f"Etc/GMT{-hours:+d}", bedtime=here.time())
    return enrol(tx, wanted, emergency_number="911", seed=new_seed(tx), now=now)


async def test_from_the_invitation_to_a_lifted_hold(family: Served) -> None:
    """Lesson at bedtime, an alarm in two pieces out of order, the clinician's typed answer; no secret in the log."""
    await family.reads("a throat is soft and wide")
    await family.writes("ok")
    await family.reads("sits up tall")
    await family.writes("choking", udh="0500034d0202")
    await family.writes("please help us he is ", udh="0500034d0201")
    await family.reads("Call 911 now")
    await family.alerted()
    await family.smsc.write(CLINICIAN, f"lift {family.case_id}-1 spoke with the mother, child is well")
    await family.reads("can go on")

    assert family.case.state is State.LESSON
    assert "please help us he is choking" in family.said()
    secrets = ("quiet", family.environment["COACHBOT_KEY"], "Noor", "choking", family.parent[1:], CLINICIAN[1:])
    assert not [secret for secret in secrets if secret in family.log()]
    assert all(json.loads(line)["action"] for line in family.log().splitlines())


async def test_what_the_network_repeats_is_taken_once(family: Served) -> None:
    """Three copies of one reply are one; the same words after our answer was read are another."""
    await family.reads("a throat is soft and wide")
    before = len(family.said())
    for _ in range(3):
        await family.writes("next")
    await family.smsc.taken()
    await family.reads("sits up tall")
    assert len(family.said()) == before + 1
    assert family.case.lesson_step == 1
    await asyncio.sleep(2.2)  # the least that reading takes
    await family.writes("next")
    await family.reads("Just water")

    assert family.case.lesson_step == 2


async def test_nothing_is_lost_while_the_network_has_faults(family: Served) -> None:
    """Throttled, cut before and after a message was taken: an alarm's words reach family and clinician all the same."""
    binds = len((await family.smsc.state())["binds"])
    await family.smsc.fault("status", status=0x58)
    await family.smsc.fault("drop")
    await family.smsc.fault("status", status=0x14)
    await family.smsc.fault("lose", cut=True)
    await family.writes("she is choking")
    await family.reads("Call 911 now")
    await family.alerted()
    await family.smsc.taken()

    assert len((await family.smsc.state())["binds"]) > binds


async def test_an_alert_that_did_not_arrive_climbs_at_once(family: Served) -> None:
    """Its receipt comes twice, and a late one says the contrary: one more step is taken, not five minutes later."""
    await family.writes("she is choking")
    name = await family.alerted()
    for state in ("UNDELIV", "UNDELIV", "DELIVRD"):
        await family.smsc.receipt(name, state, CLINICIAN)
    await until(family.stepped, "the alert did not climb")
    await family.smsc.taken()

    assert family.case.open_alerts[0].steps == 2

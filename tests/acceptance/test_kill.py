"""kill -9 between any two steps of inbox and outbox: nothing is lost, and only what law 7 allows comes twice.

The suite plays a few rounds; COACHBOT_TEST_KILLS asks for more (500 for a release).
"""

import asyncio
import os
import random
import subprocess
import sys
from collections import Counter
from typing import Any

import pytest

from acceptance.conftest import CLINICIAN, HERE, PARENT, Clinic, until
from coachbot.coach.case import Role
from coachbot.store import Transaction

pytestmark = pytest.mark.emulator

ROUNDS = int(os.environ.get("COACHBOT_TEST_KILLS", "5"))
WARM = 30
"""Tenths of a second that a process gets to begin, at least."""

WORDS = ("info", "grandma baked a cake", "she is choking and cant breathe", "we wait for the doctor now")


async def test_nothing_is_lost_however_often_it_is_killed(clinic: Clinic) -> None:
    """Every message is kept once; safety text and alert arrive; prompts and replies arrive at most once."""
    chance = random.Random(20261125)
    done = clinic.enrol()
    await clinic.peer.write(PARENT, dict(done.codes)[Role.PARENT])
    written = 1
    for number in range(ROUNDS):
        words = WORDS[number % len(WORDS)]
        await clinic.peer.write(PARENT, f"{words} ({number})")
        written += 1
        await _dies(clinic, chance.randint(1, 30))
    async with clinic.serving(str(HERE / "killed.py"), "0"):
        await until(lambda: _quiet(clinic), "it never came to rest")
        await asyncio.sleep(1.5)
        await until(lambda: _quiet(clinic), "it never came to rest")

    kept = clinic.run(lambda tx: tx.messages.of_case(done.case.id))
    assert sorted(Counter(one.text for one in kept).values()) == [1] * written
    assert all(one.outcome for one in kept)
    await _arrived(clinic, done.case.id)


async def _dies(clinic: Clinic, step: int) -> None:
    """Run until the step at which it kills itself, or, if there are not so many steps, until it has come to rest."""
    environment = {**os.environ, **clinic.environment}
    command = [sys.executable, str(HERE / "killed.py"), str(step)]
    process = subprocess.Popen(command, env=environment, stderr=subprocess.DEVNULL)  # noqa: ASYNC220
    for tenth in range(100):
        if process.poll() is not None or (tenth > WARM and await _quiet(clinic)):
            break
        await asyncio.sleep(0.1)
    process.kill()
    process.wait()


async def _quiet(clinic: Clinic) -> bool:
    waits = clinic.run(lambda tx: tx.outbox.oldest_waiting())
    claimed = clinic.run(lambda tx: [one for one in _written(tx) if one.status in ("waiting", "claimed")])
    return not waits and not claimed and not await clinic.peer.unconfirmed()


def _written(tx: Transaction) -> list[Any]:
    return [one for case in tx.cases.all() for one in tx.outbox.of_case(case.id)]


async def _arrived(clinic: Clinic, case_id: int) -> None:
    arrived = [one.get("text") for chat in (PARENT, CLINICIAN) for one in await clinic.peer.sent(chat)]
    sent = Counter(arrived)
    written = clinic.run(lambda tx: tx.outbox.of_case(case_id))
    grave = [one for one in written if one.key.partition(":")[0] in ("safety", "alert")]
    assert grave
    for one in grave:
        assert one.status == "sent", f"{one.key} was never sent"
        assert sent[one.body.text], f"{one.key} never arrived"
    wanted = Counter(one.body.text for one in written)
    often = {text for text, count in sent.items() if count > wanted[text]}
    assert often <= {one.body.text for one in grave}, "something other than a safety text or an alert came twice"

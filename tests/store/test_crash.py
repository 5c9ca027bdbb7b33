"""Promises about a process that is killed without warning."""

import os
import signal
import subprocess
import sys
from pathlib import Path

from sqlalchemy import select

from coachbot.store import Store, Transaction
from coachbot.store.tables import messages
from conftest import KEY

WRITER = """
import asyncio, sys
from datetime import UTC, datetime
from coachbot.store import Store

async def main(url, key):
    store = Store.open(url, key)
    async def keep(number):
        text = str(number)
        work = lambda tx: tx.messages.receive("chat", text, "777", text=text, button=None, at=datetime.now(UTC))
        await store.transact(work)
        print(number, flush=True)
    for start in range(0, 100_000, 20):
        await asyncio.gather(*[keep(start + number) for number in range(20)])

asyncio.run(main(*sys.argv[1:]))
"""
ACKNOWLEDGED = (1, 150)


def test_what_was_acknowledged_outlives_the_process(store_url: str) -> None:
    """Killed while twenty messages are under way, it has kept each whose answer was given, and each only once."""
    program = [sys.executable, "-c", WRITER, store_url, KEY]
    environment = os.environ | {"PYTHONPATH": str(Path(__file__).parents[2])}
    told: set[str] = set()
    for wanted in ACKNOWLEDGED:
        process = subprocess.Popen(program, stdout=subprocess.PIPE, text=True, env=environment)
        assert process.stdout
        lines = [process.stdout.readline() for _ in range(wanted)]
        assert all(lines), "the writer ended by itself"
        process.send_signal(signal.SIGKILL)
        told |= {line.strip() for line in [*lines, *process.stdout]}
        process.stdout.close()
        process.wait()

    store = Store.open(store_url, KEY)

    def kept(tx: Transaction) -> list[str]:
        return list(tx._connection.execute(select(messages.c.channel_id)).scalars())

    channel_ids = store.run(kept)
    store.close()

    assert len(told) >= max(ACKNOWLEDGED)
    assert told <= set(channel_ids)
    assert len(channel_ids) == len(set(channel_ids))

"""How the parts end."""

import asyncio
from datetime import timedelta

import pytest

from coachbot import serving
from coachbot.channels.base import Outgoing, Receipt
from coachbot.coach.actions import Urgency
from coachbot.rehearsal.stage import cast
from coachbot.settings import Settings
from coachbot.store import Envelope, Store


async def test_a_channel_that_never_answers_does_not_hold_the_end_up(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The message stays claimed until its lease runs out: whether it went out is unknown (law 7)."""
    stage = await cast(store)
    begun = asyncio.Event()

    async def silent(_: Outgoing) -> Receipt:
        begun.set()
        await asyncio.Event().wait()
        raise AssertionError

    monkeypatch.setattr(stage.phones, "send", silent)
    monkeypatch.setattr(serving, "GRACE", 0.05)
    clinician = (await store.read(lambda tx: tx.clinicians.all()))[0].id
    said = Envelope(case_id=None, key="x", urgency=Urgency.ALERT, text="", clinician_id=clinician)
    await store.transact(lambda tx: tx.outbox.add([said], stage.clock.now))
    stopped = asyncio.Event()
    sending = asyncio.create_task(serving._outbox(stage.coachbot, Settings({}), stopped))
    await asyncio.wait_for(begun.wait(), 10)
    stopped.set()
    await asyncio.wait_for(sending, 10)

    assert await store.read(lambda tx: list(tx.outbox.unsent())) == [Urgency.ALERT]
    assert await store.transact(lambda tx: tx.outbox.claim(stage.clock.now, 9, timedelta(minutes=1))) == []

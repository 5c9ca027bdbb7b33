"""How the parts end."""

import asyncio
from datetime import timedelta

import pytest

from coachbot import serving
from coachbot.channels.base import Outgoing, Receipt
from coachbot.coach.actions import Urgency
from coachbot.rehearsal.stage import cast
from coachbot.service.signs import Signs
from coachbot.settings import Settings
from coachbot.store import Envelope, Store, UnavailableError


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


@pytest.mark.parametrize("store_url", ["sqlite"], indirect=True)
async def test_a_database_that_is_away_as_the_channels_begin_ends_nothing(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    """That they are up is told again later; what people write meanwhile waits on the channel's side."""
    stage = await cast(store)
    tried = asyncio.Event()

    async def failing(_: Signs) -> None:
        tried.set()
        raise UnavailableError("the database did not take it")

    monkeypatch.setattr(Signs, "give", failing)
    stopped = asyncio.Event()
    channels = asyncio.create_task(serving._channels(stage.coachbot, Settings({}), stopped))
    await asyncio.wait_for(tried.wait(), 10)
    await asyncio.sleep(0)
    assert not channels.done()

    stopped.set()
    await asyncio.wait_for(channels, 10)

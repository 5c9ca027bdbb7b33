"""A database that restarts, is full or only to be read, under load: nothing is acknowledged that was not kept."""

import asyncio
import random
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import httpx
import pytest

from faults.campaign import CHOKING, PARTS, Campaign, Forks, running
from helpers.postgres_cluster import Cluster, cluster
from peers.telegram_peer import TelegramPeer

pytestmark = pytest.mark.emulator
ALL = (*PARTS, "desk")


@pytest.fixture(scope="module")
def server() -> Iterator[Cluster]:
    """A PostgreSQL of our own."""
    with cluster() as made:
        yield made


@pytest.fixture
async def on_postgres(server: Cluster, telegram_peer: TelegramPeer, tmp_path: Path, forks: Forks) -> Campaign:
    """Three families on a PostgreSQL that may be restarted."""
    made = Campaign(server.url, telegram_peer, tmp_path, forks, random.Random(7))
    await made.enrol(3)
    return made


@pytest.fixture
async def on_sqlite(sqlite_url: str, telegram_peer: TelegramPeer, tmp_path: Path, forks: Forks) -> Campaign:
    """Three families on SQLite."""
    made = Campaign(sqlite_url, telegram_peer, tmp_path, forks, random.Random(7))
    await made.enrol(3)
    return made


@pytest.mark.postgres
async def test_a_postgresql_that_restarts_under_load(on_postgres: Campaign, server: Cluster) -> None:
    """Once as its supervisor does it, once as a crash does; then read-only for a while. The same processes go on."""
    async with running(on_postgres, ("heartbeat", "outbox")) as campaign:
        await campaign.until(lambda: _started(campaign, 2), "not both have started")
        for mode in ("fast", "immediate"):
            load = asyncio.create_task(campaign.load(12))
            await asyncio.sleep(0.3)
            await asyncio.to_thread(server.control, "restart", "-m", mode)
            campaign.set_clock(campaign.ahead + timedelta(minutes=30))
            await load
        await asyncio.to_thread(server.read_only, on=True)
        await campaign.load(5)
        await campaign.write(campaign.families[0].parent, CHOKING)
        await campaign.until(lambda: _says(campaign, "ReadOnlySqlTransaction"), "it does not say that it cannot write")
        assert await campaign.peer.unconfirmed(), "what cannot be kept must not be confirmed"
        await asyncio.to_thread(server.read_only, on=False)
        await campaign.comes_to_rest()
        assert all(campaign.there())

    assert await campaign.broken() == []
    assert campaign.told() == []


@pytest.mark.parametrize(("trouble", "word"), [("full", "SQLITE_FULL"), ("read-only", "SQLITE_READONLY")])
async def test_a_database_that_takes_nothing(on_sqlite: Campaign, trouble: str, word: str) -> None:
    """The log says so, /ready goes red, and the channel keeps the words until they can be kept; then all goes on."""
    campaign = on_sqlite
    campaign.start(only=ALL)
    try:
        await campaign.until(lambda: _ready(campaign, green=True), "it was never ready")
        campaign.ail(trouble)
        await campaign.load(5)
        await campaign.write(campaign.families[0].parent, CHOKING)
        await campaign.until(lambda: _says(campaign, "message_not_kept"), "it does not say that it keeps nothing")
        await campaign.until(lambda: _says(campaign, word), "it does not say why")
        await campaign.until(lambda: _ready(campaign, green=False), "it calls itself ready and can keep nothing")
        assert await campaign.peer.unconfirmed(), "what cannot be kept must not be confirmed"
        campaign.ail("")
        await campaign.comes_to_rest()
        await campaign.until(lambda: _ready(campaign, green=True), "it was not ready again")
        assert all(campaign.there())
    finally:
        campaign.kill()

    assert await campaign.broken() == []
    assert campaign.told() == []


async def _started(campaign: Campaign, count: int) -> bool:
    return campaign.log().count('"started"') == count


async def _says(campaign: Campaign, word: str) -> bool:
    return word in campaign.log()


async def _ready(campaign: Campaign, *, green: bool) -> bool:
    async with httpx.AsyncClient(verify=False) as client:
        try:
            answer = await client.get(f"{campaign.desk}/ready")
        except httpx.TransportError:
            return False
        return (answer.status_code == 200) is green

"""The channel is down for an hour and back, with the real process: the backlog goes out in order of urgency."""

import asyncio
from collections.abc import AsyncIterator
from contextlib import suppress
from datetime import timedelta
from urllib.parse import urlsplit

import pytest

from faults.campaign import CHOKING, CLINICIAN, Campaign, running

pytestmark = pytest.mark.emulator


class Cable:
    """A line to the Bot API server that can be pulled out and put in again."""

    def __init__(self, url: str) -> None:
        self._there = urlsplit(url)
        self._server: asyncio.Server | None = None
        self._lines: set[asyncio.StreamWriter] = set()
        self._port = 0

    @property
    def url(self) -> str:
        """This end of it."""
        return f"http://127.0.0.1:{self._port}"

    async def plug(self) -> None:
        """Put it in."""
        self._server = await asyncio.start_server(self._carry, "127.0.0.1", self._port)
        self._port = self._server.sockets[0].getsockname()[1]

    async def pull(self) -> None:
        """Pull it out: what is under way breaks, and nobody listens any more."""
        assert self._server
        self._server.close()
        for line in self._lines:
            line.transport.abort()
        self._lines.clear()

    async def _carry(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        there_reader, there_writer = await asyncio.open_connection(self._there.hostname, self._there.port)
        self._lines |= {writer, there_writer}
        await asyncio.gather(_pass_on(reader, there_writer), _pass_on(there_reader, writer))


async def _pass_on(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
    with suppress(ConnectionError):
        while data := await reader.read(65536):
            writer.write(data)
            await writer.drain()
    writer.close()


@pytest.fixture
def store_url(sqlite_url: str) -> str:
    """One database is enough: the fault is the channel's."""
    return sqlite_url


@pytest.fixture
async def cable(campaign: Campaign) -> AsyncIterator[Cable]:
    """The only way from the clinic to the Bot API server."""
    made = Cable(campaign.peer.url)
    await made.plug()
    campaign.api_url = made.url
    yield made
    await made.pull()


async def test_a_channel_down_for_an_hour_at_bedtime(campaign: Campaign, cable: Cable) -> None:
    """An alert that nobody has taken climbs on and goes out before prompts; prompts of use arrive, once."""
    family = campaign.families[0]
    async with running(campaign):
        await campaign.write(family.parent, CHOKING)
        await campaign.until(lambda: _arrived(campaign, "EMERGENCY"), "the alarm did not arrive")
        await cable.pull()
        before = len(await campaign.peer.all_sent())
        await campaign.to_bedtime()
        for _ in range(6):
            campaign.set_clock(campaign.ahead + timedelta(minutes=10))
            await asyncio.sleep(0.5)
        await campaign.write(campaign.families[1].child, "info")
        assert len(await campaign.peer.all_sent()) == before
        await cable.plug()
        campaign.set_clock(campaign.ahead + timedelta(seconds=20))
        await campaign.comes_to_rest()

    sent = (await campaign.peer.all_sent())[before:]
    assert str(CLINICIAN) in {str(one["chat_id"]) for one in sent[:5]}, [
        (one["chat_id"], str(one.get("caption") or one.get("text"))[:40]) for one in sent
    ]
    assert any("Night 1 of 14" in str(one.get("caption") or one.get("text")) for one in sent)
    assert await campaign.broken() == []


async def _arrived(campaign: Campaign, words: str) -> bool:
    return any(words in str(one.get("text")) for one in await campaign.peer.all_sent())

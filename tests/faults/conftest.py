"""A clinic under load, over either database, with a Bot API server that others wrote."""

import random
from collections.abc import Iterator
from pathlib import Path

import pytest

from faults.campaign import Campaign, Forks
from peers.telegram_peer import TelegramPeer, telegram_peer, telegram_server

__all__ = ["telegram_peer", "telegram_server"]


@pytest.fixture(scope="session")
def forks() -> Iterator[Forks]:
    """What forks the processes."""
    forks = Forks()
    yield forks
    forks.close()


@pytest.fixture
async def campaign(store_url: str, telegram_peer: TelegramPeer, tmp_path: Path, forks: Forks) -> Campaign:
    """Three families who practise."""
    made = Campaign(store_url, telegram_peer, tmp_path, forks, random.Random(20261125))
    await made.enrol(3)
    return made

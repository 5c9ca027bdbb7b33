"""A key is rotated while the clinic works, and killed on the way: the old key may go afterwards, and not before."""

import asyncio
import os
import signal
import subprocess
import sys
from datetime import timedelta

import pytest

from coachbot.store import Store, UnsealError, new_key
from faults.campaign import HERE, Campaign, running

pytestmark = pytest.mark.emulator


async def rotate(campaign: Campaign, batch: int, how: str) -> int:
    """Run the command until it ends, or kills itself; its exit code."""
    environment = {**os.environ, **campaign.environment, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))}
    for name in [name for name in environment if name.startswith("FAULTS_")]:
        del environment[name]
    command = [sys.executable, str(HERE / "rotating.py"), str(batch), how]
    done = await asyncio.to_thread(
        subprocess.run, command, env=environment, capture_output=True, text=True, timeout=120, check=False
    )
    assert campaign.key not in done.stdout + done.stderr
    return done.returncode


@pytest.mark.parametrize("store_url", ["sqlite"], indirect=True)
async def test_a_key_is_rotated_under_load_and_kills(campaign: Campaign) -> None:
    """Broken off before and after a commit, begun again, and the old key removed: no law is broken, nothing lost."""
    old, new = campaign.key, new_key()
    first = Store.open(campaign.url, old)
    first.check()
    first.close()
    campaign.key = f"{new},{old}"
    async with running(campaign):
        await campaign.load(5)
        assert await rotate(campaign, 3, "kept") == -signal.SIGKILL
        await campaign.load(5)
        assert await rotate(campaign, 20, "undone") == -signal.SIGKILL
        early = Store.open(campaign.url, new)
        with pytest.raises(UnsealError, match="coachbot key rotate"):
            early.check()
        early.close()
        assert await rotate(campaign, 0, "never") == 0
        await campaign.load(5)
        await campaign.comes_to_rest()

    campaign.key = new
    async with running(campaign):
        campaign.set_clock(campaign.ahead + timedelta(hours=1))
        await campaign.load(5)
        await campaign.comes_to_rest()
    assert await campaign.broken() == []
    assert campaign.told() == []

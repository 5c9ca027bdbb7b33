"""Two processes with the same work: nothing is done or sent twice, and nothing is left undone."""

from datetime import timedelta

import pytest

from faults.campaign import Campaign, running

pytestmark = pytest.mark.emulator


@pytest.mark.postgres
@pytest.mark.parametrize("store_url", ["postgres"], indirect=True)
async def test_two_processes_with_the_same_work_do_it_once(campaign: Campaign) -> None:
    """Both beat and send, over an evening with prompts and alarms; one of them hears too."""
    async with running(campaign, ("heartbeat", "outbox")):
        for _ in range(5):
            await campaign.load(6, trouble=0.1)
            campaign.set_clock(campaign.ahead + timedelta(minutes=15))
        await campaign.comes_to_rest()
        assert campaign.beating() == 2
        await campaign.stop()

    assert await campaign.broken() == []

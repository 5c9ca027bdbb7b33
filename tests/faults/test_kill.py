"""kill -9 at random moments, and between any two steps, under load: no law is broken when all has come to rest.

The suite plays a few rounds over SQLite; `tests/bench/campaign_kill.py` plays hundreds over either database.
"""

import pytest

from faults.campaign import Campaign, killed_rounds, running

pytestmark = pytest.mark.emulator


@pytest.mark.parametrize("store_url", ["sqlite"], indirect=True)
async def test_no_law_is_broken_however_often_it_is_killed(campaign: Campaign) -> None:
    """Laws 3 to 7, from the database and from the channel's own log; and the logs tell nothing of anybody."""
    await killed_rounds(campaign, 5)
    async with running(campaign):
        await campaign.comes_to_rest()

    assert await campaign.broken() == []
    assert campaign.told() == []

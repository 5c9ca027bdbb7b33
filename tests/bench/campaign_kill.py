"""kill -9 at random moments under load, hundreds of times; the laws are checked from outside every so often.

Run: ``python tests/bench/campaign_kill.py [--rounds 500] [--every 50] [--seed 1] [--database URL]`` (default: SQLite in
a folder that goes). Prints a table and one JSON line. Ends with 1 if a law was broken, and says which.
"""

import argparse
import asyncio
import contextlib
import json
import random
import sys
import tempfile
from collections import Counter
from pathlib import Path

import httpx

sys.path.insert(0, str(Path(__file__).parents[1]))

from coachbot import logs
from faults.campaign import Campaign, Forks, killed_rounds, running
from helpers.laws import read_all
from peers.telegram_peer import TelegramPeer, running_server


async def main(arguments: argparse.Namespace) -> int:
    """Play all rounds; returns the exit code."""
    logs.silence()
    forks = Forks()
    with tempfile.TemporaryDirectory() as folder, running_server() as server:
        async with httpx.AsyncClient(timeout=60) as client:
            url = arguments.database or f"sqlite:///{folder}/coachbot.sqlite3"
            peer = TelegramPeer(server, f"{arguments.seed}:campaign", client)
            campaign = Campaign(url, peer, Path(folder), forks, random.Random(arguments.seed))
            await campaign.enrol(arguments.families)
            try:
                return await play(campaign, arguments)
            finally:
                campaign.kill()
                forks.close()


async def play(campaign: Campaign, arguments: argparse.Namespace) -> int:
    """Rounds, then rest and a check, until all are played or a law is broken."""
    print(f"{'rounds':>7} {'written':>8} {'posted':>7} {'nights':>7} {'alerts':>7} {'twice':>6} {'broken':>7}")
    played = 0
    while played < arguments.rounds:
        some = min(arguments.every, arguments.rounds - played)
        await killed_rounds(campaign, some)
        played += some
        async with running(campaign):
            await campaign.comes_to_rest()
        broken = [*await campaign.broken(), *(f"the log tells {one!r}" for one in campaign.told())]
        found = await counts(campaign)
        print(
            f"{played:>7} {found['written']:>8} {found['posted']:>7} {found['nights']:>7} {found['alerts']:>7} "
            f"{found['grave_twice']:>6} {len(broken):>7}",
            flush=True,
        )
        if broken:
            print(*broken, sep="\n")
            return 1
    print(json.dumps({"rounds": played, "seed": arguments.seed, **found}))
    return 0


async def counts(campaign: Campaign) -> dict[str, int]:
    """How much there was, and how many of the grave messages arrived more often than they were sent."""
    store = campaign.store()
    with contextlib.closing(store):
        kept = store.run(read_all)
    arrived = await campaign.arrived()
    sent = Counter((one.phone, one.text) for one in kept.posted if one.status == "sent")
    return {
        "written": sum(campaign.written.values()),
        "posted": len(kept.posted),
        "unknown": sum(one.status == "unknown" for one in kept.posted),
        "nights": sum(len(case.nights) for case in kept.cases.values()),
        "alerts": sum(len(case.alerts) for case in kept.cases.values()),
        "grave_twice": sum(
            max(0, times - sent[phone, text])
            for phone, texts in arrived.items()
            for text, times in texts.items()
            if any(one.urgency <= 1 and one.text == text for one in kept.posted if one.phone == phone)
        ),
    }


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rounds", type=int, default=500)
    parser.add_argument("--every", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--families", type=int, default=6)
    parser.add_argument("--database", default="")
    sys.exit(asyncio.run(main(parser.parse_args())))

"""What a process tells the store of itself: the channels that are up, and what it has counted."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime

from coachbot.channels.base import Channel
from coachbot.measures import Tally
from coachbot.store import Store, Transaction


@dataclass(frozen=True, slots=True)
class Signs:
    """Gives the store this process's signs. Several processes may, each its own."""

    store: Store
    channels: Mapping[str, Channel]
    clock: Callable[[], datetime]
    tally: Tally = field(default_factory=Tally)

    async def give(self) -> None:
        """Tell what is new since the last time."""
        now, fresh = self.clock(), self.tally.fresh()
        up = [name for name, channel in self.channels.items() if channel.up]

        def work(tx: Transaction) -> None:
            tx.signs.up(up, now)
            tx.signs.count(fresh)

        await self.store.transact(work)
        self.tally.given(fresh)

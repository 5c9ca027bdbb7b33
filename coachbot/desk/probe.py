"""A try whether the database can be written."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from coachbot.store import Store


@dataclass(slots=True)
class Probe:
    """Tries whether the database can be written; not at every question, for anybody may ask."""

    every: timedelta = timedelta(seconds=5)
    _written: datetime | None = None

    async def __call__(self, store: Store, now: datetime) -> None:
        """Raises StoreError if it cannot."""
        if self._written is None or not timedelta(0) <= now - self._written < self.every:
            self._written = None
            await store.transact(lambda tx: tx.signs.probe(now))
            self._written = now

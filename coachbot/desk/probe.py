"""A try whether the database can be written."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from coachbot.store import Store, UnavailableError


@dataclass(slots=True)
class Probe:
    """Tries whether the database can be written; not at every question, for anybody may ask."""

    every: timedelta = timedelta(seconds=5)
    _written: datetime | None = None

    async def __call__(self, store: Store, now: datetime) -> None:
        """Raises StoreError if it cannot, or if it has refused anything lately.

        A full disk may yet take a probe, which finds room in what is there already, and not a family's words.
        """
        if self._written is None or not timedelta(0) <= now - self._written < self.every:
            self._written = None
            await store.transact(lambda tx: tx.signs.probe(now))
            self._written = now
        if store.refused_lately:
            raise UnavailableError("the database took a probe, but refused something else within the last minute")

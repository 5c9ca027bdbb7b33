"""The dead-man's check: somebody outside hears of it when this service cannot do its work, or cannot say so itself.

A monitor outside is asked for by each healthy look; when the asking stops, it raises the alarm. Nothing is said of
anybody: an address is asked for, and what is posted when alerts reach no clinician is how many they are.
"""

from collections.abc import Callable, Collection
from dataclasses import dataclass, field
from datetime import datetime, timedelta

import httpx
import structlog

from coachbot.service.vitals import Vitals, readiness, vitals
from coachbot.settings import Settings
from coachbot.store import Store, StoreError

log = structlog.get_logger(__name__)

TIMEOUT = 10.0
"""Seconds that the monitor may take to answer."""

AGAIN = timedelta(minutes=5)
"""After how long it is told again that alerts still reach nobody."""


@dataclass(slots=True)
class Watch:
    """Looks whether all is well, and tells the monitor."""

    store: Store
    settings: Settings
    channels: Collection[str]
    clock: Callable[[], datetime]
    client: httpx.AsyncClient = field(default_factory=lambda: httpx.AsyncClient(timeout=TIMEOUT))
    _told: datetime | None = None

    @property
    def url(self) -> str:
        """What is asked for while all is well; empty if nobody watches."""
        return self.settings.get("WATCH_URL")

    @property
    def fail_url(self) -> str:
        """What is posted to when an alert reaches nobody."""
        return self.settings.get("WATCH_FAIL_URL") or (self.url.rstrip("/") + "/fail" if self.url else "")

    async def look(self) -> None:
        """Look once. Whatever is amiss with the store or the monitor, the next look comes all the same."""
        now = self.clock()
        try:
            found = await self.store.read(lambda tx: vitals(tx, self.channels, now))
        except StoreError:
            log.exception("watch_blind")
            return
        if found.undelivered:
            await self._alarm(found, now)
            return
        self._told = None
        if self.url and readiness(found, self.settings, now):
            await self._ask("GET", self.url)

    async def close(self) -> None:
        """Let go of the line."""
        await self.client.aclose()

    async def _alarm(self, found: Vitals, now: datetime) -> None:
        if self._told and now - self._told < AGAIN:
            return
        log.error("alerts_undelivered", count=found.undelivered)
        if not self.fail_url or await self._ask("POST", self.fail_url, {"alerts_undelivered": found.undelivered}):
            self._told = now

    async def _ask(self, method: str, url: str, told: dict[str, int] | None = None) -> bool:
        """Whether the monitor took it. Its address is not logged: it may hold a secret."""
        try:
            answer = await self.client.request(method, url, json=told)
            answer.raise_for_status()
        except (httpx.HTTPError, httpx.InvalidURL) as error:
            log.warning("watch_unheard", error=type(error).__name__)
            return False
        return True

"""Sends what waits in the outbox, most urgent first. The one layer that tries again (law 7)."""

import asyncio
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

import structlog

from coachbot.channels.base import Channel, Ending, Outgoing, Receipt, Report
from coachbot.coach.actions import Urgency
from coachbot.coach.events import Outcome
from coachbot.measures import SENDS
from coachbot.service.faults import Faults
from coachbot.service.files import Files
from coachbot.store import Claimed, Store, Transaction, UnavailableError

log = structlog.get_logger(__name__)

BATCH = 20
"""How many messages are in flight at once: few, so that a safety text never waits behind many prompts."""

LEASE = timedelta(seconds=60)
"""For how long a claimed message is this sender's: longer than any channel's own time-outs together."""

URGENT_WAIT = timedelta(seconds=15)
"""The longest wait between two tries of a safety text or an alert; `CALM_WAIT` that of any other message."""

CALM_WAIT = timedelta(minutes=5)

POLL = 1.0
"""Seconds after which the outbox is looked at though nobody called: other processes write to it too."""

INSIST = 20
"""How often it is tried to keep how a send ended, a `POLL` apart. Then its lease runs out, and it counts as unknown."""

DOWN = 3
"""After how many messages put off in a row, with none sent in between, a channel counts as down."""

BREATH = 0.02
"""Seconds between two looks while a channel's pace lets nothing through."""


@dataclass(slots=True)
class Sender:
    """Takes messages out of the outbox and gives them to their channels."""

    store: Store
    faults: Faults
    files: Files
    channels: Mapping[str, Channel]
    clock: Callable[[], datetime]
    _woken: asyncio.Event = field(default_factory=asyncio.Event)
    _refused: Counter[str] = field(default_factory=Counter)

    def wake(self) -> None:
        """Something may wait: look at once."""
        self._woken.set()

    async def run(self, stopped: asyncio.Event) -> None:
        """Send until stopped; what is in flight then is still settled.

        What is slow on its way keeps nothing else back: the next look is had as soon as anything has ended or is new.
        """
        flying: set[asyncio.Task[None]] = set()
        try:
            while not stopped.is_set():
                self._woken.clear()
                now = self.clock()
                room = self._room(now)
                try:
                    claimed = await self._claim(now, min(room, BATCH - len(flying)))
                except Exception:
                    log.exception("outbox_failed")
                    claimed = []
                flying |= {asyncio.create_task(self._deliver(one)) for one in claimed}
                await asyncio.sleep(0)  # so that each has asked its channel's pace before it is asked again
                if len(flying) == BATCH:
                    await asyncio.wait(flying, return_when=asyncio.FIRST_COMPLETED)
                elif not claimed:
                    await self._pause(stopped, flying, POLL if room else BREATH)
                flying = {one for one in flying if not one.done()}
            await asyncio.gather(*flying)
        finally:
            for one in flying:
                one.cancel()

    async def pump(self) -> int:
        """Send one batch, no larger than the channels have room for. Returns how many messages were tried."""
        now = self.clock()
        claimed = await self._claim(now, self._room(now))
        await asyncio.gather(*(self._deliver(one) for one in claimed))
        return len(claimed)

    async def _claim(self, now: datetime, most: int) -> list[Claimed]:
        return await self.store.transact(lambda tx: tx.outbox.claim(now, most, LEASE)) if most else []

    async def drain(self) -> None:
        """Send all that can be sent now."""
        while await self.pump():
            pass

    def _room(self, now: datetime) -> int:
        paces = [channel.pace for channel in self.channels.values()]
        return max((BATCH if pace is None else min(pace.room(now), BATCH) for pace in paces), default=BATCH)

    async def report(self, report: Report) -> bool:
        """Keep how a message that was sent has fared since. False if no such message is known."""
        now = self.clock()
        known = await self.store.transact(lambda tx: self._fared(tx, report, now))
        if known:
            log.info("message_reported", channel=report.channel, ending=report.ending)
            self.wake()
        return known

    def _fared(self, tx: Transaction, report: Report, now: datetime) -> bool:
        found = tx.deliveries.find(report.channel, report.names, report.address)
        if found is None:
            return False
        delivery, message = found
        outcome = Outcome(report.ending)
        if tx.deliveries.report(delivery, outcome, now) and outcome is not Outcome.SENT:
            ended = tx.outbox.lose(message, outcome, now)
            if ended:
                self.faults.tell(tx, ended, now)
        return True

    async def _pause(self, stopped: asyncio.Event, flying: set[asyncio.Task[None]], seconds: float) -> None:
        waits = [asyncio.create_task(self._woken.wait()), asyncio.create_task(stopped.wait())]
        await asyncio.wait([*waits, *flying], timeout=seconds, return_when=asyncio.FIRST_COMPLETED)
        for wait in waits:
            wait.cancel()

    async def _deliver(self, claimed: Claimed) -> None:
        receipt = await self._try(claimed)
        now = self.clock()
        for _ in range(INSIST):
            try:
                await self.store.transact(lambda tx: self._settle(tx, claimed, receipt, now))
            except UnavailableError:
                await asyncio.sleep(POLL)
            except Exception:
                log.exception("ending_failed", outbox=claimed.id, ending=receipt.ending)
                return
            else:
                urgency = claimed.urgency.name.lower()
                SENDS.labels(receipt.ending, urgency).inc()
                log.info("message_sent", outbox=claimed.id, urgency=urgency, ending=receipt.ending)
                return
        log.error("ending_not_kept", outbox=claimed.id, ending=receipt.ending)

    async def _try(self, claimed: Claimed) -> Receipt:
        channel = self.channels.get(claimed.channel or "")
        if channel is None or claimed.address is None:
            return Receipt(ending=Ending.NEVER)
        wait = channel.pace.ask(claimed.address, self.clock()) if channel.pace else None
        if wait:
            return Receipt(ending=Ending.LATER, wait=wait)
        try:
            receipt = await channel.send(await self._outgoing(claimed, claimed.address))
        except Exception:
            log.exception("send_failed", outbox=claimed.id, channel=claimed.channel)
            return Receipt(ending=Ending.UNKNOWN)
        return self._heeded(channel, receipt)

    async def _outgoing(self, claimed: Claimed, address: str) -> Outgoing:
        file = await self.files.of(claimed)
        body = claimed.body
        return Outgoing(address=address, text=body.text, buttons=body.buttons, file=file, expires=claimed.expires)

    def _heeded(self, channel: Channel, receipt: Receipt) -> Receipt:
        """Leave a channel alone that takes nothing at all: once it is back, what is most urgent goes first.

        If each message waited by itself, those tried least would go before those tried most, whatever they say.
        """
        if receipt.ending is not Ending.LATER:
            self._refused[channel.name] = 0
        elif receipt.wait is None and channel.pace:
            self._refused[channel.name] += 1
            if self._refused[channel.name] >= DOWN:
                wait = min(timedelta(seconds=self._refused[channel.name]), URGENT_WAIT)
                channel.pace.hold(wait, self.clock())
                return replace(receipt, wait=wait)
        return receipt

    def _settle(self, tx: Transaction, claimed: Claimed, receipt: Receipt, now: datetime) -> None:
        if receipt.ending is Ending.LATER:
            tx.outbox.put_back(claimed.id, now + (receipt.wait or _backoff(claimed)))
            return
        if claimed.channel:
            tx.deliveries.expect(claimed.id, claimed.channel, receipt.names)
        ended = tx.outbox.settle(claimed.id, Outcome(receipt.ending), now, receipt.channel_id, pause=_backoff(claimed))
        if ended and ended.outcome is not Outcome.SENT:
            self.faults.tell(tx, ended, now)


def _backoff(claimed: Claimed) -> timedelta:
    longest = URGENT_WAIT if claimed.urgency <= Urgency.ALERT else CALM_WAIT
    return min(timedelta(seconds=2 ** min(claimed.attempts, 10)), longest)

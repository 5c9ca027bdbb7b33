"""How fast a channel may send: so many a second in all, one at a time to one address, nothing while told to wait."""

from collections import OrderedDict
from datetime import datetime, timedelta

NO_WAIT = timedelta(0)

SET_BACK = timedelta(seconds=1)
"""By how much at least an instant is before the last one when the clock was set back."""


class Pace:
    """A token bucket with one shared deadline. Time is an argument.

    An instant shortly before the last one counts as the last; one longer before means that the clock was set back, and
    what was to be waited for is waited for from there. In any one second at most `per_second` + `burst` messages are
    let through.
    """

    def __init__(self, *, per_second: float, burst: int, per_address: timedelta) -> None:
        """`per_address` is the shortest time between two messages to one address."""
        self._per_second = per_second
        self._burst = burst
        self._per_address = per_address
        self._tokens = float(burst)
        self._seen: datetime | None = None
        self._deadline: datetime | None = None
        self._latest: OrderedDict[str, datetime] = OrderedDict()

    def ask(self, address: str, now: datetime) -> timedelta:
        """Zero if one message may go to `address` now, and it is counted; else how long to wait before asking again."""
        now = self._refill(now)
        wait = max(self._held(now), self._crowded(now, address), self._spent())
        if wait == NO_WAIT:
            self._tokens -= 1
            self._latest[address] = now
        return wait

    def room(self, now: datetime) -> int:
        """How many messages may go now, to different addresses, before the bucket is empty."""
        now = self._refill(now)
        return 0 if self._held(now) else int(self._tokens)

    def hold(self, wait: timedelta, now: datetime) -> None:
        """Let nothing through for `wait` from now. A hold never shortens an earlier one."""
        until = now + wait
        self._deadline = max(until, self._deadline or until)

    def _refill(self, now: datetime) -> datetime:
        before = self._seen or now
        if before - now > SET_BACK:
            self._shift(now - before)
            before = now
        self._seen = max(before, now)
        gained = (self._seen - before).total_seconds() * self._per_second
        self._tokens = min(self._tokens + gained, float(self._burst))
        while self._latest and next(iter(self._latest.values())) <= self._seen - self._per_address:
            self._latest.popitem(last=False)
        return self._seen

    def _shift(self, gap: timedelta) -> None:
        if self._deadline:
            self._deadline += gap
        for address in self._latest:
            self._latest[address] += gap

    def _held(self, now: datetime) -> timedelta:
        return max(self._deadline - now, NO_WAIT) if self._deadline else NO_WAIT

    def _crowded(self, now: datetime, address: str) -> timedelta:
        latest = self._latest.get(address)
        return latest + self._per_address - now if latest else NO_WAIT

    def _spent(self) -> timedelta:
        missing = max(1 - self._tokens, 0.0)
        return timedelta(microseconds=-(-missing * 1_000_000 // self._per_second))

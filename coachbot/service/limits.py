"""How often somebody may do a thing. Kept in memory: losing it at a restart only makes it more lenient."""

from collections import OrderedDict, deque
from datetime import datetime, timedelta
from threading import Lock


class Limit:
    """At most `most` times within `span` for each key; remembers the latest `keys` keys."""

    def __init__(self, most: int, span: timedelta, *, keys: int = 10_000) -> None:
        self._most = most
        self._span = span
        self._keys = keys
        self._times: OrderedDict[str, deque[datetime]] = OrderedDict()
        self._lock = Lock()  # transactions run in several threads

    def allows(self, key: str, now: datetime) -> bool:
        """Whether once more is within the limit; if so, it is counted."""
        with self._lock:
            times = self._lately(key, now)
            if len(times) >= self._most:
                return False
            times.append(now)
            return True

    def full(self, key: str, now: datetime) -> bool:
        """Whether once more would not be; nothing is counted."""
        with self._lock:
            return len(self._lately(key, now)) >= self._most

    def _lately(self, key: str, now: datetime) -> deque[datetime]:
        times = self._times.setdefault(key, deque())
        self._times.move_to_end(key)
        while len(self._times) > self._keys:
            self._times.popitem(last=False)
        while times and now - times[0] >= self._span:
            times.popleft()
        while times and times[-1] > now:  # the clock has been set back
            times.pop()
        return times

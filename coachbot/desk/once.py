"""What is shown for a while and kept nowhere, such as invitation codes, for the person who made it."""

import secrets
from collections import OrderedDict
from datetime import datetime, timedelta

LIFE = timedelta(minutes=30)
MOST = 500


class Once:
    """Holds values in memory, each under a key that cannot be guessed, for whoever put it there."""

    def __init__(self) -> None:
        self._kept: OrderedDict[str, tuple[str, datetime, object]] = OrderedDict()

    def put(self, owner: str, value: object, now: datetime) -> str:
        """Keep a value. Returns its key."""
        key = secrets.token_urlsafe(16)
        self._kept[key] = (owner, now, value)
        while len(self._kept) > MOST:
            self._kept.popitem(last=False)
        return key

    def get(self, owner: str, key: str, now: datetime) -> object | None:
        """The value, for its owner and as long as it lives; else None."""
        kept = self._kept.get(key)
        if kept is None or kept[0] != owner or now - kept[1] >= LIFE:
            return None
        return kept[2]

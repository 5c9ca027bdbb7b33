"""What stands at the head of every page: open alerts, unread messages, and whether the service can do its work."""

from dataclasses import dataclass
from datetime import datetime

from coachbot.bootstrap import Coachbot
from coachbot.service.vitals import beating, reachable
from coachbot.settings import Settings
from coachbot.store import Transaction


@dataclass(frozen=True, slots=True)
class Head:
    """What every page says at its head."""

    alerts: int
    unread: int
    beating: bool
    reachable: bool


def head(tx: Transaction, coachbot: Coachbot, settings: Settings, now: datetime) -> Head:
    """Read it from the store."""
    return Head(
        alerts=len(tx.board.open_alerts()),
        unread=sum(tx.board.unread().values()),
        beating=beating(tx, settings, now),
        reachable=reachable(tx, coachbot.channels),
    )

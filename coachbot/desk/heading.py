"""What stands at the head of every page: open alerts, unread messages, and whether the service can do its work."""

from dataclasses import dataclass
from datetime import datetime

from coachbot.bootstrap import Coachbot
from coachbot.service.vitals import beating, reachable
from coachbot.settings import Settings
from coachbot.store import Transaction


@dataclass(frozen=True, slots=True)
class Head:
    """What every page says at its head; `worst` is the greatest level among the open alerts."""

    alerts: int
    worst: int
    unread: int
    beating: bool
    reachable: bool


def head(tx: Transaction, coachbot: Coachbot, settings: Settings, now: datetime) -> Head:
    """Read it from the store."""
    alerts = tx.board.open_alerts()
    return Head(
        alerts=len(alerts),
        worst=max((level for _, _, level in alerts), default=0),
        unread=sum(tx.board.unread().values()),
        beating=beating(tx, settings, now),
        reachable=reachable(tx, coachbot.channels),
    )

"""What stands at the head of every page: open alerts, unread messages, and whether the service can do its work."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from coachbot.bootstrap import Coachbot
from coachbot.settings import Settings
from coachbot.store import Transaction

ON_DUTY = ("on_call", "backup")

BEATS = 8
"""After how many beats without one the heartbeat counts as stopped; never under `LEAST`."""

LEAST = timedelta(minutes=2)


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
        reachable=reachable(tx, coachbot),
    )


def beating(tx: Transaction, settings: Settings, now: datetime) -> bool:
    """Whether a heartbeat was felt lately."""
    patience = max(LEAST, BEATS * timedelta(seconds=settings.number("BEAT_SECONDS")))
    return any(now - at <= patience for at in tx.clinic.beats().values())


def reachable(tx: Transaction, coachbot: Coachbot) -> bool:
    """Whether an alert would reach anybody: an active clinician on duty with a chat on a channel that is set up."""
    return any(one.active and one.duty in ON_DUTY and one.channel in coachbot.channels for one in tx.clinicians.all())

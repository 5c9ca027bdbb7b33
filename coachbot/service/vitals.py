"""How the service fares, over all its processes, as people and programs that watch over it are told."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from coachbot.coach.actions import Urgency
from coachbot.settings import Settings
from coachbot.store import Backlog, Transaction
from coachbot.triage import Level

ON_DUTY = ("on_call", "backup")

BEATS = 8
"""After how many beats without one the heartbeat counts as stopped; never under `LEAST`."""

LEAST = timedelta(minutes=2)

UNHEARD = timedelta(minutes=2)
"""For how long an alert may be on its way to the first clinician: longer than one try and the next."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Vitals:
    """The signs at one instant. `lines` has every channel that is set up, with when it was last up."""

    beats: Mapping[str, datetime]
    lines: Mapping[str, datetime | None]
    backlog: Mapping[Urgency, Backlog]
    alerts: Mapping[Level, Backlog]
    undelivered: int
    unreachable: int
    reachable: bool

    @property
    def beat(self) -> datetime | None:
        """When the heartbeat was last felt in any process."""
        return max(self.beats.values(), default=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Readiness:
    """Whether what alerts depend on works."""

    store: bool
    heartbeat: bool
    channels: bool
    somebody_reachable: bool

    def __bool__(self) -> bool:
        """All of it."""
        return self.store and self.heartbeat and self.channels and self.somebody_reachable


NOT_READY = Readiness(store=False, heartbeat=False, channels=False, somebody_reachable=False)
"""Without the store nothing works."""


def vitals(tx: Transaction, channels: Collection[str], now: datetime) -> Vitals:
    """Read the signs; `channels` are those that are set up."""
    lines = tx.signs.lines()
    return Vitals(
        beats=tx.clinic.beats(),
        lines={name: lines.get(name) for name in sorted(channels)},
        backlog=tx.outbox.unsent(),
        alerts=tx.signs.open_alerts(),
        undelivered=tx.signs.undelivered(now - UNHEARD),
        unreachable=tx.signs.unreachable(),
        reachable=reachable(tx, channels),
    )


def readiness(found: Vitals, settings: Settings, now: datetime) -> Readiness:
    """Judge signs that could be read, so that the store works."""
    patience = patience_of(settings)
    return Readiness(
        store=True,
        heartbeat=found.beat is not None and now - found.beat <= patience,
        channels=all(at is not None and now - at <= patience for at in found.lines.values()),
        somebody_reachable=found.reachable,
    )


def patience_of(settings: Settings) -> timedelta:
    """For how long no sign is none to worry about."""
    return max(LEAST, BEATS * timedelta(seconds=settings.number("BEAT_SECONDS")))


def beating(tx: Transaction, settings: Settings, now: datetime) -> bool:
    """Whether a heartbeat was felt lately."""
    return any(now - at <= patience_of(settings) for at in tx.clinic.beats().values())


def reachable(tx: Transaction, channels: Collection[str]) -> bool:
    """Whether an alert would reach anybody: an active clinician on duty with a chat on a channel that is set up."""
    return any(one.active and one.duty in ON_DUTY and one.channel in channels for one in tx.clinicians.all())

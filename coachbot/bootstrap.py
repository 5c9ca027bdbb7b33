"""The one place where everything is put together; tests and the rehearsal call the same function."""

import asyncio
import os
import socket
from collections.abc import Awaitable, Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from importlib import import_module
from pathlib import Path

import msgspec
from apscheduler.schedulers.asyncio import AsyncIOScheduler

from coachbot.channels.base import Channel
from coachbot.programme.positions import Position
from coachbot.programme.zones import zone
from coachbot.reading import causes, read, request
from coachbot.service.clinicians import Clinicians
from coachbot.service.deciding import Deciding
from coachbot.service.faults import Faults
from coachbot.service.files import Files
from coachbot.service.front_desk import FrontDesk
from coachbot.service.heartbeat import Heartbeat
from coachbot.service.inbox import Inbox
from coachbot.service.retention import Retention, erase_again
from coachbot.service.sending import Sender
from coachbot.service.signs import Signs
from coachbot.service.strangers import Strangers
from coachbot.service.writer import Writer
from coachbot.settings import Settings
from coachbot.store import Store, Tombstone
from coachbot.triage import assess
from coachbot.voice.catalogue import Catalogue
from coachbot.voice.vocabulary import LANGUAGES

Clock = Callable[[], datetime]


def system_clock() -> datetime:
    """The present instant. The only place that reads the machine's clock for the service."""
    return datetime.now(UTC)


class StaleZonesError(RuntimeError):
    """The `tzdata` package is older than this program needs."""


def check_zones() -> None:
    """Refuse stale time zones: Alberta stays at -06:00 from 2026 on (IANA 2026c), which older data does not know.

    Raises:
        StaleZonesError: saying what to do.
    """
    noon = datetime(2026, 12, 1, 12, tzinfo=zone("America/Edmonton"))
    offset = noon.utcoffset()
    if offset is None or offset.total_seconds() != -6 * 3600:
        raise StaleZonesError("the tzdata package is too old: install the version that deploy/requirements.txt pins")


@dataclass(frozen=True, slots=True)
class Coachbot:
    """A whole coachbot: store, channels, inbox, heartbeat, outbox."""

    store: Store
    catalogue: Catalogue
    deciding: Deciding
    front_desk: FrontDesk
    inbox: Inbox
    heartbeat: Heartbeat
    sender: Sender
    signs: Signs
    channels: Mapping[str, Channel]
    clock: Clock

    async def settle(self) -> None:
        """Do all that is due now and send all that waits: one step of a clock that is moved by hand."""
        while await self.heartbeat.beat() or await self.sender.pump():
            pass


def beating(*jobs: Callable[[], Awaitable[object]], seconds: float) -> AsyncIOScheduler:
    """The heartbeat and what goes with it, each as one in-memory job. A late beat is a late beat, never a lost one."""
    scheduler = AsyncIOScheduler(timezone=UTC)
    for job in jobs:
        add(scheduler, job, seconds)
    return scheduler


def add(scheduler: AsyncIOScheduler, job: Callable[[], Awaitable[object]], seconds: float) -> None:
    """Have a job done now, and again and again."""
    scheduler.add_job(
        job,
        "interval",
        seconds=seconds,
        next_run_time=datetime.now(UTC),
        misfire_grace_time=None,
        coalesce=True,
        max_instances=1,
    )


def build(
    store: Store,
    channels: Mapping[str, Channel],
    *,
    emergency_number: str,
    texts: Path | None = None,
    clock: Clock = system_clock,
) -> Coachbot:
    """Put a coachbot together over an open store and its channels.

    Raises:
        CatalogueError: if a text is missing or mis-formed.
        StaleZonesError: if the time zones are too old.
    """
    check_zones()
    warm_up()
    catalogue = Catalogue.load(overrides=texts)
    writer = Writer(catalogue)
    deciding = Deciding(writer)
    front_desk = FrontDesk(writer, emergency_number)
    faults = Faults(deciding, front_desk)
    sender = Sender(store, faults, Files(store), channels, clock)
    inbox = Inbox(
        store=store,
        deciding=deciding,
        faults=faults,
        strangers=Strangers(deciding, front_desk),
        clinicians=Clinicians(deciding, front_desk),
        clock=clock,
        woken=sender.wake,
    )
    heartbeat = Heartbeat(store, deciding, faults, clock, process_name(), inbox.take_overdue, sender.wake)
    signs = Signs(store, channels, clock)
    return Coachbot(store, catalogue, deciding, front_desk, inbox, heartbeat, sender, signs, channels, clock)


def warm_up() -> None:
    """Load what triage knows, so that no alarm has to wait for it."""
    for language in LANGUAGES:
        assess("", lang=language, sender="parent")


def read_ahead() -> None:
    """Load what other replies need, and what estimates a favourite: without this each is loaded when first used."""
    for language in LANGUAGES:
        request("", lang=language)
        causes("", lang=language)
        read("", lang=language, order=tuple(Position), asking="all")
    import_module("scipy.stats")


def process_name() -> str:
    """How this process is told from the others that beat."""
    return f"{socket.gethostname()}:{os.getpid()}"


def retain(store: Store, settings: Settings, lines: Iterable[str] = ()) -> int:
    """Erase what is past its time and what `lines`, proofs as JSON, say was erased before. Returns how many it was.

    Raises:
        ValueError: if a line is none.
    """
    deciding = Deciding(Writer(Catalogue.load(overrides=settings.texts)))
    stones = [msgspec.json.decode(line, type=Tombstone) for line in lines]
    again = store.run(lambda tx: erase_again(tx, deciding, stones, system_clock()))
    return again + asyncio.run(Retention(store, deciding, system_clock, settings.keep).run())

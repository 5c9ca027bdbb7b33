"""`coachbot serve`: the parts of the service as tasks of one process, or each as a process of its own."""

import asyncio
import gc
import signal
import socket
from collections.abc import Callable, Coroutine, Iterator, Mapping
from contextlib import contextmanager, suppress
from typing import Any

import structlog
import uvicorn
from starlette.routing import BaseRoute

from coachbot import logs
from coachbot.bootstrap import Coachbot, add, beating, build, read_ahead
from coachbot.channels.base import Channel
from coachbot.channels.sms import Account, SmsChannel
from coachbot.channels.telegram import TelegramChannel
from coachbot.desk.app import build_app
from coachbot.service.retention import Retention
from coachbot.service.watch import Watch
from coachbot.settings import SettingError, Settings
from coachbot.store import Store, StoreError

log = structlog.get_logger(__name__)

GRACE = 10
"""Seconds that what is in flight gets to end, once the process is told to stop."""

RETENTION = 3600.0
"""Seconds between two looks for what is past its time."""

PARTS = ("channels", "heartbeat", "outbox", "desk")

HEAD_START = 1.0
"""Seconds that the parts get to begin before anything is loaded that they can begin without."""


def serve(settings: Settings, only: tuple[str, ...]) -> None:
    """Run until told to stop (SIGTERM, SIGINT); what is in flight then is ended first.

    Raises:
        SettingError, StoreError: before anything has begun.
    """
    logs.configure(settings.get("LOG"))
    asyncio.run(_serve(settings, only or PARTS))


def channels(settings: Settings) -> Mapping[str, Channel]:
    """The channels that the settings name.

    Raises:
        SettingError: if there is none, or a webhook has no secret.
        ChannelError: if a channel cannot be as its settings say.
    """
    found: dict[str, Channel] = {}
    if token := settings.get("TELEGRAM_TOKEN"):
        url, secret = settings.get("TELEGRAM_WEBHOOK_URL"), settings.get("TELEGRAM_WEBHOOK_SECRET")
        if url and not secret:
            raise SettingError("COACHBOT_TELEGRAM_WEBHOOK_SECRET is not set: a webhook needs one")
        api_url = settings.get("TELEGRAM_API_URL") or None
        found["telegram"] = TelegramChannel(token, api_url=api_url, webhook_url=url or None, secret=secret or None)
    if settings.get("SMS_HOST"):
        found["sms"] = _sms(settings)
    if not found:
        raise SettingError("no channel is set up: set COACHBOT_TELEGRAM_TOKEN or COACHBOT_SMS_HOST")
    return found


def _sms(settings: Settings) -> SmsChannel:
    account = Account(
        host=settings.get("SMS_HOST"),
        port=int(settings.number("SMS_PORT")),
        system_id=settings.get("SMS_SYSTEM_ID"),
        password=settings.get("SMS_PASSWORD"),
        system_type=settings.get("SMS_SYSTEM_TYPE"),
        tls=settings.yes("SMS_TLS"),
    )
    return SmsChannel(
        account,
        number=settings.get("SMS_NUMBER"),
        region=settings.get("SMS_COUNTRY") or None,
        per_second=settings.number("SMS_PER_SECOND"),
        window=int(settings.number("SMS_WINDOW")),
    )


async def _serve(settings: Settings, parts: tuple[str, ...]) -> None:
    store = Store.open(settings.database_url, settings.get("KEY"))
    try:
        store.check()
        number = settings.get("EMERGENCY_NUMBER")
        coachbot = build(store, channels(settings), emergency_number=number, texts=settings.texts)
        stopped = asyncio.Event()
        for name in (signal.SIGTERM, signal.SIGINT):
            asyncio.get_running_loop().add_signal_handler(name, stopped.set)
        log.info("started", parts=list(parts))
        try:
            await _run(coachbot, settings, parts, stopped)
        finally:
            # Only now: what was in flight went out through them.
            for channel in coachbot.channels.values():
                await channel.stop()
        log.info("stopped")
    finally:
        store.close()


async def _run(coachbot: Coachbot, settings: Settings, parts: tuple[str, ...], stopped: asyncio.Event) -> None:
    try:
        async with asyncio.TaskGroup() as group:
            for part in parts:
                group.create_task(_PARTS[part](coachbot, settings, stopped), name=part)
            group.create_task(_load_the_rest(stopped), name="rest")
            group.create_task(_signs(coachbot, settings, stopped), name="signs")
    except ExceptionGroup as failed:
        # One part failed and took the others down with it: its own message is what helps.
        raise failed.exceptions[0] from None


async def _load_the_rest(stopped: asyncio.Event) -> None:
    """What no alarm needs. After it, garbage is looked for again, but only among what is made from then on."""
    with suppress(TimeoutError):
        await asyncio.wait_for(stopped.wait(), HEAD_START)
        return
    await asyncio.to_thread(read_ahead)
    gc.freeze()
    gc.enable()


async def _signs(coachbot: Coachbot, settings: Settings, stopped: asyncio.Event) -> None:
    """Whatever parts this process has, tell the store how it fares; once more when all is done."""
    while True:
        await _give_signs(coachbot)
        if stopped.is_set():
            return
        with suppress(TimeoutError):
            await asyncio.wait_for(stopped.wait(), settings.number("BEAT_SECONDS"))


async def _give_signs(coachbot: Coachbot) -> None:
    try:
        await coachbot.signs.give()
    except StoreError:  # a database that is away for a moment must not end the process
        log.exception("signs_not_kept")


async def _channels(coachbot: Coachbot, _: Settings, stopped: asyncio.Event) -> None:
    for channel in coachbot.channels.values():
        await channel.start(coachbot.inbox.receive, coachbot.sender.report)
    await _give_signs(coachbot)
    await stopped.wait()


async def _heartbeat(coachbot: Coachbot, settings: Settings, stopped: asyncio.Event) -> None:
    retention = Retention(coachbot.store, coachbot.deciding, coachbot.clock, settings.keep)
    watch = Watch(coachbot.store, settings, coachbot.channels, coachbot.clock)
    scheduler = beating(coachbot.heartbeat.beat, watch.look, seconds=settings.number("BEAT_SECONDS"))
    add(scheduler, retention.run, RETENTION)
    scheduler.start()
    await stopped.wait()
    scheduler.shutdown(wait=False)
    await watch.close()


async def _outbox(coachbot: Coachbot, _: Settings, stopped: asyncio.Event) -> None:
    """Send until stopped. What is under way when its grace ends is left to the next start, as of unknown ending."""
    try:
        async with asyncio.timeout(None) as limit:
            closing = asyncio.create_task(_close(limit, stopped))
            try:
                await coachbot.sender.run(stopped)
            finally:
                closing.cancel()
    except TimeoutError:
        log.warning("sends_broken_off")


async def _close(limit: asyncio.Timeout, stopped: asyncio.Event) -> None:
    await stopped.wait()
    limit.reschedule(asyncio.get_running_loop().time() + GRACE)


async def _desk(coachbot: Coachbot, settings: Settings, stopped: asyncio.Event) -> None:
    posts = [route for channel in coachbot.channels.values() for route in _routes(channel, coachbot)]
    app = build_app(coachbot, settings, posts)
    config = uvicorn.Config(app, log_config=None, access_log=False, timeout_graceful_shutdown=GRACE)
    server = _Server(config)
    with _listening(settings.get("DESK_HOST"), int(settings.number("DESK_PORT"))) as door:
        serving = asyncio.create_task(server.serve(sockets=[door]))
        await stopped.wait()
        server.should_exit = True
        await serving


def _listening(host: str, port: int) -> socket.socket:
    try:
        return socket.create_server((host, port), family=socket.AF_INET6 if ":" in host else socket.AF_INET)
    except OSError as error:
        where = f"{host}:{port} ({error.strerror})"
        raise SettingError(
            f"the desk cannot listen on {where}: change COACHBOT_DESK_HOST or COACHBOT_DESK_PORT"
        ) from error


def _routes(channel: Channel, coachbot: Coachbot) -> list[BaseRoute]:
    """Where a channel's other side posts to, for one that is not polled."""
    routes = getattr(channel, "routes", None)
    return list(routes(coachbot.inbox.receive)) if routes else []


class _Server(uvicorn.Server):
    """Leaves the process's signals to us: one of them stops all parts, not just this one."""

    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        yield


_PARTS: Mapping[str, Callable[[Coachbot, Settings, asyncio.Event], Coroutine[Any, Any, None]]] = {
    "channels": _channels,
    "heartbeat": _heartbeat,
    "outbox": _outbox,
    "desk": _desk,
}

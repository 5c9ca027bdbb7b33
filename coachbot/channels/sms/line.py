"""The line to an SMSC: bound, watched, and bound again when it breaks."""

import asyncio
import ssl
from contextlib import suppress
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

import structlog

from coachbot.channels.base import ChannelError
from coachbot.channels.sms import endings
from coachbot.channels.sms.session import ANSWER, Session, Take

log = structlog.get_logger(__name__)

PAUSES = (timedelta(seconds=1), timedelta(seconds=30))
"""The first and the longest pause before binding again; doubled in between."""

VERSION = 0x34
LONGEST = {"system_id": 15, "password": 8, "system_type": 12}
"""The most signs of each (SMPP 3.4, section 4.1.5, less the closing NUL)."""

LOST = (OSError, TimeoutError)


class RefusedError(Exception):
    """The SMSC answered the bind with this status."""

    def __init__(self, status: int) -> None:
        self.status = status
        super().__init__(f"status 0x{status:02X}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """Where the SMSC is and who we are there. Raises ChannelError if a name is longer than SMPP allows."""

    host: str
    port: int
    system_id: str
    password: str
    system_type: str = ""
    tls: bool = False

    def __post_init__(self) -> None:
        for name, most in LONGEST.items():
            if len(getattr(self, name)) > most:
                raise ChannelError(f"COACHBOT_SMS_{name.upper()} is longer than the {most} signs that SMPP allows")


class Line:
    """A session that is kept up from `begin` to `end`; `session` is None while there is none."""

    def __init__(self, account: Account, take: Take) -> None:
        self.session: Session | None = None
        self.listening = False
        self._account = account
        self._take = take
        self._task: asyncio.Task[None] | None = None

    async def begin(self, *, listening: bool) -> None:
        """Bind, and keep bound: to send only, or (`listening`) to hear too. An SMSC out of reach is waited out.

        Raises:
            ChannelError: if the SMSC does not know us.
        """
        if self._task and not self._task.done() and (self.listening or not listening):
            return
        await self.end()
        self.listening = listening
        self._task = asyncio.create_task(self._keep_up(bound := asyncio.Event()), name="sms")
        first = asyncio.create_task(bound.wait())
        await asyncio.wait([self._task, first], return_when=asyncio.FIRST_COMPLETED)
        first.cancel()
        if self._task.done():
            self._task.result()

    async def end(self) -> None:
        """Let what is in flight end, and hang up."""
        task, self._task = self._task, None
        if self.session:
            await self.session.part()
        if task:
            task.cancel()
            with suppress(asyncio.CancelledError, ChannelError):
                await task

    async def _keep_up(self, tried: asyncio.Event) -> None:
        pause = PAUSES[0]
        while True:
            try:
                session = await self._bound()
                pause, self.session = PAUSES[0], session
                tried.set()
                await session.run()
            except RefusedError as error:
                self._refused(error, first=not tried.is_set())
            except LOST as error:
                log.warning("sms_line_lost", error=type(error).__name__)
            finally:
                self.session = None
            tried.set()
            await asyncio.sleep(pause.total_seconds())
            pause = min(2 * pause, PAUSES[1])

    def _refused(self, error: RefusedError, *, first: bool) -> None:
        log.error("sms_bind_refused", status=error.status)
        if first and error.status in endings.REFUSED:
            raise ChannelError(
                "the SMSC refuses COACHBOT_SMS_SYSTEM_ID or COACHBOT_SMS_PASSWORD: set them as the provider gave them"
            )

    async def _bound(self) -> Session:
        account = self._account
        context = ssl.create_default_context() if account.tls else None
        async with asyncio.timeout(ANSWER.total_seconds()):
            reader, writer = await asyncio.open_connection(account.host, account.port, ssl=context)
        session = Session(reader, writer, self._take)
        fields: dict[str, Any] = {name: getattr(account, name) for name in LONGEST}
        try:
            command = "bind_transceiver" if self.listening else "bind_transmitter"
            status = await session.bind(command, interface_version=VERSION, **fields)
            if status != endings.OK:
                raise RefusedError(status)
        except BaseException:
            session.close()
            raise
        log.info("sms_bound", listening=self.listening)
        return session

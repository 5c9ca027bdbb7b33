"""The SMS channel: one line to an SMSC, one try a message out, replies and receipts in."""

import asyncio
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

import structlog

from coachbot.channels.base import ChannelError, Ending, Hear, Outgoing, Receipt, Receive, Report
from coachbot.channels.pace import Pace
from coachbot.channels.sms import receipts
from coachbot.channels.sms.endings import OK, SETTING_WAIT, THROTTLED, ending
from coachbot.channels.sms.incoming import HEADED, NAME, incoming, sender
from coachbot.channels.sms.line import LOST, Account, Line
from coachbot.channels.sms.numbers import e164, typed
from coachbot.channels.sms.pdus import text
from coachbot.channels.sms.segments import Segment, UnsendableError, segments

log = structlog.get_logger(__name__)

SEND_LIMIT = timedelta(seconds=50)
"""The longest that one message may take with all its segments; the outbox's lease is longer."""

THROTTLE = timedelta(seconds=2)
"""For how long nothing is sent once the SMSC has said that it is too fast."""

PATIENCE = (timedelta(milliseconds=200), timedelta(seconds=30))
"""A receipt may come before the message that it is about has been written down: how often and for how long to look."""

WITH_RECEIPT = 0x01
"""`registered_delivery`: tell whether it arrived or not."""


class SmsChannel:
    """Text messages. Bound to send and hear once started; to send only where another process hears."""

    name = NAME

    def __init__(
        self,
        account: Account,
        *,
        number: str,
        region: str | None = None,
        per_second: float = 10,
        window: int = 10,
        clock: Callable[[], datetime] = lambda: datetime.now(UTC),
    ) -> None:
        """`number` is our own, which families write to; `region` the country whose national numbers are understood.

        At most `window` segments are in flight at once, and `per_second` go out.

        Raises:
            ChannelError: if nobody can answer to `number`.
        """
        own = typed(e164(number, region) or number.strip())
        if own is None:
            raise ChannelError("COACHBOT_SMS_NUMBER must be the number or short code that families write to")
        self.pace: Pace = Pace(per_second=per_second, burst=max(1, round(per_second)), per_address=timedelta(0))
        self._own = own
        self._region = region
        self._window = asyncio.Semaphore(window)
        self._line = Line(account, self._take)
        self._clock = clock
        self._receive: Receive | None = None
        self._hear: Hear | None = None

    def canonical(self, address: str) -> str | None:
        """A telephone number in E.164."""
        return e164(address, self._region)

    @property
    def up(self) -> bool:
        """Whether the line is bound to hear."""
        return self._line.listening and self._line.session is not None

    async def start(self, receive: Receive, hear: Hear | None = None, /) -> None:
        """Begin to take messages in. That the SMSC is out of reach is waited out, that it does not know us is not.

        Raises:
            ChannelError: if the SMSC refuses name or password.
        """
        self._receive, self._hear = receive, hear
        await self._line.begin(listening=True)

    async def stop(self) -> None:
        """Hang up, once what is in flight has ended."""
        await self._line.end()

    async def send(self, message: Outgoing) -> Receipt:
        """Try once to send, segment by segment."""
        to = typed(e164(message.address, self._region) or message.address)
        try:
            pieces = segments(message.text)
        except UnsendableError as error:
            log.error("sms_unsendable", reason=str(error))  # noqa: TRY400 - a trace would tell no more
            return Receipt(ending=Ending.NEVER)
        if to is None:
            return Receipt(ending=Ending.GONE)
        names: list[str] = []
        try:
            async with asyncio.timeout(SEND_LIMIT.total_seconds()):
                await self._line.begin(listening=self._receive is not None)
                return await self._send(to, pieces, message.expires, names)
        except TimeoutError:
            return Receipt(ending=Ending.UNKNOWN if names else Ending.LATER)
        except ChannelError:
            return Receipt(ending=Ending.LATER, wait=SETTING_WAIT)

    async def _send(
        self, to: tuple[int, int, str], pieces: tuple[Segment, ...], expires: datetime | None, names: list[str]
    ) -> Receipt:
        fields = self._fields(to, expires)
        for number, piece in enumerate(pieces):
            if number:
                await self._turn(to[2])
            failed = await self._submit(piece, fields, names)
            if failed:
                return failed
        return Receipt(ending=Ending.SENT, channel_id=names[0], names=tuple(names))

    async def _turn(self, address: str) -> None:
        """Wait until another segment may go: the outbox has asked for the first only."""
        wait = self.pace.ask(address, self._clock())
        if wait:
            await asyncio.sleep(wait.total_seconds())
            await self._turn(address)

    async def _submit(self, piece: Segment, fields: dict[str, Any], names: list[str]) -> Receipt | None:
        """Send one segment and keep its name; None unless the whole message has failed with it.

        Where the SMSC takes no more halfway, all of it is sent again later: no phone shows what lacks a piece.
        """
        async with self._window:
            if self._line.session is None:
                return Receipt(ending=Ending.LATER)
            coded = {"short_message": piece.data, "data_coding": piece.coding, "esm_class": HEADED * piece.headed}
            try:
                answer = await self._line.session.request("submit_sm", **fields, **coded)
            except LOST as error:
                log.warning("sms_unanswered", error=type(error).__name__)
                return Receipt(ending=Ending.UNKNOWN)
        if answer.status == OK and answer.command == "submit_sm_resp":
            names.append(text(answer.message_id))
            return None
        log.info("sms_send_failed", status=answer.status)
        if answer.status == THROTTLED:
            self.pace.hold(THROTTLE, self._clock())
        return ending(answer.status)

    def _fields(self, to: tuple[int, int, str], expires: datetime | None) -> dict[str, Any]:
        fields: dict[str, Any] = {"registered_delivery": WITH_RECEIPT}
        fields["source_addr_ton"], fields["source_addr_npi"], fields["source_addr"] = self._own
        fields["dest_addr_ton"], fields["dest_addr_npi"], fields["destination_addr"] = to
        if expires:
            fields["validity_period"] = f"{expires.astimezone(UTC):%y%m%d%H%M%S}000+"
        return fields

    async def _take(self, pdu: Any) -> bool:
        if receipts.is_receipt(pdu):
            return await self._report(pdu)
        if self._receive is None:
            return False
        await self._receive(incoming(pdu, self._clock(), self._region))
        return True

    async def _report(self, pdu: Any) -> bool:
        """Pass a receipt on. One that is about nothing we know is let go in the end: it would come for ever."""
        read = receipts.read(pdu)
        if read is None:
            log.info("sms_receipt_without_news")
            return True
        names, how = read
        report = Report(channel=NAME, names=names, address=sender(pdu, self._region), ending=how)
        for _ in range(round(PATIENCE[1] / PATIENCE[0])):
            if self._hear is None or await self._hear(report):
                return self._hear is not None
            await asyncio.sleep(PATIENCE[0].total_seconds())
        log.warning("sms_receipt_unknown", ending=how)
        return True

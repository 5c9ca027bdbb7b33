"""One bound connection to an SMSC: requests matched to their answers, what comes in answered once it is kept."""

import asyncio
from asyncio import StreamReader, StreamWriter
from collections.abc import Awaitable, Callable
from datetime import timedelta
from typing import Any

import structlog
from smpplib import smpp
from smpplib.client import SimpleSequenceGenerator
from smpplib.exceptions import PDUError, UnknownCommandError

from coachbot.channels.sms import endings, receipts
from coachbot.channels.sms.pdus import parsed

log = structlog.get_logger(__name__)

ANSWER = timedelta(seconds=10)
"""How long an answer may take; after that nobody can tell what became of the request."""

ENQUIRY = timedelta(seconds=30)
"""How often the SMSC is asked whether it is still there."""

SIZES = range(16, 70_000)
"""Octets of a PDU: its header at least, a message of 64 KiB at most."""

UNKNOWN_COMMAND, SYNTAX = 0x03, 0x02

Take = Callable[[Any], Awaitable[bool]]
"""Keeps what a deliver_sm brings. False: not now, it is to come again."""


class Session:
    """Requests go out at any time by `request`; `run` hears until the connection ends."""

    def __init__(self, reader: StreamReader, writer: StreamWriter, take: Take) -> None:
        self._reader = reader
        self._writer = writer
        self._take = take
        self._numbers = SimpleSequenceGenerator()
        self._waiting: dict[int, asyncio.Future[Any]] = {}
        self._messages: asyncio.Queue[Any] = asyncio.Queue()
        self._reports: set[asyncio.Task[None]] = set()

    async def request(self, command: str, **fields: object) -> Any:
        """Send a request and wait for its answer, a PDU whatever its status.

        Raises:
            ConnectionError: the connection ended before the answer came.
            TimeoutError: no answer came.
        """
        pdu = smpp.make_pdu(command, client=self._numbers, **fields)
        answer = asyncio.get_running_loop().create_future()
        self._waiting[pdu.sequence] = answer
        try:
            self._writer.write(pdu.generate())
            return await asyncio.wait_for(answer, ANSWER.total_seconds())
        finally:
            self._waiting.pop(pdu.sequence, None)

    async def bind(self, command: str, **fields: object) -> int:
        """Bind, before `run`. Returns the status of the answer.

        Raises:
            ConnectionError, TimeoutError: no answer came.
        """
        hearing = asyncio.create_task(self._hear_one())
        try:
            answer = await self.request(command, **fields)
        finally:
            hearing.cancel()
        return int(answer.status)

    async def run(self) -> None:
        """Hear, and ask from time to time whether anybody is there, until the connection ends.

        Raises:
            ConnectionError, TimeoutError: how it ended.
        """
        work = [asyncio.create_task(one()) for one in (self._hear, self._keep, self._enquire)]
        try:
            done, _ = await asyncio.wait(work, return_when=asyncio.FIRST_COMPLETED)
            for task in done:
                task.result()
        finally:
            for task in (*work, *self._reports):
                task.cancel()
            self.close()

    async def part(self) -> None:
        """Let what is in flight come to its end, then take leave."""
        if self._waiting:
            await asyncio.wait(self._waiting.values(), timeout=ANSWER.total_seconds())
        self._send("unbind", self._numbers.next_sequence())

    def close(self) -> None:
        """Cut the connection; what was in flight ends in a ConnectionError."""
        self._writer.close()
        for answer in self._waiting.values():
            if not answer.done():
                answer.set_exception(ConnectionError("the connection to the SMSC ended"))

    async def _hear(self) -> None:
        while True:
            await self._hear_one()

    async def _hear_one(self) -> None:
        size = await self._read(4)
        length = int.from_bytes(size)
        if length not in SIZES:
            raise ConnectionError(f"the SMSC sent a PDU of {length} octets")
        raw = size + await self._read(length - 4)
        try:
            self._heard(parsed(raw, self._numbers))
        except Exception as error:  # noqa: BLE001 - the library raises what it likes over what it cannot read
            log.warning("sms_pdu_unreadable", error=type(error).__name__, command=raw[4:8].hex())
            unknown = isinstance(error, UnknownCommandError | PDUError)
            if not raw[4] & 0x80:
                self._send("generic_nack", int.from_bytes(raw[12:16]), UNKNOWN_COMMAND if unknown else SYNTAX)

    async def _read(self, octets: int) -> bytes:
        try:
            return await self._reader.readexactly(octets)
        except asyncio.IncompleteReadError as error:
            raise ConnectionError("the SMSC hung up") from error

    def _heard(self, pdu: Any) -> None:
        if pdu.is_response():
            answer = self._waiting.get(pdu.sequence)
            if answer and not answer.done():
                answer.set_result(pdu)
        elif pdu.command == "deliver_sm":
            self._delivered(pdu)
        elif pdu.command == "enquire_link":
            self._send("enquire_link_resp", pdu.sequence)
        elif pdu.command == "unbind":
            self._send("unbind_resp", pdu.sequence)
            self._writer.close()
        else:
            self._send("generic_nack", pdu.sequence, UNKNOWN_COMMAND)

    def _delivered(self, pdu: Any) -> None:
        """Messages are kept one after the other, reports each by itself: one that waits holds up nobody's words."""
        if receipts.is_receipt(pdu):
            task = asyncio.create_task(self._keep_one(pdu))
            self._reports.add(task)
            task.add_done_callback(self._reports.discard)
        else:
            self._messages.put_nowait(pdu)

    async def _keep(self) -> None:
        while True:
            await self._keep_one(await self._messages.get())

    async def _keep_one(self, pdu: Any) -> None:
        try:
            kept = await self._take(pdu)
        except Exception as error:  # noqa: BLE001 - whatever it is, nothing is confirmed and it comes again
            log.warning("sms_not_kept", error=type(error).__name__)
            kept = False
        self._send("deliver_sm_resp", pdu.sequence, endings.OK if kept else endings.TEMPORARY_FAULT)

    async def _enquire(self) -> None:
        while True:
            await asyncio.sleep(ENQUIRY.total_seconds())
            await self.request("enquire_link")

    def _send(self, command: str, number: int, status: int = endings.OK) -> None:
        pdu = smpp.make_pdu(command, client=self._numbers, sequence=number, status=status)
        pdu.sequence = number
        if not self._writer.is_closing():
            self._writer.write(pdu.generate())

"""Phones in memory: the rehearsal's page and the tests write and press on them, and read what they were sent."""

from collections import defaultdict, deque
from collections.abc import Callable
from datetime import datetime
from uuid import uuid4

from coachbot.channels.base import ChannelError, Ending, Hear, Incoming, Outgoing, Receipt, Receive
from coachbot.channels.pace import Pace


class RehearsalChannel:
    """A channel with no other side. `clock` dates what is written; `name` lets it stand in for another channel."""

    pace: Pace | None = None

    def __init__(self, clock: Callable[[], datetime], *, name: str = "rehearsal") -> None:
        self.name = name
        self.phones: defaultdict[str, list[Outgoing]] = defaultdict(list)
        """What arrived at each address, oldest first."""
        self._clock = clock
        self._receive: Receive | None = None
        self._failures: deque[Receipt] = deque()

    def canonical(self, address: str) -> str | None:
        """Any word will do."""
        return address or None

    @property
    def up(self) -> bool:
        """Whether the phones are in use."""
        return self._receive is not None

    async def start(self, receive: Receive, _hear: Hear | None = None, /) -> None:
        """Let the phones be used."""
        self._receive = receive

    async def send(self, message: Outgoing) -> Receipt:
        """Deliver, unless told to fail. An unknown ending means that it arrived and nobody can tell."""
        receipt = self._failures.popleft() if self._failures else Receipt(ending=Ending.SENT, channel_id=uuid4().hex)
        if receipt.ending in (Ending.SENT, Ending.UNKNOWN):
            self.phones[message.address].append(message)
        return receipt

    async def stop(self) -> None:
        """Take nothing more."""
        self._receive = None

    async def write(
        self, address: str, text: str, *, channel_id: str | None = None, language: str | None = None
    ) -> None:
        """Somebody writes; the same `channel_id` again is the same message delivered twice.

        Raises:
            ChannelError: if the channel has not been started.
        """
        await self._take(address, channel_id, text=text, language=language)

    async def press(self, address: str, data: str, *, channel_id: str | None = None) -> None:
        """Somebody presses a button, which may be long gone from the phone.

        Raises:
            ChannelError: if the channel has not been started.
        """
        await self._take(address, channel_id, button=data)

    def fail(self, *receipts: Receipt) -> None:
        """Let the next sends end like this, one after the other."""
        self._failures.extend(receipts)

    async def _take(
        self,
        address: str,
        channel_id: str | None,
        *,
        text: str | None = None,
        button: str | None = None,
        language: str | None = None,
    ) -> None:
        if self._receive is None:
            raise ChannelError("the phones are not in use yet: start the channel first")
        incoming = Incoming(
            channel=self.name,
            channel_id=channel_id or uuid4().hex,
            address=address,
            at=self._clock(),
            text=text,
            button=button,
            language=language,
        )
        await self._receive(incoming)

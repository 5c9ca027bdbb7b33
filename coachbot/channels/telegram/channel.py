"""The Telegram channel: long polling or a webhook in, one try a message out."""

import asyncio
from collections.abc import Callable
from contextlib import suppress
from datetime import UTC, datetime, timedelta

import structlog
from starlette.routing import Route
from telegram import LinkPreviewOptions, Message
from telegram.error import InvalidToken, RetryAfter, TelegramError
from telegram.helpers import create_deep_linked_url

from coachbot.channels.base import ChannelError, Ending, Hear, Outgoing, Receipt, Receive
from coachbot.channels.pace import Pace
from coachbot.channels.telegram.bot import make_bot
from coachbot.channels.telegram.endings import ending, wait
from coachbot.channels.telegram.listening import Listener
from coachbot.channels.telegram.parts import Part, UnsendableError, parts
from coachbot.channels.telegram.updates import NAME
from coachbot.channels.telegram.webhook import Webhook

log = structlog.get_logger(__name__)

SEND_LIMIT = timedelta(seconds=50)
"""The longest that one message may take with all its calls; the outbox's lease is longer."""


class TelegramChannel:
    """A bot. It hears only what people write to it alone, never what is said in groups."""

    name = NAME

    def __init__(
        self,
        token: str,
        *,
        api_url: str | None = None,
        webhook_url: str | None = None,
        secret: str | None = None,
        clock: Callable[[], datetime] = lambda: datetime.now(UTC),
    ) -> None:
        """`api_url` points at another Bot API server. With `webhook_url` and `secret` updates are posted there.

        Raises:
            ChannelError: if the token is empty, or the webhook's address or secret cannot be used.
        """
        if not token.strip():
            raise ChannelError("COACHBOT_TELEGRAM_TOKEN is empty: set it to the bot's token")
        # Telegram's limits are about 30 messages a second in all and one a second to a chat (Bot API, FAQ).
        self.pace: Pace = Pace(per_second=25, burst=5, per_address=timedelta(seconds=1))
        self._bot = make_bot(token.strip(), api_url)
        self._webhook = Webhook(webhook_url, secret or "") if webhook_url else None
        self._clock = clock
        self._task: asyncio.Task[None] | None = None
        self._username: str | None = None
        self._listener: Listener | None = None

    @property
    def up(self) -> bool:
        """Whether Telegram answered when it was last asked for updates, or to post them."""
        return self._listener is not None and self._listener.heard

    async def start(self, receive: Receive, _hear: Hear | None = None, /) -> None:
        """Begin to take messages in. That Telegram is out of reach is waited out, that it refuses the token is not.

        Raises:
            ChannelError: if Telegram refuses the token.
        """
        try:
            await self._bot.initialize()
            self._username = self._bot.username
        except InvalidToken:
            # Not chained: the library's own message holds the token.
            raise ChannelError("Telegram refuses COACHBOT_TELEGRAM_TOKEN: set it to the bot's current token") from None
        except TelegramError as error:
            log.warning("telegram_unreachable", error=type(error).__name__)
        self._listener = self._hearing(receive)
        work = self._listener.ask_for_posts(self._webhook) if self._webhook else self._listener.poll()
        self._task = asyncio.create_task(work, name="telegram")

    async def stop(self) -> None:
        """Stop taking messages in and close the lines; what was not confirmed comes again and is recognised."""
        if self._task:
            self._task.cancel()
            with suppress(asyncio.CancelledError):
                await self._task
        self._listener = None
        await self._bot.shutdown()
        await self._bot.request.shutdown()  # which the bot leaves open if it has sent but was never started

    def canonical(self, address: str) -> str | None:
        """A chat's own number: a bot cannot write to a name."""
        chat = address.strip()
        return chat if chat.isascii() and chat.isdigit() else None

    def routes(self, receive: Receive) -> list[Route]:
        """What a web server must serve so that updates can be posted; nothing while polling."""
        return [self._webhook.route(self._bot, self._hearing(receive).take)] if self._webhook else []

    def invite_link(self, code: str) -> str | None:
        """The link that opens a chat with the bot and sends it the code; None while the bot's name is not known.

        Raises:
            ValueError: if the code is none that a link can carry (64 of A-Z, a-z, 0-9, _ and -).
        """
        return create_deep_linked_url(self._username, code) if self._username else None

    async def send(self, message: Outgoing) -> Receipt:
        """Try once to send. `endings` says what a failure means; a message of several calls may end halfway."""
        try:
            calls = parts(message)
        except UnsendableError as error:
            log.error("telegram_unsendable", reason=str(error))  # noqa: TRY400 - a trace would tell no more
            return Receipt(ending=Ending.NEVER)
        try:
            async with asyncio.timeout(SEND_LIMIT.total_seconds()):
                return await self._send(message.address, calls)
        except TimeoutError:
            return Receipt(ending=Ending.UNKNOWN)

    def _hearing(self, receive: Receive) -> Listener:
        return Listener(self._bot, receive, self.pace, self._clock)

    async def _send(self, address: str, calls: tuple[Part, ...]) -> Receipt:
        said, sent = False, None
        for part in calls:
            try:
                sent = await self._call(address, part)
            except TelegramError as error:
                return self._failed(error, said=said)
            said = said or bool(part.text)
        return Receipt(ending=Ending.SENT, channel_id=str(sent.message_id) if sent else None)

    def _failed(self, error: TelegramError, *, said: bool) -> Receipt:
        """How the message ended; if words of it have gone out before, they must not go out again."""
        receipt = ending(error)
        log.info("telegram_send_failed", error=type(error).__name__, ending=receipt.ending)
        if isinstance(error, RetryAfter):
            self.pace.hold(wait(error), self._clock())
        return Receipt(ending=Ending.UNKNOWN) if said and receipt.ending is Ending.LATER else receipt

    async def _call(self, address: str, part: Part) -> Message:
        text, markup = part.text or None, part.keyboard
        if part.file is None:
            preview = LinkPreviewOptions(is_disabled=True)
            return await self._bot.send_message(address, part.text, reply_markup=markup, link_preview_options=preview)
        name, data = part.file.name, part.file.data
        if part.file.media.startswith("image/"):
            return await self._bot.send_photo(address, data, caption=text, reply_markup=markup, filename=name)
        return await self._bot.send_document(address, data, caption=text, reply_markup=markup, filename=name)

"""Takes updates in, asked for or posted, each confirmed only once it has been kept."""

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta

import structlog
from telegram import Bot, CallbackQuery, Message, Update
from telegram.error import RetryAfter, TelegramError

from coachbot.channels.base import Receive, left_over
from coachbot.channels.pace import Pace
from coachbot.channels.telegram import updates
from coachbot.channels.telegram.endings import wait
from coachbot.channels.telegram.parts import keyboard
from coachbot.channels.telegram.webhook import Webhook

log = structlog.get_logger(__name__)

HELD = timedelta(seconds=50)
"""How long Telegram holds a question for updates when there are none."""

PAUSES = (timedelta(seconds=1), timedelta(seconds=30))
"""The first and the longest pause after something went wrong; doubled in between."""


@dataclass(slots=True)
class Listener:
    """Hears what people write to the bot. `clock` dates what Telegram does not; `heard` is whether Telegram answers."""

    bot: Bot
    receive: Receive
    pace: Pace
    clock: Callable[[], datetime]
    heard: bool = field(default=False, init=False)

    async def poll(self) -> None:
        """Ask for updates, for ever. Asking from a number on tells Telegram that the updates before it were taken."""
        await self._insist(self.bot.delete_webhook)
        offset, pause = 0, PAUSES[0]
        while True:
            try:
                for update in await self.bot.get_updates(offset, timeout=HELD, allowed_updates=updates.KINDS):
                    await self.take(update)
                    offset = update.update_id + 1
                self.heard, pause = True, PAUSES[0]
            except Exception as error:  # noqa: BLE001 - whatever it is, nothing is confirmed and the next try may do
                pause = await self._rest(error, pause)

    async def ask_for_posts(self, webhook: Webhook) -> None:
        """Have updates posted; one at a time, which keeps each person's messages in order."""

        async def announce() -> object:
            return await self.bot.set_webhook(
                webhook.url, secret_token=webhook.secret, allowed_updates=updates.KINDS, max_connections=1
            )

        await self._insist(announce)

    async def take(self, update: Update) -> None:
        """Have one update kept, and answer its press. Raises what `receive` raises."""
        incoming = updates.incoming(update, self.clock())
        if incoming is None:
            log.info("telegram_update_ignored")
            return
        await self.receive(incoming)
        if update.callback_query:
            await self._acknowledge(update.callback_query, incoming.button or "")

    async def _acknowledge(self, query: CallbackQuery, pressed: str) -> None:
        """Show that a press was taken: its label for a moment, and the answered question's buttons gone.

        Only a courtesy: the press is kept already, so a failure here changes nothing.
        """
        rows = updates.shown(query)
        rest = left_over(rows, pressed)
        try:
            await self.bot.answer_callback_query(query.id, text=updates.label(rows, pressed))
            if isinstance(query.message, Message) and rest != rows:
                address, number = query.message.chat.id, query.message.message_id
                await self.bot.edit_message_reply_markup(address, number, reply_markup=keyboard(rest))
        except TelegramError as error:
            log.info("telegram_press_unanswered", error=type(error).__name__)
            if isinstance(error, RetryAfter):
                self.pace.hold(wait(error), self.clock())

    async def _insist(self, call: Callable[[], Awaitable[object]]) -> None:
        pause = PAUSES[0]
        while True:
            try:
                await call()
            except TelegramError as error:
                pause = await self._rest(error, pause)
            else:
                self.heard = True
                return

    async def _rest(self, error: Exception, pause: timedelta) -> timedelta:
        """Pause after a failure, as long as Telegram says if it does. Returns how long to pause after the next."""
        self.heard = False
        log.warning("telegram_unheard", error=type(error).__name__)
        told = wait(error) if isinstance(error, RetryAfter) else pause
        await asyncio.sleep(told.total_seconds())
        return min(2 * pause, PAUSES[1])

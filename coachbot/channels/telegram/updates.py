"""Telegram's updates as messages that came."""

from datetime import datetime

from telegram import CallbackQuery, Message, Update
from telegram.constants import ChatType, UpdateType
from telegram.helpers import effective_message_type

from coachbot.channels.base import Incoming, Rows

NAME = "telegram"

KINDS = [UpdateType.MESSAGE, UpdateType.EDITED_MESSAGE, UpdateType.CALLBACK_QUERY]
"""The updates to ask for."""


def incoming(update: Update, now: datetime) -> Incoming | None:
    """What an update says, or None for one that no person wrote in a chat of their own with the bot.

    Its `channel_id` is made of the update's own number, which Telegram repeats with every delivery, and of the date,
    since after a quiet week the numbers start anywhere; never of the chat's number, which is an address.
    """
    if update.callback_query:
        return _press(update.callback_query, now)
    message = update.message or update.edited_message
    if message is None or message.chat.type != ChatType.PRIVATE:
        return None
    at = message.edit_date or message.date
    return Incoming(
        channel=NAME,
        channel_id=f"{update.update_id}-{at:%Y%m%d%H%M%S}",
        address=str(message.chat.id),
        at=at,
        text=_words(message),
        language=message.from_user.language_code if message.from_user else None,
    )


def _press(query: CallbackQuery, now: datetime) -> Incoming | None:
    if query.message and query.message.chat.type != ChatType.PRIVATE:
        return None
    return Incoming(
        channel=NAME,
        channel_id=f"press-{query.id}",
        address=str(query.from_user.id),
        at=now,
        button=query.data or "",
        language=query.from_user.language_code,
    )


def _words(message: Message) -> str:
    """Text or caption; what has neither is named by its kind, ``[voice]``, so that it is kept and found unreadable."""
    return message.text or message.caption or f"[{effective_message_type(message) or 'message'}]"


def shown(query: CallbackQuery) -> Rows:
    """The buttons, as (label, data), that stood under the message when one of them was pressed."""
    markup = query.message.reply_markup if isinstance(query.message, Message) else None
    if markup is None:
        return ()
    return tuple(tuple((one.text, str(one.callback_data or "")) for one in row) for row in markup.inline_keyboard)


def label(rows: Rows, pressed: str) -> str | None:
    """What stood on the button that was pressed."""
    return next((text for row in rows for text, data in row if data == pressed), None)

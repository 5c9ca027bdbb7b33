"""What a failed call to the Bot API means for the message that it carried."""

import os
from datetime import timedelta

import httpx
from telegram.error import BadRequest, ChatMigrated, Forbidden, InvalidToken, RetryAfter, TelegramError

from coachbot.channels.base import Ending, Receipt

os.environ.setdefault("PTB_TIMEDELTA", "true")
"""Makes the library give `RetryAfter.retry_after` as a timedelta; without it, it warns that it will."""

TOKEN_WAIT = timedelta(minutes=1)
"""How long to wait when the token is refused: it was changed at Telegram's side, and somebody must set the new one."""

NEVER_LEFT = (httpx.ConnectError, httpx.ConnectTimeout, httpx.PoolTimeout)
"""What happens before a request is sent. After any other break nobody can tell whether the message arrived."""


def ending(error: TelegramError) -> Receipt:
    """How a send ended that raised `error`.

    The classes are asked in this order because `BadRequest` is the library's own kind of `NetworkError`.
    """
    match error:
        case RetryAfter():
            return Receipt(ending=Ending.LATER, wait=wait(error))
        case Forbidden() | ChatMigrated():
            return Receipt(ending=Ending.GONE)
        case BadRequest():
            gone = "chat not found" in error.message.lower()
            return Receipt(ending=Ending.GONE if gone else Ending.NEVER)
        case InvalidToken():
            return Receipt(ending=Ending.LATER, wait=TOKEN_WAIT)
        case _:
            unsent = isinstance(error.__cause__, NEVER_LEFT)
            return Receipt(ending=Ending.LATER if unsent else Ending.UNKNOWN)


def wait(error: RetryAfter) -> timedelta:
    """How long Telegram says to wait."""
    told = error.retry_after
    return told if isinstance(told, timedelta) else timedelta(seconds=told)

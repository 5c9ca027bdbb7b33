"""The library's bot, set up for one try a call and silent about what it carries."""

import logging
from functools import cache
from ssl import SSLContext

from httpx import create_ssl_context
from telegram import Bot
from telegram.request import HTTPXRequest

AT_ONCE = 32
"""How many sends may have a connection at once."""

ANSWER = 10.0
"""Seconds that an answer may take; on top of it comes the time that Telegram is asked to hold one."""


def make_bot(token: str, api_url: str | None) -> Bot:
    """A bot at Telegram's own server or another; nothing is sent yet."""
    _keep_quiet()
    server = api_url.rstrip("/") if api_url else "https://api.telegram.org"
    return Bot(
        token,
        base_url=f"{server}/bot",
        base_file_url=f"{server}/file/bot",
        request=_request(AT_ONCE),
        get_updates_request=_request(1),
    )


def _request(connections: int) -> HTTPXRequest:
    """Time-outs in seconds. A message with its picture takes less than the outbox's lease, whatever happens."""
    return HTTPXRequest(
        connection_pool_size=connections,
        connect_timeout=5,
        read_timeout=ANSWER,
        write_timeout=5,
        media_write_timeout=15,
        httpx_kwargs={"verify": _trusted()},
    )


@cache
def _trusted() -> SSLContext:
    """The library's own trusted authorities, read once: reading them is most of the cost of a new bot."""
    return create_ssl_context()


def _keep_quiet() -> None:
    """Below these levels the libraries log addresses with the token in them, and what people wrote."""
    logging.getLogger("telegram").setLevel(logging.CRITICAL + 1)
    for name in ("httpx", "httpcore"):
        logging.getLogger(name).setLevel(logging.WARNING)

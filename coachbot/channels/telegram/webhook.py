"""The address that Telegram posts updates to."""

import hmac
import json
import re
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from urllib.parse import urlsplit

import structlog
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route
from telegram import Bot, Update

from coachbot.channels.base import ChannelError

log = structlog.get_logger(__name__)

HEADER = "X-Telegram-Bot-Api-Secret-Token"

LARGEST = 1_000_000
"""Bytes: far more than an update has, whose words are at most 4,096 characters."""

SECRET = re.compile(r"[A-Za-z0-9_-]{1,256}")
"""What Telegram takes as a secret (Bot API, setWebhook)."""


@dataclass(frozen=True, slots=True)
class Webhook:
    """Where updates are posted to, and the secret that each post must carry."""

    url: str
    secret: str

    def __post_init__(self) -> None:
        """Raises ChannelError if Telegram would refuse them."""
        parts = urlsplit(self.url)
        if parts.scheme not in ("https", "http") or not parts.path.strip("/"):
            raise ChannelError("COACHBOT_TELEGRAM_WEBHOOK_URL must be a web address with a path of its own")
        if not SECRET.fullmatch(self.secret):
            raise ChannelError("COACHBOT_TELEGRAM_WEBHOOK_SECRET must be 1 to 256 of A-Z, a-z, 0-9, _ and -")

    def route(self, bot: Bot, take: Callable[[Update], Awaitable[None]]) -> Route:
        """Take what is posted. Telegram posts again whatever is not answered with 2xx, so nothing is lost meanwhile."""

        async def post(request: Request) -> Response:
            if not self._genuine(request):
                return Response(status_code=403)
            body = await _body(request)
            if body is None:
                log.error("telegram_post_unreadable", error="TooLarge")
                return Response(status_code=413)
            try:
                update = Update.de_json(json.loads(body), bot)
            except Exception as error:  # noqa: BLE001 - the library raises what it likes over what it cannot read
                log.error("telegram_post_unreadable", error=type(error).__name__)  # noqa: TRY400 - its words are private
                return Response(status_code=400)
            try:
                await take(update)
            except Exception as error:  # noqa: BLE001 - whatever it is, the post comes again
                log.warning("telegram_post_refused", error=type(error).__name__)
                return Response(status_code=503)
            return Response(status_code=204)

        return Route(urlsplit(self.url).path, post, methods=["POST"])

    def _genuine(self, request: Request) -> bool:
        return hmac.compare_digest(request.headers.get(HEADER, "").encode(), self.secret.encode())


async def _body(request: Request) -> bytes | None:
    """What is posted, or None if that is more than any update."""
    body = bytearray()
    async for chunk in request.stream():
        body += chunk
        if len(body) > LARGEST:
            return None
    return bytes(body)

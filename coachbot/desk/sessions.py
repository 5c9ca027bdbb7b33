"""Sessions at the desk, by OWASP ASVS 5.0 V7.

A session is a random reference token in a cookie; the store keeps its hash (7.2.3). It ends 30 minutes after it was
last used or 12 hours after it began, whichever comes first (7.3), when its owner signs out (7.4.1) or is disabled
(7.4.2), and a new one begins with every sign-in (7.2.4). A page left open looks for new alerts: that is no use.
"""

import hmac
import secrets
from datetime import datetime, timedelta
from hashlib import sha256
from urllib.parse import urlsplit

from starlette.requests import Request
from starlette.responses import Response

from coachbot.store import Session, Transaction

IDLE = timedelta(minutes=30)
LIFE = timedelta(hours=12)

TOKEN_BYTES = 32

REFRESH = timedelta(minutes=1)
"""How old the note of a session's last use may get before it is written again."""


def hashed(token: str) -> bytes:
    """What the store keeps of a token."""
    return sha256(token.encode()).digest()


def begin(tx: Transaction, clinician_id: int, now: datetime, old: str | None) -> str:
    """Open a session in place of the browser's old one. Returns its token."""
    if old:
        tx.sessions.end(hashed(old))
    tx.sessions.sweep(now - LIFE, now - IDLE)
    token = secrets.token_urlsafe(TOKEN_BYTES)
    tx.sessions.begin(hashed(token), clinician_id, now)
    return token


def find(tx: Transaction, token: str, now: datetime) -> Session | None:
    """The session of a token, if it is within its limits."""
    session = tx.sessions.get(hashed(token))
    if session is None or now - session.begun_at >= LIFE or now - session.seen_at >= IDLE:
        return None
    return session


def csrf(token: str) -> str:
    """What a form of this session must carry; says nothing about the token."""
    return hmac.digest(token.encode(), b"form", "sha256").hex()


def same_csrf(token: str, given: str) -> bool:
    """Whether a form carried it."""
    return hmac.compare_digest(csrf(token).encode(), given.encode())


def same_origin(request: Request, desk_url: str) -> bool:
    """Whether a form was sent from a page of ours. Browsers name the origin of every POST."""
    origin = request.headers.get("origin")
    return origin is None or urlsplit(origin).netloc in (request.url.netloc, urlsplit(desk_url).netloc)


def cookie_name(desk_url: str) -> str:
    """The cookie's name; over HTTPS with the prefix that ties it to this very host."""
    return "__Host-desk" if desk_url.startswith("https:") else "desk"


def set_cookie(response: Response, desk_url: str, token: str) -> None:
    """Give the browser its token."""
    secure = desk_url.startswith("https:")
    response.set_cookie(cookie_name(desk_url), token, httponly=True, secure=secure, samesite="lax", path="/")


def drop_cookie(response: Response, desk_url: str) -> None:
    """Take the token away."""
    secure = desk_url.startswith("https:")
    response.delete_cookie(cookie_name(desk_url), httponly=True, secure=secure, samesite="lax", path="/")

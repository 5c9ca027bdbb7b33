"""Invitations: shown once, as a link, a picture of the link, and a card to take home."""

import asyncio
from dataclasses import dataclass
from datetime import datetime

import segno
from markupsafe import Markup
from starlette.responses import Response

from coachbot.coach.case import Role
from coachbot.desk.papers import file
from coachbot.desk.visit import FormError, Visit
from coachbot.programme.zones import local
from coachbot.report.invitation import card as draw_card
from coachbot.service.codes import new_code
from coachbot.service.enrolling import CODE_LIFE
from coachbot.store import Transaction

Codes = tuple[tuple[Role, str], ...]


@dataclass(frozen=True, slots=True)
class Made:
    """The codes that were made for a case, as they are held for a while, and until when they open."""

    case_id: int
    codes: Codes
    expires: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Invited:
    """One invitation. `link` is None on a channel that has none: the code is typed."""

    role: Role
    code: str
    link: str | None
    picture: Markup | None


async def invited(visit: Visit) -> Response:
    """The codes, for the clinician who made them and for half an hour."""
    codes = _made(visit).codes
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    shown = [_invited(visit, role, code) for role, code in codes]
    key = visit.request.path_params["key"]
    return await visit.page("invitation.html", case=case, shown=shown, key=key, days=CODE_LIFE.days)


async def renew(visit: Visit) -> Response:
    """Make another code for one more chat; those given out before stay good."""
    role = Role.CHILD if visit.field("role") == Role.CHILD else Role.PARENT
    code = new_code()

    def work(tx: Transaction) -> None:
        case = tx.cases.load(visit.case_id)
        tx.invites.add(case.id, role, code, visit.now, visit.now + CODE_LIFE)

    await visit.transact(work)
    key = visit.desk.once.put(visit.name, Made(visit.case_id, ((role, code),), visit.now + CODE_LIFE), visit.now)
    return visit.go(f"/children/{visit.case_id}/invitation/{key}")


async def card(visit: Visit) -> Response:
    """The card to print for one of the codes."""
    made, index = _made(visit), int(visit.request.path_params["index"])
    role, code = made.codes[index] if index < len(made.codes) else (Role.PARENT, "")
    link = _link(visit, code)
    if not code or link is None:
        raise FormError("invitation-gone")
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    expires = local(made.expires, case.zone).date()
    data = await asyncio.to_thread(
        draw_card, case, role=role, code=code, link=link, expires=expires, language=case.language
    )
    return file(f"invitation-{case.id}.pdf", "application/pdf", data)


def _made(visit: Visit) -> Made:
    made = visit.desk.once.get(visit.name, visit.request.path_params["key"], visit.now)
    if not isinstance(made, Made) or made.case_id != visit.case_id:
        raise FormError("invitation-gone")
    return made


def _invited(visit: Visit, role: Role, code: str) -> Invited:
    link = _link(visit, code)
    picture = Markup(segno.make(link, error="m").svg_inline(scale=4, border=2)) if link else None  # noqa: S704 - ours
    return Invited(role=role, code=code, link=link, picture=picture)


def _link(visit: Visit, code: str) -> str | None:
    """The first link that any channel makes of a code."""
    makers = (getattr(channel, "invite_link", None) for channel in visit.desk.coachbot.channels.values())
    return next(filter(None, (make(code) for make in makers if make)), None)

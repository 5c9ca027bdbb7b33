"""The invitation: a card to be printed and handed over, with a code that opens one chat."""

from datetime import date

import segno

from coachbot.coach.case import Case, Role
from coachbot.report.names import called, name_line
from coachbot.report.setting import printed
from coachbot.report.wording import Say

QUIET = 4
"""Modules of white around the square, as ISO/IEC 18004 asks for."""


def card(
    case: Case, *, role: Role, code: str, link: str, expires: date, language: str, number: str | None = None
) -> bytes:
    """A card of the size A5, on its side, as a PDF (tagged, PDF/UA-1).

    Args:
        case: whose card it is.
        role: whose chat the code opens, a parent's or the child's own.
        code: the invitation code, as people read it.
        link: what the square opens: a chat's link, or ``sms:`` with a number and the code (RFC 5724).
        expires: the last local day on which the code opens.
        language: ``en``, ``es`` or ``fr``.
        number: the number to write to, where the family uses text messages and the link is for machines only.

    Raises:
        KeyError: there is no such language.
    """
    say = Say(language)
    child, nights = called(case.child.name, say), case.protocol.nights
    why = {"nights": nights} if role is Role.CHILD else {"nights": nights, "child": child}
    data = {
        "title": say(f"card-{role}", child=child),
        "aside": [say("card-kind")],
        "name_line": name_line(case.child.name, say),
        "why": say(f"card-{role}-why", **why),
        "steps": [
            _scan(link, number, say),
            {"text": say("card-send"), "sign": code},
            {"text": say(f"card-{role}-start")},
        ],
        "square": square(link),
        "square_alt": say("card-square", link=link),
        "foot": [
            f"{say('card-expires', date=say.date(expires))} {say('card-lost')}",
            say("card-private"),
            say("card-emergency", emergency=case.protocol.emergency_number),
        ],
    }
    return printed("invitation", data, language=language, form="pdf")


def _scan(link: str, number: str | None, say: Say) -> dict[str, str]:
    if number is None:
        return {"text": say("card-scan"), "sign": shown(link)}
    return {"text": say("card-scan-text"), "sign": number}


def shown(link: str) -> str:
    """A link as people type it: without the code, which they send afterwards."""
    return link.removeprefix("https://").partition("?")[0]


def square(link: str) -> str:
    """The QR code of a link, as SVG; a quarter of it may be lost or covered (level Q)."""
    return segno.make_qr(link, error="q").svg_inline(border=QUIET, light="#fff", omitsize=True)

"""The pictures and papers that go along with a message, made when it is sent."""

import asyncio
from collections.abc import Callable
from dataclasses import dataclass

from coachbot.channels.base import File
from coachbot.coach.case import Case
from coachbot.report.followup import followup
from coachbot.store import Claimed, NoSuchCaseError, Store
from coachbot.voice.certificate import certificate
from coachbot.voice.drawings import picture

PNG, PDF = "image/png", "application/pdf"

REPORT_PICTURE = "report.png"
REPORT_PAPER = "report.pdf"
CERTIFICATE = "certificate"


@dataclass(frozen=True, slots=True)
class Files:
    """Makes files out of the case as it stands when they are sent."""

    store: Store

    async def of(self, claimed: Claimed) -> File | None:
        """The file that goes with a message, or None."""
        body = claimed.body
        if body.picture:
            language, _, name = body.picture.partition("/")
            data = await asyncio.to_thread(picture, name, language)
            return File(name=f"{name}.png", media=PNG, data=data)
        if body.attachment is None or claimed.case_id is None:
            return None
        language, _, name = body.attachment.partition("/")
        case_id = claimed.case_id
        try:
            case = await self.store.read(lambda tx: tx.cases.load(case_id))
        except NoSuchCaseError:
            return None
        return await asyncio.to_thread(_MAKERS[name], case, language)


def _certificate(case: Case, language: str) -> File:
    data = certificate(case.child.name, case.practised, language)
    return File(name="certificate.png", media=PNG, data=data)


def _report_picture(case: Case, language: str) -> File:
    return File(name=REPORT_PICTURE, media=PNG, data=followup(case, language=language, form="png"))


def _report_paper(case: Case, language: str) -> File:
    return File(name=REPORT_PAPER, media=PDF, data=followup(case, language=language, form="pdf"))


_MAKERS: dict[str, Callable[[Case, str], File]] = {
    CERTIFICATE: _certificate,
    REPORT_PICTURE: _report_picture,
    REPORT_PAPER: _report_paper,
}

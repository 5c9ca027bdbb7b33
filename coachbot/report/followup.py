"""The follow-up report: one page that clinician, child and parent read together."""

from coachbot.coach.case import Case
from coachbot.report.parts import page
from coachbot.report.setting import Form, printed
from coachbot.report.view import view
from coachbot.report.wording import Say


def followup(case: Case, *, language: str, form: Form) -> bytes:
    """The follow-up report of a case: exactly one A4 page, as a PDF (tagged, PDF/UA-1) or the same page as a PNG.

    Raises:
        KeyError: there is no such language.
    """
    return printed("followup", page(view(case), Say(language)), language=language, form=form)

"""The words of the papers: all are used, all can be read, and what cannot be printed is known beforehand."""

from datetime import date

import pytest
import typst
from babel.dates import format_date

from coachbot.coach.case import Role
from coachbot.report.followup import followup
from coachbot.report.invitation import card, square
from coachbot.report.printable import RANGES, printable, shortened, whole
from coachbot.report.setting import printed
from coachbot.report.sheets import sheets
from coachbot.report.wording import Say
from coachbot.voice.vocabulary import LANGUAGES
from coachbot.voice.wording import Wording
from helpers.readability import counts, ease, grade
from report.samples import SAMPLES, enrolled

FAMILY = ("card-parent-why", "card-parent-start", "card-send", "sheet-how", "sheet-trouble", "answer-clear-why")
CHILD = ("card-child-why", "card-child-start")
"""Texts for families, and those for the child alone."""

ARGS = {"child": "Mila", "nights": 14, "emergency": "112", "favourite": "Left", "chance": "about 97"}


def test_no_word_of_the_papers_is_unused(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every id of report.ftl is needed by some paper of the samples."""
    used: set[str] = set()
    fill = Wording.text

    def noting(self: Wording, language: str, name: str, /, **args: object) -> str:
        used.add(name)
        return fill(self, language, name, **args)

    monkeypatch.setattr(Wording, "text", noting)
    for make in SAMPLES.values():
        followup(make(), language="en", form="pdf")
    sheets(enrolled("李"), language="en")
    for role in Role:
        for number in (None, "+1 555 0100"):
            link, last = "https://example.org/b?start=A", date(2026, 3, 16)
            card(enrolled(), role=role, code="A", link=link, number=number, expires=last, language="en")
    assert set(Wording.load("report.ftl").names()) - used == set()


@pytest.mark.parametrize("name", FAMILY)
def test_families_texts_are_at_most_sixth_grade(name: str) -> None:
    """Flesch-Kincaid grade 6 at most (AMA's advice for patients' texts, Weiss 2007, as cited by Rooney 2021)."""
    assert grade(counts(Wording.load("report.ftl").text("en", name, **ARGS), "en")) <= 6


@pytest.mark.parametrize("name", CHILD)
def test_childrens_texts_are_at_most_third_grade(name: str) -> None:
    """Flesch-Kincaid grade 3 at most."""
    assert grade(counts(Wording.load("report.ftl").text("en", name, **ARGS), "en")) <= 3


@pytest.mark.parametrize("language", ["es", "fr"])
def test_other_languages_are_as_plain(language: str) -> None:
    """Reading ease 60 and over, the "standard" of the published scales, for families; from memory."""
    words = Wording.load("report.ftl")
    for name in (*FAMILY, *CHILD):
        assert ease(counts(words.text(language, name, **ARGS), language), language) >= 60, name


def test_all_letters_called_printable_are_in_the_fonts() -> None:
    """PDF/UA-1 refuses a letter without a shape (ISO 14289-1, 7.21.8), so a page of them all proves the ranges."""
    codes = [code for first, last in RANGES for code in range(first, last + 1)]
    letters = "".join(chr(code) for code in codes if whole(chr(code)))
    assert len(letters) > 0.9 * len(codes)
    spaced = " ".join(letters[start : start + 40] for start in range(0, len(letters), 40))
    data: dict[str, object] = {
        "title": "Letters",
        "aside": [],
        "name_line": None,
        "steps": [],
        "foot": [],
        "square_alt": "a square",
    }
    data["square"] = square("letters")
    assert printed("invitation", {**data, "why": spaced}, language="en", form="pdf").startswith(b"%PDF")
    with pytest.raises(typst.TypstError, match="could not be displayed"):
        printed("invitation", {**data, "why": "\U0001f389"}, language="en", form="pdf")


@pytest.mark.parametrize(
    ("given", "kept"),
    [("Zoë", "Zoë"), ("Zoe\u0308", "Zoë"), ("a\nb\tc", "a b c"), ("hi \U0001f600!", "hi !"), ("Nguyễn", "Nguyễn")],
)
def test_printable_keeps_letters_and_drops_pictures(given: str, kept: str) -> None:
    """Accents are composed (Unicode NFC), lines joined, and what has no shape left out."""
    assert printable(given) == kept


def test_shortened_text_ends_at_a_word() -> None:
    """A long text is cut between words and says that it was cut; one long word is cut inside."""
    assert shortened("one two three four", 12) == "one two…"
    assert shortened("x" * 20, 8) == "xxxxxxx…"
    assert shortened("short", 8) == "short"


@pytest.mark.parametrize("language", LANGUAGES)
def test_dates_are_written_as_people_write_them(language: str) -> None:
    """Long dates as Unicode's CLDR writes them (by Babel); French says 1er for the first, which CLDR does not."""
    for month in range(1, 13):
        day = date(2026, month, 1 + month)
        assert Say(language).date(day) == format_date(day, "long", locale=language)
    assert Say("fr").date(date(2026, 3, 1)) == "1er mars 2026"

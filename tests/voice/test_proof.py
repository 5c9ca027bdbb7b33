"""The page that a clinician signs off."""

from html import unescape
from html.parser import HTMLParser

import pytest

from coachbot.coach.texts import TEXTS, Audience
from coachbot.voice.catalogue import Catalogue
from coachbot.voice.drawings import SCENES
from coachbot.voice.proof import COMMON, SAMPLES, TONES, proof, shown
from coachbot.voice.vocabulary import LANGUAGES


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    """The project's own texts."""
    return Catalogue.load()


class Page(HTMLParser):
    """What stands in the page, by element."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.headings: list[str] = []
        self.pictures: list[str] = []
        self._inside = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Notes pictures and where we are."""
        self._inside = tag
        if tag == "img":
            self.pictures.append(dict(attrs)["alt"] or "")

    def handle_data(self, data: str) -> None:
        """Notes headings of single texts."""
        if self._inside == "h3" and data.strip():
            self.headings.append(data)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_page_shows_every_text_for_every_audience_and_every_picture(catalogue: Catalogue, language: str) -> None:
    """Nothing that a family can get is missing from what is signed."""
    html = proof(catalogue, language)
    page = Page(html)
    assert page.headings == [name for one in Audience for name, text in TEXTS.items() if one in text.audiences]
    assert set(SCENES) < set(page.pictures)
    for audience in Audience:
        for name, text in TEXTS.items():
            if audience in text.audiences:
                for version in shown(catalogue, name, language, audience):
                    assert version.words in unescape(html)


def test_every_version_stands_once_with_all_ages_and_forms(catalogue: Catalogue) -> None:
    """No age and no form is forgotten or shown twice."""
    for name, text in TEXTS.items():
        for audience in text.audiences:
            seen = [
                (tone, form)
                for one in shown(catalogue, name, "en", audience)
                for tone in one.tones
                for form in one.forms
            ]
            assert sorted(seen) == sorted((tone, form) for tone in TONES for form in ("chat", "sms"))


def test_there_is_an_example_for_every_variable() -> None:
    """A new variable cannot be forgotten here."""
    needed = {variable for text in TEXTS.values() for variable in text.variables}
    assert needed == set(SAMPLES)
    assert set(COMMON) == {"child", "emergency"}

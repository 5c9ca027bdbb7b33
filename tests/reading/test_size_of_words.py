"""A file of words must not grow out of hand when its patterns are opened up."""

from itertools import islice

import pytest

from coachbot.reading.lexicon import Lexicon
from coachbot.reading.wordfiles import LANGUAGES, phrases

MOST = 60_000
"""Phrases per file and language: what still loads in well under a second and in a few megabytes."""


@pytest.mark.parametrize("lang", LANGUAGES)
@pytest.mark.parametrize("name", ["requests", "reading", "causes"])
def test_a_file_of_words_opens_up_to_a_bounded_number_of_phrases(name: str, lang: str) -> None:
    """The requests in English once opened up to 1.4 million and took 20 seconds: match patterns instead."""
    split = Lexicon(split=lang == "fr").words

    assert sum(1 for _ in islice(phrases(name, lang, split), MOST + 1)) <= MOST

"""Promises of the files of words."""

import pytest

from coachbot.reading import LANGUAGES, LexiconError, items, read
from coachbot.reading.lexicon import Lexicon, lexicon
from coachbot.reading.tokens import fold
from coachbot.reading.wordfiles import Entry, checked, expand


def words(text: str) -> tuple[str, ...]:
    return tuple(text.split())


def test_patterns_stand_for_all_their_phrases() -> None:
    """Either of ( | ), with or without [ ], also one inside the other."""
    assert set(expand("(will not|wont) go [back [up]]", words)) == {
        ("will", "not", "go"),
        ("will", "not", "go", "back"),
        ("will", "not", "go", "back", "up"),
        ("wont", "go"),
        ("wont", "go", "back"),
        ("wont", "go", "back", "up"),
    }


@pytest.mark.parametrize("pattern", ["(a|b", "a)", "a [b", "(a]", "", "[a]", "(a|)"])
def test_a_pattern_that_cannot_be_read_is_refused(pattern: str) -> None:
    """Brackets come in pairs and every phrase has a word."""
    with pytest.raises(LexiconError, match=r"needs words|not closed"):
        expand(pattern, words)


def test_a_misformed_file_says_what_and_where() -> None:
    """The error names the file, the section and the entry."""
    with pytest.raises(LexiconError, match=r"x\.toml, \[marks\], skipped: write a list"):
        checked({"marks": {"skipped": "skip"}}, "x.toml")
    with pytest.raises(LexiconError, match=r"x\.toml, \[marks\]: write a table"):
        checked({"marks": ["skip"]}, "x.toml")


def test_an_unknown_language_says_which_are_known() -> None:
    """Reading in a language without words is an error that lists those with words."""
    with pytest.raises(LexiconError, match="en, es, fr"):
        read("4", lang="de", order=[], asking="note")


@pytest.mark.parametrize("lang", LANGUAGES)
@pytest.mark.parametrize("name", ["reading", "requests", "causes"])
def test_every_file_of_words_can_be_read(name: str, lang: str) -> None:
    """All shipped files are well formed."""
    assert lexicon(name, lang).scan("4")


def test_the_longest_phrase_is_taken_and_slips_are_forgiven() -> None:
    """A phrase beats its parts; a long word with one slip is still known, a short one is not guessed."""
    known = Lexicon(split=False, forgiving=["a"])
    for phrase in ("center", "not center", "up"):
        known.add(words(phrase), Entry("a", phrase))

    assert [found.name for found in known.scan("not cemter, upp")] == ["not center", ",", "upp"]


def test_folding_takes_off_case_accents_and_apostrophes() -> None:
    """What is typed without accents means the same; ordinal signs stay, since "3º" is not "3 o"."""
    assert [fold(word) for word in ("ÉTÉ", "Ñu", "didn’t", "４", "º")] == ["ete", "nu", "didnt", "4", "º"]


def test_words_that_are_shared_are_added_to_by_nobody() -> None:
    """Two threads may begin to read at once: a process died of one that looked through what the other added to."""
    shared = lexicon("reading", "en", items.FORGIVING)
    before = dict(shared.entries())
    items.words.cache_clear()

    assert items.words("en").ear
    assert dict(shared.entries()) == before
    assert shared.ear is None

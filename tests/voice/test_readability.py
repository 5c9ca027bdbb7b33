"""The yardsticks of the reading tests, against published values."""

from collections.abc import Callable, Iterator
from unittest import mock

import pytest
import textstat

from helpers.readability import Counts, counts, dictionary, ease, english, french, grade, spanish


@pytest.mark.parametrize(
    ("words", "sentences", "syllables", "easy", "at"),
    [
        (6, 1, 6, 116.145, -1.45),
        (13, 1, 26, 24.44, 13.08),
        (12, 1, 23, 32.505, 11.7067),
        (100, 10, 130, 86.705, 3.65),
        (100, 5, 150, 59.635, 9.91),
    ],
)
def test_the_english_formulas_give_the_published_values(
    words: int, sentences: int, syllables: int, easy: float, at: float
) -> None:
    """Flesch (1948) and Kincaid et al. (1975); the first three are worked examples of other packages' pages."""
    of = Counts(words, sentences, syllables)
    assert ease(of, "en") == pytest.approx(easy, abs=0.005)
    assert grade(of) == pytest.approx(at, abs=0.005)


def test_nothing_to_read_divides_by_nothing() -> None:
    """An empty text is easy."""
    assert grade(counts("", "en")) == 0
    assert ease(counts("...", "es"), "es") == 100


def test_the_spanish_formula_gives_a_worked_value() -> None:
    """Fernández Huerta (1959): 100 words, 10 sentences, 190 syllables give 206.84 - 114 - 10.2 (by hand)."""
    assert ease(Counts(100, 10, 190), "es") == pytest.approx(82.64)


def test_the_french_formula_gives_a_worked_value() -> None:
    """Kandel and Moles (1958): 100 words, 10 sentences, 150 syllables give 207 - 110.4 - 10.15 (by hand)."""
    assert ease(Counts(100, 10, 150), "fr") == pytest.approx(86.45)


@pytest.mark.parametrize(
    ("count", "words"),
    [
        (english, "cat 1 candy 2 swallow 2 water 2 tonight 2 position 3 emergency 4 one 1"),
        (spanish, "agua 2 lengua 2 guitarra 3 día 2 garganta 3 pequeño 3 caramelo 4 aquí 2 que 1 muy 1 traer 2 bien 1"),
        (
            french,
            "eau 1 bonbon 2 petite 2 gorge 1 avale 2 menton 2 que 1 clinique 2 gorgée 2 parlent 1 fatigué 3 les 1",
        ),
    ],
)
def test_syllables_are_counted_as_they_are_spoken(count: Callable[[str], int], words: str) -> None:
    """Common words, counted by ear."""
    pairs = words.split()
    for word, number in zip(pairs[::2], pairs[1::2], strict=True):
        assert count(word) == int(number), word


@pytest.fixture
def offline() -> Iterator[None]:
    """Gives textstat the dictionary that is installed, so that it does not try to fetch one."""
    with mock.patch("textstat.backend.counts._count_syllables.get_cmudict", return_value=dictionary()):
        yield


@pytest.mark.usefixtures("offline")
def test_our_grade_agrees_with_an_independent_package() -> None:
    """textstat, on running prose, to a tenth of a grade."""
    text = "Sit up tall. Put the candy far back on the tongue. Then take a small sip of water and swallow it all."
    assert grade(counts(text, "en")) == pytest.approx(textstat.flesch_kincaid_grade(text), abs=0.1)

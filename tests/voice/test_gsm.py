"""What a text message costs, against the published alphabet and sizes."""

import gsm0338
import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachbot.voice.gsm import ALPHABET, EXTENSION, fold, segments
from helpers.segments import PUBLISHED


def test_the_alphabet_is_that_of_an_independent_library() -> None:
    """3GPP TS 23.038 section 6.2.1, as the registry package `gsm0338` has it: one septet each, two in the extension."""
    codec = gsm0338.Codec()
    sizes = {letter: len(codec.encode(letter)[0]) for letter in ALPHABET | EXTENSION}

    assert {letter for letter, size in sizes.items() if size == 1} == ALPHABET
    assert {letter for letter, size in sizes.items() if size == 2} == EXTENSION
    everything = [chr(code) for code in range(0x3000) if _encodes(codec, chr(code))]
    assert set(everything) - {"\x1b", "\x0c"} == (ALPHABET | EXTENSION) - {"\x0c"}


def _encodes(codec: gsm0338.Codec, letter: str) -> bool:
    try:
        return bool(codec.encode(letter)[0])
    except UnicodeEncodeError:
        return False


def test_the_alphabet_has_as_many_letters_as_the_standard_says() -> None:
    """128 places without the escape, and ten in the extension table."""
    assert len(ALPHABET) == 127
    assert len(EXTENSION) == 10


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("", 1),
        *PUBLISHED,
    ],
)
def test_segments_are_counted_as_the_standard_sizes_them(text: str, parts: int) -> None:
    """3GPP TS 23.040 section 9.2.3.24.1: 160 or 153 septets, 70 or 67 UTF-16 units, no pair split."""
    assert segments(text) == parts


@pytest.mark.parametrize(
    ("text", "folded"),
    [
        ("Leçon d’été à Noël…", "Lecon d'été à Noel..."),
        ("«\u00a0plutôt 19\u00a0h\u00a0»", '"plutot 19 h"'),
        ("¿Cuánto bajó el niño?", "¿Cuanto bajo el niño?"),
        ("cœur, Œuf", "coeur, OEuf"),
        ("李 😀", "李 😀"),
    ],
)
def test_folding_drops_only_what_costs(text: str, folded: str) -> None:
    """What is in the alphabet stays, what can lose its accent does, and the rest is left alone."""
    assert fold(text) == folded


@given(st.text())
def test_folding_twice_changes_nothing_and_never_costs_more(text: str) -> None:
    """A folded text is as cheap as it gets."""
    once = fold(text)
    assert fold(once) == once
    if all(letter in ALPHABET | EXTENSION for letter in text):
        assert once == text

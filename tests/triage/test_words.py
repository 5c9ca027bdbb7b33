"""Replies as words: accents, apostrophes, look-alikes, drawn-out and spelled-out letters, emoji."""

import unicodedata

import pytest

from coachbot.triage.words import split


def folded(text: str) -> list[str]:
    """The words without the two ends."""
    return split(text).folded[1:-1]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("Can’t BREATHE", ["cant", "breathe"]),
        ("Elle s'étouffe", ["elle", "s", "etouffe"]),
        ("niño", ["nino"]),
        ("heeeeelp", ["heelp"]),
        ("ch0k1ng", ["choklng"]),
        ("h e l p", ["help"]),
        ("4 3 5 2 4", ["4", "3", "5", "2", "4"]),
        ("make it 7pm", ["make", "it", "7pm"]),
        ("ｃｈｏｋｅ", ["choke"]),
        ("ch\u200boke", ["choke"]),
        ("сhoke", ["choke"]),
    ],
)
def test_words_are_folded_for_comparing(text: str, words: list[str]) -> None:
    """Common practice in texting; the full-width and zero-width forms are of Unicode Standard Annex 15."""
    assert folded(text) == words


def test_composed_and_decomposed_accents_are_the_same() -> None:
    """Unicode Standard Annex 15: canonically equivalent strings are to be treated alike."""
    text = "elle s'est étouffée, ça siffle"
    assert folded(unicodedata.normalize("NFD", text)) == folded(unicodedata.normalize("NFC", text))


@pytest.mark.parametrize("emoji", ["😭", "🤮", "🆘", "👍🏽", "👨‍👩‍👧", "4️⃣", "🇨🇦", "❤️"])
def test_emoji_sequences_leave_the_words_around_them_alone(emoji: str) -> None:
    """Skin tone, joiner, keycap, flag and presentation sequences of Unicode Technical Standard 51."""
    words = folded(f"ok{emoji}blue")
    assert words[0].startswith("ok")
    assert words[-1].endswith("blue")


def test_evidence_is_given_as_it_was_written() -> None:
    """The way back from folded words to the reply."""
    words = split("She TURNED   Blue!!")
    assert words.written(2, 3) == "TURNED   Blue"

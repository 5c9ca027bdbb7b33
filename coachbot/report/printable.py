"""Which letters can be printed. The fonts that we print with are fixed, so that a paper looks the same everywhere."""

import unicodedata

RANGES = (
    (0x0020, 0x007E),  # Latin
    (0x00A1, 0x00AC),
    (0x00AE, 0x02AF),  # Latin with accents, and the phonetic letters
    (0x0300, 0x0304),  # accents that stand alone
    (0x0384, 0x03FF),  # Greek
    (0x0400, 0x0482),  # Cyrillic
    (0x048A, 0x04FF),
    (0x05D0, 0x05EA),  # Hebrew
    (0x1E00, 0x1EFF),  # Latin of Vietnam
    (0x2010, 0x2027),  # dashes, quotation marks, dots
    (0x20A0, 0x20BF),  # currencies
)
"""Code points, first to last; the fonts hold all to which Unicode gives a letter."""


def printable(text: str) -> str:
    """The text without what cannot be printed (small pictures, most of all), in one line."""
    composed = unicodedata.normalize("NFC", text)
    return " ".join("".join(letter if _fits(letter) else " " for letter in composed).split())


def whole(text: str) -> bool:
    """Whether every letter of the text can be printed."""
    return all(_fits(letter) or letter.isspace() for letter in unicodedata.normalize("NFC", text))


def shortened(text: str, most: int) -> str:
    """The text in at most `most` letters, cut between words where that is possible."""
    if len(text) <= most:
        return text
    head, _, _ = text[:most].rpartition(" ")
    return f"{head if len(head) > most // 2 else text[: most - 1]}…"


def _fits(letter: str) -> bool:
    given = unicodedata.category(letter) != "Cn"
    return given and any(first <= ord(letter) <= last for first, last in RANGES)

"""How much a text message costs: the GSM 7-bit alphabet and the sizes of segments.

Sources: 3GPP TS 23.038 section 6.2.1 (alphabet and extension table), TS 23.040 section 9.2.3.24.1 (segments).
"""

import unicodedata

ALPHABET = frozenset(
    "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?"
    "¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà"
)
"""What costs one septet. The cedilla is there as a capital only, as most networks have it."""

EXTENSION = frozenset("\f^{}\\[~]|€")
"""What costs two septets."""

SINGLE, PART = 160, 153
"""Septets of a message alone, and of each part of a longer one."""

SINGLE_WIDE, PART_WIDE = 70, 67
"""The same in UTF-16 units, for texts outside the alphabet."""

_PLAIN = str.maketrans(
    {"’": "'", "‘": "'", "“": '"', "”": '"', "«": '"', "»": '"', "–": "-", "—": "-", "…": "...", "œ": "oe", "Œ": "OE",
     "ç": "c", "\u00a0": " ", "\u202f": " "}
)  # fmt: skip


def fold(text: str) -> str:
    """The text with as many letters as possible in the alphabet: what is outside loses its accent if that helps."""
    close = text.replace("«\u00a0", "«").replace("\u00a0»", "»")
    return "".join(map(_folded, close.translate(_PLAIN)))


def _folded(letter: str) -> str:
    if letter in ALPHABET or letter in EXTENSION:
        return letter
    bare = "".join(one for one in unicodedata.normalize("NFKD", letter) if not unicodedata.combining(one))
    return bare if bare and all(one in ALPHABET for one in bare) else letter


def segments(text: str) -> int:
    """How many segments a text takes. No escape pair and no surrogate pair is split between two."""
    if all(letter in ALPHABET or letter in EXTENSION for letter in text):
        return _count([1 + (letter in EXTENSION) for letter in text], SINGLE, PART)
    return _count([1 + (ord(letter) > 0xFFFF) for letter in text], SINGLE_WIDE, PART_WIDE)  # noqa: PLR2004 - the basic plane


def _count(sizes: list[int], single: int, part: int) -> int:
    if sum(sizes) <= single:
        return 1
    parts, room = 1, part
    for size in sizes:
        if size > room:
            parts, room = parts + 1, part
        room -= size
    return parts

"""A text as the segments that a network carries, and back.

Sources: 3GPP TS 23.038 section 6.2.1 (alphabet) and section 4 (data coding), TS 23.040 section 9.2.3.24 (user data
header, sizes of segments), SMPP 3.4 section 5.2.19 (data_coding).
"""

from dataclasses import dataclass
from typing import Final
from zlib import crc32

import gsm0338

from coachbot.channels.base import Part

DEFAULT, UCS2 = 0, 8
"""Data codings. The default alphabet is sent as GSM 7-bit, an octet for each septet."""

BINARY = (2, 4)

SINGLE = {DEFAULT: 160, UCS2: 140}
PIECE = {DEFAULT: 153, UCS2: 134}
"""The most octets of a message alone, and of each piece of a longer one."""

MOST_PIECES: Final = 255

CONCATENATION, CONCATENATION_WIDE = 0x00, 0x08
"""Header elements that number pieces, with a reference of 8 and of 16 bits."""

_GSM = gsm0338.Codec()


class UnsendableError(ValueError):
    """No network carries this text."""


@dataclass(frozen=True, slots=True)
class Segment:
    """What one segment carries: its octets, how they are coded, and whether they begin with a header."""

    data: bytes
    coding: int
    headed: bool


def segments(text: str) -> tuple[Segment, ...]:
    """Cut a text into segments; no escape pair and no surrogate pair is cut in two.

    The same text always has the same reference number, so that sending it again completes what was left unfinished.

    Raises:
        UnsendableError: if it is empty, or longer than 255 segments.
    """
    coding, letters = _coded(text)
    pieces = (
        _pack(letters, SINGLE[coding]) if sum(map(len, letters)) <= SINGLE[coding] else _pack(letters, PIECE[coding])
    )
    if not 1 <= len(pieces) <= MOST_PIECES:
        raise UnsendableError(f"a text message must have 1 to {MOST_PIECES} segments, not {len(pieces)}")
    if len(pieces) == 1:
        return (Segment(pieces[0], coding, headed=False),)
    head = bytes((5, CONCATENATION, 3, crc32(text.encode("utf-8", "replace")) & 0xFF, len(pieces)))
    return tuple(
        Segment(head + bytes((number,)) + piece, coding, headed=True) for number, piece in enumerate(pieces, 1)
    )


def decoded(data: bytes, coding: int) -> str:
    """The words in some octets. What is no text is named by its kind, ``[data]``."""
    group = _group(coding)
    if group in BINARY:
        return "[data]"
    if group == UCS2:
        return data.decode("utf-16-be", "surrogatepass" if len(data) % 2 == 0 else "replace")
    if group == DEFAULT:
        return str(_GSM.decode(data, "replace")[0])
    return data.decode("latin-1")


def unheaded(data: bytes) -> tuple[Part | None, bytes]:
    """Which piece of a longer message this is, by its user data header, and what follows the header."""
    end = 1 + data[0] if data else 0
    header, rest = data[1:end], data[end:]
    while len(header) > 2:  # noqa: PLR2004 - an element's name, its length and at least one octet
        name, size = header[0], header[1]
        element, header = header[2 : 2 + size], header[2 + size :]
        if name == CONCATENATION and size == 3:  # noqa: PLR2004 - reference, total, number
            return _part(element[0], element[1:]), rest
        if name == CONCATENATION_WIDE and size == 4:  # noqa: PLR2004 - the reference has two octets
            return _part(int.from_bytes(element[:2]), element[2:]), rest
    return None, rest


def _part(reference: int, rest: bytes) -> Part | None:
    part = Part(reference=reference, total=rest[0], number=rest[1])
    return part if part.total > 1 and 1 <= part.number <= part.total else None


def _coded(text: str) -> tuple[int, list[bytes]]:
    try:
        return DEFAULT, [_GSM.encode(letter)[0] for letter in text]
    except UnicodeEncodeError:
        return UCS2, [letter.encode("utf-16-be", "replace") for letter in text]


def _pack(letters: list[bytes], room: int) -> list[bytes]:
    pieces: list[bytearray] = []
    for letter in letters:
        if not pieces or len(pieces[-1]) + len(letter) > room:
            pieces.append(bytearray())
        pieces[-1] += letter
    return [bytes(piece) for piece in pieces]


def _group(coding: int) -> int:
    """Reduce TS 23.038's coding groups, with or without a message class, to SMPP's plain codings."""
    if coding >> 4 == 0xF:  # noqa: PLR2004 - "data coding/message class"
        return BINARY[0] if coding & 0x04 else DEFAULT
    if coding & 0xD0 == 0x10:  # noqa: PLR2004 - general data coding with a message class, not compressed
        return {0: DEFAULT, 1: BINARY[0], 2: UCS2}.get(coding >> 2 & 3, DEFAULT)
    # Some servers send the default alphabet under the name of IA5 (1), with which it shares letters, digits and marks.
    return DEFAULT if coding == 1 else coding

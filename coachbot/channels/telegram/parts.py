"""One message as the calls that it takes: long words split, a picture or paper with its caption."""

from collections.abc import Iterator
from dataclasses import dataclass

from telegram import InlineKeyboardButton, InlineKeyboardMarkup
from telegram.constants import InlineKeyboardButtonLimit, MessageLimit

from coachbot.channels.base import File, Outgoing

TEXT = int(MessageLimit.MAX_TEXT_LENGTH)
CAPTION = int(MessageLimit.CAPTION_LENGTH)
DATA = int(InlineKeyboardButtonLimit.MAX_CALLBACK_DATA)

BREAKS = ("\n\n", "\n", " ")
"""Where words may be parted, best first."""


class UnsendableError(ValueError):
    """A message that Telegram can never take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One call: words, or a file with the words as its caption. The last part carries the buttons."""

    text: str
    file: File | None = None
    keyboard: InlineKeyboardMarkup | None = None


def parts(message: Outgoing) -> tuple[Part, ...]:
    """The calls for a message, in order.

    Raises:
        UnsendableError: if there is nothing to send, or a button's data are too long.
    """
    made = list(_parts(message))
    if not made:
        raise UnsendableError("the message has neither words nor a file")
    *before, last = made
    return (*before, Part(text=last.text, file=last.file, keyboard=keyboard(message.buttons)))


def keyboard(rows: tuple[tuple[tuple[str, str], ...], ...]) -> InlineKeyboardMarkup | None:
    """Buttons under a message, or None if there are none.

    Raises:
        UnsendableError: if a button's data are over 64 bytes (Bot API, InlineKeyboardButton).
    """
    if any(len(data.encode()) > DATA for row in rows for _, data in row):
        raise UnsendableError(f"a button's data are over {DATA} bytes")
    if not rows:
        return None
    return InlineKeyboardMarkup(
        [[InlineKeyboardButton(text, callback_data=data) for text, data in row] for row in rows]
    )


def _parts(message: Outgoing) -> Iterator[Part]:
    text = message.text
    if message.file:
        captioned = _units(text) <= CAPTION
        yield Part(text=text if captioned else "", file=message.file)
        if captioned:
            return
    yield from (Part(text=piece) for piece in split(text, TEXT))


def split(text: str, limit: int) -> Iterator[str]:
    """`text` in pieces of at most `limit` UTF-16 units, parted at breaks: they fit however characters are counted."""
    rest = text.strip()
    while _units(rest) > limit:
        head = _head(rest, limit)
        cut = next((at for at in map(head.rfind, BREAKS) if at > 0), len(head))
        yield rest[:cut].rstrip()
        rest = rest[cut:].lstrip()
    if rest:
        yield rest


def _head(text: str, limit: int) -> str:
    """The longest beginning of at most `limit` units; half of a character that takes two is left out."""
    return text.encode("utf-16-le")[: 2 * limit].decode("utf-16-le", errors="ignore")


def _units(text: str) -> int:
    return len(text.encode("utf-16-le")) // 2

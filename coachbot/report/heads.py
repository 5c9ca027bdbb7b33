"""Small drawings of a head in each position, without words."""

from functools import cache

from coachbot.programme.positions import Position
from coachbot.voice.head import head
from coachbot.voice.svg import document, group

WIDE, HIGH = 260, 310


@cache
def drawn(position: Position) -> str:
    """A head as in a mirror, as SVG. The name of the position must stand beside it."""
    return document(WIDE, HIGH, group(head(position).draw(), x=WIDE / 2, y=170))

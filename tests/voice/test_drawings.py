"""The drawings: every one is there, in every language, and left is left."""

import re
import struct

import pytest

from coachbot.programme.positions import Position
from coachbot.voice.drawings import SCENES, drawing, picture
from coachbot.voice.head import TURNS, Head, head
from coachbot.voice.vocabulary import LANGUAGES

ORDER = "order-left-center-up-right-down"


def size(png: bytes) -> tuple[int, int]:
    """Width and height out of the header (PNG specification, ISO/IEC 15948, chunk IHDR)."""
    assert png.startswith(b"\x89PNG\r\n\x1a\n")
    width, height = struct.unpack(">II", png[16:24])
    return int(width), int(height)


@pytest.mark.parametrize("name", [*SCENES, ORDER])
def test_every_picture_is_a_sharp_png_that_telegram_takes(name: str) -> None:
    """A photo may have 10 MB, width and height together at most 10,000, and at most 20 times as long as it is high.

    Telegram Bot API, sendPhoto (from memory).
    """
    png = picture(name, "en")
    width, height = size(png)
    assert min(width, height) >= 400
    assert width + height <= 10_000
    assert max(width, height) / min(width, height) <= 20
    assert len(png) < 10_000_000


@pytest.mark.parametrize("name", [*SCENES, ORDER])
def test_labels_are_in_the_readers_language_and_inside_the_picture(name: str) -> None:
    """The same drawing, other words; no label runs over the edge (half an em a letter is on the wide side)."""
    drawn = {language: drawing(name, language) for language in LANGUAGES}
    assert len(set(drawn.values())) == len(LANGUAGES)
    for svg in drawn.values():
        frame = re.search(r'viewBox="0 0 (\d+) (\d+)"', svg)
        assert frame
        for x, at, words in re.findall(r'<text x="([\d.]+)".*?font-size="([\d.]+)"[^>]*>(.*?)</text>', svg):
            reach = len(words) * float(at) * 0.25
            assert reach <= float(x) <= int(frame[1]) - reach, words


def test_the_child_looks_to_its_own_left_as_in_a_mirror() -> None:
    """Left in the picture is the child's left: the nose points there, and the left hand is there."""
    for position, sign in ((Position.LEFT, -1), (Position.RIGHT, 1)):
        x, _, _ = head(position).at(0, 0)
        assert x * sign > 30
    svg = drawing("position-left", "en")
    hands = {side: float(x) for x, side in re.findall(r'<text x="([\d.]+)"[^>]*>(LEFT|RIGHT) hand<', svg)}
    assert hands["LEFT"] < 350 < hands["RIGHT"]


def test_up_lifts_the_nose_and_down_lowers_it() -> None:
    """On paper smaller y is higher."""
    heights = {position: head(position).at(0, 0)[1] for position in (Position.UP, Position.CENTER, Position.DOWN)}
    assert heights[Position.UP] < heights[Position.CENTER] < heights[Position.DOWN]


def test_up_is_the_smallest_angle() -> None:
    """The head well back opens the airway and is commonly avoided, so no picture must invite to it."""
    angles = {position: abs(turn) + abs(tilt) for position, (turn, tilt) in TURNS.items()}
    assert angles[Position.UP] == min(angle for position, angle in angles.items() if position is not Position.CENTER)


def test_what_is_behind_the_head_is_not_drawn() -> None:
    """The back of the head is out of sight from the front, and in sight from behind."""
    back = [(180.0, 0.0)]
    assert Head().spots(back) == []
    assert len(Head(turn=180).spots(back)) == 1


def test_the_strip_shows_the_nights_order_with_numbers() -> None:
    """As many heads as positions, from left to right."""
    svg = drawing("order-down-left", "es")
    words = re.findall(r">([^<>]+)</text>", svg)
    assert [word for word in words if word in ("1", "2", "Abajo", "Izquierda")] == ["1", "Abajo", "2", "Izquierda"]


@pytest.mark.parametrize("name", ["position-sideways", "order-", "order-left-sideways", "nothing", ""])
def test_an_unknown_drawing_is_refused(name: str) -> None:
    """No empty picture is sent."""
    with pytest.raises(KeyError):
        drawing(name, "en")


def test_a_picture_is_made_once() -> None:
    """A hundred thousand families share a few hundred pictures."""
    assert picture("sip", "en") is picture("sip", "en")

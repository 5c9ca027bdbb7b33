"""What is on each drawing."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from coachbot.programme.positions import Position
from coachbot.voice.catalogue import Catalogue
from coachbot.voice.head import Head, head
from coachbot.voice.svg import (
    ACCENT,
    CLOTH,
    FAINT,
    HAIR,
    INK,
    PAPER,
    SOFT,
    THROAT,
    WATER,
    Point,
    arrow,
    badge,
    box,
    circle,
    document,
    ellipse,
    group,
    line,
    path,
    text,
)


@dataclass(frozen=True, slots=True)
class Words:
    """The labels in one language."""

    catalogue: Catalogue
    language: str

    def __call__(self, name: str) -> str:
        """A label by its id."""
        return self.catalogue.word(f"picture-{name}", self.language)

    def position(self, name: str, position: Position) -> str:
        """A label that depends on a position."""
        return self.catalogue.word(name, self.language, position=position)


Scene = Callable[[Words], str]

DROP = {Position.UP: -4, Position.DOWN: 18}
"""By how much the head sinks or rises as it tilts."""

ARROWS: dict[Position, list[Point]] = {
    Position.LEFT: [(380, 112), (300, 92), (236, 150)],
    Position.RIGHT: [(320, 112), (400, 92), (464, 150)],
    Position.UP: [(462, 360), (480, 322), (466, 280)],
    Position.DOWN: [(466, 280), (480, 322), (462, 360)],
}


def position(where: Position) -> Scene:
    """The child in a mirror, the head in one position, both hands raised and named."""

    def scene(words: Words) -> str:
        way = arrow(ARROWS[where]) if where in ARROWS else ""
        child = _bust() + group(head(where).draw(), x=350, y=255 + DROP.get(where, 0)) + way
        top = text(350, 86, words("mirror"), 20, fill=SOFT)
        title = text(350, 606, words.position("picture-position", where), 30, bold=True)
        return document(700, 630, _mirror() + top + child + _hands(words, where) + title)

    return scene


def order(positions: Sequence[Position]) -> Scene:
    """A night's order as one strip: numbered heads from left to right, each with its name and its left and right."""

    def scene(words: Words) -> str:
        width = 40 + 200 * len(positions)
        title = text(width / 2, 40, words("order"), 26)
        cells = "".join(_cell(words, number, one) for number, one in enumerate(positions, start=1))
        return document(width, 330, title + cells)

    return scene


def _cell(words: Words, number: int, where: Position) -> str:
    left = 20 + 200 * (number - 1)
    middle = left + 100
    frame = box(left + 6, 62, 188, 250, 22, stroke=CLOTH, pen=5)
    face = group(head(where).draw(), x=middle, y=178, scale=0.55)
    sides = text(left + 22, 186, words("left-letter"), 24, fill=SOFT) + text(
        left + 174, 186, words("right-letter"), 24, fill=SOFT
    )
    name = text(middle, 298, words.position("position", where), 30, bold=True)
    return frame + face + sides + badge(left + 30, 88, str(number), radius=20, fill=ACCENT) + name


def row_of_heads() -> str:
    """The five heads side by side, without words."""
    ways = (Position.LEFT, Position.UP, Position.CENTER, Position.DOWN, Position.RIGHT)
    heads = (group(head(one).draw(), x=150 + 280 * place, y=170) for place, one in enumerate(ways))
    return document(1420, 310, "".join(heads))


def _mirror() -> str:
    frame = box(34, 34, 632, 526, 64, stroke=CLOTH, pen=16)
    glints = line([(70, 104), (104, 70)], stroke=CLOTH, width=6) + line([(70, 136), (136, 70)], stroke=CLOTH, width=6)
    return frame + glints


def _bust() -> str:
    shirt = path("M206 552 C208 470 226 436 278 420 C306 450 394 450 422 420 C474 436 492 470 494 552 Z", fill=CLOTH)
    neck = path("M308 340 C308 400 302 408 274 420 M392 340 C392 400 398 408 426 420")
    return shirt + neck


def _hands(words: Words, where: Position) -> str:
    sides = ((134, Position.LEFT, "left"), (566, Position.RIGHT, "right"))
    return "".join(_raised(x, words, name, lit=where is side) for x, side, name in sides)


def _raised(x: float, words: Words, name: str, *, lit: bool) -> str:
    bright, soft = (ACCENT, ACCENT) if lit else (INK, SOFT)
    arm = group(_arm(bright), x=x, y=352, flip=name == "right")
    label = text(x, 266, words(f"{name}-hand"), 19, bold=True, fill=bright)
    return arm + badge(x, 212, words(f"{name}-letter"), fill=soft, radius=24) + label


def _arm(ink: str) -> str:
    """A raised left arm with an open hand, palm to the reader, thumb towards the middle."""
    sleeve = path("M-30 122 H32 L38 200 H-36 Z", fill=CLOTH, stroke=ink)
    fingers = "".join(
        path(f"M{x} 6 V{top} a8.5 8.5 0 0 1 17 0 V6", fill=PAPER, stroke=ink)
        for x, top in ((-35, -24), (-18, -40), (-1, -42), (16, -32))
    )
    palm = path(
        "M-35 4 V40 C-35 66 -22 74 -20 92 V122 H22 V92 C22 74 28 66 36 52 C46 34 60 16 68 0 C74 -11 62 -21 54 -12 "
        "C48 -6 42 4 33 10 V4",
        fill=PAPER,
        stroke=ink,
    )
    return palm + fingers + sleeve


def posture(words: Words) -> str:
    """The child upright on a firm chair, feet flat, an adult close by."""
    floor = line([(40, 520), (680, 520)], stroke=FAINT)
    notes = (
        text(112, 250, words("posture-back"), 22)
        + arrow([(140, 262), (196, 290)], width=5, head=12)
        + text(330, 552, words("posture-feet"), 22)
        + text(590, 552, words("posture-adult"), 22)
    )
    plumb = line([(236, 92), (236, 398)], stroke=ACCENT, width=3)
    title = text(360, 600, words("posture"), 30, bold=True)
    return document(720, 630, floor + _chair() + _sitting() + plumb + _adult() + notes + title)


def _chair() -> str:
    return (
        box(184, 402, 150, 16, 6, fill=HAIR)
        + box(176, 240, 16, 178, 6, fill=HAIR)
        + line([(190, 420), (184, 518)])
        + line([(324, 420), (330, 518)])
    )


def _sitting() -> str:
    legs = path("M214 356 H316 C336 356 342 366 342 384 V500 H306 V398 H214 Z", fill=PAPER)
    shoe = path("M304 500 H344 C366 500 372 510 372 518 H304 Z", fill=CLOTH)
    torso = path("M214 398 V262 C214 236 222 226 238 226 C256 226 268 240 268 266 V398 Z", fill=CLOTH)
    arm = path("M240 258 C248 300 256 330 276 340 L318 344", width=16, stroke=INK) + path(
        "M240 258 C248 300 256 330 276 340 L318 344", width=9, stroke=PAPER
    )
    return legs + shoe + torso + arm + group(_profile(), x=246, y=170)


def _adult() -> str:
    legs = path("M556 356 H454 C434 356 428 366 428 384 V500 H466 V404 H556 Z", fill=PAPER)
    shoe = path("M468 500 H428 C404 500 396 510 396 518 H468 Z", fill=CLOTH)
    torso = path("M562 404 V222 C562 190 548 178 528 178 C506 178 494 196 494 226 V404 Z", fill=CLOTH)
    seat = box(440, 406, 160, 16, 6, fill=HAIR) + line([(452, 424), (446, 518)]) + line([(588, 424), (594, 518)])
    arm = path("M528 216 C520 270 500 306 470 318 L420 322", width=18, stroke=INK) + path(
        "M528 216 C520 270 500 306 470 318 L420 322", width=11, stroke=PAPER
    )
    return seat + legs + shoe + torso + arm + group(_profile(), x=520, y=114, scale=1.12, flip=True)


def _profile() -> str:
    """A head from the side, looking right."""
    neck = path("M-26 40 V66 H8 V44", fill=PAPER)
    face = path(
        "M-8 -58 C28 -60 44 -36 44 -14 L56 8 C58 12 52 14 46 14 C46 22 46 26 44 30 C42 46 28 52 10 50 "
        "C-30 52 -56 28 -56 -6 C-56 -38 -34 -58 -8 -58 Z",
        fill=PAPER,
    )
    hair = path(
        "M44 -18 C20 -22 12 -34 6 -40 C2 -20 -16 -14 -24 -10 C-22 10 -30 30 -40 30 C-56 20 -62 -2 -58 -20 "
        "C-52 -52 -26 -68 0 -64 C26 -62 42 -44 44 -18 Z",
        fill=HAIR,
    )
    eye = ellipse(28, -6, 4.5, 6, fill=INK, width=1)
    return neck + face + hair + eye + path("M42 32 C36 34 30 32 27 28") + ellipse(-14, 2, 8, 13, fill=PAPER)


def tongue(words: Words) -> str:
    """A wide open mouth: the candy far back in the middle of the tongue, not at the tip."""
    face = ellipse(300, 268, 206, 240, fill=PAPER, width=6)
    eyes = "".join(ellipse(x, 150, 13, 17, fill=INK, width=1) for x in (222, 378))
    brows = path("M192 106 Q222 90 252 104 M348 104 Q378 90 408 106", width=5) + path(
        "M284 212 Q300 226 316 212", width=5
    )
    mouth = ellipse(300, 362, 132, 122, fill="#8a5a5a", width=6)
    teeth = path("M194 290 C226 246 374 246 406 290 C376 306 224 306 194 290 Z", fill=PAPER)
    body = path("M204 442 C186 386 226 326 300 326 C374 326 414 386 396 442 C352 500 248 500 204 442 Z", fill=THROAT)
    spots = circle(300, 350, 18, fill=PAPER, stroke=ACCENT, width=7) + circle(300, 456, 16, stroke=INK, width=3)
    cross = path("M289 445 L311 467 M311 445 L289 467", width=3)
    notes = (
        text(556, 306, words("tongue-here"), 30, bold=True, fill=ACCENT)
        + arrow([(520, 304), (420, 300), (334, 342)], width=6, head=15)
        + text(558, 514, words("tongue-not"), 24)
        + line([(512, 504), (324, 460)], width=2.5)
    )
    inside = mouth + teeth + body + spots + cross
    title = text(310, 558, words("tongue"), 30, bold=True)
    return document(640, 580, face + eyes + brows + inside + notes + title)


def sip(words: Words) -> str:
    """A small mouthful, and beside it full cheeks."""
    good = group(Head().draw(), x=190, y=190, scale=0.9) + group(_glass(0.22), x=190, y=380)
    pout = path("M-12 66 C-6 60 6 60 12 66 C6 74 -6 74 -12 66 Z")
    much = group(Head().draw(mouth=pout, puffed=True), x=530, y=190, scale=0.9) + group(_glass(0.92), x=530, y=380)
    marks = (
        path("M272 412 L292 434 L330 384", stroke=ACCENT, width=10)
        + line([(616, 388), (660, 432)], stroke=INK, width=8)
        + line([(660, 388), (616, 432)], stroke=INK, width=8)
    )
    notes = text(190, 500, words("sip-good"), 26, bold=True, fill=ACCENT) + text(530, 500, words("sip-much"), 26)
    divider = line([(360, 70), (360, 500)], stroke=CLOTH, width=4)
    return document(720, 570, good + much + marks + notes + divider + text(360, 548, words("sip"), 30, bold=True))


def _glass(full: float) -> str:
    """A glass, its rim at (0, -40), filled to a part of its height."""
    top = 60 - 96 * full
    half = 30 + 10 * (60 - top) / 100
    water = path(f"M{-half:.1f} {top:.1f} H{half:.1f} L30 60 H-30 Z", fill=WATER, stroke=WATER, width=1)
    return water + path("M-40 -40 L-30 60 H30 L40 -40")


def throat(words: Words) -> str:
    """The way down is wide and soft; beside it, drawn larger, a small candy with room all around."""
    tube = path(
        "M326 352 C332 400 328 440 324 546 H376 C372 440 368 400 374 352 Z", fill=THROAT, stroke=ACCENT, width=3
    )
    child = group(
        _bust() + group(Head().draw(), x=350, y=240) + tube + circle(350, 440, 8, width=3, fill=PAPER), x=-120
    )
    lens = circle(580, 280, 150, fill=PAPER, stroke=CLOTH, width=12) + line([(246, 434), (436, 326)], stroke=CLOTH)
    wall = "18 54 -28 74 -22 124 6 50 36 72 22 124"
    other = "-14 -52 16 -74 22 -124 6 -50 -40 -70 -22 -124"
    walls = path(
        f"M508 156 c{wall} C550 432 610 432 652 404 c{other} C610 128 550 128 508 156 Z", fill=THROAT, stroke=ACCENT
    )
    room = arrow([(546, 280), (502, 280)], width=5, head=13) + arrow([(614, 280), (658, 280)], width=5, head=13)
    candy = circle(580, 280, 36, fill=PAPER) + arrow([(580, 186), (580, 226)], width=6, head=14)
    name = text(580, 470, words("throat-candy"), 24)
    return document(
        760, 630, child + lens + walls + room + candy + name + text(380, 606, words("throat"), 30, bold=True)
    )

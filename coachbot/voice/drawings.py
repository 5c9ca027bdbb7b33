"""The drawings that go with the coach's words, made by code: SVG here, PNG by Typst, labels out of `prompts/`.

Heads are seen from the front as in a mirror, so that the child's left is the picture's left, and both hands are
labelled.
"""

from collections.abc import Callable
from functools import cache, lru_cache

import typst

from coachbot.programme.positions import Position
from coachbot.voice import scenes
from coachbot.voice.catalogue import Catalogue

TEMPLATE = b"""
#set page(width: auto, height: auto, margin: 0pt)
#image(bytes(sys.inputs.svg), format: "svg")
"""

PPI = 144
"""Two picture points for each unit of a drawing, to be sharp on phones."""

SCENES: dict[str, Callable[[scenes.Words], str]] = {
    **{f"position-{position}": scenes.position(position) for position in Position},
    "posture": scenes.posture,
    "tongue": scenes.tongue,
    "sip": scenes.sip,
    "throat": scenes.throat,
}


@lru_cache(maxsize=2048)
def picture(name: str, language: str) -> bytes:
    """A drawing as PNG.

    `name` is ``position-left`` and so on, ``order-left-up-...`` (a night's order as one strip), ``posture``,
    ``tongue``, ``sip`` or ``throat``.

    Raises:
        KeyError: there is no such drawing or language.
    """
    return png(drawing(name, language))


def drawing(name: str, language: str) -> str:
    """The same as SVG."""
    words = scenes.Words(labels(), language)
    kind, _, rest = name.partition("-")
    if kind == "order" and rest and set(rest.split("-")) <= set(Position):
        return scenes.order([Position(one) for one in rest.split("-")])(words)
    return SCENES[name](words)


def png(svg: str) -> bytes:
    """SVG to PNG, with none but the fonts that Typst brings along."""
    made = typst.compile(TEMPLATE, format="png", ppi=PPI, ignore_system_fonts=True, sys_inputs={"svg": svg})
    assert isinstance(made, bytes), "one drawing is one page"
    return made


@cache
def labels() -> Catalogue:
    """The project's own texts, of which pictures take their labels."""
    return Catalogue.load()

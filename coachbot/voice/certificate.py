"""The child's certificate: a picture to print or to show."""

import unicodedata
from functools import lru_cache
from importlib.resources import files

import typst

from coachbot.voice.drawings import PPI, labels
from coachbot.voice.scenes import row_of_heads

SCRIPTS = ("LATIN", "GREEK", "CYRILLIC", "COMBINING")
"""Letters that the fonts which Typst brings along can set."""

TEMPLATE = files("coachbot.voice").joinpath("certificate.typ").read_bytes()


@lru_cache(maxsize=256)
def certificate(name: str, nights: int, language: str) -> bytes:
    """A certificate as PNG.

    Args:
        name: what the child is called by. Nothing in it is taken as markup. Where the fonts have no letters for it, a
            line is left to write it on by hand.
        nights: how many nights were practised.
        language: ``en``, ``es`` or ``fr``.

    Raises:
        KeyError: there is no such language.
    """
    catalogue = labels()
    words = {part: catalogue.word(f"certificate-{part}", language) for part in ("title", "for", "praise")}
    body = catalogue.word("certificate-body", language, nights=nights)
    data = {**words, "body": body, "name": printable(name), "heads": row_of_heads(), "language": language}
    made = typst.compile(TEMPLATE, format="png", ppi=PPI, ignore_system_fonts=True, sys_inputs=data)
    assert isinstance(made, bytes), "a certificate is one page"
    return made


def printable(name: str) -> str:
    """As much of a name as can be set, in one line; empty if nothing can."""
    letters = unicodedata.normalize("NFC", " ".join(name.split()))
    kept = "".join(letter for letter in letters if letter.isascii() or unicodedata.name(letter, "").startswith(SCRIPTS))
    return " ".join(kept.split())

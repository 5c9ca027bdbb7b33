"""Promises of finding causes in notes."""

import pytest

from coachbot.reading import Cause, causes


@pytest.mark.parametrize(
    ("lang", "text", "expected"),
    [
        ("en", "she was slouching on the sofa", [Cause.SLOUCH]),
        ("en", "the mint was on the tip of her tongue", [Cause.FRONT]),
        ("en", "too much water, it floats around", [Cause.WATER]),
        ("en", "he chewed it", [Cause.BITE]),
        ("en", "a bit scared and tired", [Cause.FEAR, Cause.TIRED]),
        ("en", "wasn't scared but she gagged", [Cause.GAG]),
        ("en", "not tired at all", []),
        ("en", "no gagging tonight", []),
        ("en", "tastes yucky", [Cause.TASTE]),
        ("en", "she loved it", []),
        ("en", "lying down when she did it", [Cause.SLOUCH]),
        ("es", "estaba encorvado", [Cause.SLOUCH]),
        ("es", "en la punta de la lengua", [Cause.FRONT]),
        ("es", "demasiada agua", [Cause.WATER]),
        ("es", "lo mordió porque tenía miedo", [Cause.BITE, Cause.FEAR]),
        ("es", "no tenía miedo pero estaba cansada", [Cause.TIRED]),
        ("es", "sabe mal y tuvo arcadas", [Cause.TASTE, Cause.GAG]),
        ("fr", "il était affalé sur le canapé", [Cause.SLOUCH]),
        ("fr", "sur le bout de la langue", [Cause.FRONT]),
        ("fr", "trop d'eau", [Cause.WATER]),
        ("fr", "elle l'a croqué", [Cause.BITE]),
        ("fr", "pas peur mais fatiguée", [Cause.TIRED]),
        ("fr", "elle n'aime pas le goût, haut-le-coeur", [Cause.TASTE, Cause.GAG]),
    ],
)
def test_a_note_names_its_causes(lang: str, text: str, expected: list[Cause]) -> None:
    """Causes are found by their words, not where they are denied just before."""
    assert causes(text, lang=lang) == tuple(expected)

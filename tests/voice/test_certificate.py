"""The certificate takes any name as it stands."""

import pytest

from coachbot.voice.certificate import certificate, printable


@pytest.mark.parametrize(
    "name",
    [
        "Ana",
        "Jean-Loïc Ñandú O'Brien",
        "#panic[*x*] $a_1$ @ref <label> \\ `raw` // comment",
        '"); #eval("1")',
        "W" * 40,
        "Maximiliana Alexandrina Featherstonehaug",
        "李小龙",
        "",
    ],
)
@pytest.mark.parametrize("language", ["en", "es", "fr"])
def test_a_certificate_can_be_made_for_any_name(name: str, language: str) -> None:
    """Markup, length, accents and letters that no font has: each gives one picture."""
    assert certificate(name, 14, language).startswith(b"\x89PNG")


def test_each_name_gives_its_own_picture() -> None:
    """The name is really on it, also when it looks like markup."""
    made = {certificate(name, 14, "en") for name in ("Ana", "*Ana*", "Anna", "#Ana")}
    assert len(made) == 4


@pytest.mark.parametrize(
    ("name", "kept"),
    [
        ("Zoë", "Zoë"),
        ("Zoe\u0308", "Zoë"),
        ("  Ana\n María ", "Ana María"),
        ("Мария", "Мария"),
        ("Mia 🌟", "Mia"),
        ("李小龙", ""),
    ],
)
def test_only_letters_that_can_be_set_are_printed(name: str, kept: str) -> None:
    """No empty boxes: what the fonts lack is left out, and an empty name leaves a line to be written on."""
    assert printable(name) == kept


def test_the_number_of_nights_is_shown() -> None:
    """One night reads otherwise than many."""
    assert certificate("Ana", 1, "en") != certificate("Ana", 14, "en")

"""The invented families: played by the very service, written down so that a person can read it aloud."""

import re
from itertools import pairwise

import pytest

from coachbot.cli import main
from coachbot.programme.positions import Position
from coachbot.rehearsal import families
from coachbot.rehearsal.families import FAMILIES, TAPS, WAIT
from coachbot.rehearsal.stage import BACKUP, CLINICIAN
from coachbot.triage import Level, assess


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """The transcripts of two families, one of them Spanish-speaking, as the command writes them."""
    folder = tmp_path_factory.mktemp("transcripts") / "new"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(families, "FAMILIES", {name: FAMILIES[name] for name in ("forgetful", "spanish")})
        assert main(["voice", "transcripts", str(folder)]) == 0
    return {path.stem: path.read_text(encoding="utf-8") for path in folder.glob("*.md")}


def test_a_family_is_heard_from_the_invitation_to_the_end(written: dict[str, str]) -> None:
    """All fourteen nights, the missed ones among them, pictures and buttons in brackets, and the certificate."""
    told = written["forgetful"]
    assert "> Do you agree?\n>\n> [I agree]  \n> [No, thank you]" in told
    assert all(f"Night {night} of 14 for Tomas." in told for night in range(1, 15))
    assert "[picture: order-" in told
    assert "[1] [2] [3] [4] [5]" in told
    assert re.search(r"\*\*\d\d:\d\d father\*\*\n\n> sorry, we forgot yesterday. 3\n", told)
    assert "[picture: certificate]" in told


def test_every_family_is_played_in_its_own_language(written: dict[str, str]) -> None:
    """The Spanish-speaking family reads nothing in English; who is who stands there in Spanish too."""
    told = re.split(r"\n\n(?=\*\*)", written["spanish"])
    family = [block for block in told if CLINICIAN not in block.partition("\n")[0] and BACKUP not in block]
    assert any(block.startswith("**19:30** a madre") for block in family)
    assert not re.search(r"\b(?:the|your|tonight|night|candy)\b", "\n".join(family))


def test_time_only_goes_on(written: dict[str, str]) -> None:
    """What was said stands in the order in which it was said."""
    for told in written.values():
        days = re.findall(r"^## (\d{4}-\d\d-\d\d)$", told, re.MULTILINE)
        assert days == sorted(set(days))
        for day in re.split(r"^## ", told, flags=re.MULTILINE)[1:]:
            times = re.findall(r"^\*\*(\d\d:\d\d)", day, re.MULTILINE)
            assert all(earlier <= later for earlier, later in pairwise(times))


@pytest.mark.parametrize("name", FAMILIES)
def test_only_the_worried_families_alarm_anybody(name: str) -> None:
    """Ordinary replies pass triage; being scared, gagging or a no reach the clinician, and nothing is grave."""
    family = FAMILIES[name]
    found = [
        assess(words, lang=family.language, sender=family.phones[who]).level
        for evening in family.evenings.values()
        for who, words in (line.split(": ", 1) for line in evening)
        if who in family.phones
    ]
    assert max(found, default=Level.NONE) <= (Level.CONCERN if name in ("scared", "spanish") else Level.NONE)


@pytest.mark.parametrize("name", FAMILIES)
def test_every_line_of_a_family_can_be_played(name: str) -> None:
    """Each names a phone on stage or how long to wait; the child has a liking for every position."""
    family = FAMILIES[name]
    assert set(family.likes) == set(Position)
    for line in (line for evening in family.evenings.values() for line in evening):
        who, words = line.split(": ", 1)
        assert who in {*family.phones, CLINICIAN, BACKUP} or (who == WAIT and words.isdecimal())
        assert words == TAPS or who not in (CLINICIAN, BACKUP)

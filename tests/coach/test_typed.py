"""Every button has a typed twin: words that do to the case what the button does, in each language."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

import pytest

from coachbot.coach.case import Case
from coachbot.reading import Word
from helpers.conversation import PARENT, Conversation, invited

YES = {"en": "YES", "es": "SI", "fr": "OUI"}
NO = {"en": "NO", "es": "NO", "fr": "NON"}
NEXT = {"en": "NEXT", "es": "SIGUIENTE", "fr": "SUIVANT"}
SKIP = {"en": "SKIP", "es": "SALTAR", "fr": "SAUTER"}
NOT_DOWN = {"en": "NO GO", "es": "NO BAJO", "fr": "PAS DESCENDU"}
NONE = {"en": "NONE", "es": "NINGUNA", "fr": "AUCUNE"}
POSITIONS = {
    "center": {"en": "CENTER", "es": "CENTRO", "fr": "CENTRE"},
    "left": {"en": "LEFT", "es": "IZQUIERDA", "fr": "GAUCHE"},
    "right": {"en": "RIGHT", "es": "DERECHA", "fr": "DROITE"},
    "up": {"en": "UP", "es": "ARRIBA", "fr": "HAUT"},
    "down": {"en": "DOWN", "es": "ABAJO", "fr": "BAS"},
}
MARKS = {
    Word.NOT_DOWN.value: NOT_DOWN,
    Word.SKIPPED.value: SKIP,
    **{str(rating): dict.fromkeys(YES, str(rating)) for rating in range(1, 6)},
}
"""The words that the text messages name, which `tests/voice` holds the texts to."""


def invited_in(language: str) -> Conversation:
    """A family that was asked to agree."""
    talk = Conversation(replace(invited(), language=language))
    talk.joins()
    contacts = tuple(replace(contact, language=language) for contact in talk.case.contacts)
    talk.case = replace(talk.case, contacts=contacts)
    return talk


def lesson(language: str) -> Conversation:
    """A family at the first step of the lesson."""
    return invited_in(language).presses("consent:agree").at("19:30")


def candy(language: str) -> Conversation:
    """A family that has the lesson's candy before it."""
    talk = lesson(language)
    for step in range(9):
        talk.presses(f"next:{step}")
    return talk


def night(language: str) -> Conversation:
    """A family whose first night has begun."""
    return candy(language).presses("candy:down").at("19:30")


def best(language: str) -> Conversation:
    """The same, asked for the best position."""
    talk = night(language)
    for position in talk.case.nights[0].order:
        talk.presses(f"rate:1:{position}:4")
    return talk


def note(language: str) -> Conversation:
    """The same, asked for a note."""
    return best(language).presses("best:1:none")


def erasing(language: str) -> Conversation:
    """A family that is asked whether it is sure."""
    return night(language).says({"en": "DELETE", "es": "BORRAR", "fr": "EFFACER"}[language])


def watching(language: str) -> Conversation:
    """A family that is asked for signs on the day after an alarm."""
    choking = {"en": "she is choking", "es": "se esta ahogando", "fr": "elle s'etouffe"}[language]
    talk = night(language).says(choking)
    while not any(button.data.startswith("watch:") for button in talk.buttons()):
        talk.at("12:00")
    return talk


SCENES = (invited_in, lesson, candy, night, best, note, erasing, watching)


@dataclass(frozen=True)
class Twin:
    """A button in a scene, and the words that stand for it."""

    scene: Callable[[str], Conversation]
    data: str
    words: dict[str, str]

    def __str__(self) -> str:
        return self.data


def typed(data: str) -> dict[str, str]:
    """The words for a button. A button without any is a fault."""
    name, *_, last = data.split(":")
    plain = {"agree": YES, "decline": NO, "down": YES, "not-down": NO, "later": SKIP, "yes": YES, "no": NO}
    tables = {"next": {last: NEXT}, "rate": MARKS, "best": POSITIONS | {"none": NONE}, "note": {last: NO}}
    return tables.get(name, plain)[last]


def twins() -> Iterator[Twin]:
    """All buttons that a parent is ever given: those under each question."""
    for scene in SCENES:
        for data in given(scene("en")):
            yield Twin(scene, data, typed(data))


def given(talk: Conversation) -> list[str]:
    """What the buttons stand for that the parent was given last."""
    return [button.data for say in talk.heard if say.to == PARENT for row in say.buttons for button in row]


def settled(case: Case) -> Case:
    """The case without what cannot be alike: a press and a reply count unread words and contacts differently."""
    return replace(case, unread=0)


@pytest.mark.parametrize("language", ["en", "es", "fr"])
@pytest.mark.parametrize("twin", list(twins()), ids=str)
def test_words_do_what_the_button_does(twin: Twin, language: str) -> None:
    """The case afterwards is the same, and so are the texts that the family hears."""
    pressed, said = twin.scene(language), twin.scene(language)
    pressed.presses(twin.data)
    said.says(twin.words[language])

    assert settled(said.case) == settled(pressed.case)
    assert said.texts(PARENT) == pressed.texts(PARENT)

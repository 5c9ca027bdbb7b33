"""What families must never have misread: one worked sentence for each thing that the levels are defined by."""

import pytest

from coachbot.triage import Level, assess


def level(text: str, lang: str = "en", sender: str = "parent") -> Level:
    """The level alone."""
    return assess(text, lang=lang, sender=sender).level


@pytest.mark.parametrize(
    "text",
    ["4 3 5 2 4", "left was best", "she spat it out", "tastes yucky", "did not go down", "make it 7:30", "ok", "",
     "we are away till monday", "the blue one was best", "nearly died laughing", "used to choke on pills", "🎉🎉"],
)  # fmt: skip
def test_everyday_replies_raise_nothing(text: str) -> None:
    """Ratings, times, absences, jokes, history."""
    assert level(text) == Level.NONE


@pytest.mark.parametrize(
    ("lang", "text"),
    [
        ("en", "i cant breev"),
        ("en", "she's making no sound and pointing at her neck"),
        ("en", "his mouth looks like a smurf's"),
        ("en", "he went floppy like a rag doll"),
        ("en", "something that wasn't candy, the little round thing from the remote"),
        ("en", "HES CHOKIGN"),
        ("en", "h e l p"),
        ("en", "heeeelp"),
        ("en", "he swallowed the remote battery"),
        ("es", "se tragó la pila del control"),
        ("es", "se tragó la pila del juguete"),
        ("fr", "il a avalé la pile de la télécommande"),
        ("es", "no puede respirar"),
        ("es", "i cant breathe"),
        ("es", "mi hija is choking"),
        ("fr", "jarive pa a respiré"),
        ("fr", "elle s’étouffe"),
        ("fr", "je veux mourir"),
    ],
)
def test_danger_to_life_is_an_emergency_however_it_is_said(lang: str, text: str) -> None:
    """Direct, indirect, by ear, mistyped, and in another language than the case's."""
    assert level(text, lang, "child") == Level.EMERGENCY


@pytest.mark.parametrize(
    "text",
    ["didn't go down and now it hurts and she keeps coughing", "every breath whistles",
     "it feels like there's a rock sitting in my chest since last night", "I had to sit on him to get it in",
     "blood in sputum", "persistent cough", "noisy breathing", "hoarse since the candy", "drooling", "chest pain",
     "fever since she choked"],
)  # fmt: skip
def test_warning_signs_after_an_episode_are_urgent(text: str) -> None:
    """The list that health services give out of signs after a foreign body in the airway (seen in secondary sources).

    Persistent cough, wheeze, noisy breathing, fever, voice change, drooling, pain, blood in sputum.
    """
    assert level(text) >= Level.URGENT


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("HELP", Level.NONE),
        ("help?", Level.NONE),
        ("help!", Level.EMERGENCY),
        ("please help", Level.EMERGENCY),
        ("help me", Level.EMERGENCY),
        ("HELP HELP", Level.EMERGENCY),
        ("help he is choking", Level.EMERGENCY),
        ("STOP", Level.NONE),
        ("make it stop", Level.CONCERN),
        ("we had to stop he was coughing", Level.CONCERN),
    ],
)
def test_carriers_keywords_do_not_hide_distress(text: str, expected: Level) -> None:
    """Words that carriers reserve (CTIA Messaging Principles: HELP, STOP) are requests alone, and signs with more."""
    assert level(text) >= expected
    assert expected != Level.NONE or level(text) == Level.NONE


@pytest.mark.parametrize(
    ("lang", "text"),
    [
        ("en", "delete everything you have about us"),
        ("en", "we want to stop the programme"),
        ("en", "please stop texting me"),
        ("en", "show me the lesson again"),
        ("en", "we are away for 3 days"),
        ("en", "grandma baked a cake"),
        ("en", "thank you for all"),
        ("es", "borra todo lo que tienen de nosotros"),
        ("es", "mi hija tiene 7"),
        ("es", "la abuela hizo un pastel"),
        ("fr", "NON"),
        ("fr", "on est de retour"),
        ("fr", "je sais pas"),
        ("fr", "montrez-moi la leçon encore"),
    ],
)
def test_requests_and_chatter_alarm_nobody(lang: str, text: str) -> None:
    """What families ask of the programme, and what they tell between nights, must not stop practice."""
    assert level(text, lang) == Level.NONE


def test_the_worst_thing_in_a_reply_decides() -> None:
    """Ratings and good news around a sign change nothing, wherever it stands."""
    assert level("5 5 4 3 5 great night. she turned blue. see you tomorrow") == Level.EMERGENCY
    assert level("all good! " * 500 + "he cant breathe") == Level.EMERGENCY


def test_a_decision_names_the_words_and_the_rule() -> None:
    """Explainable to the clinician."""
    found = assess("All fine but then she TURNED BLUE", lang="en", sender="parent")
    assert found.evidence == ("TURNED BLUE",)
    assert found.rule == "en.colour"
    assert found.category == "colour"


def test_an_unknown_sender_or_language_is_refused() -> None:
    """The message says what may stand there."""
    with pytest.raises(ValueError, match="neither parent nor child"):
        assess("hi", lang="en", sender="dog")
    with pytest.raises(ValueError, match="en, es, fr"):
        assess("hi", lang="xx", sender="parent")

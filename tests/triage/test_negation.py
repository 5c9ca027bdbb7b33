"""Negation after NegEx, against the published algorithm and the misfires that are known of it.

Source: Chapman, Bridewell, Hanbury, Cooper, Buchanan, "A simple algorithm for identifying negated findings and diseases
in discharge summaries", J Biomed Inform 34(5):301-310 (2001), doi 10.1006/jbin.2001.1029; the classes of triggers are
those of its published trigger list. The everyday sentences are our own.
"""

import pytest

from coachbot.triage import Level, assess
from coachbot.triage.signs import signs
from coachbot.triage.words import split


def kept(text: str) -> list[str]:
    """The words of the signs that keep their weight by the English rules alone."""
    words = split(text)
    return [words.written(hit.first, hit.last) for hit in signs(words, "en").kept]


@pytest.mark.parametrize(
    "text",
    [
        "no choking tonight",
        "without gagging",
        "denies coughing",
        "absence of wheezing",
        "no sign of choking",
        "never had a cough",
        "free of wheezing",
        "no cough no fever",
        "coughing was ruled out",
        "choking is unlikely",
        "she didnt choke",
        "she did not choke or cough",
    ],
)
def test_each_class_of_trigger_takes_the_weight_from_the_sign_that_it_reaches(text: str) -> None:
    """Pre-negation and post-negation triggers, and the texting forms without an apostrophe."""
    assert kept(text) == []


@pytest.mark.parametrize("between", range(6))
def test_a_trigger_reaches_over_five_words_at_most(between: int) -> None:
    """Five words may stand between trigger and sign (the sign can be the sixth)."""
    text = " ".join(["no", *["nice"] * between, "wheezing"])
    assert kept(text) == []


def test_a_trigger_does_not_reach_over_six_words() -> None:
    """With six words between them the sign stands."""
    assert kept("no " + "nice " * 6 + "wheezing") == ["wheezing"]


@pytest.mark.parametrize("ender", ["but", "however", "yet", "though", "although", "still", "aside from", "except"])
def test_a_terminating_word_ends_the_reach(ender: str) -> None:
    """The start of the published list of terminating words."""
    assert any("wheezing" in sign for sign in kept(f"no problem {ender} wheezing"))


@pytest.mark.parametrize(
    ("text", "sign"),
    [
        ("not choking but coughing a lot", "coughing"),
        ("she did not choke, she turned blue", "turned blue"),
        ("not only gagged but couldnt breathe", "couldnt breathe"),
        ("no, he choked", "choked"),
        ("no he choked", "choked"),
        ("never again, he choked", "choked"),
        ("cant breathe", "cant breathe"),
        ("not sure if she choked", "choked"),
        ("no choking but her lips look funny", "lips look funny"),
    ],
)
def test_negation_never_silences_a_sign_elsewhere(text: str, sign: str) -> None:
    """Pseudo-triggers, an answering "no", and signs that hold their own negation."""
    assert any(sign in found for found in kept(text)), kept(text)


def test_without_difficulty_is_good_news_although_negex_lists_it_as_no_negation() -> None:
    """`without difficulty` is one of the sixteen published pseudo-negations; here it must not raise anything."""
    assert assess("swallowed without difficulty", lang="en", sender="parent").level == Level.NONE


@pytest.mark.parametrize("text", ["choking resolved", "choking has resolved"])
def test_what_resolved_did_happen(text: str) -> None:
    """`resolved` is a published pre-negation trigger; a choke that resolved is still a choke."""
    assert assess(text, lang="en", sender="parent").level >= Level.URGENT


@pytest.mark.parametrize(
    ("lang", "text"),
    [
        ("es", "nada de tos"),
        ("es", "no tosió ni lloró"),
        ("es", "sin arcadas"),
        ("fr", "pas de toux"),
        ("fr", "elle n'a pas pleuré"),
        ("fr", "aucune toux"),
    ],
)
def test_negation_works_in_spanish_and_french(lang: str, text: str) -> None:
    """The same classes of trigger in the other two languages."""
    assert assess(text, lang=lang, sender="parent").level == Level.NONE


@pytest.mark.parametrize(
    ("lang", "text"),
    [("es", "no se atragantó, se puso azul"), ("fr", "pas étouffée mais ses lèvres sont bleues")],
)
def test_negation_elsewhere_silences_nothing_in_spanish_and_french(lang: str, text: str) -> None:
    """The sign after the negated one stands."""
    assert assess(text, lang=lang, sender="parent").level == Level.EMERGENCY

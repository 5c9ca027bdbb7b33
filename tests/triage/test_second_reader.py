"""The second reader: its weights are those of the sentences it ships with, and it can only raise a level."""

import random
from importlib import resources
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

import numpy as np
import pytest

from coachbot.triage import Level, assess
from coachbot.triage.families import families
from coachbot.triage.second_reader import second_reader
from coachbot.triage.signs import signs
from coachbot.triage.words import split

HERE = Path(__file__).parent
_SPEC = spec_from_file_location("train_second_reader", HERE / "train_second_reader.py")
assert _SPEC is not None
assert _SPEC.loader is not None
training = module_from_spec(_SPEC)
_SPEC.loader.exec_module(training)
SHIPPED = np.load(str(resources.files("coachbot.triage") / "second_reader.npz"))


replies = training.records


def test_the_weights_that_ship_are_those_of_these_sentences() -> None:
    """Whoever edits the training script or a sentence must train again."""
    assert bytes(SHIPPED["source"]).decode() == training.source_checksum()


def test_the_same_dice_draw_the_same_sentences() -> None:
    """Training can be repeated: every draw is seeded."""
    pattern = "(she|he|my son) is (coughing|wheezing|gasping) (now|tonight)"
    assert training.drawn(pattern, 5, random.Random(1)) == training.drawn(pattern, 5, random.Random(1))


def test_scoring_without_a_numerical_package_gives_what_numpy_gives() -> None:
    """The packed integers against a plain matrix product over the same features."""
    words = ["she", "is", "making", "no", "sound", "and", "pointing"]
    row = training.matrix([words]).toarray()[0]
    scores = row @ (SHIPPED["weights"].astype(float) * SHIPPED["scale"][0]) + SHIPPED["start"]
    expected = np.exp(scores - scores.max())
    assert second_reader().chances(words) == pytest.approx(expected / expected.sum(), abs=1e-4)


def test_it_never_lowers_what_the_rules_found() -> None:
    """Over the development set, the level is never below that of the worst firm rule."""
    for reply in replies("development.jsonl")[::3]:
        kept = signs(split(reply["text"]), reply["lang"]).kept
        by_rules = max((hit.meaning.level for hit in kept if hit.meaning.firm), default=Level.NONE)
        assert assess(reply["text"], lang=reply["lang"], sender=reply["sender"]).level >= by_rules


def test_no_held_back_reply_is_among_the_training_sentences() -> None:
    """The held-back third stays honest."""
    trained = training.not_held_back(training.examples(random.Random(2026)) + training.development())
    assert {e.text for e in trained}.isdisjoint(r["text"] for r in replies("held_back.jsonl"))


def test_words_of_like_meaning_share_a_family_across_languages() -> None:
    """The families are multilingual."""
    known = families()
    assert known["purple"] == known["morado"]
    assert known["battery"][0] == known["bateria"][0]


@pytest.mark.parametrize("language", ["en", "es", "fr"])
def test_the_development_set_is_met(language: str) -> None:
    """A floor under the levels on the set that all is tuned on: danger is found, everyday replies are left.

    Half of the everyday ones are written to look like danger.
    """
    rows = [r for r in replies("development.jsonl") if r["lang"] == language]
    given = [(r["level"], assess(r["text"], lang=language, sender=r["sender"]).level) for r in rows]
    danger = [level >= Level.URGENT for wanted, level in given if wanted in ("emergency", "urgent")]
    everyday = [level == Level.NONE for wanted, level in given if wanted == "none"]
    assert sum(danger) / len(danger) >= 0.98
    assert sum(everyday) / len(everyday) >= 0.9

"""The rules files: they load, they are sound, and a mistake in one is named with its place."""

import re

import pytest

from coachbot.triage.rulebook import LANGUAGES, RulesError, parse, rulebook

_RULE = '[[rule]]\nid = "x"\nlevel = "urgent"\ncategory = "stuck"\npatterns = ["a ~ b"]\n'


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_has_rules_for_the_same_categories(language: str) -> None:
    """A category that one language lacked would be a sign that nobody watches for there."""
    assert {rule.category for rule in rulebook(language).rules} == {rule.category for rule in rulebook("en").rules}


@pytest.mark.parametrize(
    ("source", "message"),
    [
        ("[[rule", "rules/en.toml is not valid TOML"),
        (_RULE.replace('id = "x"\n', ""), "rule 'number 1': 'id' is missing"),
        (_RULE.replace("urgent", "severe"), "rule 'x': level 'severe' is none of"),
        (_RULE.replace("a ~ b", "a <nothing>"), "there is no word list <nothing>"),
        (_RULE.replace("a ~ b", "a ~"), "must begin and end with a word"),
        (_RULE.replace("a ~ b", "a ~x b"), "write ~ or ~ with a number"),
        (_RULE.replace("a ~ b", "a? b?"), "no part that must be there"),
        (_RULE + "colour = 1\n", "unknown field 'colour'"),
        (_RULE + _RULE, "this id is used twice"),
        ('[[context]]\nkind = "negation"\nside = "left"\n', "side 'left' is none of"),
    ],
)
def test_a_mistake_in_a_rules_file_is_named_with_its_place(source: str, message: str) -> None:
    """The message says what is wrong and where."""
    with pytest.raises(RulesError, match=re.escape(message)):
        parse(source, "en")


def test_an_unknown_language_is_refused() -> None:
    """The message names the languages that there are."""
    with pytest.raises(RulesError, match="en, es, fr"):
        rulebook("de")

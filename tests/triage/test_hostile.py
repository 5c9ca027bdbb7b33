"""Hostile replies: any text gets a verdict, and the work grows no faster than the length."""

import sys
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachbot.triage import Assessment, Level, assess

_PIECES = st.sampled_from(
    [
        "no ",
        "choke ",
        "cant ",
        "breathe ",
        "aaaa",
        "\u202e",
        "\x00",
        "🤮",
        "é",
        "'",
        ".",
        "?",
        "\n",
        "العربية ",
        "4️⃣",
        "*",
    ]
)


@given(st.text(max_size=300) | st.lists(_PIECES, max_size=60).map("".join), st.sampled_from(["en", "es", "fr"]))
@settings(max_examples=150)
def test_any_text_gets_a_verdict_with_words_of_its_own(text: str, lang: str) -> None:
    """No text is refused, and a level above none comes with its evidence and rule."""
    found = assess(text, lang=lang, sender="child")
    assert isinstance(found, Assessment)
    assert (found.level > Level.NONE) == bool(found.rule) == bool(found.evidence)


def _calls(text: str) -> int:
    """How many Python function calls the verdict on `text` takes: a measure of work that no other process disturbs."""
    count = 0

    def tick(_frame: object, event: str, _argument: object) -> None:
        nonlocal count
        count += event == "call"

    sys.setprofile(tick)
    try:
        assess(text, lang="en", sender="parent")
    finally:
        sys.setprofile(None)
    return count


@pytest.mark.parametrize(
    "make",
    [
        lambda n: "cant " * (n // 5),
        lambda n: "no " * (n // 3),
        lambda n: "choke no " * (n // 9),
        lambda n: "c " * (n // 2),
        lambda n: "a" * n,
        lambda n: "😭" * n,
        lambda n: "she said that it was not " * (n // 25),
    ],
    ids=["cant", "no", "choke no", "lone letters", "one long word", "emoji", "sentence"],
)
def test_the_work_is_linear_in_the_length(make: Callable[[int], str]) -> None:
    """Four times the length takes at most about four times the calls, up to 10 kB."""
    _calls(make(10_000))
    short, long = _calls(make(2_500)), _calls(make(10_000))
    assert long <= 4.6 * short + 200

"""Promises of the engine that reads replies."""

import json
from pathlib import Path

from coachbot.reading.engine import run, score

GOOD = {"id": "1", "lang": "en", "order": ["left", "up"], "asking": "all", "text": "4 3"}


def test_a_line_in_gives_a_reading_out() -> None:
    """The answer has the id, ratings by position, best, note and unclear."""
    (line,) = run([json.dumps(GOOD)])

    assert json.loads(line) == {
        "id": "1",
        "ratings": {"left": 4, "up": 3},
        "best": None,
        "note": None,
        "unclear": False,
    }


def test_a_bad_line_says_what_to_do_and_the_rest_goes_on() -> None:
    """Each way of being wrong is named in the line's own answer."""
    bad = [
        {**GOOD, "lang": "de"},
        {**GOOD, "order": ["left"]},
        {**GOOD, "order": ["left", "left"]},
        {**GOOD, "order": ["left", "back"]},
        {**GOOD, "order": "left"},
        {**GOOD, "asking": "score"},
        {**GOOD, "text": 4},
        {"id": "1", "lang": "en", "order": ["left", "up"], "asking": "all"},
    ]

    answers = [json.loads(line) for line in run([*map(json.dumps, bad), json.dumps(GOOD), "{"])]

    words = ["en, es, fr", "2 to 5", "different", "center", "list", "best", "text", "missing"]
    assert all(word in answer["error"] for word, answer in zip(words, answers, strict=False))
    assert answers[len(bad)]["ratings"] == {"left": 4, "up": 3}
    assert answers[-1]["id"] is None


def test_the_score_shows_misses_first_and_then_a_table(tmp_path: Path) -> None:
    """A wrong label is shown with what was wanted and got; the table has a row for each language and question."""
    right = {"ratings": {"left": 4, "up": 3}, "best": None, "note": None, "unclear": False}
    wrong = {"ratings": {"left": 1, "up": 3}, "best": None, "note": None, "unclear": False}
    path = tmp_path / "labelled.jsonl"
    path.write_text("\n".join(json.dumps({**GOOD, "expected": expected}) for expected in (right, wrong)))

    lines = score(path).splitlines()

    assert "wanted" in lines[1]
    assert "got" in lines[2]
    assert [line.split()[0] for line in lines[4:]] == ["all", "en", "asking"]
    assert "50.00%" in lines[4]

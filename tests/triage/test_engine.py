"""Triage called alone: lines in, lines out, and the scorer."""

import json
from pathlib import Path

import pytest

from coachbot.triage.engine import run, score


def test_a_bad_line_gives_an_error_and_the_rest_goes_on() -> None:
    """In the order given, each with its id."""
    lines = [
        '{"id": 1, "lang": "en", "sender": "child", "text": "i cant breathe"}',
        "not json",
        "",
        '{"id": 2, "lang": "en", "sender": "child"}',
        '{"id": 3, "lang": "de", "sender": "child", "text": "x"}',
        '{"id": 4, "lang": "en", "sender": "child", "text": 5}',
        "[1]",
        '{"id": 5, "lang": "en", "sender": "parent", "text": "5 5 5"}',
    ]
    out = [json.loads(line) for line in run(lines)]
    assert [line["id"] for line in out] == [1, None, 2, 3, 4, None, 5]
    assert out[0] == {"id": 1, "level": "emergency", "category": "breathing", "evidence": ["cant breathe"]}
    assert "'text' is missing" in out[2]["error"]
    assert "en, es, fr" in out[3]["error"]
    assert "must be text" in out[4]["error"]
    assert out[6] == {"id": 5, "level": "none", "category": "", "evidence": []}


def test_the_score_lists_the_misses_with_the_worst_first(tmp_path: Path) -> None:
    """Then a table for each language and one for all."""
    rows = [
        {"id": "a", "lang": "en", "sender": "parent", "text": "5 5 5", "level": "concern"},
        {"id": "b", "lang": "es", "sender": "parent", "text": "todo bien", "level": "emergency"},
        {"id": "c", "lang": "en", "sender": "parent", "text": "she is choking", "level": "emergency"},
    ]
    file = tmp_path / "labelled.jsonl"
    file.write_text("\n".join(map(json.dumps, rows)), encoding="utf-8")
    lines = score(str(file)).splitlines()
    assert lines[0].split()[:5] == ["emergency", "->", "none", "es", "b:"]
    assert lines[1].split()[:5] == ["concern", "->", "none", "en", "a:"]
    assert [line.split()[0] for line in lines if "exact" in line] == ["en", "es", "all"]


def test_a_file_that_is_not_labelled_is_refused_with_the_line(tmp_path: Path) -> None:
    """The message names the line."""
    file = tmp_path / "labelled.jsonl"
    file.write_text('{"id": "a"}\n', encoding="utf-8")
    with pytest.raises(ValueError, match="line 1"):
        score(str(file))

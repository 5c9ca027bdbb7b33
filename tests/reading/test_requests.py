"""Promises of reading requests."""

import datetime as dt

import pytest

from coachbot.reading import Request, Wish, request


@pytest.mark.parametrize(
    ("lang", "text", "expected"),
    [
        ("en", "make it 7:30", Request(wish=Wish.BEDTIME, at=dt.time(19, 30))),
        ("en", "away for 3 days", Request(wish=Wish.PAUSE, days=3)),
        ("es", "a las 8 y media", Request(wish=Wish.BEDTIME, at=dt.time(20, 30))),
        ("fr", "19h30", Request(wish=Wish.BEDTIME, at=dt.time(19, 30))),
        ("en", "7:30 am", Request(wish=Wish.BEDTIME, at=dt.time(7, 30))),
        ("en", "we had to stop because the water was too cold", None),
    ],
)
def test_a_request_is_the_whole_reply(lang: str, text: str, expected: Request | None) -> None:
    """A wish is heard only where the reply says nothing else."""
    assert request(text, lang=lang) == expected

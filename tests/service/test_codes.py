"""Invitation codes and limits."""

import math
from datetime import UTC, datetime, timedelta

import pytest

from coachbot.service.codes import ALPHABET, GROUPS, find_code, new_code
from coachbot.service.limits import Limit

NOON = datetime(2026, 9, 1, 12, tzinfo=UTC)


def test_a_code_holds_at_least_sixty_random_bits() -> None:
    """13 signs of 5 bits; a thousand of them are all different."""
    assert sum(GROUPS) * math.log2(len(ALPHABET)) >= 60
    assert len({new_code() for _ in range(1000)}) == 1000


def test_the_alphabet_is_that_of_rfc_4648() -> None:
    """Source: RFC 4648, section 6, table 3."""
    assert ALPHABET == "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"


@pytest.mark.parametrize(
    "text",
    ["ABCD-EFGH-JKLM2", "abcd-efgh-jklm2", " ABCD EFGH JKLM2 ", "/start ABCD-EFGH-JKLM2", "/start ABCDEFGHJKLM2"],
)
def test_a_code_is_found_however_it_is_typed(text: str) -> None:
    """Small letters, spaces for dashes, or as a link brings it."""
    assert find_code(text, bare=False) == "ABCD-EFGH-JKLM2"


def test_a_long_word_is_no_code_among_people_who_are_known() -> None:
    """Thirteen letters without dashes are a word there, and a code only from a stranger."""
    assert find_code("uncomfortable", bare=False) is None
    assert find_code("ABCDEFGHJKLM2", bare=True) == "ABCD-EFGH-JKLM2"


@pytest.mark.parametrize("text", ["", "hello", "ABCD-EFGH-JKLM1", "ABCD-EFGH-JKLM2 please", "4 3 5 2 4"])
def test_other_words_are_no_code(text: str) -> None:
    """One sign outside the alphabet, or anything around it."""
    assert find_code(text, bare=True) is None


def test_every_new_code_is_found() -> None:
    """What is printed can be typed back."""
    assert all(find_code(code, bare=False) == code for code in (new_code() for _ in range(200)))


def test_a_limit_counts_within_its_span_and_forgets_old_keys() -> None:
    """Two in an hour for each key; the least lately seen key goes first when there are too many."""
    limit = Limit(2, timedelta(hours=1), keys=2)
    assert [limit.allows("a", NOON) for _ in range(3)] == [True, True, False]
    assert limit.allows("a", NOON + timedelta(hours=1))

    limit.allows("b", NOON)
    limit.allows("c", NOON)
    assert limit.allows("a", NOON)


def test_a_clock_set_back_locks_nobody_out() -> None:
    """What was counted in a time that has not come yet counts no more."""
    limit = Limit(2, timedelta(hours=1))
    assert [limit.allows("a", NOON + timedelta(days=1)) for _ in range(3)] == [True, True, False]

    assert limit.allows("a", NOON)

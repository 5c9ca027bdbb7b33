"""Local bedtimes into instants, over the days on which clocks change. Values: IANA tzdata 2026f, recomputed."""

from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise

import pytest

from coachbot.bootstrap import StaleZonesError, check_zones
from coachbot.programme.zones import instant, local, zone


@pytest.mark.parametrize(
    ("key", "hours"),
    [
        ("America/Edmonton", -6), ("America/Vancouver", -7), ("America/Winnipeg", -5), ("America/Inuvik", -6),
        ("America/Havana", -4), ("Africa/Casablanca", 0), ("America/Denver", -7), ("America/Regina", -6),
    ],
)  # fmt: skip
def test_the_zones_of_december_2026_are_those_of_the_package(key: str, hours: int) -> None:
    """Source: IANA releases 2026b to 2026f; a stale system copy says an hour less or more."""
    offset = datetime(2026, 12, 1, 19, 30, tzinfo=zone(key)).utcoffset()

    assert offset == timedelta(hours=hours)


def test_a_fortnight_over_the_autumn_change_keeps_its_wall_clock() -> None:
    """New York from 25 October 2026: night 7 to night 8 is 25 hours."""
    nights = [
        instant(date(2026, 10, 25) + timedelta(days=night), time(19, 30), "America/New_York") for night in range(14)
    ]

    assert [after - before for before, after in pairwise(nights)][6] == timedelta(hours=25)


def test_a_fortnight_over_the_spring_change_keeps_its_wall_clock() -> None:
    """New York from 1 March 2026: night 7 is 00:30Z on 8 March, night 8 is 23:30Z the same day."""
    nights = [
        instant(date(2026, 3, 1) + timedelta(days=night), time(19, 30), "America/New_York") for night in range(14)
    ]

    assert nights[6] == datetime(2026, 3, 8, 0, 30, tzinfo=UTC)
    assert nights[7] == datetime(2026, 3, 8, 23, 30, tzinfo=UTC)


def test_edmonton_has_no_change_in_november_2026() -> None:
    """Night 8 of a fortnight from 25 October is 02 November 01:30Z."""
    assert instant(date(2026, 11, 1), time(19, 30), "America/Edmonton") == datetime(2026, 11, 2, 1, 30, tzinfo=UTC)


@pytest.mark.parametrize(
    ("key", "hour", "minute"),
    [("Asia/Kolkata", 14, 0), ("Asia/Kathmandu", 13, 45), ("America/St_Johns", 23, 0), ("Pacific/Chatham", 5, 45)],
)
def test_half_and_quarter_hours(key: str, hour: int, minute: int) -> None:
    """19:30 on 8 December 2026."""
    found = instant(date(2026, 12, 8), time(19, 30), key)

    assert (found.hour, found.minute) == (hour, minute)


def test_a_time_that_is_skipped_counts_after_the_change() -> None:
    """02:30 on 8 March 2026 in New York is 07:30Z and reads back 03:30 (PEP 495)."""
    found = instant(date(2026, 3, 8), time(2, 30), "America/New_York")

    assert found == datetime(2026, 3, 8, 7, 30, tzinfo=UTC)
    assert local(found, "America/New_York").time() == time(3, 30)


def test_of_a_time_that_comes_twice_the_first_is_taken() -> None:
    """01:30 on 1 November 2026 in New York is 05:30Z."""
    assert instant(date(2026, 11, 1), time(1, 30), "America/New_York") == datetime(2026, 11, 1, 5, 30, tzinfo=UTC)


@pytest.mark.parametrize("key", ["Mars/Olympus", "", "../etc/passwd", "Europe/", "Europe", "tzdata.zi"])
def test_what_is_no_zone_is_refused(key: str) -> None:
    """Whatever it is, no file outside the zones is opened."""
    with pytest.raises(ValueError, match="no IANA time zone"):
        zone(key)


def test_stale_zones_stop_the_start(monkeypatch: pytest.MonkeyPatch) -> None:
    """An hour off in Edmonton is found before any family is asked at the wrong time."""
    check_zones()
    with monkeypatch.context() as patch:
        patch.setattr("coachbot.bootstrap.zone", lambda _: zone("Etc/GMT+7"))
        with pytest.raises(StaleZonesError):
            check_zones()

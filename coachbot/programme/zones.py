"""Local bedtimes into instants: IANA zones out of the `tzdata` package, never the system's copy, which may be stale."""

from datetime import UTC, date, datetime, time
from functools import cache
from importlib.resources import files
from zoneinfo import ZoneInfo


@cache
def zone(key: str) -> ZoneInfo:
    """The zone named `key`, for example ``America/New_York``.

    Raises:
        ValueError: if the key names no IANA zone.
    """
    path = files("tzdata").joinpath("zoneinfo")
    parts = key.split("/")
    try:
        if not all(part and part.replace("_", "").replace("-", "").replace("+", "").isalnum() for part in parts):
            raise FileNotFoundError(key)
        with path.joinpath(*parts).open("rb") as stream:
            return ZoneInfo.from_file(stream, key=key)
    except (OSError, ValueError) as error:
        raise ValueError(f"{key!r} is no IANA time zone: give one like Europe/Paris") from error


def instant(day: date, at: time, key: str) -> datetime:
    """The UTC instant of wall-clock time `at` on local `day`.

    A time that the clocks skip counts as that long after the change (02:30 is read as 03:30); of a time that comes
    twice the first is taken (PEP 495, fold 0).
    """
    return datetime.combine(day, at, tzinfo=zone(key)).astimezone(UTC)


def local(now: datetime, key: str) -> datetime:
    """The wall-clock time of the instant `now` in the zone."""
    return now.astimezone(zone(key))

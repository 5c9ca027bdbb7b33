"""Forms read field by field: each fault is told beside its field, all of them together, and what was typed stays."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, time
from functools import cache
from importlib.resources import files
from typing import Concatenate, ParamSpec, TypeVar

from coachbot.desk.visit import FormError, Visit
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy, CandyKind
from coachbot.programme.zones import zone

P = ParamSpec("P")
T = TypeVar("T")
U = TypeVar("U")

LONGEST = 1500
"""Signs of a note or message: a message to a family stays within what its channel takes."""


@dataclass(frozen=True, slots=True)
class Fault:
    """What keeps a form from being accepted: the field it is about, and the words that say so."""

    field: str
    said: str


@dataclass(slots=True)
class Faults:
    """Collects the faults of one form."""

    visit: Visit
    found: list[Fault] = field(default_factory=list)

    def take(
        self, name: str, otherwise: U, read: Callable[Concatenate[Visit, P], T], *args: P.args, **values: P.kwargs
    ) -> T | U:
        """What `read` gives of the form, or `otherwise` with its complaint noted beside the field `name`."""
        try:
            return read(self.visit, *args, **values)
        except FormError as error:
            self.add(name, error.text, **error.values)
            return otherwise

    def add(self, name: str, text: str, /, **values: object) -> None:
        """Note a fault."""
        self.found.append(Fault(name, self.visit.t(text, **values)))


def words(visit: Visit, name: str) -> str:
    """Words that must be there.

    Raises:
        FormError: if there are none, or too many.
    """
    given = visit.field(name)
    if not given:
        raise FormError("words-needed")
    if len(given) > LONGEST:
        raise FormError("words-long", most=LONGEST, given=len(given))
    return given


def number(visit: Visit, name: str, least: int, most: int) -> int:
    """A whole number.

    Raises:
        FormError: if it is none, or out of its range.
    """
    given = visit.field(name)
    if not given.isdecimal() or len(given) > 6 or not least <= int(given) <= most:  # noqa: PLR2004 - nothing is as long
        raise FormError("number-wrong", given=given or "—", least=least, most=most)
    return int(given)


def clock(visit: Visit, name: str) -> time:
    """A time of day.

    Raises:
        FormError: if it is none.
    """
    try:
        return time.fromisoformat(visit.field(name)).replace(second=0, microsecond=0, tzinfo=None)
    except ValueError as error:
        raise FormError("time-wrong", given=visit.field(name) or "—") from error


def day(visit: Visit, name: str) -> date:
    """A date.

    Raises:
        FormError: if it is none.
    """
    try:
        return date.fromisoformat(visit.field(name))
    except ValueError as error:
        raise FormError("date-wrong", given=visit.field(name) or "—") from error


def zone_name(visit: Visit, name: str) -> str:
    """A time zone.

    Raises:
        FormError: if there is no such zone.
    """
    try:
        return zone(visit.field(name)).key
    except ValueError as error:
        raise FormError("zone-wrong", given=visit.field(name) or "—") from error


def choice(visit: Visit, name: str, kind: Callable[[str], T]) -> T:
    """One of the members of an enumeration, or one of a fixed few.

    Raises:
        FormError: if nothing, or nothing that there is, was chosen.
    """
    try:
        return kind(visit.field(name))
    except (ValueError, KeyError) as error:
        raise FormError("choice-needed") from error


def position(visit: Visit, name: str) -> Position | None:
    """A position, None where none was chosen.

    Raises:
        FormError: if it is none of the five.
    """
    return choice(visit, name, Position) if visit.field(name) else None


def candy(visit: Visit, kind: str, size: str) -> Candy:
    """A candy.

    Raises:
        FormError: if the kind or the size cannot be.
    """
    return Candy(kind=choice(visit, kind, CandyKind), size_mm=number(visit, size, 2, 22))


@cache
def zones() -> tuple[str, ...]:
    """The names of all time zones."""
    return tuple(files("tzdata").joinpath("zones").read_text(encoding="utf-8").split())

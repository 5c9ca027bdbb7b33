"""Enrolment: a family's file in, a case and its invitation codes out."""

import tomllib
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from typing import Any

import msgspec

from coachbot.coach.case import Case, Child, Role
from coachbot.programme.orders import plan
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy, Protocol
from coachbot.programme.screening import Answers, Neck, Screening, screen
from coachbot.programme.zones import local, zone
from coachbot.service import defaults
from coachbot.service.codes import new_code
from coachbot.store import Transaction

CODE_LIFE = timedelta(days=14)
"""How long an invitation code opens."""

SEED = "last_seed"
"""The setting that holds the seed of the plan drawn last."""


def new_seed(tx: Transaction) -> int:
    """The next seed of the clinic's plans: counted, so that no two children get the same while plans last."""
    seed = int(tx.clinic.get(SEED) or 0) + 1
    tx.clinic.put(SEED, str(seed))
    return seed


class EnrolmentError(ValueError):
    """A family cannot be enrolled so; the message says why and what to do."""


class Screened(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The screening in a family's file. Everything must be answered; nothing has a default."""

    born: date
    swallowing_disorder: bool
    too_ill: bool
    candy_allergy: bool
    neck: Neck
    confirmed_by: str


class Wished(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """The programme in a family's file; what is left out is the protocol's usual."""

    nights: int = 14
    max_nights: int = 21
    positions: tuple[Position, ...] = tuple(Position)
    candies: tuple[Candy, ...] = Protocol().candies


class Family(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """A family's file."""

    child: str
    bedtime: time
    zone: str
    screening: Screened
    language: str = "en"
    invite: tuple[Role, ...] = (Role.PARENT,)
    programme: Wished = Wished()


@dataclass(frozen=True, slots=True, kw_only=True)
class Enrolled:
    """What enrolment gives: the case, and a code for each chat that is to be linked."""

    case: Case
    codes: tuple[tuple[Role, str], ...]
    screening: Screening


def family(text: str) -> Family:
    """Read a family's file, TOML.

    Raises:
        EnrolmentError: saying what is wrong and where.
    """
    try:
        return msgspec.convert(_plain(tomllib.loads(text)), Family)
    except tomllib.TOMLDecodeError as error:
        raise EnrolmentError(f"this is not TOML: {error}") from error
    except (msgspec.ValidationError, ValueError) as error:
        raise EnrolmentError(f"mend the family's file: {error}") from error


def enrol(tx: Transaction, wanted: Family, *, emergency_number: str, seed: int, now: datetime) -> Enrolled:
    """Screen, fix the orders, open the case and draw its invitation codes.

    What the file does not name, such as hours and ladders, is as the clinic has set it; `emergency_number` serves
    until it has set any.

    Raises:
        EnrolmentError: if a hard stop holds, or the programme cannot be.
    """
    try:
        protocol = replace(
            defaults.read(tx, emergency_number).protocol,
            nights=wanted.programme.nights,
            max_nights=wanted.programme.max_nights,
            positions=wanted.programme.positions,
            candies=wanted.programme.candies,
        )
        today = local(now, zone(wanted.zone).key).date()
    except ValueError as error:
        raise EnrolmentError(str(error)) from error
    _check(wanted, protocol)
    screening = screen(_answers(wanted.screening), protocol.positions, today)
    if screening.stops:
        raise EnrolmentError(f"not to be enrolled: {', '.join(screening.stops)}; see the screening with a clinician")
    draft = Case(
        id=0,
        child=Child(name=wanted.child.strip(), birth_year=wanted.screening.born.year),
        protocol=protocol,
        orders=plan(protocol.positions, protocol.nights, seed),
        bedtime=wanted.bedtime,
        zone=wanted.zone,
        language=wanted.language,
    )
    case = tx.cases.add(draft, now)
    codes = tuple((role, new_code()) for role in wanted.invite)
    for role, code in codes:
        tx.invites.add(case.id, role, code, now, now + CODE_LIFE)
    return Enrolled(case=case, codes=codes, screening=screening)


def _check(wanted: Family, protocol: Protocol) -> None:
    checks = {
        "give the name that the child is to be called by, 1 to 40 signs": 1 <= len(wanted.child.strip()) <= 40,  # noqa: PLR2004
        "language must be en, es or fr": wanted.language in ("en", "es", "fr"),
        "invite at least one parent": Role.PARENT in wanted.invite,
        "bedtime must be within the clinic's hours": protocol.earliest <= wanted.bedtime <= protocol.latest,
        "name the clinician who confirmed the screening": bool(wanted.screening.confirmed_by.strip()),
    }
    if faults := [fault for fault, holds in checks.items() if not holds]:
        raise EnrolmentError("; ".join(faults))


def _answers(given: Screened) -> Answers:
    return Answers(
        born=given.born,
        swallowing_disorder=given.swallowing_disorder,
        too_ill=given.too_ill,
        candy_allergy=given.candy_allergy,
        neck=given.neck,
    )


def _plain(table: Any) -> Any:
    """TOML's own dates and times as text, which is what the schema reads."""
    if isinstance(table, dict):
        return {key: _plain(value) for key, value in table.items()}
    if isinstance(table, list):
        return [_plain(value) for value in table]
    return table.isoformat() if isinstance(table, date | time) else table

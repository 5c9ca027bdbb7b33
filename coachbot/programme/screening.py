"""Who may practise: the hard stops and cautions of enrolment. Nothing of the answers is kept but that they were given.

Age: AAP, Prevention of Choking Among Children, Pediatrics 2010;125:601-607 (hard candy not under 4). Conditions that
affect swallowing were excluded in the published reviews (Patel et al., Pediatrics 2015;135:883-889). Neck: ligament
laxity and atlantoaxial instability call for care in positioning the head. A clinician's judgement comes first.
"""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from coachbot.programme.positions import Position
from coachbot.programme.protocol import MINIMUM_AGE

CAUTION_AGE = 5
"""Whole years under which a clinician is warned though the child may practise."""


class Neck(StrEnum):
    """What is known of the child's neck."""

    SOUND = "sound"
    CLEARED = "cleared"
    UNSTABLE = "unstable"


class Stop(StrEnum):
    """Why a child must not be enrolled."""

    TOO_YOUNG = "too_young"
    NOT_BORN = "not_born"
    SWALLOWING = "swallowing"
    ILL = "ill"
    ALLERGY = "allergy"
    NECK = "neck"


class Caution(StrEnum):
    """What a clinician must weigh."""

    YOUNG = "young"
    NECK = "neck"


@dataclass(frozen=True, slots=True, kw_only=True)
class Answers:
    """The screening's answers; `neck` CLEARED means that a specialist has allowed every position asked for."""

    born: date
    swallowing_disorder: bool
    too_ill: bool
    candy_allergy: bool
    neck: Neck


@dataclass(frozen=True, slots=True, kw_only=True)
class Screening:
    """What follows from the answers. No stop may be passed over."""

    stops: tuple[Stop, ...]
    cautions: tuple[Caution, ...]


def age_on(born: date, day: date) -> int:
    """Age in whole years. Somebody born on 29 February has a birthday on 1 March of other years."""
    had_birthday = (day.month, day.day) >= (born.month, born.day)
    return day.year - born.year - (0 if had_birthday else 1)


def screen(answers: Answers, positions: tuple[Position, ...], day: date) -> Screening:
    """Weigh the answers for practice in these positions from `day` on."""
    age = age_on(answers.born, day)
    turns_head = any(position is not Position.CENTER for position in positions)
    found = {
        Stop.NOT_BORN: answers.born > day,
        Stop.TOO_YOUNG: answers.born <= day and age < MINIMUM_AGE,
        Stop.SWALLOWING: answers.swallowing_disorder,
        Stop.ILL: answers.too_ill,
        Stop.ALLERGY: answers.candy_allergy,
        Stop.NECK: answers.neck is Neck.UNSTABLE and turns_head,
    }
    cautions = {
        Caution.YOUNG: MINIMUM_AGE <= age < CAUTION_AGE,
        Caution.NECK: answers.neck is Neck.CLEARED,
    }
    return Screening(
        stops=tuple(stop for stop, holds in found.items() if holds),
        cautions=tuple(caution for caution, holds in cautions.items() if holds),
    )

"""A family's file in, a case and codes out; hard stops hold."""

from datetime import date

import pytest

from coachbot.coach.case import Role, State
from coachbot.programme.positions import Position
from coachbot.programme.screening import Answers, Caution, Neck, Stop, age_on, screen
from coachbot.rehearsal.stage import START
from coachbot.service.enrolling import EnrolmentError, enrol, family, new_seed
from coachbot.store import Store

FILE = """
child = "Noor"
bedtime = 19:30:00
zone = "America/Edmonton"
language = "en"
invite = ["parent", "child"]

[screening]
born = 2017-05-03
swallowing_disorder = false
too_ill = false
candy_allergy = false
neck = "sound"
confirmed_by = "Dr Imani Osei"

[programme]
nights = 10
max_nights = 14
positions = ["center", "left", "right"]
candies = [{ kind = "mint", size_mm = 6 }, { kind = "hard", size_mm = 8 }]
"""


def test_a_family_s_file_becomes_a_case_with_its_codes(store: Store) -> None:
    """Orders are fixed at once; two families get different plans."""

    def two(tx):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN202
        return [enrol(tx, family(FILE), emergency_number="911", seed=new_seed(tx), now=START) for _ in range(2)]

    first, second = store.run(two)
    assert [role for role, _ in first.codes] == [Role.PARENT, Role.CHILD]
    assert first.case.state is State.INVITED
    assert len(first.case.orders) == 10
    assert first.case.orders != second.case.orders
    assert first.case.child.birth_year == 2017
    assert first.case.protocol.candy(2).size_mm == 8


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("born = 2017-05-03", "born = 2023-05-03", "too_young"),
        ("swallowing_disorder = false", "swallowing_disorder = true", "swallowing"),
        ("too_ill = false", "too_ill = true", "ill"),
        ("candy_allergy = false", "candy_allergy = true", "allergy"),
        ('neck = "sound"', 'neck = "unstable"', "neck"),
        ('confirmed_by = "Dr Imani Osei"', 'confirmed_by = " "', "confirmed"),
        ('child = "Noor"', 'child = ""', "name"),
        ('language = "en"', 'language = "de"', "language"),
        ('invite = ["parent", "child"]', 'invite = ["child"]', "parent"),
        ("bedtime = 19:30:00", "bedtime = 23:30:00", "hours"),
        ('zone = "America/Edmonton"', 'zone = "Mars/Olympus"', "time zone"),
        ("max_nights = 14", "max_nights = 9", "max_nights"),
    ],
)
def test_what_must_not_be_is_refused_with_a_reason(store: Store, old: str, new: str, words: str) -> None:
    """And nothing is kept of it."""
    assert old in FILE
    with pytest.raises(EnrolmentError, match=words):
        store.run(lambda tx: enrol(tx, family(FILE.replace(old, new)), emergency_number="1", seed=1, now=START))

    assert not store.run(lambda tx: list(tx.cases.all()))


@pytest.mark.parametrize(
    "text", ["child = ", "child = 'x'", FILE + "\nextra = 1", FILE.replace("size_mm = 6", "size_mm = 99")]
)
def test_a_file_that_cannot_be_read_says_where(text: str) -> None:
    """No TOML, a missing answer, a misspelt key, an impossible candy."""
    with pytest.raises(EnrolmentError):
        family(text)


def answers(born: date, neck: Neck = Neck.SOUND) -> Answers:
    """Nothing but age and neck to weigh."""
    return Answers(born=born, swallowing_disorder=False, too_ill=False, candy_allergy=False, neck=neck)


@pytest.mark.parametrize(
    ("born", "day", "stops"),
    [
        (date(2022, 9, 2), date(2026, 9, 1), (Stop.TOO_YOUNG,)),
        (date(2022, 9, 1), date(2026, 9, 1), ()),
        (date(2020, 2, 29), date(2024, 2, 28), (Stop.TOO_YOUNG,)),
        (date(2020, 2, 29), date(2024, 2, 29), ()),
        (date(2024, 2, 29), date(2028, 2, 28), (Stop.TOO_YOUNG,)),
        (date(2027, 1, 1), date(2026, 9, 1), (Stop.NOT_BORN,)),
    ],
)
def test_no_hard_candy_before_the_fourth_birthday(born: date, day: date, stops: tuple[Stop, ...]) -> None:
    """Source: AAP, Prevention of Choking Among Children, Pediatrics 2010;125(3):601-607."""
    assert screen(answers(born), tuple(Position), day).stops == stops


def test_a_fourth_birthday_of_29_february_falls_on_1_march_of_other_years() -> None:
    """From memory: the usual legal reading; the later day is the safe one."""
    assert age_on(date(2020, 2, 29), date(2023, 2, 28)) == 2
    assert age_on(date(2020, 2, 29), date(2023, 3, 1)) == 3


def test_a_four_year_old_and_a_cleared_neck_are_cautions() -> None:
    """They may practise; a clinician must weigh it."""
    assert screen(answers(date(2022, 1, 1), Neck.CLEARED), tuple(Position), date(2026, 9, 1)).cautions == (
        Caution.YOUNG,
        Caution.NECK,
    )


def test_an_unstable_neck_may_only_look_straight_ahead() -> None:
    """With the turned and tilted positions left out nothing stops."""
    assert not screen(answers(date(2017, 1, 1), Neck.UNSTABLE), (Position.CENTER,), date(2026, 9, 1)).stops

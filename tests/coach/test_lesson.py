"""The first evening."""

import pytest

from coachbot.coach.case import State
from coachbot.coach.events import HoldLifted
from coachbot.programme.protocol import Who
from helpers.conversation import CLINICIAN, Conversation


def begun() -> Conversation:
    """A family at the first step of its lesson."""
    return Conversation().joins().says("yes").at("19:30").hears("lesson-intro", "night-safety", "lesson-throat")


def test_the_lesson_goes_step_by_step() -> None:
    """Throat, posture, water in each position, tongue, sip, candy; each waits for an ok."""
    talk = begun()
    heard = []
    for _ in range(9):
        talk.says("ok")
        heard += talk.texts()

    assert heard == ["lesson-posture", *["lesson-water"] * 5, "lesson-tongue", "lesson-sip", "lesson-candy"]


def test_each_water_step_shows_its_position() -> None:
    """The picture is that of the position."""
    talk = begun().says("ok").says("ok")

    assert talk.heard[0].picture == "position-center"


@pytest.mark.parametrize(
    ("answer", "text"),
    [("4", "lesson-went-down"), ("yes", "lesson-went-down"), ("no", "lesson-not-down"), ("skip", "lesson-later")],
)
def test_the_candy_ends_the_lesson_however_it_went(answer: str, text: str) -> None:
    """Down, not down or later: practice begins tomorrow."""
    talk = begun()
    for _ in range(9):
        talk.says("ok")

    talk.says(answer).hears(text, "lesson-done")
    assert talk.case.state is State.PRACTISING
    assert talk.at("19:29").texts() == []
    talk.at("19:30").hears("night-prompt")


def test_words_that_are_no_ok_are_asked_again_and_kept() -> None:
    """What cannot be read in the lesson shows how to go on."""
    begun().says("hmmm purple").hears("lesson-unclear")


def test_an_old_next_button_is_stale() -> None:
    """Only the step that is open moves on."""
    talk = begun().presses("next:0")

    talk.presses("next:0").hears("stale-button")
    assert talk.case.lesson_step == 1


def test_a_lesson_left_off_goes_on_next_evening_from_there() -> None:
    """The steps already done are not asked again."""
    talk = begun().says("ok").says("ok").at("23:00").hears_nothing().at("19:30")

    talk.hears("lesson-again", "lesson-water")
    assert talk.case.lesson_missed == 1


def test_the_clinician_hears_when_the_lesson_keeps_not_happening() -> None:
    """Three evenings without the lesson raise an alert."""
    talk = begun()
    for _ in range(2):
        talk.at("23:00").at("19:30")

    talk.at("23:00").hears("alert-lesson", contact=Who.ON_CALL)


def test_the_lesson_can_be_had_again_without_its_candy() -> None:
    """Repeated, it ends before the candy, which belongs to the nights."""
    talk = Conversation().learns().says("show me the lesson again").hears("lesson-again", "lesson-throat")

    for _ in range(9):
        talk.says("ok")
    talk.hears("lesson-done")
    assert talk.case.lesson_open is None


def test_bedtime_ends_a_repeated_lesson() -> None:
    """The night's order comes all the same."""
    talk = Conversation().learns().says("show me the lesson again").at("19:30").hears("night-prompt")

    assert talk.case.lesson_open is None


def test_asking_for_the_lesson_in_the_middle_of_a_night_gets_help_instead() -> None:
    """Tonight's swallows come first."""
    Conversation().learns().at("19:30").says("show me the lesson again").hears("help")


def test_not_tonight_puts_the_lesson_off() -> None:
    """The lesson goes on tomorrow, without counting as missed."""
    talk = begun().says("not tonight").hears("tonight-over")

    assert talk.case.lesson_missed == 0
    talk.at("19:30").hears("lesson-again")


def test_a_lesson_that_comes_too_late_waits_for_tomorrow() -> None:
    """A machine asleep over bedtime does not begin the lesson at midnight."""
    talk = Conversation().joins().says("yes")

    talk.wakes("23:15").hears_nothing().at("19:30").hears("lesson-intro")


def test_a_candy_tap_outside_the_lesson_is_stale() -> None:
    """The lesson's last button does nothing in a night."""
    Conversation().learns().presses("candy:down").hears("stale-button")


def test_there_is_one_lesson_an_evening_whatever_changes() -> None:
    """A hold lifted, or a later bedtime, does not bring the lesson a second time tonight."""
    talk = begun().says("she is choking and cant breathe")
    talk.happens(HoldLifted(by=CLINICIAN, note="child is well")).at("23:00")
    assert "lesson-again" not in talk.texts()

    later = begun().says("make it 8:00").says("not tonight").at("21:00")
    assert "lesson-again" not in later.texts()
    later.at("20:00").hears("lesson-again")


def test_concern_ends_a_repeated_lesson() -> None:
    """Practice goes on at the next bedtime; the lesson is not taken up again by itself."""
    talk = Conversation().learns().says("show me the lesson again").says("he is crying and panicking")

    assert talk.hears("tonight-over").case.lesson_open is None
    talk.at("19:30").hears("night-prompt")

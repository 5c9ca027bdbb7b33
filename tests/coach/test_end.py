"""The end of the programme, and what a clinician does at the desk."""

from datetime import UTC, date, datetime, time

import pytest

from coachbot.coach.case import State, Status, Swallow
from coachbot.coach.decide import decide
from coachbot.coach.events import (
    BedtimeSet,
    CandySet,
    Ended,
    Event,
    FollowedUp,
    Held,
    NightEntered,
    Paused,
    Resumed,
    TargetSet,
    Ticked,
    Told,
)
from coachbot.coach.finish import favourite, first_and_last
from coachbot.coach.turn import Refused
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy, CandyKind
from coachbot.programme.sizes import CAPSULES, Target
from coachbot.reading import Word
from helpers.conversation import CHILD, CLINICIAN, PARENT, Conversation, invited, short, with_child

SMALL = Candy(kind=CandyKind.HARD, size_mm=6)


def test_the_last_night_ends_it_at_once() -> None:
    """Wrap-up, favourites, certificate, and the summary to the clinician, in the same decision."""
    talk = Conversation(invited(short(2))).learns().practises(best="left").practises(best="right")

    talk.hears("finish", "finish-favourites", "finish-next", "certificate")
    assert talk.summarised
    assert talk.case.state is State.FINISHED
    assert talk.nothing_is_due()
    assert [say.attachment for say in talk.heard if say.attachment] == ["certificate"]


def test_the_certificate_goes_to_the_child_s_own_chat_if_there_is_one() -> None:
    """It is the child's."""
    talk = with_child(invited(short(1))).practises()

    talk.hears("certificate", contact=CHILD)
    assert "certificate" not in talk.texts(PARENT)


def test_a_favourite_that_stayed_is_told_as_one() -> None:
    """First and last the same."""
    Conversation(invited(short(2))).learns().practises(best="up").practises(best="up").hears("finish-same")


def test_missed_nights_extend_the_calendar_up_to_its_limit() -> None:
    """Three nights wanted, six evenings at most: after the sixth it ends with what there is."""
    talk = Conversation(invited(short(3))).learns().practises()
    for _ in range(5):
        talk.misses()

    talk.at("19:30").hears("finish")
    assert len(talk.case.nights) == 6
    assert talk.case.practised == 1


def test_a_programme_without_a_single_practised_night_gets_no_certificate() -> None:
    """There is nothing to certify, and no favourite to name."""
    talk = Conversation(invited(short(1))).learns()
    for _ in range(4):
        talk.misses()

    talk.at("19:30").hears("finish", "finish-next")
    assert "certificate" not in talk.texts()
    assert first_and_last(talk.case) == (None, None)


def test_the_favourite_of_a_night_is_the_named_one_else_the_single_highest() -> None:
    """A tie without a name has none."""
    talk = Conversation().learns().at("19:30").says("2 2 5 2 2").presses("best:1:none").says("no")
    night = talk.case.nights[0]

    assert favourite(night) is night.order[2]
    assert favourite(Conversation().learns().practises("44444", best="none").case.nights[0]) is None
    assert favourite(Conversation().learns().practises("-----", best="none").case.nights[0]) is None


def test_follow_up_keeps_the_chosen_position() -> None:
    """Clinician and child have decided."""
    talk = Conversation(invited(short(1))).learns().practises()

    talk.happens(FollowedUp(by=CLINICIAN, position=Position.LEFT, note="chose together"))
    assert talk.case.state is State.FOLLOWED_UP
    assert talk.case.chosen is Position.LEFT


def test_a_clinician_holds_and_pauses_and_resumes() -> None:
    """Each is told to the family."""
    talk = Conversation().learns().happens(Held(by=CLINICIAN, note="call first")).hears("hold-by-clinician")
    assert talk.case.state is State.ON_HOLD

    talk = Conversation().learns().happens(Paused(by=CLINICIAN, until=date(2026, 9, 9))).hears("paused-until")
    talk.happens(Resumed(by=CLINICIAN)).hears("resumed").at("19:30").hears("night-prompt")


@pytest.mark.parametrize(
    "event",
    [
        Held(by=CLINICIAN, note="x"),
        Paused(by=CLINICIAN),
        Resumed(by=CLINICIAN),
        Ended(by=CLINICIAN, note="x"),
    ],
)
def test_what_is_over_cannot_be_held_paused_resumed_or_ended(event: Event) -> None:
    """The desk hears why."""
    talk = Conversation().learns().happens(Ended(by=CLINICIAN, note="moved away"))

    with pytest.raises(Refused):
        talk.happens(event)


def test_a_running_programme_is_not_yet_followed_up_and_ending_needs_a_note() -> None:
    """Both are refused."""
    with pytest.raises(Refused, match="not-running"):
        Conversation().learns().happens(FollowedUp(by=CLINICIAN, position=None))
    with pytest.raises(Refused, match="note-empty"):
        Conversation().learns().happens(Ended(by=CLINICIAN, note=""))


def test_a_household_that_moved_keeps_its_evening() -> None:
    """The same wall-clock time in the new zone, from tonight on."""
    talk = Conversation().learns().happens(BedtimeSet(by=CLINICIAN, at=time(20, 0), zone="Asia/Kolkata"))

    talk.hears("bedtime-changed").at("20:00").hears("night-prompt")
    assert (talk.now.hour, talk.now.minute) == (14, 30)


def test_a_bedtime_outside_the_hours_or_in_no_zone_is_refused() -> None:
    """With the hours, or with the form that a zone has."""
    with pytest.raises(Refused, match="bedtime-refused"):
        Conversation().learns().happens(BedtimeSet(by=CLINICIAN, at=time(23, 0)))
    with pytest.raises(ValueError, match="no IANA time zone"):
        Conversation().learns().happens(BedtimeSet(by=CLINICIAN, at=time(20, 0), zone="Mars/Olympus"))


def test_another_candy_from_the_next_night_on() -> None:
    """The nights that were keep theirs."""
    talk = Conversation().learns().practises().happens(CandySet(by=CLINICIAN, candy=SMALL)).hears("candy-changed")

    talk.practises().practises()
    assert [night.candy.size_mm for night in talk.case.nights] == [8, 6, 6]


def test_how_big_the_real_medicine_is_stays_with_the_clinician() -> None:
    """Kept, taken back, and nobody hears of either."""
    target = Target(size=CAPSULES["3"].size, capsule="3")
    talk = Conversation().learns().happens(TargetSet(by=CLINICIAN, target=target)).hears_nothing()

    assert talk.case.target == target
    talk.happens(TargetSet(by=CLINICIAN, target=None)).hears_nothing()
    assert talk.case.target is None


def test_a_clinician_s_own_words_reach_the_family() -> None:
    """As they were written."""
    talk = Conversation().learns().happens(Told(by=CLINICIAN, text="Well done, see you Tuesday."))

    assert talk.heard[0].lines[0].args["words"] == "Well done, see you Tuesday."


def paper(day: date, **marks: int | Word) -> NightEntered:
    """A night from a sheet."""
    swallows = tuple(Swallow(position=Position(name), mark=mark) for name, mark in marks.items())
    return NightEntered(by=CLINICIAN, day=day, swallows=swallows, best=None, note="from paper")


def test_a_night_from_paper_counts_like_any_other() -> None:
    """Whole or partial, in the order that was fixed; tonight is not asked for twice."""
    talk = Conversation().learns()
    talk.happens(paper(date(2026, 9, 2), center=4, left=3, right=2, up=1, down=Word.NOT_DOWN)).hears_nothing()

    assert talk.case.nights[0].status is Status.FINISHED
    talk.at("19:30").hears_nothing().at("19:30").hears("night-prompt")


def test_a_night_from_paper_must_fit() -> None:
    """Its day must be free, its positions the order's, and an evening must be left."""
    talk = Conversation(invited(short(1))).learns().happens(paper(date(2026, 9, 2), center=4))
    with pytest.raises(Refused, match="night-taken"):
        talk.happens(paper(date(2026, 9, 2), center=4))
    with pytest.raises(Refused, match="night-none-left"):
        talk.happens(paper(date(2026, 9, 3), center=4))
    two = invited(short(2, positions=(Position.CENTER, Position.LEFT)))
    with pytest.raises(Refused, match="night-wrong-positions"):
        Conversation(two).learns().happens(paper(date(2026, 9, 2), up=4))


def test_a_night_from_paper_of_the_past_leaves_tonight_alone() -> None:
    """It is entered beside the evening that is planned."""
    talk = Conversation().learns().happens(paper(date(2026, 8, 30), center=4))

    talk.at("19:30").hears("night-prompt")


def test_replaying_the_history_gives_the_same_case() -> None:
    """The case is nothing but its opening and what happened."""
    talk = with_child(invited(short(3))).practises("4-2s5").misses().practises().says("left was 1").says("stop")
    case = talk.opening
    for at, event in talk.history:
        case = decide(case, event, at).case

    assert case == talk.case


def test_time_must_carry_a_zone() -> None:
    """A naive instant is a mistake of the caller's."""
    with pytest.raises(ValueError, match="time zone"):
        decide(invited(), Ticked(), datetime(2026, 9, 1, 12))  # noqa: DTZ001 - that is the point


def test_a_tick_with_nothing_due_changes_nothing() -> None:
    """The clock may come round early."""
    case = invited()

    assert decide(case, Ticked(), datetime(2026, 9, 1, 12, tzinfo=UTC)).case == case


def test_an_unknown_contact_is_a_fault_of_the_caller() -> None:
    """The store must not mix families up."""
    with pytest.raises(KeyError):
        Conversation().joins().says("hello", contact=99)

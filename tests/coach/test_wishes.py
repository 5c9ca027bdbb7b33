"""What a family may ask of the programme in its own words."""

from datetime import date, time

import pytest

from coachbot.coach.actions import Forget, MarkUnread, TakeBack
from coachbot.coach.case import State, Status
from coachbot.programme.protocol import Who
from helpers.conversation import CHILD, OTHER_PARENT, PARENT, Conversation, invited, short, with_child


def running() -> Conversation:
    """A family in practice, between two nights."""
    return Conversation().learns().practises()


def test_help_says_how_it_works() -> None:
    """Anyone, at any time after joining."""
    running().says("help").hears("help")
    with_child().says("help", CHILD).hears("help", contact=CHILD)


def test_pause_and_resume() -> None:
    """No prompt while paused; practice goes on at the next bedtime after resuming, with a welcome back."""
    talk = running().says("pause please").hears("paused")
    assert talk.case.state is State.PAUSED
    assert TakeBack() in talk.actions
    for _ in range(3):
        talk.at("19:30").hears_nothing()

    talk.says("resume").hears("resumed").at("19:30").hears("cheer-coming-back-1", "night-prompt")


def test_a_pause_of_some_days_ends_by_itself() -> None:
    """Three days away, then the order comes again."""
    talk = running().says("we are away for 3 days").hears("paused-until")
    assert talk.case.paused_until == date(2026, 9, 5)

    assert [talk.at("19:30").texts() for _ in range(2)] == [[], []]
    talk.at("19:30").hears("cheer-coming-back-1", "night-prompt")


def test_a_pause_in_the_middle_of_a_night_keeps_what_was_said() -> None:
    """The night closes as partial."""
    talk = Conversation().learns().at("19:30").says("4").says("pause").hears("paused")

    assert talk.case.nights[0].status is Status.PARTIAL


def test_words_while_paused_are_kept_for_the_clinician() -> None:
    """The family hears that practice rests; last night may still be corrected."""
    talk = running().says("pause").says("what a lovely day").hears("paused-reply")

    assert any(isinstance(action, MarkUnread) for action in talk.actions)
    talk.says("left was 2").hears("corrected")


def test_resuming_what_is_not_paused_is_harmless() -> None:
    """It is confirmed, and nothing changes."""
    talk = running()
    before = talk.case.next_evening

    assert talk.says("resume").hears("resumed").case.next_evening == before


def test_another_bedtime_in_words() -> None:
    """An hour without more is meant in the evening, from tonight on."""
    talk = running().says("make it 7:00").hears("bedtime-changed")

    assert talk.case.bedtime == time(19, 0)
    assert talk.at("19:00").hears("night-prompt").now.hour == 23


def test_a_bedtime_outside_the_clinic_s_hours_is_refused_with_the_hours() -> None:
    """Nothing changes."""
    talk = running().says("make it 11pm").hears("bedtime-outside")

    assert talk.case.bedtime == time(19, 30)


def test_a_bedtime_just_gone_by_brings_tonight_s_order_at_once() -> None:
    """At seven, "make it 6:45" still means tonight."""
    talk = running().at("19:00").says("make it 6:45")

    talk.at("19:01").hears("night-prompt")


def test_a_bedtime_long_gone_by_begins_tomorrow() -> None:
    """At seven, "make it 5" means tomorrow, and is nobody's fault."""
    talk = running().at("19:00").says("make it 5:00").at("19:30").hears_nothing()

    assert "night-late" not in talk.at("17:00").hears("night-prompt").texts()


def test_stop_confirms_once_and_the_clinician_hears() -> None:
    """Then nothing more is sent, except for safety."""
    talk = running().says("STOP").hears("stopped", contact=PARENT).hears("news-stopped", contact=Who.ON_CALL)
    assert talk.case.state is State.WITHDRAWN
    assert talk.nothing_is_due()

    talk.says("grandma baked a cake").hears_nothing()


def test_start_after_stop_goes_on() -> None:
    """Whoever stopped by themselves may come back."""
    talk = running().says("stop").says("start").hears("started")

    talk.at("19:30").hears("night-prompt")


def test_start_while_paused_is_a_resume() -> None:
    """The same wish in another word."""
    running().says("pause").says("start").hears("resumed")


def test_start_without_consent_is_closed() -> None:
    """Whoever declined needs the clinic for a new beginning."""
    Conversation().joins().says("no").says("start").hears("start-closed")


def test_stop_before_consent_is_a_stop() -> None:
    """The word counts from the first message on."""
    assert Conversation().joins().says("stop").hears("stopped").case.state is State.WITHDRAWN


def test_deleting_asks_first_and_then_forgets() -> None:
    """A yes erases; the clinician hears that they left."""
    talk = running().says("delete everything you have about us").hears("delete-ask")

    talk.says("yes").hears("deleted", contact=PARENT).hears("news-deleted", contact=Who.ON_CALL)
    assert Forget() in talk.actions


def test_deleting_by_button() -> None:
    """Both answers as buttons; the question is stale once answered."""
    talk = running().says("delete everything").presses("delete:no").hears("delete-kept")
    talk.presses("delete:yes").hears("stale-button")

    assert Forget() in talk.says("delete everything").presses("delete:yes").hears("deleted").actions


def test_a_no_keeps_everything() -> None:
    """In words as well."""
    talk = running().says("delete everything").says("no").hears("delete-kept")

    assert talk.case.state is State.PRACTISING


def test_not_tonight_ends_the_night_without_blame() -> None:
    """A child may say it too."""
    talk = with_child().at("19:30").says("not tonight", CHILD).hears("tonight-over", contact=PARENT)

    assert talk.case.nights[0].status is Status.MISSED
    talk.at("19:30").hears("night-prompt")


@pytest.mark.parametrize("words", ["pause", "make it 7:00", "stop", "delete everything", "resume"])
def test_a_child_cannot_change_the_programme(words: str) -> None:
    """Those wishes are an adult's."""
    talk = with_child()

    assert talk.says(words, CHILD).hears("only-parent", contact=CHILD).case.state is State.PRACTISING


def test_a_wrong_number_is_never_written_to_again() -> None:
    """One apology, then silence; an alarm would still be heard."""
    talk = running().says("wrong number").hears("wrong-number")

    talk.at("19:30").hears_nothing().says("who is this").hears_nothing()
    talk.says("she is choking and cant breathe").hears("alert", contact=Who.ON_CALL)


def test_chat_that_answers_nothing_goes_to_the_clinician() -> None:
    """Between nights, and before the first."""
    assert _unread(running().says("grandma baked a cake").hears("passed-on"))
    assert _unread(Conversation().learns().says("grandma baked a cake").hears("passed-on"))


def test_chat_after_the_end_goes_to_the_clinician() -> None:
    """The family is answered, nothing is lost."""
    talk = Conversation(invited(short(1))).learns().practises()

    assert _unread(talk.says("thank you for all").hears("passed-on"))


def test_a_wish_that_means_nothing_here_is_read_on() -> None:
    """A pause after the end is just words."""
    Conversation(invited(short(1))).learns().practises().says("pause").hears("passed-on")


def _unread(talk: Conversation) -> bool:
    return any(isinstance(action, MarkUnread) for action in talk.actions)


def test_not_tonight_before_bedtime_leaves_the_evening_out() -> None:
    """No order comes tonight, and it is not a missed night."""
    talk = running().at("15:00").says("not tonight").hears("tonight-over").at("19:30").hears_nothing()

    talk.at("19:30").hears("night-prompt")
    assert talk.case.missed_in_a_row == 0


def test_not_tonight_when_tonight_is_over_is_just_words() -> None:
    """It is not told to everybody once more."""
    running().says("not tonight").hears("passed-on")


def test_a_child_s_stop_ends_tonight_and_leaves_the_rest_to_the_adult() -> None:
    """Nobody is asked to go on after that word."""
    talk = with_child().at("19:30").says("stop", CHILD).hears("only-parent", contact=CHILD)

    assert talk.case.open_night is None
    talk.hears("tonight-over", contact=PARENT)
    assert talk.case.state is State.PRACTISING


def test_whoever_did_not_ask_hears_that_somebody_of_the_family_did() -> None:
    """Two homes: a pause or a new time does not come out of nowhere."""
    talk = running().joins(OTHER_PARENT)

    for words, said in (("make it 7:00", "bedtime-changed"), ("pause", "paused"), ("resume", "resumed")):
        talk.says(words)
        assert talk.texts(PARENT) == [said]
        assert talk.texts(OTHER_PARENT) == ["asked-for", said]

"""Troubling replies: safety text, alert and hold in one decision, and what lifts the hold."""

from datetime import date, timedelta

import pytest

from coachbot.coach.actions import MarkUnread, TakeBack, Urgency
from coachbot.coach.case import State, Status
from coachbot.coach.events import (
    Acknowledged,
    ClinicianPressed,
    ClinicianWrote,
    Ended,
    Erased,
    HoldLifted,
    Outcome,
    SendEnded,
    StrangerWrote,
    Stuck,
    Ticked,
)
from coachbot.coach.turn import Refused
from coachbot.programme.protocol import Who
from coachbot.triage import Assessment, Level
from helpers.conversation import CHILD, CLINICIAN, OTHER_PARENT, PARENT, Conversation, invited, short, with_child

CHOKING = "she is choking and cant breathe"


def held(text: str = CHOKING) -> Conversation:
    """A family whose night was ended by a troubling reply."""
    return Conversation().learns().at("19:30").says(text)


def test_one_decision_holds_safety_text_alert_and_hold() -> None:
    """Law 3, in the order in which they are to go."""
    talk = held()

    talk.hears("safety-breathing", "hold", contact=PARENT).hears("alert", "alert-hold", contact=Who.ON_CALL)
    assert talk.case.state is State.ON_HOLD
    assert talk.case.open_night is None
    assert [say.urgency for say in talk.heard] == [Urgency.SAFETY, Urgency.ALERT]
    assert TakeBack() in talk.actions


def test_nothing_asks_to_swallow_while_on_hold() -> None:
    """Days pass without a prompt; whatever is written is kept and answered without a request."""
    talk = held()
    for _ in range(5):
        talk.at("19:30")
        assert "night-prompt" not in talk.texts()

    talk.says("4 3 5 2 4").hears("hold-reply")
    assert any(isinstance(action, MarkUnread) for action in talk.actions)
    talk.presses("rate:1:left:4").hears("stale-button")
    assert not talk.case.nights[0].swallows


def test_a_child_s_alarm_reaches_every_parent() -> None:
    """The parent is told that the child wrote, with the same safety text."""
    talk = with_child().joins(OTHER_PARENT).says("i cant breathe", CHILD)

    talk.hears("safety-breathing", contact=CHILD)
    for parent in (PARENT, OTHER_PARENT):
        talk.hears("safety-breathing", "safety-child-wrote", contact=parent)


def test_a_child_who_was_hurt_is_not_given_away() -> None:
    """The parent gets the safety text without being told that the child wrote."""
    talk = with_child().says("dad held me down and forced it in my mouth", CHILD)

    talk.hears("safety-forced", "hold", contact=PARENT)
    assert "safety-child-wrote" not in talk.texts(PARENT)


def test_the_others_hear_only_that_practice_waits() -> None:
    """When a parent writes, the child and the other parent are not told why."""
    talk = with_child().joins(OTHER_PARENT).says(CHOKING)

    assert talk.texts(CHILD) == talk.texts(OTHER_PARENT) == ["hold"]


def test_a_second_alarm_gets_its_own_safety_text_and_alert() -> None:
    """Being on hold already silences nothing."""
    talk = held().says("his lips are blue").hears("safety-breathing", contact=PARENT)

    assert [alert.number for alert in talk.case.open_alerts] == [1, 2]


def test_an_alarm_before_consent_and_after_stopping_counts_too() -> None:
    """Law 3 asks for no state."""
    assert Conversation().joins().says(CHOKING).hears("safety-breathing").case.back_to is State.INVITED
    talk = Conversation().learns().says("stop").says(CHOKING).hears("safety-breathing")

    assert talk.case.back_to is State.WITHDRAWN
    talk.happens(HoldLifted(by=CLINICIAN, note="seen, all well")).hears("hold-lifted-rest")
    assert talk.case.state is State.WITHDRAWN


def test_lifting_needs_a_name_and_a_note() -> None:
    """Without a note the hold stays; with one, practice goes on at the next bedtime."""
    talk = held()
    with pytest.raises(Refused, match="note-empty"):
        talk.happens(HoldLifted(by=CLINICIAN, note="  "))

    talk.happens(HoldLifted(by=CLINICIAN, note="Spoke with the parent; the child is well."))
    talk.hears("hold-lifted", contact=PARENT).hears("lift-done", contact=CLINICIAN)
    assert not talk.case.open_alerts
    talk.at("19:30").hears("cheer-coming-back-1", "night-prompt")


def test_the_partial_night_before_the_alarm_is_kept() -> None:
    """What was rated before stays; nothing is lost."""
    talk = Conversation().learns().at("19:30").says("4").says(CHOKING)

    assert talk.case.nights[0].status is Status.PARTIAL


def test_lifting_what_is_not_held_is_refused() -> None:
    """The clinician hears why."""
    with pytest.raises(Refused, match="lift-not-held"):
        Conversation().learns().happens(HoldLifted(by=CLINICIAN, note="x"))


def test_after_a_choke_the_family_is_asked_for_three_days() -> None:
    """Signs may come late: each bedtime the parents are asked; a yes is urgent, a no is thanked."""
    talk = held().at("19:30").hears("watch-ask", contact=PARENT)
    talk.says("no").hears("watch-fine")
    talk.at("19:30").hears("watch-ask").presses(f"watch:{date(2026, 9, 4)}:no").hears("watch-fine")
    talk.presses(f"watch:{date(2026, 9, 4)}:no").hears("stale-button")

    talk.at("19:30").hears("watch-ask").says("yes").hears("safety-urgent")
    assert talk.case.alerts[-1].category == "after_choke"


def test_the_watch_ends_after_its_days() -> None:
    """Three questions, not more."""
    talk = held()
    asked = sum("watch-ask" in talk.at("19:30").texts() for _ in range(8))

    assert asked == 3


def test_a_clinic_may_ask_no_questions_afterwards() -> None:
    """No days of watching, no question."""
    talk = Conversation(invited(short(3, watch_days=0))).learns().at("19:30").says(CHOKING)

    assert "watch-ask" not in talk.at("19:30").texts()


def test_concern_ends_the_night_kindly_and_alerts() -> None:
    """Tears end practice for tonight, not for good."""
    talk = Conversation().learns().at("19:30").says("she is crying and refuses, big tears")

    talk.hears("tonight-over", contact=PARENT).hears("alert", contact=Who.ON_CALL)
    assert any(text.startswith("concern-") for text in talk.texts(PARENT))
    assert talk.case.state is State.PRACTISING
    talk.at("19:30").hears("night-prompt")


def test_concern_by_day_ends_nothing() -> None:
    """Where no night is open there is nothing to end."""
    talk = Conversation().learns().says("I am at the end of my rope with this")

    assert "tonight-over" not in talk.texts()
    assert any(text.startswith("concern-") for text in talk.texts())


def test_concern_in_the_lesson_puts_it_off() -> None:
    """The lesson goes on tomorrow."""
    talk = Conversation().joins().says("yes").at("19:30").says("he is crying and panicking")

    assert talk.hears("tonight-over").case.lesson_open is None
    talk.at("19:30").hears("lesson-again")


def test_a_medicine_question_goes_to_the_clinician_and_practice_goes_on() -> None:
    """Law 8: no advice; the open question is asked again."""
    talk = Conversation().learns().at("19:30").says("can I crush his antibiotic tablet?")

    talk.hears("medicine", "ask-swallow", contact=PARENT).hears("alert", contact=Who.ON_CALL)
    assert talk.case.open_night


def test_a_medicine_question_by_day() -> None:
    """Without an open night only the answer is given."""
    assert Conversation().learns().says("can I crush his antibiotic tablet?").texts(PARENT) == ["medicine"]


def test_an_alert_climbs_until_somebody_takes_it() -> None:
    """On call, on call again, backup, all, then all every hour: each step once, and recorded."""
    talk = held()
    climbed = [(say.to, say.key) for say in talk.after(timedelta(hours=2)).heard if say.alert]

    assert climbed == [
        (Who.ON_CALL, "alert:1:2"),
        (Who.BACKUP, "alert:1:3"),
        (Who.ALL, "alert:1:4"),
        (Who.ALL, "alert:1:5"),
    ]
    talk.happens(Acknowledged(by=CLINICIAN, alert=1)).hears("alert-taken", contact=CLINICIAN)
    assert not [say for say in talk.after(timedelta(days=1)).heard if say.alert]


def test_a_machine_asleep_takes_the_latest_step_once() -> None:
    """An hour without a tick is caught up with one message to all."""
    talk = held()
    talk.now += timedelta(hours=1)

    assert [say.to for say in talk.after(timedelta(0)).heard if say.alert] == [Who.ALL]


def test_an_alert_that_reached_nobody_takes_the_next_step_at_once() -> None:
    """The on-call phone is dead: the ladder does not wait."""
    talk = held().happens(SendEnded(key="alert:1:1", contact=None, outcome=Outcome.GONE))

    assert [say.key for say in talk.after(timedelta(0)).heard if say.alert] == ["alert:1:2"]


def test_when_all_phones_are_dead_the_ladder_keeps_its_own_time() -> None:
    """After the last step it goes on hour by hour rather than in a rush."""
    talk = held().after(timedelta(minutes=31))
    talk.happens(SendEnded(key="alert:1:4", contact=None, outcome=Outcome.NEVER))

    assert not talk.after(timedelta(minutes=5)).heard


def test_taking_an_alert_twice_names_who_has_it() -> None:
    """The second clinician hears who was first."""
    talk = held().happens(Acknowledged(by=CLINICIAN, alert=1))

    with pytest.raises(Refused, match="alert-taken-already"):
        talk.happens(Acknowledged(by="Nurse Lindqvist", alert=1))
    with pytest.raises(Refused, match="no-such-alert"):
        talk.happens(Acknowledged(by=CLINICIAN, alert=9))


def test_a_clinician_answers_in_chat_by_button_and_note() -> None:
    """Acknowledge at once; lift only after a note in words."""
    talk = held().happens(ClinicianPressed(by=CLINICIAN, data="acknowledge:1")).hears("alert-taken")
    talk.happens(ClinicianPressed(by=CLINICIAN, data="lift:1")).hears("lift-ask-note", contact=CLINICIAN)
    assert talk.case.back_to is State.PRACTISING

    talk.happens(ClinicianWrote(by=CLINICIAN, text=" ")).hears("note-empty")
    talk.happens(ClinicianWrote(by=CLINICIAN, text="Phoned; ate dinner, no cough.")).hears("lift-done")
    assert talk.case.state is State.PRACTISING


def test_a_clinician_ends_the_programme_in_chat() -> None:
    """With a note; the family hears, and nothing more is asked of it."""
    talk = held().happens(ClinicianPressed(by=CLINICIAN, data="end:1")).hears("end-ask-note")
    talk.happens(ClinicianWrote(by=CLINICIAN, text="Refer to ENT first.")).hears("ended", contact=PARENT)

    assert talk.case.state is State.WITHDRAWN
    assert talk.nothing_is_due()
    talk.says("start").hears("start-closed")


@pytest.mark.parametrize(
    ("data", "text"),
    [
        ("acknowledge:7", "no-such-alert"),
        ("lift:1", "lift-not-held"),
        ("dance:1", "clinician-help"),
        ("end", "end-ask-note"),
    ],
)
def test_a_clinician_s_button_that_fits_nothing_says_so(data: str, text: str) -> None:
    """Each with its own words."""
    Conversation().learns().happens(ClinicianPressed(by=CLINICIAN, data=data)).hears(text, contact=CLINICIAN)


def test_ending_twice_is_refused_in_chat() -> None:
    """The second end says that it is over already."""
    talk = Conversation().learns().happens(Ended(by=CLINICIAN, note="moved away"))

    talk.happens(ClinicianPressed(by=CLINICIAN, data="end:1")).hears("ended-already")


def test_words_of_a_clinician_that_nobody_asked_for_get_help() -> None:
    """No note was open."""
    Conversation().learns().happens(ClinicianWrote(by=CLINICIAN, text="hello?")).hears("clinician-help")


def test_a_safety_text_that_could_not_be_delivered_raises_an_alert() -> None:
    """The clinician must know that the family may not have it."""
    talk = held().happens(SendEnded(key="safety:1", contact=PARENT, outcome=Outcome.NEVER))

    talk.hears("alert-undelivered", contact=Who.ON_CALL)


def test_an_unreachable_family_is_the_clinician_s_concern_once() -> None:
    """Two failed sends raise one alert."""
    talk = Conversation().learns()
    gone = SendEnded(key="say:3", contact=PARENT, outcome=Outcome.GONE)

    talk.happens(gone).hears("alert-unreachable", contact=Who.ON_CALL).happens(gone).hears_nothing()


def test_a_family_that_stopped_and_blocked_us_is_no_alarm() -> None:
    """They wanted to be left alone."""
    talk = Conversation().learns().says("stop")

    talk.happens(SendEnded(key="say:9", contact=PARENT, outcome=Outcome.GONE)).hears_nothing()


def test_a_stranger_s_alarm_climbs_like_any_other() -> None:
    """The clinic's own case holds it."""
    grave = Assessment(level=Level.EMERGENCY, category="choking", evidence=("choking",))
    talk = Conversation().happens(StrangerWrote(message=5, assessment=grave))

    talk.hears("alert-stranger", contact=Who.ON_CALL).after(timedelta(minutes=6)).hears("alert-stranger", "alert-again")


def test_a_case_that_cannot_go_on_is_told_once_and_climbs() -> None:
    """The clinic's own case holds one alert for each case at fault."""
    talk = Conversation().happens(Stuck(case=12)).hears("alert-stuck", contact=Who.ON_CALL)

    talk.happens(Stuck(case=12)).hears_nothing()
    talk.happens(Stuck(case=13)).hears("alert-stuck").after(timedelta(minutes=16)).hears("alert-stuck", "alert-again")


def test_an_alert_climbs_by_the_clock_as_it_is_now() -> None:
    """Raised, or told again, while the clock ran a day ahead: it does not wait for tomorrow."""
    raised_ahead = held()
    raised_ahead.now -= timedelta(days=1)
    raised_ahead.happens(Ticked()).hears("alert-again", contact=Who.ON_CALL)
    assert raised_ahead.case.alerts[0].raised == raised_ahead.now
    raised_ahead.after(timedelta(minutes=16)).hears("alert-again", contact=Who.BACKUP)

    told_ahead = held()
    told_ahead.now += timedelta(days=1)
    told_ahead.happens(Ticked()).hears("alert-again")
    told_ahead.now -= timedelta(hours=23)
    told_ahead.happens(Ticked()).hears("alert-again").happens(Ticked()).hears_nothing()


def test_erasing_waits_until_a_grave_alert_was_seen() -> None:
    """A family may have everything erased, but not before a clinician has taken its alarm on."""
    talk = held().says("delete everything").hears("delete-ask").says("yes").hears("delete-waits")
    assert talk.case.state is State.ON_HOLD
    assert not _forgets(talk)

    talk.happens(Acknowledged(by=CLINICIAN, alert=1)).hears("deleted")
    assert _forgets(talk)


def test_erasing_waits_for_the_lift_as_well() -> None:
    """Lifting the hold takes on the alert, and so frees the erasure."""
    talk = held().says("delete everything").says("yes")

    assert _forgets(talk.happens(HoldLifted(by=CLINICIAN, note="child is well")).hears("deleted"))


def test_the_clinic_can_erase_a_family() -> None:
    """At once, with its alerts taken on by whoever does it."""
    talk = held().happens(Erased(by=CLINICIAN)).hears("deleted")

    assert _forgets(talk)
    assert not talk.case.open_alerts


def test_a_child_may_not_erase() -> None:
    """Only an adult's word counts for that."""
    with_child().says("delete everything", CHILD).hears("only-parent")


def _forgets(talk: Conversation) -> bool:
    return any(type(action).__name__ == "Forget" for action in talk.actions)

"""From the invitation to the first evening."""

from datetime import date

from coachbot.coach.case import Role, State
from coachbot.programme.protocol import Who
from helpers.conversation import CHILD, OTHER_PARENT, PARENT, Conversation, with_child


def test_consent_comes_before_anything_else() -> None:
    """Until an adult agrees, whatever is said only brings the question again."""
    talk = Conversation().joins().hears("consent-ask")

    talk.says("4 3 5 2 4").hears("consent-needed")

    assert talk.case.consent is None
    assert talk.case.state is State.INVITED
    assert talk.nothing_is_due()


def test_consent_is_recorded_with_who_and_when() -> None:
    """A yes in words counts like the button, and is kept with its contact and instant."""
    talk = Conversation().joins().says("yes").hears("welcome")

    assert talk.case.consent == talk.now
    assert talk.case.consent_by == PARENT
    assert talk.case.state is State.LESSON
    assert talk.case.next_evening == date(2026, 9, 1)


def test_a_no_ends_it_and_the_clinician_hears() -> None:
    """Whoever declines is left in peace."""
    talk = Conversation().joins().presses("consent:decline").hears("consent-declined", contact=PARENT)

    talk.hears("news-declined", contact=Who.ON_CALL)
    assert talk.case.state is State.WITHDRAWN
    assert talk.nothing_is_due()


def test_a_no_in_words_declines_too() -> None:
    """The typed form works like the button."""
    assert Conversation().joins().says("no").hears("consent-declined").case.state is State.WITHDRAWN


def test_a_child_waits_for_the_adult() -> None:
    """A child's chat alone can neither agree nor begin."""
    talk = Conversation().joins(CHILD, Role.CHILD).hears("consent-wait")

    talk.says("yes", CHILD).hears("consent-wait")
    talk.presses("consent:agree", CHILD).hears("stale-button")
    assert talk.case.consent is None


def test_a_second_parent_joins_later() -> None:
    """After consent a further chat is welcomed and gets the nights like the first."""
    talk = Conversation().learns().joins(OTHER_PARENT).hears("welcome-also", contact=OTHER_PARENT)

    talk.at("19:30").hears("night-prompt", contact=OTHER_PARENT).hears("night-prompt", contact=PARENT)


def test_joining_twice_changes_nothing() -> None:
    """The same chat linked again is the same chat."""
    talk = Conversation().joins()

    assert len(talk.joins().hears_nothing().case.contacts) == 1


def test_joining_while_on_hold_asks_nobody_to_practise() -> None:
    """A chat linked during a hold hears that practice waits."""
    talk = Conversation().learns().says("she choked and turned blue")

    talk.joins(OTHER_PARENT).hears("hold-reply", contact=OTHER_PARENT)


def test_the_consent_button_is_stale_once_used() -> None:
    """A tap on the old question says kindly that it is over."""
    Conversation().joins().presses("consent:agree").presses("consent:agree").hears("stale-button")


def test_the_family_of_three_hears_together() -> None:
    """Parent and child each get the night in their own version."""
    talk = with_child().at("19:30")

    talk.hears("night-prompt", "night-safety", contact=CHILD).hears("night-prompt", "night-safety", contact=PARENT)

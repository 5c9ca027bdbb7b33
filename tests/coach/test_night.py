"""A night from prompt to close, missed nights, and what is said of them."""

import itertools
from datetime import time, timedelta

import pytest

from coachbot.coach.case import Status
from coachbot.coach.events import Outcome, SendEnded
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Who
from helpers.conversation import CHILD, OTHER_PARENT, PARENT, Conversation, invited, short, with_child


def tonight() -> Conversation:
    """A family at its first night's prompt."""
    return Conversation().learns().at("19:30").hears("night-prompt", "night-howto-1", "night-safety", "ask-swallow")


def test_the_prompt_gives_the_order_fixed_beforehand() -> None:
    """The order is the plan's first, with its strip of drawings and the first swallow's buttons."""
    talk = tonight()
    order = talk.case.orders[0]

    assert talk.case.nights[0].order == order
    assert talk.heard[0].picture == "order-" + "-".join(order)
    assert [button.data for button in talk.buttons()][:5] == [f"rate:1:{order[0]}:{rating}" for rating in range(1, 6)]


def test_one_swallow_at_a_time_by_buttons() -> None:
    """Each tap brings the next position, then the best, then the note."""
    talk = tonight()
    for position in talk.case.nights[0].order[:-1]:
        talk.presses(f"rate:1:{position}:4").hears("ask-swallow")

    talk.presses(f"rate:1:{talk.case.nights[0].order[-1]}:not_down").hears("ask-best")
    talk.presses("best:1:left").hears("ask-note")
    talk.presses("note:1:none").hears("night-done", "night-best")
    assert talk.case.nights[0].status is Status.FINISHED
    assert talk.case.nights[0].best is Position.LEFT


def test_all_in_one_reply() -> None:
    """Five numbers in the night's order, the best and a note, in three replies."""
    talk = tonight().says("4 3 5 2 4").hears("ask-best").says("left").hears("ask-note").says("a bit sleepy")

    night = talk.hears("night-done").case.nights[0]
    assert [swallow.mark for swallow in night.swallows] == [4, 3, 5, 2, 4]
    assert night.best is Position.LEFT
    assert night.note == "a bit sleepy"


def test_what_is_left_in_one_reply_after_two_taps() -> None:
    """Whoever began by buttons may end in words."""
    talk = tonight()
    for position in talk.case.nights[0].order[:2]:
        talk.presses(f"rate:1:{position}:5")

    assert [one.mark for one in talk.says("3 3 1").hears("ask-best").case.nights[0].swallows] == [5, 5, 3, 3, 1]


def test_an_unclear_answer_records_nothing_and_is_asked_again() -> None:
    """Twice running, the clinician is told; the words are marked unread each time."""
    talk = tonight().says("7").hears("unclear-swallow")
    assert not talk.case.nights[0].swallows

    talk.says("eleventy").hears("unclear-swallow", contact=PARENT).hears("news-unread", contact=Who.ON_CALL)


def test_an_answer_in_between_starts_the_count_of_unread_anew() -> None:
    """Two unread replies with a read one between them are no alarm."""
    talk = tonight().says("7").says("4").says("7")

    assert "news-unread" not in talk.texts()


def test_no_idea_which_was_best_is_an_answer() -> None:
    """The best may stay open."""
    talk = tonight().says("4 3 5 2 4").presses("best:1:none").hears("ask-note").says("no").hears("night-done")

    assert talk.case.nights[0].best is None


def test_a_correction_within_the_night() -> None:
    """An earlier mark may be put right while others are still asked."""
    talk = tonight()
    first = talk.case.nights[0].order[0]
    talk.presses(f"rate:1:{first}:2").presses(f"rate:1:{first}:5").hears("corrected", "ask-swallow")

    assert talk.case.nights[0].mark(first) == 5


def test_a_correction_in_words_until_the_next_night() -> None:
    """After the night is done, "left was 3" still counts; after the next prompt it is the next night's."""
    talk = Conversation().learns().practises("44444")

    talk.says("left was 3").hears("corrected")
    assert talk.case.nights[0].mark(Position.LEFT) == 3
    talk.at("19:30").presses("rate:1:left:1").hears("stale-button")
    assert talk.case.nights[0].mark(Position.LEFT) == 3


def test_the_best_may_be_corrected_by_an_old_button() -> None:
    """Tapping another best after the night is done changes it."""
    talk = Conversation().learns().practises().presses("best:1:up").hears("corrected-best")

    assert talk.case.nights[0].best is Position.UP


def test_a_best_taken_back() -> None:
    """No best after all: nothing to announce."""
    talk = Conversation().learns().practises().presses("best:1:none").hears_nothing()

    assert talk.case.nights[0].best is None


def test_a_rating_may_be_corrected_by_an_old_button() -> None:
    """Tapping another rating after the night is done changes it."""
    talk = Conversation().learns().practises("44444").presses("rate:1:up:1").hears("corrected")

    assert talk.case.nights[0].mark(Position.UP) == 1


@pytest.mark.parametrize(
    "data", ["rate:1:up:9", "rate:1:nose:4", "rate:9:up:4", "best:1:nose", "best:9:up", "rate:1", ""]
)
def test_a_tap_that_fits_nothing_changes_nothing(data: str) -> None:
    """A made-up or old button says that it is over."""
    talk = tonight()
    before = talk.case.nights

    assert talk.presses(data).hears("stale-button").case.nights == before


def test_the_note_button_is_stale_before_its_time() -> None:
    """The button for no note means nothing while ratings are missing."""
    tonight().presses("note:1:none").hears("stale-button")


def test_a_note_with_a_rating_stays_with_its_swallow() -> None:
    """What was said of one swallow is kept there."""
    talk = tonight().says("2, it stuck to the front of my tongue")
    first = talk.case.nights[0].swallows[0]

    assert first.mark == 2
    assert first.note is not None
    assert "front" in first.note


def test_one_reminder_then_the_night_is_missed() -> None:
    """45 minutes after the prompt comes one reminder; then the night closes without a word."""
    talk = tonight().at("20:15").hears("night-reminder", "ask-swallow").at("23:30").hears_nothing()

    assert talk.case.nights[0].status is Status.MISSED


def test_a_family_that_is_answering_is_not_reminded_meanwhile() -> None:
    """The reminder counts from the last word."""
    talk = tonight().at("20:10").says("4")

    talk.at("20:50").hears_nothing().at("20:55").hears("night-reminder")


def test_no_reminder_outside_the_family_s_hours() -> None:
    """A prompt late in the evening is not followed by a reminder at night."""
    talk = Conversation(invited(bedtime=time(21, 30))).joins().says("yes").at("21:30")
    for _ in range(9):
        talk.says("ok")
    talk.says("4").at("21:30").hears("night-prompt").at("23:00").hears_nothing()


def test_what_was_said_of_a_partial_night_is_kept_and_its_order_comes_again() -> None:
    """Two of five marks make a partial night; the next evening has the same order."""
    talk = tonight()
    order = talk.case.nights[0].order
    talk.presses(f"rate:1:{order[0]}:4").presses(f"rate:1:{order[1]}:2").at("23:30")

    assert talk.case.nights[0].status is Status.PARTIAL
    assert talk.at("19:30").hears("cheer-partial-1").case.nights[1].order == order
    assert talk.case.practised == 1


def test_a_missed_night_keeps_its_order_for_later() -> None:
    """Orders are never drawn again: the next evening takes the one that was missed."""
    talk = Conversation().learns().misses().at("19:30")

    assert talk.case.nights[1].order == talk.case.orders[0] == talk.case.nights[0].order


def test_answers_the_morning_after_turn_a_missed_night_into_a_practised_one() -> None:
    """Late is better than never, until the next prompt."""
    talk = Conversation().learns().misses().says("4 3 5 2 4").hears("corrected")

    assert talk.case.nights[0].status is Status.FINISHED


def test_a_night_of_nothing_but_skips_is_not_practised() -> None:
    """Nothing was swallowed, so the order comes again."""
    talk = Conversation().learns().practises("sssss")

    assert talk.case.nights[0].status is Status.MISSED
    assert talk.case.practised == 0


def test_missed_nights_are_met_with_kindness_and_the_clinician_hears_after_three() -> None:
    """One missed, several missed, and the third raises an alert."""
    talk = Conversation().learns().misses().at("19:30").hears("cheer-one-missed-1").at("23:30")

    talk.at("19:30").hears("cheer-several-missed-1").at("23:30").hears("alert-missed", contact=Who.ON_CALL)


def test_the_cheer_fits_what_happened() -> None:
    """First night, change of favourite, improvement, steadiness: each has its own words."""
    talk = Conversation().learns().practises("44444").hears("cheer-first-night-1")

    talk.practises("44444", best="left").hears("cheer-favourite-changed-1")
    talk.practises("55555", best="left").hears("cheer-improving-1")
    talk.practises("55555", best="left").hears("cheer-steady-1")
    talk.practises("55555", best="left").hears("cheer-steady-2")
    talk.practises("s5555", best="left").hears("cheer-skipped-1")
    talk.practises("55555", best="left").hears("cheer-half-way-1")


def test_a_hard_first_night_and_one_where_nothing_went_down() -> None:
    """Both are met as what they are, with a tip."""
    assert any(text.startswith("tip-") for text in Conversation().learns().practises("12222").texts())
    Conversation().learns().practises("22222").hears("cheer-first-night-hard-1")
    Conversation().learns().practises("-----").hears("cheer-nothing-down-1")


def test_no_wording_comes_twice_within_a_week() -> None:
    """Over a whole fortnight of like nights."""
    talk = Conversation().learns()
    said: list[tuple[int, str]] = []
    for night in range(14):
        talk.practises("44444")
        said += [(night, text) for text in talk.texts() if text.startswith("cheer-")]

    assert len(said) >= 12
    assert not [1 for one in said for other in said if one[1] == other[1] and 0 < other[0] - one[0] < 7]


def test_no_tip_comes_twice_running() -> None:
    """Over a fortnight of hard nights the tips change every time."""
    talk = Conversation().learns()
    tips = [next(text for text in talk.practises("2-2-2").texts() if text.startswith("tip-")) for _ in range(12)]

    assert all(one != other for one, other in itertools.pairwise(tips))
    assert len(set(tips)) >= 5


def test_the_tip_fits_what_the_note_says() -> None:
    """Too much water gets the tip for that."""
    talk = tonight().says("4 3 5 2 4").says("left").says("too much water, it floated away")

    assert any(text.startswith("tip-water-") for text in talk.texts())


def test_a_taste_and_tiredness_are_answered_as_such() -> None:
    """Yucky candy and a tired child have words of their own."""
    for note, text in (("it tasted yucky", "cheer-yucky-1"), ("we were so tired", "cheer-tired-1")):
        talk = Conversation().learns().practises("44444").at("19:30")
        talk.says("4 4 4 4 4").says("center").says(note).hears(text)


def test_a_note_instead_of_a_rating_gets_its_tip_and_the_question_stays() -> None:
    """Words about trouble are no rating."""
    talk = tonight().says("the candy stays on the front of the tongue")

    assert any(text.startswith("tip-front-") for text in talk.texts())
    assert talk.hears("unclear-swallow").case.nights[0].next_position == talk.case.nights[0].order[0]


def test_the_last_nights_are_announced() -> None:
    """Three to go, and the last."""
    talk = Conversation(invited(short(4))).learns().practises().at("19:30").hears("cheer-last-nights-1")

    talk.says("4 4 4 4 4").says("left").says("no").practises().at("19:30").hears("cheer-last-night-1")


def test_whoever_answers_is_asked_on_and_everyone_hears_how_it_was() -> None:
    """The child rates; the parent hears the night's end."""
    talk = with_child().at("19:30")
    order = talk.case.nights[0].order
    talk.presses(f"rate:1:{order[0]}:4", CHILD).hears("ask-swallow", contact=CHILD)
    assert talk.texts(PARENT) == []

    talk.says("3 3 3 3", CHILD).says("left", CHILD).says("no", CHILD)
    talk.hears("night-done", contact=CHILD).hears("night-done", contact=PARENT)


def test_a_prompt_that_reached_nobody_is_our_fault() -> None:
    """It does not count as missed, and is said kindly the next evening."""
    talk = tonight()
    talk.happens(SendEnded(key="prompt:2026-09-02", contact=PARENT, outcome=Outcome.NEVER))

    assert talk.case.nights[0].status is Status.UNSENT
    assert talk.case.missed_in_a_row == 0
    talk.says("we watched a film").hears("passed-on").at("19:30").hears("night-late", "night-prompt")


def test_a_prompt_that_reached_one_of_two_goes_on() -> None:
    """One parent's dead phone does not end the night."""
    talk = Conversation().learns().joins(OTHER_PARENT).at("19:30")
    talk.happens(SendEnded(key="prompt:2026-09-02", contact=PARENT, outcome=Outcome.NEVER))

    assert talk.case.nights[0].status is Status.OPEN


def test_the_failure_of_another_night_s_prompt_means_nothing_tonight() -> None:
    """An outcome that comes late belongs to its own night."""
    talk = tonight().happens(SendEnded(key="prompt:2026-09-01", contact=PARENT, outcome=Outcome.NEVER))

    assert talk.case.nights[0].status is Status.OPEN


def test_a_prompt_that_failed_for_one_after_another_answered_changes_nothing() -> None:
    """Once there is an answer the night stands."""
    talk = tonight().says("4").happens(SendEnded(key="prompt:2026-09-02", contact=PARENT, outcome=Outcome.NEVER))

    assert talk.case.nights[0].status is Status.OPEN


def test_a_machine_asleep_over_bedtime_sends_while_it_is_useful() -> None:
    """An hour late is still bedtime; three hours late is not."""
    Conversation().learns().wakes_next_day("20:30").hears("night-prompt")
    talk = Conversation().learns().wakes_next_day("22:30").hears_nothing()

    talk.at("19:30").hears("night-late", "night-prompt")


def test_no_prompt_where_nobody_can_be_reached() -> None:
    """With every chat unreachable the evening is left out, and it is the clinician's."""
    talk = Conversation().learns()
    talk.happens(SendEnded(key="say:1", contact=PARENT, outcome=Outcome.GONE))
    talk.hears("alert-unreachable", contact=Who.ON_CALL)

    talk.at("19:30")
    assert not talk.case.nights
    talk.says("hello again").at("19:30").hears("night-prompt")


def test_the_next_prompt_closes_a_night_that_is_still_open() -> None:
    """Two nights are never open at once."""
    talk = Conversation().learns().practises().at("19:30")
    talk.wakes_next_day("19:31").hears("night-prompt")

    assert [night.status for night in talk.case.nights[:-1]] == [Status.FINISHED, Status.MISSED]


def test_a_bare_answer_belongs_to_the_question_that_its_own_phone_shows() -> None:
    """The child has rated the first; the parent's "4" to the same question is not put down for the second."""
    talk = with_child().at("19:30")
    order = talk.case.nights[0].order
    talk.presses(f"rate:1:{order[0]}:2", CHILD)

    talk.says("4", PARENT).hears("ask-swallow", contact=PARENT)
    assert talk.case.nights[0].mark(order[0]) == 2
    assert talk.case.nights[0].mark(order[1]) is None
    talk.says("5", PARENT)
    assert talk.case.nights[0].mark(order[1]) == 5


def test_an_answer_that_names_its_position_counts_from_any_phone() -> None:
    """Whatever that phone was asked last; words that answer nothing are asked again."""
    talk = with_child().at("19:30")
    order = talk.case.nights[0].order
    talk.presses(f"rate:1:{order[0]}:2", CHILD).says(f"{order[2]} was 3", PARENT)

    assert talk.case.nights[0].mark(order[2]) == 3
    talk.presses(f"rate:1:{order[1]}:2", CHILD).says("eleventy", CHILD).hears("unclear-swallow", contact=CHILD)
    talk.presses(f"rate:1:{order[3]}:2", PARENT).says("eleventy", CHILD).hears("unclear-swallow", contact=CHILD)


def test_the_last_night_ends_without_cheer_or_tip() -> None:
    """The wrap-up speaks for itself."""
    talk = Conversation(invited(short(1))).learns().practises("1-111").hears("night-done", "finish")

    assert not [text for text in talk.texts() if text.startswith(("cheer-", "tip-"))]


def test_a_night_that_lacks_only_a_note_is_told_and_done() -> None:
    """Nobody is asked twice for a note that they may not have."""
    talk = tonight().says("4 3 5 2 4").says("left").hears("ask-note").after(timedelta(hours=1))

    assert talk.hears("night-done").case.nights[0].status is Status.FINISHED
    assert talk.case.nights[0].note is None


def test_how_to_is_told_in_turn() -> None:
    """Three wordings, so that the line is still read on the last night."""
    talk = tonight()
    for wording in ("night-howto-2", "night-howto-3", "night-howto-1"):
        talk.says("4 3 5 2 4").says("left").says("no").at("19:30")
        assert wording in [one.id for said in talk.heard for one in said.lines]


@pytest.mark.parametrize("words", ["3 but she cried", "3. can I crush her real pill?"])
def test_a_rating_beside_a_worry_is_kept(words: str) -> None:
    """Nothing that a family writes is lost (law 5)."""
    talk = tonight()
    first = talk.case.nights[0].order[0]

    assert talk.says(words).case.nights[0].mark(first) == 3


@pytest.mark.parametrize(
    "words", ["she choked on the 3rd", "can she have 2 of her 5 mg pills?", "he cried for 3 hours"]
)
def test_numbers_of_a_worry_are_no_ratings(words: str) -> None:
    """What a careful human could not be sure of records nothing."""
    assert tonight().says(words).case.nights[0].swallows == ()

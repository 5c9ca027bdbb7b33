"""The follow-up report keeps to its page, says what the estimate says, and tells nobody's secrets."""

import json
import struct
from dataclasses import replace
from itertools import pairwise

import pytest

from coachbot.coach.case import Case, Child, State
from coachbot.insight.favourite import Estimate
from coachbot.insight.record import swallows
from coachbot.insight.summary import child_summary
from coachbot.programme.positions import Position
from coachbot.report.followup import followup
from coachbot.report.parts import page
from coachbot.report.view import view
from coachbot.report.wording import Say
from coachbot.voice.vocabulary import LANGUAGES
from report.paper import Paper
from report.samples import (
    ALL_ALIKE,
    SAMPLES,
    alarmed,
    alike,
    choked,
    clear,
    enrolled,
    fullest,
    noted,
    practised,
    two,
)


def paper(case: Case, language: str = "en") -> Paper:
    """The report of a case, opened."""
    return Paper(followup(case, language=language, form="pdf"))


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("name", SAMPLES)
def test_report_is_one_a4_page_down_to_its_last_line(name: str, language: str) -> None:
    """Whatever the fortnight was like, everything stands on one page of 210 by 297 mm (ISO 216)."""
    made = paper(SAMPLES[name](), language)
    assert made.pages == 1
    assert made.document[0].get_size() == pytest.approx((210 / 25.4 * 72, 297 / 25.4 * 72), abs=0.1)
    assert Say(language)("caution-desk") in made.text


@pytest.mark.parametrize("language", LANGUAGES)
def test_fullest_report_runs_over_neither_below_nor_aside(language: str) -> None:
    """With all at once, each part ends above the next one and inside the margin."""
    made, say = paper(fullest(), language), Say(language)
    parts = [say("grid"), say("courses"), say("stops"), say("notes"), say("choice"), say("cautions")]
    spans = [made.span(words) for words in parts]
    assert all(above[0] > below[1] for above, below in pairwise(spans))
    last = made.span(say("stops-more", count=5))
    assert spans[2][0] > last[1]
    assert last[0] > spans[3][1]
    assert made.span(say("adherence-unsent", count=9)[-20:])[0] > spans[4][1]
    assert made.right() < 1 - 14 / 210


@pytest.mark.parametrize("language", LANGUAGES)
def test_report_is_made_for_screen_readers(language: str) -> None:
    """It has a title, its language, tags, an alternative for each plot, and says it is PDF/UA-1 (ISO 14289-1, 5)."""
    made = paper(clear(), language)
    assert made.title == Say(language)("report-title", child="Mila")
    assert made.language == language
    assert made.tagged
    assert b"<pdfuaid:part>1</pdfuaid:part>" in made.data
    alternatives = made.alternatives()
    assert len(alternatives) == len(Position)
    assert all(Say(language).position(position) in " ".join(alternatives) for position in Position)


def test_picture_is_the_same_page() -> None:
    """The PNG has the page's shape and enough dots to be read on a phone."""
    data = followup(clear(), language="en", form="png")
    wide, high = struct.unpack(">II", data[16:24])
    assert data.startswith(b"\x89PNG")
    assert high / wide == pytest.approx(297 / 210, rel=0.01)
    assert wide >= 1200


def test_clear_favourite_is_said_in_plain_words() -> None:
    """The favourite and its chance stand there as people count, and are the estimate's own."""
    case = clear()
    found = child_summary(case.protocol.positions, swallows(case), evenings=14).estimate
    assert found.clear
    assert found.favourite is Position.LEFT
    percent = round(100 * found.probability[Position.LEFT])
    words = paper(case).text
    assert "Most likely the best: Left" in words
    assert f"Left would be the best one for about {percent}." in words


def test_unclear_favourite_is_not_called_the_best() -> None:
    """Where the estimate is not clear, the page says so and how many nights would tell."""
    case = practised(enrolled(), 6, ALL_ALIKE, 8)
    found = child_summary(case.protocol.positions, swallows(case), evenings=6).estimate
    assert not found.clear
    words = paper(case).text
    assert "Not clear yet" in words
    assert "Most likely the best" not in words
    told = f"About {found.more_nights} more nights would likely tell." if found.more_nights else "would not likely tell"
    assert told in words


def estimated(case: Case, *chances: float, sure: bool) -> str:
    """The words of the page, in order, if the estimate had said this of the positions."""
    shown = view(case)
    guess = Estimate(
        favourite=Position.CENTER,
        probability=dict(zip(shown.positions, chances, strict=True)),
        clear=sure,
        more_nights=0 if sure else 6,
    )
    return json.dumps(page(replace(shown, summary=replace(shown.summary, estimate=guess)), Say("en")))


def test_nobody_is_certain() -> None:
    """However sure the estimate is, the page never says 100 or 0 in 100."""
    words = estimated(clear(), 1.0, 0.0, 0.0, 0.0, 0.0, sure=True)
    assert "the best one for more than 99." in words
    assert '"label": "> 99"' in words
    assert '"label": "< 1"' in words
    assert '"100"' not in words
    assert '"0"' not in words


def test_no_position_is_ahead_where_all_are_level() -> None:
    """Equal ratings give no star and no favourite by the order of the names."""
    words = paper(alike()).text
    assert "No position is ahead of the others." in words
    assert "Center is a bit ahead" not in words
    assert "★" not in words


def test_before_the_first_night_there_is_no_answer() -> None:
    """With nothing to go by no position is named as ahead."""
    words = paper(enrolled()).text
    assert "No ratings yet" in words
    assert "★" not in words
    assert "Favorite" not in words


def test_favourites_and_rates_are_those_of_the_case() -> None:
    """First and last favourite, got-down rates, readiness and nights are counted from the case."""
    words = paper(clear()).text
    assert "First night Center" in words
    assert "Last night Left" in words
    assert "went down 11 of 14" in words
    assert "On the last practice nights Left went down 3 of 3 times. Yes, three times out of three." in words
    assert "14 of 14 practice nights done, in 14 evenings." in words


def test_names_and_notes_are_never_markup() -> None:
    """What people write is printed as they wrote it, also where it would mean something to the layout or to JSON."""
    odd = '#panic("x") *b* $x$ <i> @k \\u{41} "q" // no'
    case = noted(clear(), (3, None, odd))
    case = replace(case, child=Child(name="#let *Ana*", birth_year=2018))
    made = paper(case)
    assert made.title == "What #let *Ana* found out"
    assert odd in made.text


def test_name_that_cannot_be_printed_gets_a_line_to_write_on() -> None:
    """A name in letters that our fonts lack is spoken around; small pictures in notes are left out."""
    case = noted(clear(), (2, None, "yay \U0001f389 done"))
    made = paper(replace(case, child=Child(name="李小龍", birth_year=2018)))
    assert "Name:" in made.text
    assert "What this child found out" in made.text
    assert "yay done" in made.text


def test_long_word_breaks_inside_its_column() -> None:
    """A note without a space does not run out of the page."""
    assert paper(noted(clear(), (2, None, "a" * 150))).right() < 1 - 14 / 210


def test_hold_comes_first_and_nothing_asks_for_practice() -> None:
    """While practice is on hold the page says so and calls nobody ready (law 3)."""
    words = paper(replace(clear(), state=State.ON_HOLD, back_to=State.PRACTISING)).text
    assert "Practice is on hold." in words
    assert "Not while practice is on hold." in words
    assert "Yes, three times" not in words
    assert "more nights" not in paper(choked()).text


def test_signs_of_choking_are_named_and_confidences_are_not() -> None:
    """A page for the whole family names what the airway did and never what somebody said about home."""
    case = alarmed(alarmed(clear(), "choking", day=6, seen=True), "self_harm", day=7, seen=False)
    words = paper(alarmed(case, "forced", day=8, seen=False)).text
    assert "March 7, 2026: choking. The clinic has looked at it." in words
    assert "self-harm" not in words
    assert "forced to swallow" not in words


def test_caution_about_up_stands_only_where_up_was_tried() -> None:
    """The caution about the raised chin comes with the position; the one about medicine always does."""
    assert "Up means the chin just a little up" in paper(clear()).text
    words = paper(two()).text
    assert "chin" not in words
    assert "Do not crush, split or change it without asking them." in words
    assert "No controlled study" in words


def test_position_that_was_chosen_is_ticked() -> None:
    """Before the visit all boxes are empty; afterwards the one that was chosen is ticked."""
    assert "✓" not in paper(clear()).text
    assert "✓ Down" in paper(replace(clear(), chosen=Position.DOWN)).text


def test_readiness_waits_for_a_clear_favourite() -> None:
    """Three swallows that went down are not enough while it is not clear which position is best."""
    assert "Yes, three times out of three." in estimated(clear(), 0.9, 0.1, 0.0, 0.0, 0.0, sure=True)
    words = estimated(clear(), 0.5, 0.3, 0.1, 0.1, 0.0, sure=False)
    assert "Yes, three times" not in words
    assert "so more practice comes first" in words
    assert "About 6 more nights would likely tell." in words


def test_language_that_there_is_not_is_refused() -> None:
    """The error names the languages that there are."""
    with pytest.raises(KeyError, match="en, es, fr"):
        followup(clear(), language="de", form="pdf")

"""The invitation card can be scanned, read and handed over."""

from dataclasses import replace
from datetime import date

import pytest
import zxingcpp

from coachbot.coach.case import Child, Role
from coachbot.report.invitation import card
from coachbot.report.wording import Say
from coachbot.voice.vocabulary import LANGUAGES
from report.paper import Paper
from report.samples import enrolled

CODE = "ABCD-EFGH-JKLMN"
LINK = "https://t.me/an_example_of_a_long_bot_name_bot?start=ABCD-EFGH-JKLMN"
LAST = date(2026, 3, 16)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("role", Role)
def test_card_is_one_page_with_what_is_needed(role: Role, language: str) -> None:
    """One A5 page (ISO 216) with name, code, last day and emergency number; tagged and titled."""
    made, say = Paper(card(enrolled(), role=role, code=CODE, link=LINK, expires=LAST, language=language)), Say(language)
    assert made.pages == 1
    assert made.document[0].get_size() == pytest.approx((210 / 25.4 * 72, 148 / 25.4 * 72), abs=0.1)
    assert made.title == say(f"card-{role}", child="Mila")
    assert made.language == language
    for words in (CODE, say("card-expires", date=say.date(LAST)), say("card-emergency", emergency="112")):
        assert words in made.text
    assert made.alternatives() == [say("card-square", link=LINK)]


@pytest.mark.parametrize("link", [LINK, "sms:+15550100?body=ABCD-EFGH-JKLMN"])
def test_square_opens_the_link(link: str) -> None:
    """A reader of another maker (ZXing) finds the link in the printed page (ISO/IEC 18004)."""
    made = Paper(card(enrolled(), role=Role.PARENT, code=CODE, link=link, expires=LAST, language="en"))
    assert [found.text for found in zxingcpp.read_barcodes(made.picture())] == [link]


def test_link_to_type_comes_without_the_code() -> None:
    """People type the short link and send the code; machines take both in one."""
    words = Paper(card(enrolled(), role=Role.PARENT, code=CODE, link=LINK, expires=LAST, language="en")).text
    assert "t.me/an_example_of_a_long_bot_name_bot" in words.replace(" ", "")
    assert "start=" not in words


def test_family_that_texts_is_told_the_number() -> None:
    """With text messages the number stands in place of the link."""
    link = f"sms:+15550100?body={CODE}"
    made = card(enrolled(), role=Role.CHILD, code=CODE, link=link, number="+1 555 0100", expires=LAST, language="en")
    assert "send a text to: +1 555 0100" in Paper(made).text
    assert "sms:" not in Paper(made).text


def test_longest_name_stays_on_the_card() -> None:
    """A name of 40 wide letters makes no second page and does not run out of it."""
    case = replace(enrolled(), child=Child(name="W" * 40, birth_year=2018))
    made = Paper(card(case, role=Role.PARENT, code=CODE, link=LINK, expires=LAST, language="fr"))
    assert made.pages == 1
    assert made.right() < 1 - 13 / 210

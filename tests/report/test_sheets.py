"""Rating sheets on paper ask for the very nights that messages would have asked for."""

import re
from dataclasses import replace

import pytest

from coachbot.coach.case import State, Status
from coachbot.programme.positions import Position
from coachbot.report.sheets import NothingToPrintError, sheets
from coachbot.report.wording import Say
from coachbot.voice.vocabulary import LANGUAGES
from report.paper import Paper
from report.samples import LEFT_WINS, enrolled, evening, practised, two


def boxes(text: str) -> list[str]:
    """The words of each night's box."""
    return re.split(r"Night \d+ of \d+", text)[1:]


def test_every_night_stands_there_with_its_order() -> None:
    """Fourteen boxes, numbered, each with the order that was fixed for it."""
    case = enrolled()
    text = Paper(sheets(case, language="en")).text
    assert re.findall(r"Night (\d+) of 14", text) == [str(number) for number in range(1, 15)]
    for order, box in zip(case.orders, boxes(text), strict=True):
        first = {position: re.search(rf"\d\. {Say('en').position(position)}", box) for position in order}
        places = [found.start() for found in first.values() if found]
        assert len(places) == len(order)
        assert places == sorted(places)


def test_every_box_has_its_safety_line_and_candy() -> None:
    """Wherever a sheet asks for a swallow, it says who must be there and whom to call."""
    for number, box in enumerate(boxes(Paper(sheets(enrolled(), language="en")).text), start=1):
        assert "An adult sits close by the whole time. Sit up tall. Never force it. Choking: call 112." in box
        assert ("One small mint (6 mm) each" if number < 5 else "One small hard candy (9 mm) each") in box
        assert box.count("did not go down") == len(Position)


def test_sheets_go_on_where_practice_is() -> None:
    """Practised nights are not asked for again; a night done in part keeps its order for the next."""
    case = practised(enrolled(), 5, LEFT_WINS, 3)
    case = evening(evening(case, Status.MISSED), Status.PARTIAL, {Position.CENTER: 3})
    text = Paper(sheets(case, language="en")).text
    assert re.findall(r"Night (\d+) of 14", text) == [str(number) for number in range(7, 15)]
    assert f"1. {Say('en').position(case.orders[5][0])}" in boxes(text)[0]


def test_calendar_that_runs_out_limits_the_sheets() -> None:
    """No more boxes than evenings that the protocol still allows."""
    case = enrolled()
    case = replace(case, protocol=replace(case.protocol, max_nights=14))
    for _ in range(12):
        case = evening(case, Status.MISSED)
    assert len(boxes(Paper(sheets(case, language="en")).text)) == 2


@pytest.mark.parametrize("state", [State.ON_HOLD, State.FINISHED, State.FOLLOWED_UP, State.WITHDRAWN])
def test_no_sheet_asks_for_a_swallow_when_practice_is_not_open(state: State) -> None:
    """On hold and after the end there is nothing to print, and the error says what to do (law 3)."""
    with pytest.raises(NothingToPrintError, match=f"while the case is {state}"):
        sheets(replace(enrolled(), state=state), language="en")


def test_no_sheets_when_all_nights_are_used() -> None:
    """After the last practised night there is nothing left to print."""
    with pytest.raises(NothingToPrintError, match="all nights"):
        sheets(practised(enrolled(), 14, dict(LEFT_WINS), 3), language="en")


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_few_nights_a_page_in_every_language(language: str) -> None:
    """Three nights of five positions a page; tagged, with title and language."""
    made = Paper(sheets(enrolled(), language=language))
    assert made.pages == 5
    assert made.tagged
    assert made.language == language
    assert made.title == Say(language)("sheet-title", child="Mila")
    assert Paper(sheets(two(), language=language)).pages <= 2

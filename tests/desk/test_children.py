"""Promises about the caseload, one child's page, and its buttons."""

import re
from datetime import timedelta

import pytest
from markupsafe import escape

from coachbot.channels.base import Ending, Report
from coachbot.coach.case import State
from coachbot.coach.events import TargetSet
from coachbot.desk.caseload import Wanted, choose
from coachbot.programme.sizes import CAPSULES, Size, Target
from helpers.cases import draft
from helpers.desk_bench import NOON, Bench, Browser, Family, SignedIn, run

MOON = "Zebulonia"


@pytest.fixture
def client(family: Family, signed_in: SignedIn) -> Browser:
    """A clinician's browser."""
    assert family.case.practised
    return signed_in("clinician")


def test_a_childs_page_shows_the_nights_as_they_were_rated(family: Family, client: Browser) -> None:
    """Each rating stands in its position's row and its night's column, as the coach kept it."""
    page = client.get(f"/children/{family.id}").text
    for position in family.case.protocol.positions:
        row = re.search(rf"<tr><th scope=\"row\">{position.title()}</th>(.*?)</tr>", page, re.DOTALL)
        assert row is not None
        cells = re.findall(r"<td class=\"(\w+)", row[1])
        marks = [night.mark(position) for night in family.case.nights]
        assert cells == [f"r{mark}" if isinstance(mark, int) else str(mark) for mark in marks]


def test_the_conversation_is_shown_as_it_was_sent(family: Family, client: Browser) -> None:
    """What the family's phone got and what it wrote, word for word."""
    page = client.get(f"/children/{family.id}").text

    assert "4 3 5 4 4" in page
    for message in family.bench.phones.phones[family.address][-3:]:
        for line in message.text.splitlines():
            assert line.replace("'", "&#39;").replace('"', "&#34;") in page


def test_a_message_is_shown_as_delivered_once_its_channel_has_reported_each_piece(
    family: Family, client: Browser
) -> None:
    """A channel that reports nothing says nothing; half a message is not delivered; one that was lost never is."""
    store = family.bench.coachbot.store
    one, other = store.run(lambda tx: [one.id for one in tx.outbox.of_case(family.id) if one.contact_id])[-2:]
    store.run(lambda tx: tx.deliveries.expect(one, "sms", ("1", "2")))
    store.run(lambda tx: tx.deliveries.expect(other, "sms", ("3",)))
    seen = []
    for name, ending in (("1", Ending.SENT), ("2", Ending.SENT), ("3", Ending.NEVER)):
        report = Report(channel="sms", names=(name,), address="", ending=ending)
        assert run(family.bench.coachbot.sender.report(report))
        page = client.get(f"/children/{family.id}").text
        seen.append((page.count("· delivered"), page.count("<strong>not delivered")))

    assert seen == [(0, 0), (1, 0), (1, 1)]


DEEDS = [
    ("pause", {"until": ""}, "state", State.PAUSED),
    ("hold", {"note": "Seen with a cold"}, "state", State.ON_HOLD),
    ("end", {"note": "Moved away"}, "state", State.WITHDRAWN),
    ("bedtime", {"at": "20:15", "zone": "Europe/Paris"}, "zone", "Europe/Paris"),
]


@pytest.mark.parametrize(("deed", "form", "part", "wanted"), DEEDS, ids=[deed[0] for deed in DEEDS])
def test_each_button_is_an_event_with_a_name(
    family: Family, client: Browser, deed: str, form: dict[str, str], part: str, wanted: object
) -> None:
    """It changes the case, tells the family, and stands in the list of changes with the clinician's name."""
    answer = client.send(f"/children/{family.id}/do/{deed}", **form)

    assert answer.headers["location"] == f"/children/{family.id}?done={deed}"
    assert getattr(family.case, part) == wanted
    assert re.search(
        r"Imani Osei: from|Imani Osei: (time zone|bedtime) from", client.get(f"/children/{family.id}").text
    )


def test_a_candy_and_a_message_reach_the_family(family: Family, client: Browser) -> None:
    """Another size from the next night on; the clinician's own words as they were typed."""
    client.send(f"/children/{family.id}/do/candy", kind="hard", size="10")
    client.send(f"/children/{family.id}/do/tell", words="Well done, all of you!")
    sent = family.bench.coachbot.store.run(lambda tx: tx.outbox.of_case(family.id))

    assert family.case.protocol.candy(3).size_mm == 10
    assert family.case.nights[-1].candy.size_mm == 8
    assert any("Well done, all of you!" in one.body.text for one in sent)


@pytest.mark.parametrize(
    ("deed", "form", "said"),
    [
        ("bedtime", {"at": "half past", "zone": "Europe/Paris"}, "no time of day"),
        ("bedtime", {"at": "23:59", "zone": "Europe/Paris"}, "must lie from"),
        ("bedtime", {"at": "19:30", "zone": "Europe/Nowhere"}, "no time zone"),
        ("candy", {"kind": "hard", "size": "40"}, "from 2 to 22"),
        ("candy", {"kind": "brick", "size": "8"}, "Choose one"),
        ("pause", {"until": "2020-01-01"}, "not in the future"),
        ("tell", {"words": "x" * 1501}, "1,501 characters"),
        ("follow-up", {"position": "center"}, "not possible in the state"),
        ("dance", {}, "Choose one"),
    ],
)
def test_what_cannot_be_used_is_refused_with_what_to_do(
    family: Family, client: Browser, deed: str, form: dict[str, str], said: str
) -> None:
    """Nothing changes, and the page says why in a sentence."""
    before = family.case
    answer = client.send(f"/children/{family.id}/do/{deed}", **form)

    assert answer.status_code in (409, 422)
    assert said in answer.text
    assert family.case == before


def test_a_child_who_is_not_there_is_said_to_be_so(client: Browser) -> None:
    """A number that no case has gives a page, not a fault."""
    assert client.get("/children/999").status_code == 404


def test_a_filled_sheet_is_entered(family: Family, client: Browser) -> None:
    """The marks of a sheet become a night of the case, with the day that it was practised."""
    today = family.bench.clock.now.date()
    marks = {f"mark-{position}": str(index) for index, position in enumerate(family.case.orders[2], 1)}
    family.bench.clock.passes(timedelta(minutes=1))
    yesterday = str(today + timedelta(days=-4))
    answer = client.send(f"/children/{family.id}/night", day=yesterday, best="left", note="on paper", **marks)

    assert answer.status_code == 303, answer.text
    night = next(one for one in family.case.nights if str(one.day) == yesterday)
    assert sorted(str(one.mark) for one in night.swallows) == ["1", "2", "3", "4", "5"]
    assert night.note == "on paper"
    again = client.send(f"/children/{family.id}/night", day=yesterday, **marks)
    assert again.status_code == 409
    assert "already a night" in again.text
    assert client.send(f"/children/{family.id}/night", day="2090-01-01", **marks).status_code == 422
    assert client.send(f"/children/{family.id}/night", day=str(today)).status_code == 422


def test_the_real_medicine_stands_beside_the_candy(family: Family, client: Browser) -> None:
    """Candy, steps and capsule with their growth and the guidance's limits; the family hears nothing of it."""
    sent = len(family.bench.phones.phones[family.address])
    page = f"/children/{family.id}/target"
    assert "No size is set" in client.get(f"/children/{family.id}").text
    answer = client.send(page, capsule="00", length="", width="", steps="10 x 8\n 16,5 × 8.5 mm\n")
    shown = client.get(answer.headers["location"]).text

    assert answer.status_code == 303
    assert family.case.target == Target(
        size=CAPSULES["00"].size,
        capsule="00",
        steps=(Size(length_mm=10, width_mm=8), Size(length_mm=16.5, width_mm=8.5)),
    )
    for words in ("8 mm at its longest", "10 × 8 mm", "× 1.25", "16.5 × 8.5 mm", "23.5 × 8.55 mm", "× 1.42"):
        assert words in shown
    assert "Over 22 mm" in shown
    assert "Over size 00" not in shown
    assert "Imani Osei: the real medicine’s size is now 23.5 × 8.55 mm" in shown
    assert len(family.bench.phones.phones[family.address]) == sent

    form = client.get(page).text
    assert '<option value="00" selected>' in form
    assert "10 x 8\n16.5 x 8.5</textarea>" in form
    client.send(f"/children/{family.id}/do/candy", kind="hard", size="12")
    assert "no longer than the candy" in client.get(f"/children/{family.id}").text
    client.send(page, remove="yes")
    assert family.case.target is None
    history = family.bench.coachbot.store.run(lambda tx: list(tx.cases.history(family.id)))
    assert [event.target is None for _, event in history if isinstance(event, TargetSet)] == [False, True]


@pytest.mark.parametrize(
    ("form", "said"),
    [
        ({}, "or give length and width"),
        ({"capsule": "6"}, "Choose one"),
        ({"capsule": "3", "length": "12"}, "not both"),
        ({"length": "12"}, "“—” cannot be used"),
        ({"length": "nan", "width": "1e1"}, "“nan” cannot be used"),
        ({"length": "55.5", "width": "8"}, "from 1 to 40"),
        ({"length": "8", "width": "12,5"}, "8 mm is less than 12.5 mm"),
        ({"length": "16", "width": "8", "steps": "ten by <six>"}, "“ten by &lt;six&gt;” is not a size"),
        ({"length": "16", "width": "8", "steps": "12 x 8\n10 x 8"}, "must rise"),
        ({"length": "16", "width": "8", "steps": "7 x 7"}, "above 8 mm"),
        ({"length": "16", "width": "8", "steps": "17 x 7"}, "above 16 mm"),
        ({"length": "16", "width": "8", "steps": "6 x 7"}, "6 mm is less than 7 mm"),
        ({"length": "16", "width": "8", "steps": "\n".join(["12 x 8"] * 9)}, "at most"),
    ],
)
def test_a_size_that_cannot_be_is_refused_and_stays_as_typed(
    family: Family, client: Browser, form: dict[str, str], said: str
) -> None:
    """Nothing is kept; the form says why beside its field and still has every word."""
    answer = client.send(f"/children/{family.id}/target", **form)

    assert answer.status_code == 422
    assert said in answer.text
    assert 'aria-invalid="true"' in answer.text
    for name in ("length", "width"):
        assert f'name="{name}" inputmode="decimal" autocomplete="off" maxlength="6" value="{form.get(name, "")}"' in (
            answer.text
        )
    assert str(escape(form.get("steps", ""))) + "</textarea>" in answer.text
    assert family.case.target is None


@pytest.mark.parametrize(
    ("path", "start"),
    [("report.pdf", b"%PDF"), ("report.png", b"\x89PNG"), ("certificate.png", b"\x89PNG"), ("sheets.pdf", b"%PDF")],
)
def test_papers_are_files_of_their_kind(family: Family, client: Browser, path: str, start: bytes) -> None:
    """Report, certificate and sheets come as files under a name without the child's."""
    answer = client.get(f"/children/{family.id}/{path}")

    assert answer.status_code == 200
    assert answer.content.startswith(start)
    assert MOON not in answer.headers["content-disposition"]


def test_the_caseload_finds_sorts_and_narrows_down(bench: Bench, family: Family, client: Browser) -> None:
    """By name without accents and capitals; who needs somebody first; groups by state."""
    store = bench.coachbot.store
    store.run(lambda tx: [tx.cases.add(draft(name), NOON) for name in ("Zoé", "anouk", "Éva")])
    family.says("she is choking and cannot breathe")
    rows = store.run(bench.app.state.desk.board.rows)

    assert [row.line.child for row in choose(rows, Wanted(sort="name"))] == ["anouk", "Éva", MOON, "Zoé"]
    assert [row.line.child for row in choose(rows, Wanted(words="ZOE"))] == ["Zoé"]
    assert choose(rows, Wanted())[0].line.child == MOON
    assert [row.line.child for row in choose(rows, Wanted(show="needs"))] == [MOON]
    assert [row.line.child for row in choose(rows, Wanted(show="on_hold"))] == [MOON]
    page = client.get("/children?show=waiting&sort=name&words=o").text
    assert re.findall(r'<a href="/children/\d+">(\w+)</a>', page) == ["anouk", "Zoé"]


def test_the_caseload_follows_the_cases(bench: Bench, family: Family, client: Browser) -> None:
    """Lines are kept in memory, and yet each page shows the state of this moment, and erased children vanish."""
    page = client.get("/children").text
    assert "night 2 of 14" in page
    client.send(f"/children/{family.id}/do/pause", until="")

    assert 'state-paused">paused' in client.get("/children").text
    bench.coachbot.store.run(lambda tx: tx.erase(family.id, bench.clock.now))
    assert MOON not in client.get("/children").text


def test_the_favourite_appears_once_it_is_worked_out(bench: Bench, family: Family, client: Browser) -> None:
    """A page never waits for an estimate: it says that it is being worked out, then shows it."""
    assert "being worked out" in client.get("/children").text
    board = bench.app.state.desk.board
    for line in board.outstanding():
        board.work_out(line)

    assert family.case.practised == 2
    assert re.search(r"(Center|Left|Right|Up|Down) <small>\d+ %", client.get("/children").text)

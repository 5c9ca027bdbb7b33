"""Promises about the alerts page and the buttons under an alert."""

import re
from datetime import timedelta

import pytest

from coachbot.coach.case import State
from coachbot.desk import sessions
from helpers.desk_bench import Bench, Browser, Family, SignedIn, practising, run

GRAVE = "she is choking and cannot breathe"


@pytest.fixture
def family(bench: Bench) -> Family:
    """A family that practises."""
    return practising(bench)


@pytest.fixture
def client(family: Family, signed_in: SignedIn) -> Browser:
    """A clinician's browser, once there is a family."""
    assert family.case.state is State.PRACTISING
    return signed_in("clinician")


def test_an_alert_shows_the_words_that_decided_who_was_told_and_what_comes_next(
    family: Family, client: Browser
) -> None:
    """All that a clinician needs to act stands on one page."""
    family.says(GRAVE)
    page = client.get("/alerts").text

    assert "Emergency" in page
    assert "Zebulonia" in page
    assert GRAVE in page
    assert re.search(r"<mark>[^<]*(choking|breathe)[^<]*</mark>", page)
    assert "Imani Osei (once, last" in page
    assert "clinician on call, in 5 minutes" in page


def test_alerts_are_in_order_of_level_then_age(bench: Bench, client: Browser) -> None:
    """An emergency of this minute stands before a concern of this morning."""
    worried, older, newer = (practising(bench, name) for name in ("Anouk", "Bram", "Chidi"))
    worried.says("she cried and did not want to do it")
    older.says(GRAVE)
    bench.clock.passes(timedelta(minutes=2))
    newer.says(GRAVE)
    names = re.findall(r'<h2 id="alert-[^>]*><a[^>]*>(\w+)</a>', client.get("/alerts").text)

    assert names == ["Bram", "Chidi", "Anouk"]


def test_taking_an_alert_on_stops_the_ladder_and_keeps_the_name(bench: Bench, family: Family, client: Browser) -> None:
    """Acknowledged by the one who is signed in; nobody is called again; the hold stays."""
    family.says(GRAVE)
    answer = client.send(f"/children/{family.id}/do/acknowledge", alert="1", back="alerts")
    alert = family.case.alerts[0]

    assert answer.headers["location"] == "/alerts?done=acknowledge"
    assert alert.acknowledged_by == "Imani Osei"
    assert alert.next_step is None
    assert family.case.state is State.ON_HOLD
    again = client.send(f"/children/{family.id}/do/acknowledge", alert="1")
    assert again.status_code == 409
    assert "Imani Osei has already taken this on" in again.text
    assert bench.coachbot.store.run(lambda tx: tx.board.open_alerts()) == []


def test_a_hold_is_lifted_with_a_note_only(family: Family, client: Browser) -> None:
    """Without words nothing happens; with them practice goes on, and the name and note are in the history."""
    family.says(GRAVE)
    refused = client.send(f"/children/{family.id}/do/lift", note="  ")

    assert refused.status_code == 422
    assert family.case.state is State.ON_HOLD
    client.send(f"/children/{family.id}/do/lift", note="Seen today, all well")
    assert str(family.case.state) == "practising"
    page = client.get(f"/children/{family.id}").text
    assert "Seen today, all well" in page
    assert "from on hold to practicing" in page


def test_words_that_cannot_be_used_are_given_back(family: Family, client: Browser) -> None:
    """A refusal says why, and what was typed is not lost."""
    answer = client.send(f"/children/{family.id}/do/lift", note="I spoke with the family at length")

    assert answer.status_code == 409
    assert "is not on hold" in answer.text
    assert "I spoke with the family at length" in answer.text


def test_the_pulse_tells_of_a_new_alert(family: Family, client: Browser) -> None:
    """A page that is open learns of it by asking: another stamp, one more alert, and the list with it."""
    before = client.get("/alerts/pulse").json()
    family.says(GRAVE)
    after = client.get("/alerts/pulse").json()

    assert (before["alerts"], after["alerts"]) == (0, 1)
    assert before["stamp"] != after["stamp"]
    assert GRAVE in client.get("/alerts/list").text
    assert 'http-equiv="refresh"' in client.get("/alerts").text


def test_a_family_is_told_that_the_clinic_will_call(family: Family, client: Browser) -> None:
    """One button, in the family's language; notes and calls are kept for colleagues."""
    family.says(GRAVE)
    client.send(f"/children/{family.id}/do/call-back", back="alerts")
    client.send(f"/children/{family.id}/note", kind="call", note="Mother says all is well now", alert="1")
    run(family.bench.coachbot.settle())

    assert "We will call you" in family.hears()
    assert "Mother says all is well now" in client.get("/alerts").text


def test_a_message_that_nobody_could_read_is_read_at_the_desk(family: Family, signed_in: SignedIn) -> None:
    """It waits at the desk until somebody says that it is read, and it is kept who."""
    family.at_bedtime()
    for _ in range(3):
        family.says("grandma blue bicycle tomorrow banana")
    client = signed_in("clinician")
    assert "blue bicycle" in client.get("/alerts").text
    waiting = family.bench.coachbot.store.run(lambda tx: tx.messages.unread())
    for message in waiting:
        client.send(f"/messages/{message.id}/read")

    assert family.bench.coachbot.store.run(lambda tx: tx.messages.unread()) == []
    read = family.bench.coachbot.store.run(lambda tx: tx.messages.get(waiting[0].id))
    assert read is not None
    assert read.read_by == "Imani Osei"


def test_who_looks_is_written_down(family: Family, client: Browser) -> None:
    """Every view of a child's record is in the log of access, with name, time and page."""
    family.says(GRAVE)
    client.get(f"/children/{family.id}")
    client.get("/alerts")
    found = family.bench.coachbot.store.run(lambda tx: tx.access.of_case(family.id))

    assert [(one.by, one.what) for one in found] == [("Imani Osei", "child.child"), ("Imani Osei", "alerts")]
    assert found[0].at == family.bench.clock.now


def test_the_words_of_a_family_cannot_run_in_a_page(family: Family, client: Browser) -> None:
    """Markup in a message is shown as words, and no page allows a script of its own."""
    family.says("<script>alert(1)</script> she is choking")
    answer = client.get("/alerts")

    assert "<script>alert(1)" not in answer.text
    assert "&lt;script&gt;alert(1)" in answer.text
    policy = answer.headers["content-security-policy"]
    assert "script-src 'self'" in policy
    assert "unsafe" not in policy
    assert not re.search(r"<script(?![^>]*\bsrc=)|\sstyle=|\son\w+=", answer.text)


def test_nobody_reachable_is_said_loudly(family: Family, client: Browser) -> None:
    """Law 4: pages carry a banner, and the health check fails, while an alert would reach no one."""
    store = family.bench.coachbot.store
    run(family.bench.coachbot.signs.give())
    assert client.get("/ready").status_code == 200
    store.run(lambda tx: tx.clinicians.change("Imani Osei", duty="none"))

    assert "Nobody can be reached." in client.get("/alerts").text
    assert client.get("/ready").status_code == 503
    assert client.get("/live").status_code == 200


def test_a_clock_that_has_stopped_is_said_loudly(family: Family, client: Browser) -> None:
    """Without a heartbeat no alert climbs: pages and health check say so."""
    family.bench.clock.passes(timedelta(minutes=10))

    assert "The clock has stopped." in client.get("/alerts").text
    assert client.get("/ready").json()["heartbeat"] is False
    assert timedelta(minutes=10) < sessions.IDLE

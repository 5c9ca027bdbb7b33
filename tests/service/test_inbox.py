"""What comes in is kept once, reaches whom it concerns, and is never lost."""

from datetime import timedelta

import pytest

from coachbot.coach import decide as deciding
from coachbot.coach.case import Case, Role, State, Status
from coachbot.coach.decide import decide
from coachbot.rehearsal.stage import BACKUP, CHILD, CLINICIAN, FAMILY, PARENT, Stage
from coachbot.service import deciding as service_deciding
from coachbot.service.enrolling import Family, enrol
from coachbot.store import Message, Transaction
from coachbot.triage import Level


def heard(stage: Stage, phone: str) -> str:
    """The words that arrived last on a phone."""
    last = stage.last(phone)
    return last.text if last else ""


def messages(stage: Stage) -> list[Message]:
    """All messages that were kept of the family."""
    return stage.coachbot.store.run(lambda tx: tx.messages.of_case(stage.case_id))


async def test_a_message_delivered_twice_is_taken_once(practising: Stage) -> None:
    """The channel's own id decides; the second time changes and says nothing."""
    await practising.to_bedtime()
    for _ in range(2):
        await practising.phones.write(PARENT, "4", channel_id="same")
        await practising.coachbot.settle()

    assert len(practising.case.nights[0].swallows) == 1
    assert [one.text for one in messages(practising)].count("4") == 1


async def test_safety_text_alert_and_hold_come_in_one_transaction(practising: Stage) -> None:
    """Law 3: when the message is kept, so are all three, before anything is sent."""
    await practising.to_bedtime()
    await practising.phones.write(PARENT, "she is choking and cant breathe")

    case = practising.case
    waiting = practising.coachbot.store.run(lambda tx: tx.outbox.of_case(practising.case_id))
    assert case.state is State.ON_HOLD
    assert case.open_alerts
    keys = [one.key.partition(":")[0] for one in waiting if one.status == "waiting"]
    assert {"safety", "alert"} <= set(keys)
    assert messages(practising)[-1].level is Level.EMERGENCY
    assert messages(practising)[-1].evidence


async def test_what_waits_is_taken_back_when_practice_stops(practising: Stage) -> None:
    """A prompt that has not gone out when the alarm comes never does."""
    case = practising.case
    assert case.next_evening
    await practising.forward(timedelta(hours=23, minutes=50))
    practising.clock.now += timedelta(minutes=15)
    await practising.coachbot.heartbeat.beat()
    await practising.phones.write(CHILD, "i cant breathe")
    await practising.coachbot.settle()

    texts = [one.sent.text for phone in (PARENT, CHILD) for one in practising.spoken[phone] if one.sent]
    arrived = [message.text for phone in (PARENT, CHILD) for message in practising.phones.phones[phone]]
    assert not [text for text in texts + arrived if "Night 1 of 14" in text]
    assert any("911" in text for text in arrived)


async def test_the_history_replays_to_the_case_that_is_kept(practising: Stage) -> None:
    """Opening plus events gives the case, on each database."""
    await practising.to_bedtime()
    await practising.write(CHILD, "4 3 5 2 4")
    await practising.write(CHILD, "left")
    await practising.write(CHILD, "too much water")
    await practising.write(PARENT, "make it 8:00")
    await practising.to_bedtime()
    await practising.write(PARENT, "he choked and coughs")
    history = practising.coachbot.store.run(lambda tx: list(tx.cases.history(practising.case_id)))

    case = history[0][1]
    assert isinstance(case, Case)
    for at, event in history[1:]:
        assert not isinstance(event, Case)
        case = decide(case, event, at).case
    assert case == practising.case


async def test_an_invitation_opens_once(stage: Stage) -> None:
    """A used code, a wrong code and an old code each say so."""
    code = stage.codes[Role.PARENT]
    await stage.write(PARENT, code.lower())
    assert "agree" in heard(stage, PARENT)

    await stage.write(BACKUP, code)
    await stage.write("elsewhere", code)
    assert [contact.role for contact in stage.case.contacts] == [Role.PARENT]
    await stage.forward(timedelta(days=15))
    await stage.write("elsewhere", stage.codes[Role.CHILD])
    assert len(stage.case.contacts) == 1


async def test_guessing_codes_is_slowed_down(stage: Stage) -> None:
    """After five wrong codes in an hour even the right one has to wait."""
    for _ in range(5):
        await stage.write("guesser", "AAAA-BBBB-CCCCC")
    await stage.write("guesser", stage.codes[Role.PARENT])
    assert not stage.case.contacts

    await stage.forward(timedelta(hours=1))
    await stage.write("guesser", stage.codes[Role.PARENT])
    assert stage.case.contacts


async def test_joining_again_with_a_second_code_links_nothing_twice(stage: Stage) -> None:
    """One chat is one contact of a case, whatever codes it holds."""
    await stage.write(PARENT, stage.codes[Role.PARENT])
    await stage.write(PARENT, stage.codes[Role.CHILD])

    assert len(stage.case.contacts) == 1


async def test_a_stranger_is_told_where_they_are(stage: Stage) -> None:
    """At most three times an hour, so that two machines cannot talk for ever."""
    for _ in range(5):
        await stage.write("stranger", "hello?")

    assert sum(one.sent is not None for one in stage.spoken["stranger"]) == 3


async def test_a_stranger_s_alarm_gets_the_safety_text_and_climbs(stage: Stage) -> None:
    """Whoever it is: the emergency number first, and the clinicians are told until one takes it on."""
    await stage.write("stranger", "my son is choking, he cant breathe")
    assert "911" in heard(stage, "stranger")
    assert "choking" in heard(stage, CLINICIAN)

    await stage.forward(timedelta(minutes=16))
    assert heard(stage, BACKUP)
    unread = stage.coachbot.store.run(lambda tx: tx.messages.unread())
    assert [one.text for one in unread] == ["my son is choking, he cant breathe"]


async def test_a_fault_of_ours_loses_no_words(practising: Stage, monkeypatch: pytest.MonkeyPatch) -> None:
    """A message that cannot be decided is kept, and put before the clinician as unread."""

    def broken(*_: object) -> None:
        raise ZeroDivisionError

    with monkeypatch.context() as patch:
        patch.setattr(service_deciding, "decide", broken)
        await practising.phones.write(PARENT, "hello there")

    unread = practising.coachbot.store.run(lambda tx: tx.messages.unread())
    assert [(one.text, one.outcome) for one in unread] == [("hello there", "failed")]
    assert deciding.decide is decide


async def test_siblings_are_told_apart(practising: Stage) -> None:
    """By name, or by who waits for an answer; else the parent is asked; an alarm counts for both."""
    sister = await _sibling(practising, "Amal")
    await practising.write(PARENT, "grandma baked a cake")
    assert "Amal" in heard(practising, PARENT)
    assert "Noor" in heard(practising, PARENT)

    await practising.write(PARENT, "Noor: pause please")
    await practising.write(PARENT, "it went fine, she is choking now")
    both = practising.coachbot.store.run(lambda tx: [tx.cases.load(practising.case_id), tx.cases.load(sister)])
    assert [case.state for case in both] == [State.ON_HOLD, State.ON_HOLD]


async def _sibling(stage: Stage, name: str) -> int:
    wanted = Family(child=name, bedtime=FAMILY.bedtime, zone=FAMILY.zone, screening=FAMILY.screening)

    def add(tx: Transaction) -> tuple[int, str]:
        done = enrol(tx, wanted, emergency_number="911", seed=99, now=stage.clock.now)
        return done.case.id, dict(done.codes)[Role.PARENT]

    await stage.forward(timedelta(minutes=30))
    case_id, code = await stage.coachbot.store.transact(add)
    await stage.write(PARENT, code)
    await stage.press(PARENT, f"{case_id}:consent:agree")
    return case_id


async def test_a_button_finds_its_own_child(practising: Stage) -> None:
    """Two children, one phone: each tap belongs to the case that gave the button."""
    sister = await _sibling(practising, "Amal")
    await practising.to_bedtime()
    night = practising.case.nights[0]
    await practising.press(PARENT, f"{practising.case_id}:rate:1:{night.order[0]}:4")

    other = practising.coachbot.store.run(lambda tx: tx.cases.load(sister))
    assert practising.case.nights[0].mark(night.order[0]) == 4
    assert not other.nights


async def test_a_clinician_answers_by_typed_words(practising: Stage) -> None:
    """ACK, LIFT with a note, END with a note; anything else shows how to write it."""
    await practising.to_bedtime()
    await practising.write(PARENT, "she is choking and cant breathe")
    await practising.write(CLINICIAN, f"ack {practising.case_id}-1")
    assert not practising.case.open_alerts
    await practising.write(CLINICIAN, f"LIFT {practising.case_id}-1")
    assert practising.case.back_to
    await practising.write(CLINICIAN, f"LIFT {practising.case_id}-1 saw the child, all well")
    assert practising.case.back_to is None

    before = heard(practising, CLINICIAN)
    await practising.write(CLINICIAN, "hello?")
    await practising.write(CLINICIAN, "ack 999-1")
    assert heard(practising, CLINICIAN) != before
    await practising.write(CLINICIAN, f"end {practising.case_id}-1 family moves away")
    assert practising.case.state is State.WITHDRAWN


async def test_a_clinician_s_note_goes_to_the_case_that_asked_for_it(practising: Stage) -> None:
    """Button, then words."""
    await practising.write(PARENT, "she choked and is still coughing")
    await practising.press(CLINICIAN, f"{practising.case_id}:lift:1")
    await practising.write(CLINICIAN, "phoned, cough gone, doctor has seen her")

    assert practising.case.state is State.PRACTISING
    assert practising.case.nights == () or practising.case.nights[-1].status is not Status.OPEN


async def test_erasing_leaves_only_the_farewell(practising: Stage) -> None:
    """The family hears that all is erased; then nothing of it is left to be found."""
    await practising.to_bedtime()
    await practising.write(PARENT, "delete everything you have about us")
    await practising.write(PARENT, "yes")

    assert heard(practising, PARENT)
    kept = practising.coachbot.store.run(
        lambda tx: (tx.people.find("rehearsal", PARENT), list(tx.cases.all()), tx.outbox.of_case(practising.case_id))
    )
    assert not kept[0]
    assert practising.case_id not in [case.id for case in kept[1]]
    assert not kept[2]

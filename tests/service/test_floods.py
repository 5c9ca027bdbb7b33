"""One sender's flood: it costs others nothing, nothing of it is lost, and an alarm in it is heard."""

from collections import Counter
from datetime import timedelta

import pytest
from sqlalchemy import select

from coachbot.coach.case import Role, State
from coachbot.rehearsal.stage import CHILD, CLINICIAN, PARENT, Stage
from coachbot.store import Message
from coachbot.store.tables import messages

CHOKING = "she is choking and cant breathe"
FLOOD = 60


@pytest.fixture
def store_url(sqlite_url: str) -> str:
    """One database is enough: what is limited is limited before the store."""
    return sqlite_url


def texts(stage: Stage, phone: str) -> list[str]:
    """What stands on a phone."""
    return [one.sent.text for one in stage.spoken[phone] if one.sent]


def unread(stage: Stage) -> list[Message]:
    """What waits for a clinician."""
    return stage.coachbot.store.run(lambda tx: tx.messages.unread())


async def flood(stage: Stage, phone: str, words: str = "grandma baked a cake") -> None:
    """Many messages within seconds."""
    for _ in range(FLOOD):
        await stage.phones.write(phone, words)
        stage.clock.now += timedelta(milliseconds=100)


async def test_a_flood_is_kept_and_not_answered_and_others_are(practising: Stage) -> None:
    """Thirty in a minute are more than anybody writes: the rest waits at the desk."""
    await flood(practising, PARENT)
    await practising.write(CHILD, "info")

    kept = practising.coachbot.store.run(lambda tx: tx.messages.of_case(practising.case_id))
    outcomes = Counter(one.outcome for one in kept if one.text and "cake" in one.text)
    assert outcomes == {"replied": 30, "flood": FLOOD - 30}
    assert len([one for one in unread(practising) if one.outcome == "flood"]) == FLOOD - 30
    assert "I write each night" in texts(practising, CHILD)[-1]
    await practising.forward(timedelta(minutes=1))
    before = len(texts(practising, PARENT))
    await practising.write(PARENT, "info")
    assert len(texts(practising, PARENT)) > before


async def test_an_alarm_in_a_flood_is_heard(practising: Stage) -> None:
    """Hold, safety text and alert; once more, while the alert is open, it only waits at the desk; then anew."""
    await flood(practising, PARENT)
    await practising.write(PARENT, CHOKING)
    assert practising.case.state is State.ON_HOLD
    assert any("911" in text for text in texts(practising, PARENT))
    assert len(practising.case.open_alerts) == 1

    await practising.write(PARENT, CHOKING)
    assert len(practising.case.open_alerts) == 1
    assert unread(practising)[-1].text == CHOKING
    await practising.write(PARENT, "he has swallowed a button battery")
    assert len(practising.case.open_alerts) == 2
    for number in (1, 2):
        await practising.write(CLINICIAN, f"take {practising.case_id}-{number}")
    await practising.write(PARENT, CHOKING)
    assert len(practising.case.open_alerts) == 1


async def test_a_stranger_s_flood_of_alarms_rings_once_and_each_stranger_is_heard(practising: Stage) -> None:
    """What one stranger cries again and again is one open alert beyond the limit; another's is another."""
    await flood(practising, "stranger")
    for _ in range(5):
        await practising.write("stranger", CHOKING)
    await practising.write("other", CHOKING)

    rung = [text for text in texts(practising, CLINICIAN) if "choking" in text]
    assert len(rung) == 2
    assert any("911" in text for text in texts(practising, "stranger"))
    assert any("911" in text for text in texts(practising, "other"))
    assert len([one for one in unread(practising) if one.text == CHOKING]) == 6


async def test_guessing_from_all_sides_leaves_each_one_try(stage: Stage) -> None:
    """A hundred wrong codes in an hour from many senders: no sender has a second try, whoever holds a code comes in."""
    for number in range(50):
        for _ in range(2):
            await stage.phones.write(f"guesser {number}", "AAAA-BBBB-CCCCC")
    await stage.write("late guesser", "AAAA-BBBB-CCCCC")
    await stage.write("late guesser", stage.codes[Role.CHILD])
    assert not stage.case.contacts

    await stage.write(PARENT, stage.codes[Role.PARENT])
    assert [contact.role for contact in stage.case.contacts] == [Role.PARENT]
    outcomes = stage.coachbot.store.run(lambda tx: tx._connection.execute(select(messages.c.outcome)).scalars().all())
    assert len(outcomes) > 100
    assert None not in outcomes

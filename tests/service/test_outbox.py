"""What goes out: most urgent first, tried again where that is safe, and its ending told to the coach (law 7)."""

import asyncio
from datetime import timedelta

import pytest

from coachbot.channels.base import Ending, Receipt
from coachbot.coach import decide as coach
from coachbot.coach.case import State, Status
from coachbot.coach.events import Ticked
from coachbot.rehearsal.stage import BACKUP, CHILD, CLINICIAN, PARENT, Stage
from coachbot.service import deciding as service_deciding

LATER = Receipt(ending=Ending.LATER, wait=timedelta(minutes=1))
UNKNOWN = Receipt(ending=Ending.UNKNOWN)
GONE = Receipt(ending=Ending.GONE)
PATIENCE = 20.0
CHOKING = "she is choking and cant breathe"


def count(stage: Stage, phone: str, words: str) -> int:
    """How many messages with these words have arrived on a phone."""
    return sum(words in one.sent.text for one in stage.spoken[phone] if one.sent)


async def test_the_most_urgent_goes_first(practising: Stage) -> None:
    """Whatever waits: the safety text is tried before everything else, then the alert."""
    sent: list[str] = []
    original = practising.phones.send

    async def noting(message):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN202
        sent.append(message.address)
        return await original(message)

    practising.phones.send = noting  # type: ignore[method-assign]
    await practising.phones.write(PARENT, "help me understand the plan please")
    await practising.phones.write(CHILD, CHOKING)
    await practising.coachbot.settle()

    texts = {phone: [message.text for message in practising.phones.phones[phone]] for phone in (PARENT, CHILD)}
    assert "911" in texts[CHILD][0]
    assert "911" in texts[PARENT][0]
    assert sent.index(CLINICIAN) <= 2


async def test_a_slow_send_keeps_no_alarm_back(practising: Stage) -> None:
    """While one message hangs in the network, the safety text and the alert go out."""
    original, hung, hangs, told = practising.phones.send, asyncio.Event(), asyncio.Event(), asyncio.Event()
    reached: list[str] = []

    async def hanging(message):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN202
        if not hung.is_set():
            hung.set()
            await hangs.wait()
        reached.append(message.address)
        if {CHILD, CLINICIAN} <= set(reached):
            told.set()
        return await original(message)

    practising.phones.send = hanging  # type: ignore[method-assign]
    stopped = asyncio.Event()
    sending = asyncio.create_task(practising.coachbot.sender.run(stopped))
    await practising.phones.write(PARENT, "info")
    await asyncio.wait_for(hung.wait(), PATIENCE)
    await practising.phones.write(CHILD, CHOKING)
    await asyncio.wait_for(told.wait(), PATIENCE)
    assert PARENT not in reached  # what hangs is the parent's, and a person's messages keep their order
    hangs.set()
    stopped.set()
    practising.coachbot.sender.wake()
    await asyncio.wait_for(sending, PATIENCE)


async def test_later_means_later(practising: Stage) -> None:
    """A message that the channel puts off is sent when its time has come, once."""
    before = count(practising, PARENT, "PAUSE")
    practising.phones.fail(LATER)
    await practising.write(PARENT, "info")
    assert count(practising, PARENT, "PAUSE") == before

    await practising.forward(timedelta(minutes=2))
    assert count(practising, PARENT, "PAUSE") == before + 1


async def test_a_safety_text_with_an_unknown_ending_is_sent_again(practising: Stage) -> None:
    """Twice is better than not at all."""
    practising.phones.fail(UNKNOWN)
    await practising.write(PARENT, CHOKING)
    await practising.forward(timedelta(minutes=1))

    assert count(practising, PARENT, "Call 911 now") == 2


async def test_a_prompt_with_an_unknown_ending_is_not_sent_again(practising: Stage) -> None:
    """Asking twice for five swallows is worse than a reminder later."""
    practising.phones.fail(UNKNOWN, UNKNOWN)
    await practising.to_bedtime()
    await practising.forward(timedelta(minutes=30))

    assert count(practising, PARENT, "Night 1 of 14") == 1
    assert practising.case.nights[0].status is Status.OPEN


async def test_a_family_that_cannot_be_reached_is_told_to_the_clinician(practising: Stage) -> None:
    """The blocked chat is left alone; the alert names it."""
    practising.phones.fail(GONE, GONE)
    await practising.to_bedtime()

    assert practising.case.open_alerts[0].category == "unreachable"
    assert practising.spoken[CLINICIAN]
    assert not any(contact.open for contact in practising.case.contacts)
    await practising.write(PARENT, "hello again")
    assert practising.case.contact(practising.case.parents[0].id).open


async def test_a_clinician_who_cannot_be_reached_is_passed_over(practising: Stage) -> None:
    """The next step of the ladder is taken at once."""
    await practising.phones.write(PARENT, CHOKING)
    practising.phones.fail(Receipt(ending=Ending.SENT), GONE, Receipt(ending=Ending.SENT))
    await practising.coachbot.settle()
    await practising.forward(timedelta(seconds=30))

    assert practising.case.open_alerts[0].steps >= 2


async def test_nothing_stale_goes_out_at_midnight(practising: Stage) -> None:
    """The channel is down over bedtime: the prompt is dropped, said kindly tomorrow, and is nobody's fault."""
    practising.phones.fail(*[LATER] * 400)
    await practising.to_bedtime()
    for _ in range(20):
        await practising.forward(timedelta(minutes=10))
    assert practising.case.nights[0].status is Status.UNSENT
    practising.phones.fail()
    practising.phones._failures.clear()
    await practising.forward(timedelta(hours=1))
    assert not count(practising, PARENT, "Night 1 of 14")

    await practising.to_bedtime()
    assert count(practising, PARENT, "Night 1 of 14") == 1


async def test_one_case_at_fault_does_not_stop_the_others(practising: Stage, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is left for a while and tried again; the fault is logged."""
    decide = coach.decide

    def failing(case, event, now):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN202
        if isinstance(event, Ticked):
            raise ZeroDivisionError
        return decide(case, event, now)

    with monkeypatch.context() as patch:
        patch.setattr(service_deciding, "decide", failing)
        practising.clock.now += timedelta(days=1)
        await practising.coachbot.heartbeat.beat()
    assert not practising.case.nights

    practising.clock.now += timedelta(minutes=11)
    await practising.coachbot.settle()
    assert practising.case.nights


async def test_an_alarm_climbs_over_the_phones_until_it_is_taken(practising: Stage) -> None:
    """On call, again, backup, all; then silence."""
    await practising.write(PARENT, CHOKING)
    await practising.forward(timedelta(minutes=31))
    assert count(practising, CLINICIAN, "EMERGENCY") == 3
    assert count(practising, BACKUP, "EMERGENCY") == 2

    await practising.press(BACKUP, f"{practising.case_id}:acknowledge:1")
    await practising.forward(timedelta(hours=5))
    assert count(practising, BACKUP, "EMERGENCY") == 2
    assert practising.case.state is State.ON_HOLD


async def test_the_end_brings_summary_picture_and_paper(practising: Stage) -> None:
    """To the clinician on call: words with the report as a picture, then as a file; the child gets the certificate."""
    while practising.case.state is not State.FINISHED:
        await practising.to_bedtime()
        await practising.write(CHILD, "3 4 3 4 5")
        await practising.write(CHILD, "left")
        await practising.write(CHILD, "no")

    files = [one.sent.file.name for one in practising.spoken[CLINICIAN] if one.sent and one.sent.file]
    assert files == ["report.png", "report.pdf"]
    own = [one.sent.file.name for one in practising.spoken[CHILD] if one.sent and one.sent.file]
    assert "certificate.png" in own

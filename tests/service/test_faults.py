"""What goes wrong around the coach: poison, a clock that jumps, a channel that is down. The laws are checked after."""

from collections import Counter
from datetime import timedelta

import pytest
from sqlalchemy import update

from coachbot.channels.base import Ending, Outgoing, Receipt
from coachbot.channels.pace import Pace
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.coach import decide as coach
from coachbot.coach.actions import Urgency
from coachbot.coach.case import Case, State, Status
from coachbot.coach.events import Event, Replied, SendEnded, Ticked
from coachbot.rehearsal.stage import BACKUP, CHILD, CLINICIAN, PARENT, Stage
from coachbot.service import deciding as service_deciding
from coachbot.service import strangers as service_strangers
from coachbot.store import Store, Transaction, UnavailableError
from coachbot.store.tables import cases, outbox
from coachbot.voice.catalogue import Catalogue
from helpers.laws import Phone, broken_laws
from service.conftest import first_words

CHOKING = "she is choking and cant breathe"
HOUR = timedelta(hours=1)
GONE = Receipt(ending=Ending.GONE)


ON_SQLITE = pytest.mark.parametrize("store_url", ["sqlite"], indirect=True)
"""For faults that are no database's: over one of them."""


@pytest.fixture(autouse=True)
def words(monkeypatch: pytest.MonkeyPatch) -> Counter[str]:
    """How often each text has been written on a phone, by what its channel took."""
    taken: Counter[str] = Counter()
    write = RehearsalChannel.write

    async def noting(self: RehearsalChannel, address: str, text: str, **how: str) -> None:
        await write(self, address, text, **how)
        taken[text] += 1

    monkeypatch.setattr(RehearsalChannel, "write", noting)
    return taken


@pytest.fixture
def practising(practising: Stage, words: Counter[str]) -> Stage:
    """The same family, whether it was played just now or brought back."""
    words.clear()
    words.update(first_words(practising))
    return practising


def arrived(stage: Stage) -> dict[Phone, Counter[str]]:
    """What stands on the phones."""
    return {
        ("rehearsal", phone): Counter(one.sent.text.strip() for one in stage.spoken[phone] if one.sent)
        for phone in stage.spoken
    }


def check(stage: Stage, words: Counter[str]) -> None:
    """All laws hold, now that all has come to rest."""
    assert broken_laws(stage.coachbot.store, arrived(stage), words, stage.clock.now) == []


def texts(stage: Stage, phone: str) -> list[str]:
    """What stands on one phone, oldest first."""
    return [one.sent.text for one in stage.spoken[phone] if one.sent]


class Poison(Exception):
    """What no code expects."""


@pytest.fixture
def poisoned(practising: Stage, monkeypatch: pytest.MonkeyPatch) -> Stage:
    """A family whose case fails at every reply, tick and ending; the clinic's own case is well."""
    decide = coach.decide

    def failing(case: Case, event: Event, now):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN202
        if case.id == practising.case_id and isinstance(event, Replied | Ticked | SendEnded):
            raise Poison
        return decide(case, event, now)

    monkeypatch.setattr(service_deciding, "decide", failing)
    return practising


@ON_SQLITE
async def test_an_alarm_that_its_case_cannot_take_is_an_alarm_all_the_same(poisoned: Stage) -> None:
    """Laws 2 and 5: safety text and alert go out by the clinic's own case, and the words wait as unread."""
    await poisoned.write(PARENT, CHOKING)

    assert "911" in texts(poisoned, PARENT)[-1]
    assert any("choking" in text for text in texts(poisoned, CLINICIAN))
    unread = poisoned.coachbot.store.run(lambda tx: tx.messages.unread())
    assert [(one.text, one.outcome, one.case_id) for one in unread] == [(CHOKING, "failed", poisoned.case_id)]
    await poisoned.forward(timedelta(minutes=16))
    assert any("choking" in text for text in texts(poisoned, BACKUP))


@ON_SQLITE
async def test_a_case_that_cannot_take_words_is_told_to_the_clinician_once(poisoned: Stage) -> None:
    """Not at every message; the words themselves wait at the desk."""
    for number in range(3):
        await poisoned.write(PARENT, f"grandma baked a cake ({number})")

    told = [text for text in texts(poisoned, CLINICIAN) if f"number {poisoned.case_id}" in text]
    assert len(told) == 1
    assert len(poisoned.coachbot.store.run(lambda tx: tx.messages.unread())) == 3


@ON_SQLITE
async def test_words_that_triage_fails_over_reach_a_clinician(
    practising: Stage, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nobody knows what they say, so somebody must look at once."""

    def failing(*_: object, **__: object) -> None:
        raise Poison

    monkeypatch.setattr("coachbot.service.inbox.assess", failing)
    monkeypatch.setattr(service_strangers, "assess", failing)
    monkeypatch.setattr("coachbot.coach.replies.assess", failing)
    await practising.write(PARENT, "what is this")

    assert any("CONCERN" in text for text in texts(practising, CLINICIAN))


async def test_a_case_that_cannot_tick_stops_nobody_and_is_told(poisoned: Stage) -> None:
    """It is left for ten minutes, never tried in a hot loop, and the clinician hears of it; the beat goes on."""
    poisoned.clock.now += timedelta(days=1)
    await poisoned.coachbot.heartbeat.beat()
    due = poisoned.coachbot.store.run(lambda tx: tx.cases.due(poisoned.clock.now, 10))
    await poisoned.coachbot.settle()

    assert poisoned.case_id not in due
    assert any(f"number {poisoned.case_id}" in one.text for one in poisoned.phones.phones[CLINICIAN])
    beats = poisoned.coachbot.store.run(lambda tx: tx.clinic.beats())
    assert set(beats.values()) == {poisoned.clock.now}


async def test_a_text_that_cannot_be_rendered_stops_nobody(
    practising: Stage, words: Counter[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The night does not begin without its words; both are undone together, and the clinician hears of it."""
    render = Catalogue.render

    def failing(self, line, **how):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN003, ANN202
        if line.id == "night-prompt":
            raise Poison
        return render(self, line, **how)

    with monkeypatch.context() as patch:
        patch.setattr(Catalogue, "render", failing)
        await practising.to_bedtime()
    assert not practising.case.nights
    assert any(f"number {practising.case_id}" in text for text in texts(practising, CLINICIAN))

    await practising.forward(timedelta(minutes=11))
    assert practising.case.nights
    check(practising, words)


async def test_an_ending_that_its_case_cannot_hear_is_kept_all_the_same(poisoned: Stage) -> None:
    """The outbox has done with the message; sender and heartbeat go on."""
    store = poisoned.coachbot.store
    poisoned.phones.fail(GONE)
    await poisoned.press(PARENT, f"{poisoned.case_id}:next:0")
    statuses = [one.status for one in store.run(lambda tx: tx.outbox.of_case(poisoned.case_id))]

    assert "claimed" not in statuses
    assert "gone" in statuses
    assert any(f"number {poisoned.case_id}" in text for text in texts(poisoned, CLINICIAN))


async def test_bytes_that_were_changed_hold_up_nobody(practising: Stage) -> None:
    """A prompt whose row cannot be opened ends as one that can never be sent; the other phone gets its own."""
    practising.clock.now += timedelta(days=1)
    await practising.coachbot.heartbeat.beat()
    spoiled = update(outbox).where(outbox.c.key.startswith("prompt:"), outbox.c.recipient == _contact(practising, 0))
    _execute(practising.coachbot.store, spoiled.values(body=b"spoiled"))
    await practising.coachbot.settle()

    written = practising.coachbot.store.run(
        lambda tx: tx._connection.execute(outbox.select().where(outbox.c.key.startswith("prompt:"))).all()
    )
    assert sorted(row.status for row in written) == ["never", "sent"]


async def test_a_case_whose_bytes_were_changed_holds_up_nobody(practising: Stage) -> None:
    """The heartbeat cannot even open it: it is put off and told, and the rest is ticked."""
    _execute(practising.coachbot.store, update(cases).where(cases.c.id == practising.case_id).values(document=b"bad"))
    practising.clock.now += timedelta(days=1)
    await practising.coachbot.settle()

    assert any(f"number {practising.case_id}" in one.text for one in practising.phones.phones[CLINICIAN])
    assert not practising.coachbot.store.run(lambda tx: tx.cases.due(practising.clock.now, 10))


@ON_SQLITE
async def test_half_a_letter_is_kept_with_a_mark(practising: Stage) -> None:
    """Phones cut emoji in two (Unicode 3.8, D71 to D75); no encoder writes half of one down."""
    await practising.write(CHILD, "look \ud83d")

    kept = practising.coachbot.store.run(lambda tx: tx.messages.of_case(practising.case_id))
    assert kept[-1].text == "look \N{REPLACEMENT CHARACTER}"


def _contact(stage: Stage, number: int) -> str:
    return f"contact:{stage.case.contacts[number].id}"


def _execute(store: Store, statement: object) -> None:
    def work(tx: Transaction) -> None:
        tx._connection.execute(statement)  # type: ignore[call-overload]

    store.run(work)


@ON_SQLITE
async def test_a_safety_text_that_fails_at_once_is_not_sent_in_a_hot_loop(practising: Stage) -> None:
    """Tried again, but each time later, at most a quarter of a minute."""
    tries = 0

    async def failing(message: Outgoing) -> Receipt:  # noqa: ARG001 - called by its name
        nonlocal tries
        tries += 1
        return Receipt(ending=Ending.UNKNOWN)

    practising.phones.send = failing  # type: ignore[method-assign]
    await practising.write(PARENT, CHOKING)
    assert tries <= 10
    for _ in range(60):
        await practising.forward(timedelta(seconds=1))
    assert 10 <= tries <= 40


@ON_SQLITE
async def test_a_clock_set_back_prompts_nobody_twice_and_loses_no_alarm(practising: Stage, words: Counter[str]) -> None:
    """The machine's clock runs a day ahead over an evening and an alarm, then is put right."""
    await practising.to_bedtime()
    await practising.write(CHILD, "3 4 3 4 5")
    await practising.write(CHILD, "left")
    await practising.write(CHILD, "no")
    await practising.forward(timedelta(days=1))
    await practising.write(PARENT, CHOKING)
    practising.clock.now -= timedelta(days=1)
    before = len(texts(practising, BACKUP))
    for _ in range(20):
        await practising.forward(timedelta(minutes=1))

    assert len(texts(practising, BACKUP)) > before, "the alert climbs by the clock as it is now"
    await practising.forward(timedelta(days=2))
    check(practising, words)


async def test_a_clock_set_back_frees_what_a_dead_sender_claimed(practising: Stage) -> None:
    """Its lease would last until tomorrow, and nothing could go to that phone."""
    practising.clock.now += timedelta(days=1)
    await practising.phones.write(PARENT, CHOKING)
    store, now = practising.coachbot.store, practising.clock.now
    claimed = store.run(lambda tx: tx.outbox.claim(now, 20, timedelta(seconds=60)))
    await practising.coachbot.heartbeat.beat()
    assert claimed
    practising.clock.now -= timedelta(days=1)
    await practising.coachbot.settle()
    await practising.coachbot.settle()

    assert any("911" in one.text for one in practising.phones.phones[PARENT])


@ON_SQLITE
@pytest.mark.parametrize("jump", [timedelta(hours=-3), timedelta(hours=3), timedelta(days=3)])
async def test_a_clock_that_jumps_at_bedtime(practising: Stage, words: Counter[str], jump: timedelta) -> None:
    """Right before and right after the prompt, there and back: one prompt a night at most, and the next one comes."""
    await practising.to_bedtime()
    for step in (jump, -jump, jump, -jump):
        practising.clock.now += step
        await practising.coachbot.settle()
    await practising.forward(timedelta(0))
    await practising.forward(timedelta(days=6))

    check(practising, words)
    assert practising.case.nights[-1].day >= practising.clock.now.date() - timedelta(days=2)


@ON_SQLITE
async def test_a_channel_that_is_down_for_an_hour(practising: Stage, words: Counter[str]) -> None:
    """The backlog goes out most urgent first; tonight's prompt is still of use and comes once."""
    order: list[str] = []
    send, down = practising.phones.send, True

    async def sending(message: Outgoing) -> Receipt:
        if down:
            return Receipt(ending=Ending.LATER)
        order.append(message.text)
        return await send(message)

    practising.phones.send = sending  # type: ignore[method-assign]
    await practising.to_bedtime()
    await practising.write(CHILD, "info")
    await practising.write(CHILD, "info please")
    await practising.forward(HOUR)
    assert not order
    down = False
    await practising.forward(timedelta(minutes=5))
    assert [text for text in order if "Night 1 of 14" in text]
    check(practising, words)


@ON_SQLITE
async def test_a_channel_that_takes_nothing_is_left_alone_as_a_whole(practising: Stage) -> None:
    """Not message by message: with fifty in line it is tried a few times a minute; then what is grave goes first."""
    tried: list[str] = []
    down = True

    async def sending(message: Outgoing) -> Receipt:
        tried.append(message.text)
        return Receipt(ending=Ending.LATER if down else Ending.SENT, channel_id="1")

    practising.phones.pace = Pace(per_second=25, burst=5, per_address=timedelta(seconds=1))
    practising.phones.send = sending  # type: ignore[method-assign]
    for number in range(25):
        await practising.phones.write(CHILD, f"info {number}")
        await practising.phones.write(f"stranger {number}", "hello")
    for _ in range(60):
        practising.clock.now += timedelta(seconds=1)
        await practising.coachbot.settle()
    assert len(tried) < 60
    await practising.phones.write(PARENT, CHOKING)
    down = False
    tried.clear()
    for _ in range(16):
        practising.clock.now += timedelta(seconds=1)
        await practising.coachbot.settle()

    assert "911" in tried[0]


@ON_SQLITE
async def test_after_an_hour_without_channel_what_is_grave_goes_first(practising: Stage) -> None:
    """Safety text, alert, then the rest, whatever was written first; nothing stale."""
    order: list[Urgency] = []
    practising.phones.fail(*[Receipt(ending=Ending.LATER)] * 5000)
    await practising.to_bedtime()
    for number in range(4):
        await practising.write(CHILD, f"info {number}")
    await practising.write(PARENT, CHOKING)
    await practising.forward(HOUR)
    practising.phones._failures.clear()
    claim = practising.coachbot.store.run

    def urgencies(tx: Transaction) -> list[Urgency]:
        return [one.urgency for one in tx.outbox.claim(practising.clock.now + HOUR, 1, timedelta(seconds=60))]

    async def one_by_one() -> None:
        while found := claim(urgencies):
            order.extend(found)

    await one_by_one()
    assert order == sorted(order)
    assert order[0] is Urgency.SAFETY
    assert Urgency.PROMPT not in order


@ON_SQLITE
async def test_stale_prompts_are_not_sent_at_midnight(practising: Stage, words: Counter[str]) -> None:
    """Five hours without a channel: the evening was lost by us, and the next day's prompt says so kindly."""
    practising.phones.fail(*[Receipt(ending=Ending.LATER)] * 5000)
    await practising.to_bedtime()
    for _ in range(30):
        await practising.forward(timedelta(minutes=10))
    practising.phones._failures.clear()
    await practising.forward(HOUR)

    assert practising.case.nights[0].status is Status.UNSENT
    assert not [text for phone in (PARENT, CHILD) for text in texts(practising, phone) if "Night 1 of 14" in text]
    await practising.to_bedtime()
    assert [text for text in texts(practising, CHILD) if "Night 1 of 14" in text]
    check(practising, words)


async def test_what_the_store_cannot_keep_is_not_acknowledged(
    practising: Stage, words: Counter[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The channel hears of it and brings the message again; beat and sender wait and go on after."""

    async def unavailable(*_: object) -> None:
        raise UnavailableError("full")

    with monkeypatch.context() as patch:
        patch.setattr(Store, "transact", unavailable)
        with pytest.raises(UnavailableError):
            await practising.phones.write(PARENT, CHOKING, channel_id="same")
        assert await practising.coachbot.heartbeat.beat() == 0
    await practising.phones.write(PARENT, CHOKING, channel_id="same")
    await practising.forward(timedelta(0))

    assert practising.case.state is State.ON_HOLD
    check(practising, words)

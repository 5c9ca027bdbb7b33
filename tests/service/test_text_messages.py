"""A family and its clinicians by text message: keywords after triage, typed answers, pieces, repeats, late reports."""

from datetime import timedelta

import pytest

from coachbot.channels.base import Ending, Incoming, Part, Receipt, Report
from coachbot.coach.case import Role, State, Status
from coachbot.rehearsal.stage import BACKUP, CHILD, CLINICIAN, FAMILY, ON_CALL_NAME, PARENT, Stage
from coachbot.service.enrolling import Family, enrol
from coachbot.store import Message, Store, Transaction
from coachbot.voice.gsm import segments
from helpers.played import played

TEXTING = (PARENT, CLINICIAN, BACKUP)


@pytest.fixture
async def stage(store: Store) -> Stage:
    """A family whose parent and clinicians have text messages only; the child has a chat. The parent has agreed."""
    return await played(store, agree, texting=TEXTING)


@pytest.fixture
async def practising(store: Store) -> Stage:
    """The same family with the lesson behind it, all of it typed."""
    return await played(store, learn, texting=TEXTING)


async def agree(stage: Stage) -> None:
    """Codes and consent."""
    await stage.write(PARENT, stage.codes[Role.PARENT].lower().replace("-", " "))
    await stage.write(CHILD, stage.codes[Role.CHILD])
    await stage.write(PARENT, "Yes")


async def learn(stage: Stage) -> None:
    """Up to the end of the lesson."""
    await agree(stage)
    await stage.to_bedtime()
    for _ in range(9):
        await stage.write(PARENT, "next")
    await stage.write(PARENT, "yes")


def heard(stage: Stage, phone: str = PARENT) -> str:
    """The words that arrived last on a phone."""
    last = stage.last(phone)
    return last.text if last else ""


def state(stage: Stage) -> State:
    """Where the family's case is now."""
    return stage.case.state


def messages(stage: Stage) -> list[Message]:
    """All messages that were kept of the family."""
    return stage.coachbot.store.run(lambda tx: tx.messages.of_case(stage.case_id))


async def arrives(stage: Stage, text: str, *, part: Part | None = None) -> None:
    """A text message comes from a network that gives it no name."""
    incoming = Incoming(channel="sms", channel_id=None, address=PARENT, at=stage.clock.now, text=text, part=part)
    await stage.coachbot.inbox.receive(incoming)
    await stage.coachbot.settle()


async def test_a_night_by_text_message_alone(practising: Stage) -> None:
    """Nothing that comes has a button or a picture; the answers are typed; the prompt takes two segments."""
    await practising.to_bedtime()
    prompt = heard(practising)
    assert segments(prompt) <= 2
    for words in ("4", "NO GO", "skip", "5", "3", "right", "no"):
        await practising.write(PARENT, words)

    arrived = [one.sent for one in practising.spoken[PARENT] if one.sent]
    assert not [one for one in arrived if one.buttons or one.file]
    night = practising.case.nights[0]
    assert [swallow.mark for swallow in night.swallows] == [4, "not_down", "skipped", 5, 3]
    assert (night.best, night.note, night.status) == ("right", None, Status.FINISHED)


@pytest.mark.parametrize("word", ["STOP", "stop.", "Unsubscribe", "QUIT", "END", "cancel", "stopall", "I want to stop"])
async def test_stop_confirms_once(practising: Stage, word: str) -> None:
    """Words of 47 CFR 64.1200(a)(10), of the industry's guidance, and others that say so; then nothing more."""
    await practising.write(PARENT, word)
    assert state(practising) is State.WITHDRAWN
    assert "stopped" in heard(practising)
    count = len(practising.spoken[PARENT])
    for again in (word, "hello"):
        await practising.write(PARENT, again)
    for _ in range(3):
        await practising.to_bedtime()

    assert not [one for one in practising.spoken[PARENT][count:] if one.sent]


async def test_distress_after_stop_still_reaches_the_clinician(practising: Stage) -> None:
    """And the sender is told whom to call."""
    await practising.write(PARENT, "stop")
    await practising.write(PARENT, "he cant breathe")

    assert "Call 911" in heard(practising)
    assert "EMERGENCY" in heard(practising, CLINICIAN)


async def test_start_takes_up_again(practising: Stage) -> None:
    """The industry's word for opting in."""
    await practising.write(PARENT, "stop")
    await practising.write(PARENT, "START")

    assert state(practising) is State.PRACTISING
    assert "Welcome back" in heard(practising)


@pytest.mark.parametrize("word", ["HELP", "help", "Help.", "INFO", "info"])
async def test_help_says_who_and_how_with_the_emergency_number(practising: Stage, word: str) -> None:
    """Programme, frequency, rates, STOP (industry guidance for HELP), and what a frightened parent needs."""
    await practising.write(PARENT, word)

    for part in ("practice coach", "each night|a night", "rates may apply", "STOP", "911"):
        assert any(one in heard(practising) for one in part.split("|")), part
    assert state(practising) is State.PRACTISING


@pytest.mark.parametrize(
    "words", ["help he is choking", "HELP!! she cant breathe", "stop he is choking", "STOP her lips are blue"]
)
async def test_a_keyword_before_trouble_is_trouble(practising: Stage, words: str) -> None:
    """Triage comes first, whatever networks do with the first word."""
    await practising.write(PARENT, words)

    assert practising.case.state is State.ON_HOLD
    assert "Call 911" in "".join(one.sent.text for one in practising.spoken[PARENT] if one.sent)


@pytest.mark.parametrize("words", ["make it stop", "we had to stop he was coughing"])
async def test_stop_in_a_sentence_is_no_opting_out(practising: Stage, words: str) -> None:
    """The clinician hears of it, and the programme is not ended."""
    await practising.write(PARENT, words)

    assert practising.case.state is not State.WITHDRAWN
    assert practising.case.open_alerts


async def test_help_while_on_hold_names_the_emergency_number(practising: Stage) -> None:
    """After an alarm too."""
    await practising.write(PARENT, "she is choking")
    await practising.write(PARENT, "help")

    assert "911" in heard(practising)


async def test_a_wrong_number_is_never_written_to_again(practising: Stage) -> None:
    """One apology; the child's phone goes on."""
    await practising.write(PARENT, "wrong number")
    assert "not write to this number again" in heard(practising)
    count = len(practising.spoken[PARENT])
    await practising.write(PARENT, "who is this")
    for _ in range(2):
        await practising.to_bedtime()

    assert not [one for one in practising.spoken[PARENT][count:] if one.sent]
    assert "Night 1" in "".join(one.sent.text for one in practising.spoken[CHILD] if one.sent)


async def test_strangers_and_keywords(stage: Stage) -> None:
    """HELP tells a stranger where they are; STOP from somebody who gets nothing is answered by nothing."""
    await stage.texts.write("stranger", "STOP")
    await stage.coachbot.settle()
    assert not stage.texts.phones["stranger"]
    await stage.texts.write("stranger", "HELP")
    await stage.coachbot.settle()

    assert "practice coach" in stage.texts.phones["stranger"][-1].text
    assert not stage.coachbot.store.run(lambda tx: tx.messages.unread())


@pytest.mark.parametrize("word", ["TAKE", "ack", "tomar", "Prendre"])
async def test_a_clinician_takes_an_alert_on_by_its_code(practising: Stage, word: str) -> None:
    """The alert names what to write."""
    await practising.write(PARENT, "she is choking")
    assert f"TAKE {practising.case_id}-1" in heard(practising, CLINICIAN)
    await practising.write(CLINICIAN, f"{word} {practising.case_id}-1")

    assert practising.case.alerts[0].acknowledged_by == ON_CALL_NAME
    assert "Taken on" in heard(practising, CLINICIAN)


@pytest.mark.parametrize(("lift", "end"), [("LIFT", "END"), ("reabrir", "terminar"), ("rouvrir", "finir")])
async def test_a_clinician_lifts_and_ends_with_a_note(practising: Stage, lift: str, end: str) -> None:
    """Without a note nothing is done, and what to write is said."""
    await practising.write(PARENT, "she is choking")
    await practising.write(CLINICIAN, f"{lift} {practising.case_id}-1")
    assert state(practising) is State.ON_HOLD
    assert "note" in heard(practising, CLINICIAN)
    await practising.write(CLINICIAN, f"{lift} {practising.case_id}-1: spoke with them, all well")
    assert state(practising) is State.PRACTISING
    await practising.write(CLINICIAN, f"{end} {practising.case_id}-1 they move away")

    assert state(practising) is State.WITHDRAWN


async def test_pieces_are_read_as_one_message(practising: Stage) -> None:
    """Whatever their order, and each once though it comes twice; before the last has come nothing happens."""
    count = len(messages(practising))
    for number, text in ((2, "choking\ud83d"), (2, "choking\ud83d"), (1, "i think he is ")):
        await arrives(practising, text, part=Part(reference=9, total=3, number=number))
    assert len(messages(practising)) == count
    await arrives(practising, "\ude1e", part=Part(reference=9, total=3, number=3))

    assert messages(practising)[-1].text == "i think he is choking\U0001f61e"
    assert practising.case.state is State.ON_HOLD


async def test_a_message_whose_last_piece_never_comes_is_read_without(practising: Stage) -> None:
    """After a minute, with a mark where something is missing."""
    await arrives(practising, " he is choking", part=Part(reference=9, total=2, number=2))
    await practising.forward(timedelta(seconds=59))
    await practising.coachbot.settle()
    assert state(practising) is State.PRACTISING
    await practising.forward(timedelta(seconds=2))
    await practising.coachbot.settle()

    assert messages(practising)[-1].text == "[...] he is choking"
    assert practising.case.state is State.ON_HOLD


async def test_the_same_words_count_again_only_as_an_answer(practising: Stage) -> None:
    """A copy that comes at once, or before anybody can have read our question, is a repeat; later it is an answer."""
    await practising.to_bedtime()
    await practising.forward(timedelta(seconds=30))
    await arrives(practising, "4")
    await arrives(practising, "4")
    practising.clock.now += timedelta(seconds=1)
    await arrives(practising, "4")
    assert len(practising.case.nights[0].swallows) == 1
    practising.clock.now += timedelta(seconds=3)
    await arrives(practising, "4")

    assert [swallow.mark for swallow in practising.case.nights[0].swallows] == [4, 4]


async def test_words_from_before_the_clock_was_set_back_are_no_copy(practising: Stage) -> None:
    """A day ahead somebody wrote the same: that must not swallow what is written now."""
    practising.clock.now += timedelta(days=1)
    await arrives(practising, "we are fine")
    practising.clock.now -= timedelta(days=1)
    await arrives(practising, "we are fine")

    assert [one.text for one in messages(practising)].count("we are fine") == 2


async def test_a_prompt_that_did_not_arrive_is_no_missed_night(practising: Stage) -> None:
    """The network reports it late: the evening was lost by us, as with a prompt that could not be sent."""
    for phone in (practising.texts, practising.phones):
        phone.fail(Receipt(ending=Ending.SENT, channel_id=f"{phone.name}1", names=(f"{phone.name}1", "2")))
    await practising.to_bedtime()
    assert practising.case.open_night
    for channel, address, name in (("sms", PARENT, "2"), ("rehearsal", CHILD, "rehearsal1")):
        report = Report(channel=channel, names=("other", name), address=address, ending=Ending.NEVER)
        assert await practising.coachbot.sender.report(report)

    assert practising.case.nights[0].status is Status.UNSENT


async def test_a_report_about_nothing_known_changes_nothing(practising: Stage) -> None:
    """Nor does a name that only resembles one, at another number, nor a second report."""
    practising.texts.fail(Receipt(ending=Ending.SENT, channel_id="17", names=("17",)))
    await practising.write(PARENT, "info")

    async def known(address: str, *names: str) -> bool:
        report = Report(channel="sms", names=names, address=address, ending=Ending.SENT)
        return await practising.coachbot.sender.report(report)

    assert not await known(PARENT, "18")
    assert not await known("somebody else", "11", "17")
    assert await known(PARENT, "11", "17")
    late = Report(channel="sms", names=("17",), address=PARENT, ending=Ending.GONE)
    assert await practising.coachbot.sender.report(late)
    assert practising.case.contact(practising.case.contacts[0].id).reachable


def sibling(tx: Transaction, stage: Stage) -> dict[Role, str]:
    """A second child of the same parent."""
    wanted = Family(child="Mika", bedtime=FAMILY.bedtime, zone=FAMILY.zone, screening=FAMILY.screening)
    return dict(enrol(tx, wanted, emergency_number="911", seed=9, now=stage.clock.now).codes)


@pytest.fixture
async def siblings(store: Store) -> Stage:
    """Two children's nights on one number, both open."""
    return await played(store, learn_twice, texting=TEXTING)


async def learn_twice(stage: Stage) -> None:
    """Up to a night of both."""
    await learn(stage)
    codes = stage.coachbot.store.run(lambda tx: sibling(tx, stage))
    await stage.write(PARENT, codes[Role.PARENT])
    await stage.write(PARENT, "yes Mika")
    await stage.to_bedtime()
    for _ in range(9):
        await stage.write(PARENT, "next Mika")
    await stage.write(PARENT, "yes Mika")
    await stage.to_bedtime()


def marks(stage: Stage) -> dict[str, list[object]]:
    """What was last rated for each child."""
    cases = stage.coachbot.store.run(lambda tx: list(tx.cases.all()))
    return {
        case.child.name: [one.mark for one in case.nights[-1].swallows]
        for case in stage.coachbot.store.run(lambda tx: [tx.cases.load(one.id) for one in cases])
        if case.nights
    }


@pytest.mark.parametrize("answer", ["Mika", "mika.", "Mika 4 3 5 2 1"])
async def test_whose_words_they_were_is_asked_and_they_then_count(siblings: Stage, answer: str) -> None:
    """The name alone is enough; saying all again counts once."""
    await siblings.write(PARENT, "4 3 5 2 1")
    assert "Send just the name: Mika, Noor" in heard(siblings)
    await siblings.write(PARENT, answer)

    assert marks(siblings)["Mika"] == [4, 3, 5, 2, 1]
    assert marks(siblings)["Noor"] == []
    assert not siblings.coachbot.store.run(lambda tx: tx.messages.unread())


async def test_an_alarm_that_fits_two_children_is_not_asked_about(siblings: Stage) -> None:
    """Both are held at once."""
    await siblings.write(PARENT, "choking cant breathe")

    assert siblings.case.state is State.ON_HOLD
    assert "Call 911" in "".join(one.sent.text for one in siblings.spoken[PARENT][-6:] if one.sent)

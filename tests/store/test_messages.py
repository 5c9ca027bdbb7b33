"""Promises about what people write: stored once, never lost, put before somebody."""

from datetime import datetime

from coachbot.coach.actions import Urgency
from coachbot.store import Envelope, Message, Store, Written
from coachbot.triage.levels import Level
from helpers.cases import EVENING, MINUTE, draft


def receive(
    store: Store, channel_id: str, text: str | None = "4", button: str | None = None, at: datetime = EVENING
) -> int | None:
    """Let a message come in."""
    return store.run(lambda tx: tx.messages.receive("chat", channel_id, "777", text=text, button=button, at=at))


def get(store: Store, message_id: int) -> Message:
    """One message, which is there."""
    message = store.run(lambda tx: tx.messages.get(message_id))
    assert message
    return message


def test_a_message_is_stored_as_it_came(store: Store) -> None:
    """Ten kilobytes of anything, right to left and emoji, come back to the letter."""
    text = "\u200f\u05e9\u05dc\u05d5\u05dd 🍬\x00é" * 600
    message_id = receive(store, "1", text)
    assert message_id
    message = get(store, message_id)

    assert (message.text, message.button, message.address, message.at) == (text, None, "777", EVENING)
    assert (message.outcome, message.level, message.evidence) == (None, None, ())


def test_a_message_that_comes_twice_is_stored_once(store: Store) -> None:
    """Law 5: the channel's own id is unique; another channel's ids are its own."""
    first = receive(store, "1", "4")
    again = receive(store, "1", "5")
    other = store.run(lambda tx: tx.messages.receive("sms", "1", "777", text="4", button=None, at=EVENING))

    assert first
    assert again is None
    assert other not in (None, first)
    assert get(store, first).text == "4"


def test_what_became_of_a_message_is_kept(store: Store) -> None:
    """Outcome, whose it was, and what triage found, with the words that decided."""
    case = store.run(lambda tx: tx.cases.add(draft(), EVENING))
    message_id = receive(store, "1", "she choked")
    assert message_id
    store.run(
        lambda tx: tx.messages.settle(
            message_id,
            "decided",
            case_id=case.id,
            contact_id=5,
            level=Level.EMERGENCY,
            category="choking",
            evidence=("she choked",),
        )
    )
    message = get(store, message_id)

    assert (message.outcome, message.case_id, message.contact_id) == ("decided", case.id, 5)
    assert (message.level, message.category, message.evidence) == (Level.EMERGENCY, "choking", ("she choked",))


def test_an_unread_message_waits_until_a_clinician_has_read_it(store: Store) -> None:
    """Law 5: what could not be read stands in a list until somebody takes it off."""
    first, second = receive(store, "1"), receive(store, "2")
    assert first
    assert second
    store.run(lambda tx: tx.messages.mark_unread(second, EVENING))
    store.run(lambda tx: tx.messages.mark_unread(first, EVENING + MINUTE))

    assert [one.id for one in store.run(lambda tx: tx.messages.unread())] == [second, first]
    store.run(lambda tx: tx.messages.mark_read(second, "Dr Lindqvist", EVENING))
    assert [one.id for one in store.run(lambda tx: tx.messages.unread())] == [first]
    assert get(store, second).read_by == "Dr Lindqvist"


def test_a_conversation_reads_to_and_fro(store: Store) -> None:
    """All that was written about a case, by whomever, in order of time."""
    case = store.run(lambda tx: tx.cases.add(draft(), EVENING))

    def say(key: str, at: datetime) -> None:
        envelope = Envelope(case_id=case.id, key=key, urgency=Urgency.REPLY, text=key, contact_id=1)
        store.run(lambda tx: tx.outbox.add([envelope], at))

    def hear(text: str, at: datetime) -> None:
        message_id = receive(store, text, text, at=at)
        assert message_id
        store.run(lambda tx: tx.messages.settle(message_id, "decided", case_id=case.id))

    hear("hello", EVENING)
    say("how did it go?", EVENING + MINUTE)
    hear("5", EVENING + 2 * MINUTE)
    say("well done", EVENING + 3 * MINUTE)
    receive(store, "somebody else")
    spoken = store.run(lambda tx: tx.conversation(case.id))

    assert [one.body.text if isinstance(one, Written) else one.text for one in spoken] == [
        "hello",
        "how did it go?",
        "5",
        "well done",
    ]

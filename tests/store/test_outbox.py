"""Promises about the outbox: who is first, who waits, and what a dead sender leaves behind."""

from datetime import datetime, timedelta

import pytest

from coachbot.coach.actions import Urgency
from coachbot.coach.case import Role
from coachbot.coach.events import Outcome
from coachbot.store import Claimed, EndedSend, Envelope, Status, Store
from helpers.cases import EVENING, MINUTE

LEASE = 2 * MINUTE


def put(store: Store, *envelopes: Envelope, now: datetime = EVENING) -> None:
    """Put messages in."""
    store.run(lambda tx: tx.outbox.add(envelopes, now))


def note(key: str, to: int = 1, urgency: Urgency = Urgency.REPLY, **more: object) -> Envelope:
    """A message to a contact."""
    return Envelope(case_id=1, key=key, contact_id=to, urgency=urgency, text=f"text of {key}", **more)  # type: ignore[arg-type]


def claim(store: Store, limit: int = 10, now: datetime = EVENING) -> list[Claimed]:
    """What is to be sent now."""
    return store.run(lambda tx: tx.outbox.claim(now, limit, LEASE))


def keys(claimed: list[Claimed]) -> list[str]:
    """The keys of what was claimed, in order."""
    return [one.key for one in claimed]


def settle(store: Store, one: Claimed, outcome: Outcome = Outcome.SENT) -> EndedSend | None:
    """Say how a send ended."""
    return store.run(lambda tx: tx.outbox.settle(one.id, outcome, EVENING, "their-id"))


def statuses(store: Store) -> dict[str, Status]:
    """Where each message is."""
    return {one.key: one.status for one in store.run(lambda tx: tx.outbox.of_case(1))}


def test_a_message_comes_out_as_it_went_in(store: Store) -> None:
    """Words, buttons, picture and the address to send to, of a contact, a clinician and a stranger."""
    contact = store.run(
        lambda tx: tx.people.add_contact(1, Role.PARENT, channel="chat", address="777", language="en", now=EVENING)
    )
    clinician = store.run(lambda tx: tx.clinicians.add("Dr Lindqvist", EVENING, reach=("sms", "+351000")))
    buttons = ((("Went down 👍", "rate:1:up:5"),),)
    put(
        store,
        Envelope(
            case_id=1, key="a", urgency=Urgency.REPLY, text="Olá", contact_id=contact, buttons=buttons, picture="up"
        ),
        Envelope(
            case_id=1, key="b", urgency=Urgency.ALERT, text="Alert", clinician_id=clinician, alert=4, attachment="pdf"
        ),
        Envelope(case_id=None, key="c", urgency=Urgency.NEWS, text="Who are you?", stranger=("chat", "888")),
    )

    b, a, c = claim(store)

    assert (b.channel, b.address, b.clinician_id, b.alert, b.body.attachment) == ("sms", "+351000", clinician, 4, "pdf")
    assert (a.channel, a.address, a.body.text, a.body.buttons, a.body.picture) == ("chat", "777", "Olá", buttons, "up")
    assert (c.channel, c.address, c.case_id, c.body.text) == ("chat", "888", None, "Who are you?")
    assert {one.attempts for one in (a, b, c)} == {1}


def test_a_message_goes_to_exactly_one() -> None:
    """A message to nobody, or to two, cannot be written."""
    with pytest.raises(ValueError, match="one of"):
        Envelope(case_id=1, key="a", urgency=Urgency.REPLY, text="")
    with pytest.raises(ValueError, match="one of"):
        Envelope(case_id=1, key="a", urgency=Urgency.REPLY, text="", contact_id=1, clinician_id=1)


def test_the_same_message_is_written_once(store: Store) -> None:
    """Law 6: a key is unique for ever within case and recipient, also when what it named has been sent."""
    put(store, note("night:1"), note("night:1"), note("night:1", to=2))
    first, second = claim(store)
    settle(store, first)
    put(store, note("night:1"))

    assert {first.contact_id, second.contact_id} == {1, 2}
    assert claim(store) == []


def test_a_stranger_gets_the_same_answer_once(store: Store) -> None:
    """Without a case too, key and recipient are unique."""
    answer = Envelope(case_id=None, key="hello", urgency=Urgency.NEWS, text="?", stranger=("chat", "888"))
    put(store, answer, answer)

    assert keys(claim(store)) == ["hello"]


def test_the_most_urgent_goes_first_then_the_oldest(store: Store) -> None:
    """Whatever was put in first, safety goes before alerts, replies, prompts and news."""
    urgencies = [Urgency.NEWS, Urgency.PROMPT, Urgency.REPLY, Urgency.ALERT, Urgency.SAFETY, Urgency.REPLY]
    for number, urgency in enumerate(urgencies):
        put(store, note(f"{urgency.name}{number}", to=number + 1, urgency=urgency), now=EVENING - number * MINUTE)

    assert keys(claim(store, limit=4)) == ["SAFETY4", "ALERT3", "REPLY5", "REPLY2"]
    assert keys(claim(store)) == ["PROMPT1", "NEWS0"]


def test_nobody_else_gets_what_is_claimed(store: Store) -> None:
    """A claim is for one."""
    put(store, note("a"))

    assert keys(claim(store)) == ["a"]
    assert claim(store) == []


def test_one_person_s_messages_go_one_at_a_time_in_order(store: Store) -> None:
    """The next message of a person is not claimed before the one in flight has been settled."""
    put(store, note("a"), note("b"), note("other", to=2))
    first = claim(store)
    between = claim(store)
    settle(store, first[0])

    assert keys(first) == ["a", "other"]
    assert between == []
    assert keys(claim(store)) == ["b"]


def test_a_more_urgent_message_overtakes_the_same_person_s_others(store: Store) -> None:
    """Within one person's line too, urgency comes before age."""
    put(store, note("prompt", urgency=Urgency.PROMPT), note("safety", urgency=Urgency.SAFETY))

    assert keys(claim(store)) == ["safety"]


def test_what_must_wait_holds_back_what_comes_after_it(store: Store) -> None:
    """Where the channel said later, the person's next messages wait too, so that their order holds."""
    put(store, note("a"), note("b"))
    [a] = claim(store)
    store.run(lambda tx: tx.outbox.put_back(a.id, EVENING + MINUTE))

    assert claim(store) == []
    [again] = claim(store, now=EVENING + MINUTE)
    assert (again.key, again.attempts) == ("a", 2)


def test_a_message_is_not_sent_before_its_time(store: Store) -> None:
    """What is for later lies still, and holds nobody else up."""
    put(store, note("later", not_before=EVENING + MINUTE), note("now", to=2))

    assert keys(claim(store)) == ["now"]
    assert keys(claim(store, now=EVENING + MINUTE)) == ["later"]


def test_a_stale_message_is_not_sent(store: Store) -> None:
    """After its time a message is never claimed; it ends, the coach hears of it, and the line moves on."""
    put(store, note("prompt", expires=EVENING + MINUTE), note("later"))

    assert keys(claim(store, now=EVENING + MINUTE)) == ["later"]
    ended = store.run(lambda tx: tx.outbox.lapse(EVENING + MINUTE))
    assert ended == [EndedSend(case_id=1, key="prompt", contact_id=1, outcome=Outcome.NEVER)]
    assert statuses(store)["prompt"] is Status.EXPIRED
    assert store.run(lambda tx: tx.outbox.lapse(EVENING + MINUTE)) == []


@pytest.mark.parametrize("outcome", list(Outcome))
def test_a_settled_message_is_told_to_the_coach_once(store: Store, outcome: Outcome) -> None:
    """Each outcome ends it; a second word on it is not heard."""
    put(store, note("a"))
    [a] = claim(store)

    assert settle(store, a, outcome) == EndedSend(case_id=1, key="a", contact_id=1, outcome=outcome)
    assert settle(store, a, Outcome.GONE) is None
    assert statuses(store) == {"a": Status(outcome)}


@pytest.mark.parametrize("urgency", list(Urgency))
def test_what_a_dead_sender_left_is_unknown(store: Store, urgency: Urgency) -> None:
    """Law 7: safety texts and alerts are sent again; of anything else the coach hears that nobody knows."""
    put(store, note("a", urgency=urgency))
    claim(store)
    early = store.run(lambda tx: tx.outbox.lapse(EVENING + LEASE - MINUTE))
    ended = store.run(lambda tx: tx.outbox.lapse(EVENING + LEASE))
    again = claim(store, now=EVENING + LEASE)

    assert early == []
    if urgency in (Urgency.SAFETY, Urgency.ALERT):
        assert (ended, keys(again)) == ([], ["a"])
    else:
        assert ended == [EndedSend(case_id=1, key="a", contact_id=1, outcome=Outcome.UNKNOWN)]
        assert again == []


def test_a_safety_text_of_unknown_outcome_waits_again(store: Store) -> None:
    """Law 7, told by a living sender."""
    put(store, note("a", urgency=Urgency.SAFETY))
    [a] = claim(store)

    assert settle(store, a, Outcome.UNKNOWN) is None
    assert keys(claim(store)) == ["a"]


def test_a_late_word_that_it_was_sent_is_believed(store: Store) -> None:
    """A slow sender whose lease had run out may still save a second sending."""
    put(store, note("a", urgency=Urgency.SAFETY))
    [a] = claim(store)
    store.run(lambda tx: tx.outbox.lapse(EVENING + LEASE))

    assert settle(store, a) == EndedSend(case_id=1, key="a", contact_id=1, outcome=Outcome.SENT)
    assert claim(store, now=EVENING + LEASE) == []


def test_what_may_ask_to_practise_is_taken_back(store: Store) -> None:
    """When practice stops, waiting prompts to the family go; alerts to the clinician and safety texts stay."""
    alert = Envelope(case_id=1, key="alert", urgency=Urgency.ALERT, text="", clinician_id=1)
    other = Envelope(case_id=2, key="prompt", urgency=Urgency.PROMPT, text="", contact_id=9)
    put(store, note("prompt", urgency=Urgency.PROMPT), note("safety", urgency=Urgency.SAFETY), alert, other)
    store.run(lambda tx: tx.outbox.take_back(1, [Urgency.REPLY, Urgency.PROMPT], EVENING))

    assert statuses(store) == {"prompt": Status.CANCELLED, "safety": Status.WAITING, "alert": Status.WAITING}
    assert sorted(keys(claim(store))) == ["alert", "prompt", "safety"]


def test_the_backlog_is_told_by_urgency(store: Store) -> None:
    """Health shows how many wait and since when, and nothing where nothing waits."""
    put(store, note("a", urgency=Urgency.PROMPT), now=EVENING - MINUTE)
    put(store, note("b", to=2, urgency=Urgency.PROMPT), note("c", to=3, urgency=Urgency.SAFETY))
    backlog = store.run(lambda tx: tx.outbox.unsent())

    assert {urgency: (one.count, one.oldest) for urgency, one in backlog.items()} == {
        Urgency.SAFETY: (1, EVENING),
        Urgency.PROMPT: (2, EVENING - MINUTE),
    }


def test_any_number_of_urgent_messages_to_one_person_hold_up_nobody_else(store: Store) -> None:
    """A storm of alerts for one clinician leaves the others' messages free to go."""
    storm = [Envelope(case_id=1, key=str(n), urgency=Urgency.ALERT, text="", clinician_id=1) for n in range(50)]
    put(store, *storm, note("prompt", urgency=Urgency.PROMPT, expires=EVENING + timedelta(hours=1)))

    assert keys(claim(store)) == ["0", "prompt"]

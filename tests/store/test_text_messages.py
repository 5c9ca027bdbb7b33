"""Promises about what text messages need: pieces, repeats, and reports that come later."""

from datetime import timedelta

import pytest

from coachbot.coach.actions import Urgency
from coachbot.coach.case import Role
from coachbot.coach.events import Outcome
from coachbot.store import Envelope, Gathered, Store, Transaction
from helpers.cases import EVENING, MINUTE, draft

PHONE = "+351912345678"
SECOND = timedelta(seconds=1)


def piece(tx: Transaction, number: int, text: str, *, total: int = 2, phone: str = PHONE) -> Gathered | None:
    """Keep one piece."""
    return tx.pieces.add("sms", phone, reference=7, total=total, number=number, text=text, at=EVENING)


def test_pieces_become_a_message_when_the_last_has_come(store: Store) -> None:
    """In their order, whatever the order in which they came; each counts once; then they are gone."""

    def work(tx: Transaction) -> list[Gathered | None]:
        return [piece(tx, 2, "world"), piece(tx, 2, "again"), piece(tx, 1, "hello ")]

    found = store.run(work)
    assert found[:2] == [None, None]
    assert found[2] == Gathered(channel="sms", address=PHONE, text="hello world", at=EVENING)
    assert store.run(lambda tx: tx.pieces.overdue(EVENING + MINUTE)) == []


def test_pieces_of_two_people_or_two_messages_are_kept_apart(store: Store) -> None:
    """The same reference from another number, or of another length, is another message."""

    def work(tx: Transaction) -> list[Gathered | None]:
        return [piece(tx, 1, "a"), piece(tx, 2, "b", phone="+351900000000"), piece(tx, 2, "c", total=3)]

    assert store.run(work) == [None] * 3
    assert len(store.run(lambda tx: tx.pieces.overdue(EVENING))) == 3


def test_an_overdue_message_is_taken_once_with_a_mark_for_what_is_missing(store: Store) -> None:
    """Of two processes that sweep, one gets it."""
    store.run(lambda tx: piece(tx, 2, "choking", total=3))
    assert store.run(lambda tx: tx.pieces.overdue(EVENING - SECOND)) == []
    [longer] = store.run(lambda tx: tx.pieces.overdue(EVENING))
    first = store.run(lambda tx: tx.pieces.take(longer))

    assert first
    assert first.text == "[...]choking[...]"
    assert store.run(lambda tx: tx.pieces.take(longer)) is None


def linked(tx: Transaction) -> tuple[int, int]:
    """A case and its parent's contact."""
    case = tx.cases.add(draft(), EVENING)
    contact = tx.people.add_contact(case.id, Role.PARENT, channel="sms", address=PHONE, language="en", now=EVENING)
    return case.id, contact


def sent(tx: Transaction, names: tuple[str, ...] = (), outcome: Outcome = Outcome.SENT) -> int:
    """A message that went out to the parent, under these names. Returns its id."""
    case_id, contact = linked(tx)
    tx.outbox.add([Envelope(case_id=case_id, key="a", urgency=Urgency.REPLY, text="hi", contact_id=contact)], EVENING)
    [claimed] = tx.outbox.claim(EVENING, 1, MINUTE)
    tx.deliveries.expect(claimed.id, "sms", names)
    tx.outbox.settle(claimed.id, outcome, EVENING + SECOND)
    return claimed.id


@pytest.mark.parametrize(
    ("seconds", "written", "counts"),
    [(0, False, False), (30, False, False), (601, False, True), (2, True, False), (3, True, True)],
)
def test_the_same_words_without_a_name_count_as_an_answer_or_after_a_while(
    store: Store, *, seconds: int, written: bool, counts: bool
) -> None:
    """A repeat comes at once or unasked; an answer comes two seconds after something was sent, or more."""

    def work(tx: Transaction) -> int | None:
        if written:
            sent(tx)
        else:
            linked(tx)
        assert tx.messages.receive("sms", None, PHONE, text="4", button=None, at=EVENING)
        return tx.messages.receive("sms", None, PHONE, text="4", button=None, at=EVENING + seconds * SECOND)

    assert (store.run(work) is not None) is counts


def test_other_words_or_another_number_are_never_a_repeat(store: Store) -> None:
    """At the same instant."""

    def work(tx: Transaction) -> list[int | None]:
        said = [(PHONE, "4"), (PHONE, "5"), ("+351900000000", "4")]
        return [tx.messages.receive("sms", None, phone, text=text, button=None, at=EVENING) for phone, text in said]

    assert None not in store.run(work)


def test_the_name_of_words_does_not_give_them_away(store: Store) -> None:
    """It is made with the clinic's key: who reads the table without it cannot try words out."""

    def work(tx: Transaction) -> str:
        message = tx.messages.receive("sms", None, PHONE, text="4", button=None, at=EVENING)
        kept = tx.messages.get(message or 0)
        assert kept
        return kept.channel_id

    assert len(store.run(work).partition(":")[0]) == 64


def test_a_report_finds_its_message_by_its_own_name_or_a_like_one_at_its_number(store: Store) -> None:
    """The first name is certain; another could be anybody's."""
    message = store.run(lambda tx: sent(tx, ("1F", "20")))

    def found(*names: str, phone: str = PHONE) -> int | None:
        match = store.run(lambda tx: tx.deliveries.find("sms", names, phone))
        return match[1] if match else None

    assert found("20", phone="+351900000000") == message
    assert found("31", "1F") == message
    assert found("31", "1F", phone="+351900000000") is None
    assert found("32") is None


def test_only_the_first_report_counts_and_only_what_was_sent_can_be_lost(store: Store) -> None:
    """A contrary one that comes late changes nothing; what ended otherwise has ended."""

    def work(tx: Transaction) -> list[object]:
        message = sent(tx, ("1",))
        [(delivery, _)] = [tx.deliveries.find("sms", ("1",), PHONE) or (0, 0)]
        reports = [tx.deliveries.report(delivery, outcome, EVENING) for outcome in (Outcome.NEVER, Outcome.SENT)]
        lost = [tx.outbox.lose(message, Outcome.NEVER, EVENING + MINUTE) for _ in range(2)]
        return [*reports, lost[0] is not None and lost[0].outcome, lost[1]]

    assert store.run(work) == [True, False, Outcome.NEVER, None]

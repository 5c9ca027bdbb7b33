"""Promises about erasing: nothing is left of a family but that there was one."""

from datetime import timedelta
from typing import Any

import pytest
from sqlalchemy import select

from coachbot.coach.actions import Urgency
from coachbot.coach.case import Role
from coachbot.coach.events import Outcome, Replied
from coachbot.programme.positions import Position
from coachbot.store import Envelope, NoSuchCaseError, Note, Store, Tombstone, Transaction
from coachbot.store.tables import metadata
from helpers.cases import CHILD, EVENING, MINUTE, draft, save, with_alert, with_mark, with_night
from helpers.kept import kept

PHONE = "+351912345678"
LEASE = 2 * MINUTE


def family(store: Store, phone: str = PHONE, name: str = CHILD) -> int:
    """A family with a bit of everything. Returns the case's id."""

    def work(tx: Transaction) -> int:
        case = tx.cases.add(draft(name), EVENING)
        tx.invites.add(case.id, Role.PARENT, f"code of {name}", EVENING, EVENING + MINUTE)
        contact = tx.people.add_contact(case.id, Role.PARENT, channel="sms", address=phone, language="en", now=EVENING)
        tx.messages.receive("sms", f"before {name}", phone, text=f"hello from {name}", button=None, at=EVENING)
        message = tx.messages.receive("sms", f"{name} rated", phone, text=f"{name} says 4", button=None, at=EVENING)
        assert message
        tx.messages.settle(message, "decided", case_id=case.id, contact_id=contact, evidence=(name,))
        new = with_alert(with_mark(with_night(case), Position.UP, 4, note=name))
        event = Replied(contact=contact, text=f"{name} says 4", message=message)
        save(tx, case, new, event, EVENING)
        tx.notes.add(Note(case_id=case.id, alert=1, at=EVENING, by="Ana", kind="call", words=f"rang {name}"))
        to: dict[str, Any] = {"case_id": case.id, "contact_id": contact}
        tx.outbox.add([Envelope(key="said", urgency=Urgency.REPLY, text=f"Well done {name}", **to)], EVENING)
        [said] = tx.outbox.claim(EVENING, 1, LEASE)
        tx.outbox.settle(said.id, Outcome.SENT, EVENING)
        tx.outbox.add(
            [
                Envelope(key="night", urgency=Urgency.PROMPT, text=f"Tonight {name} …", **to),
                Envelope(key="erased", urgency=Urgency.REPLY, text=f"All about {name} is erased", **to),
            ],
            EVENING,
        )
        return case.id

    return store.run(work)


def count(store: Store, *tables: str) -> list[int]:
    """How many rows each table has."""
    return store.run(lambda tx: [len(tx._connection.execute(select(metadata.tables[table])).all()) for table in tables])


def test_erasing_leaves_nothing_but_a_tombstone(store: Store) -> None:
    """When the last message has gone, no table holds a word, an address or a row of the family."""
    case_id = family(store)
    assert kept(store).count(CHILD) > 5
    stone = store.run(lambda tx: tx.erase(case_id, EVENING + MINUTE))
    [last] = store.run(lambda tx: tx.outbox.claim(EVENING + MINUTE, 10, LEASE))
    store.run(lambda tx: tx.outbox.settle(last.id, Outcome.SENT, EVENING + MINUTE))

    assert stone == Tombstone(
        case_id=case_id, created_at=EVENING, erased_at=EVENING + MINUTE, events=2, nights=1, received=1, sent=1
    )
    assert CHILD not in kept(store)
    assert PHONE not in kept(store)
    assert kept(store).splitlines() == [line for line in kept(store).splitlines() if line.startswith("tombstones")]
    with pytest.raises(NoSuchCaseError):
        store.run(lambda tx: tx.cases.load(case_id))
    with pytest.raises(NoSuchCaseError):
        store.run(lambda tx: tx.erase(case_id, EVENING))


def test_what_the_family_is_still_to_be_told_is_sent_first(store: Store) -> None:
    """The confirmation goes out although all else has gone; a prompt to practise does not."""
    case_id = family(store)
    store.run(lambda tx: tx.erase(case_id, EVENING))
    found = store.run(lambda tx: tx.people.find("sms", PHONE))
    waiting = store.run(lambda tx: tx.outbox.claim(EVENING, 10, LEASE))

    assert found == []
    assert [(one.key, one.address) for one in waiting] == [("erased", PHONE)]
    assert count(store, "cases", "history", "nights", "swallows", "alerts", "messages", "invites") == [0] * 7


@pytest.mark.parametrize("outcome", list(Outcome))
def test_however_the_last_send_ends_the_address_goes(store: Store, outcome: Outcome) -> None:
    """Sent or not, the confirmation is not kept longer."""
    case_id = family(store)
    store.run(lambda tx: tx.erase(case_id, EVENING))
    [last] = store.run(lambda tx: tx.outbox.claim(EVENING, 10, LEASE))
    store.run(lambda tx: tx.outbox.settle(last.id, outcome, EVENING))

    assert count(store, "outbox", "contacts") == [0, 0]


def test_a_confirmation_that_its_sender_died_over_goes_too(store: Store) -> None:
    """Nothing of an erased family hangs on a lease."""
    case_id = family(store)
    store.run(lambda tx: tx.erase(case_id, EVENING))
    store.run(lambda tx: tx.outbox.claim(EVENING, 10, LEASE))
    store.run(lambda tx: tx.outbox.lapse(EVENING + timedelta(hours=1)))

    assert count(store, "outbox", "contacts") == [0, 0]


def test_a_message_settled_after_its_case_was_erased_is_nobody_s(store: Store) -> None:
    """The words that ended a case can still be settled, without a case."""
    case_id = family(store)

    def work(tx: Transaction) -> int | None:
        message = tx.messages.receive("chat", "1", "clinician", text="end", button=None, at=EVENING)
        assert message
        tx.erase(case_id, EVENING)
        tx.messages.settle(message, "clinician", case_id=case_id)
        settled = tx.messages.get(message)
        assert settled
        return settled.case_id

    assert store.run(work) is None


def test_another_family_is_left_as_it_was(store: Store) -> None:
    """Also one that shares the telephone: a sibling's case keeps its contact and what was said before the link."""
    sibling, erased = family(store, name="Other"), family(store)
    store.run(lambda tx: tx.erase(erased, EVENING))

    assert store.run(lambda tx: tx.cases.load(sibling)).child.name == "Other"
    assert [one.case_id for one in store.run(lambda tx: tx.people.find("sms", PHONE))] == [sibling]
    assert len(store.run(lambda tx: tx.messages.of_case(sibling))) == 1
    assert len(list(store.run(lambda tx: list(tx.cases.history(sibling))))) == 2


def test_an_erased_case_s_number_is_not_given_again(store: Store) -> None:
    """A tombstone's number stands for one family only."""
    erased = family(store)
    store.run(lambda tx: tx.erase(erased, EVENING))

    assert family(store) > erased
    assert count(store, "tombstones") == [1]

"""Promises about the signs of how the service fares, over both databases."""

from dataclasses import replace
from datetime import timedelta

from coachbot.coach.actions import Urgency
from coachbot.coach.case import Contact, Role, State
from coachbot.coach.events import Outcome
from coachbot.store import Envelope, Store, Transaction
from coachbot.triage import Level
from helpers.cases import EVENING, MINUTE, draft, save, with_alert

LEASE = 2 * MINUTE


def alarmed(store: Store) -> int:
    """A case with an alert that has just been raised. Returns its id."""

    def work(tx: Transaction) -> int:
        case = tx.cases.add(draft(), EVENING)
        save(tx, case, with_alert(case))
        tx.clinicians.add("Ana", EVENING, duty="on_call", reach=("chat", "1"))
        return case.id

    return store.run(work)


def test_what_was_counted_is_added_up(store: Store) -> None:
    """Several processes give what each has counted, in any order."""
    one, two = ("sends_total", "{}"), ("sends_total", '{"outcome": "sent"}')
    store.run(lambda tx: tx.signs.count({one: 1.0, two: 2.0}))
    store.run(lambda tx: tx.signs.count({two: 0.5}))
    store.run(lambda tx: tx.signs.count({}))

    assert store.run(lambda tx: tx.signs.counted()) == {one: 1.0, two: 2.5}


def test_the_latest_sign_of_a_channel_is_kept(store: Store) -> None:
    """Whichever process listens to it."""
    store.run(lambda tx: tx.signs.up(["sms", "telegram"], EVENING))
    store.run(lambda tx: tx.signs.up(["sms"], EVENING + MINUTE))

    assert store.run(lambda tx: tx.signs.lines()) == {"sms": EVENING + MINUTE, "telegram": EVENING}


def test_an_alert_is_undelivered_until_one_clinician_has_been_sent_it(store: Store) -> None:
    """Not while it may be on its way; a text to the family, or a send that failed, delivers nothing."""
    case_id = alarmed(store)
    later = EVENING + 5 * MINUTE

    def tell(key: str, ending: Outcome, **to: int) -> None:
        envelope = Envelope(case_id=case_id, key=key, urgency=Urgency.ALERT, text="", alert=1, **to)  # type: ignore[arg-type]
        store.run(lambda tx: tx.outbox.add([envelope], EVENING))
        [claimed] = store.run(lambda tx: tx.outbox.claim(EVENING, 9, LEASE))
        store.run(lambda tx: tx.outbox.settle(claimed.id, ending, EVENING))

    assert store.run(lambda tx: tx.signs.undelivered(EVENING)) == 0
    assert store.run(lambda tx: tx.signs.undelivered(later)) == 1
    tell("a", Outcome.GONE, clinician_id=1)
    tell("b", Outcome.SENT, contact_id=1)
    assert store.run(lambda tx: tx.signs.undelivered(later)) == 1
    tell("c", Outcome.SENT, clinician_id=1)
    assert store.run(lambda tx: tx.signs.undelivered(later)) == 0
    assert {level: one.count for level, one in store.run(lambda tx: tx.signs.open_alerts()).items()} == {
        Level.EMERGENCY: 1
    }


def test_a_family_is_unreachable_while_no_adult_s_chat_is_open(store: Store) -> None:
    """A child's chat does not count, nor does a family that has stopped."""
    case = store.run(lambda tx: tx.cases.add(draft(), EVENING))
    adult = Contact(id=1, role=Role.PARENT, channel="chat", language="en", joined=EVENING)
    child = replace(adult, id=2, role=Role.CHILD)
    gone = replace(adult, reachable=False)
    found = []
    for state, contacts in (
        (State.INVITED, ()),
        (State.PRACTISING, (adult, child)),
        (State.PRACTISING, (gone, child)),
        (State.WITHDRAWN, (gone, child)),
    ):

        def work(tx: Transaction, state: State = state, contacts: tuple[Contact, ...] = contacts) -> int:
            old = tx.cases.load(case.id)
            save(tx, old, replace(old, state=state, contacts=contacts))
            return tx.signs.unreachable()

        found.append(store.run(work))

    assert found == [0, 0, 1, 0]


def test_a_process_that_has_long_gone_is_forgotten(store: Store) -> None:
    """Or each restart would leave a line on the status page for ever."""
    store.run(lambda tx: tx.clinic.beat("old", EVENING))
    store.run(lambda tx: tx.clinic.beat("new", EVENING + timedelta(days=2)))

    assert list(store.run(lambda tx: tx.clinic.beats())) == ["new"]

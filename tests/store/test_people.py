"""Promises about who is at the other end."""

from datetime import datetime, timedelta
from functools import partial

import pytest

from coachbot.coach.case import Role
from coachbot.programme.protocol import Who
from coachbot.store import Invite, InviteFault, LawError, SignIn, Store, Transaction
from helpers.cases import EVENING, MINUTE, draft

CODE = "k7mq-2wxp-9rtd"


def add_contact(store: Store, case_id: int = 1, address: str = "777", role: Role = Role.PARENT) -> int:
    """Link a chat."""
    return store.run(
        lambda tx: tx.people.add_contact(case_id, role, channel="chat", address=address, language="fr", now=EVENING)
    )


def add_clinician(name: str, duty: str, tx: Transaction) -> None:
    """Keep a clinician."""
    tx.clinicians.add(name, EVENING, duty=duty)


def beat(at: datetime, tx: Transaction) -> None:
    """Say that the outbox is alive."""
    tx.clinic.beat("outbox", at)


def test_a_contact_is_found_by_its_address(store: Store) -> None:
    """And by no other address, nor by the same address on another channel."""
    contact = add_contact(store)
    [found] = store.run(lambda tx: tx.people.find("chat", "777"))

    assert (found.id, found.case_id, found.role, found.language, found.joined_at) == (
        contact,
        1,
        Role.PARENT,
        "fr",
        EVENING,
    )
    assert store.run(lambda tx: tx.people.address_of(contact)) == ("chat", "777")
    assert store.run(lambda tx: [*tx.people.find("chat", "778"), *tx.people.find("sms", "777")]) == []
    assert store.run(lambda tx: tx.people.address_of(99)) is None


def test_one_chat_may_serve_two_siblings(store: Store) -> None:
    """Each case has its own contact; the latest comes first."""
    older, younger = add_contact(store, case_id=1), add_contact(store, case_id=2)

    assert [one.id for one in store.run(lambda tx: tx.people.find("chat", "777"))] == [younger, older]
    assert [one.id for one in store.run(lambda tx: tx.people.of_case(1))] == [older]


def test_one_chat_is_linked_to_a_case_once(store: Store) -> None:
    """A second link is refused."""
    add_contact(store)

    with pytest.raises(LawError):
        add_contact(store)


def test_an_invitation_opens_once(store: Store) -> None:
    """Then it is used; a code that was never given is unknown."""
    case = store.run(lambda tx: tx.cases.add(draft(), EVENING))
    store.run(lambda tx: tx.invites.add(case.id, Role.CHILD, CODE, EVENING, EVENING + timedelta(days=7)))

    assert store.run(lambda tx: tx.invites.use(CODE, EVENING)) == Invite(case_id=case.id, role=Role.CHILD)
    assert store.run(lambda tx: tx.invites.use(CODE, EVENING)) is InviteFault.USED
    assert store.run(lambda tx: tx.invites.use(CODE + "x", EVENING)) is InviteFault.UNKNOWN


def test_an_invitation_expires(store: Store) -> None:
    """From the instant of its end on it does not open."""
    case = store.run(lambda tx: tx.cases.add(draft(), EVENING))
    store.run(lambda tx: tx.invites.add(case.id, Role.PARENT, CODE, EVENING, EVENING + MINUTE))

    assert store.run(lambda tx: tx.invites.use(CODE, EVENING + MINUTE)) is InviteFault.EXPIRED
    assert store.run(lambda tx: tx.invites.use(CODE, EVENING)) == Invite(case_id=case.id, role=Role.PARENT)


def test_a_step_of_the_ladder_reaches_those_on_duty(store: Store) -> None:
    """On call, backup, or all; never one who has left."""
    for name, duty in (("Ana", "on_call"), ("Ben", "backup"), ("Cho", "none"), ("Dan", "on_call")):
        store.run(partial(add_clinician, name, duty))
    store.run(lambda tx: tx.clinicians.change("Dan", active=False))
    reached = store.run(lambda tx: {who: [one.name for one in tx.clinicians.on_duty(who)] for who in Who})

    assert reached == {Who.ON_CALL: ["Ana"], Who.BACKUP: ["Ben"], Who.ALL: ["Ana", "Ben", "Cho"]}


def test_a_clinician_is_found_by_name_and_by_address(store: Store) -> None:
    """The address can be set later, and one who has left is not found by it."""
    clinician = store.run(lambda tx: tx.clinicians.add("Ana", EVENING))
    store.run(lambda tx: tx.clinicians.reach("Ana", "sms", "+351"))
    found = store.run(lambda tx: tx.clinicians.find("sms", "+351"))
    named = store.run(lambda tx: tx.clinicians.named("Ana"))
    store.run(lambda tx: tx.clinicians.change("Ana", active=False))

    assert found == named
    assert found
    assert (found.id, found.channel) == (clinician, "sms")
    assert store.run(lambda tx: tx.clinicians.find("sms", "+351")) is None
    assert [one.active for one in store.run(lambda tx: tx.clinicians.all())] == [False]


def test_a_name_is_given_once(store: Store) -> None:
    """Alerts and notes are signed by name, so there are no two of one."""
    store.run(lambda tx: tx.clinicians.add("Ana", EVENING))

    with pytest.raises(LawError):
        store.run(lambda tx: tx.clinicians.add("Ana", EVENING))


def test_only_what_may_change_of_a_clinician_can_be_changed(store: Store) -> None:
    """A column that is not among those is refused by name."""
    with pytest.raises(ValueError, match="totp"):
        store.run(lambda tx: tx.clinicians.change("Ana", totp="x"))
    store.run(lambda tx: tx.clinicians.add("Ana", EVENING))
    with pytest.raises(LawError):
        store.run(lambda tx: tx.clinicians.change("Ana", duty="sometimes"))


def test_the_next_words_of_a_clinician_belong_to_a_case(store: Store) -> None:
    """Until they have come."""
    store.run(lambda tx: tx.clinicians.add("Ana", EVENING))
    store.run(lambda tx: tx.clinicians.await_note("Ana", 12))
    waiting = store.run(lambda tx: tx.clinicians.named("Ana"))
    store.run(lambda tx: tx.clinicians.await_note("Ana", None))
    done = store.run(lambda tx: tx.clinicians.named("Ana"))

    assert waiting
    assert done
    assert (waiting.awaiting_case_id, done.awaiting_case_id) == (12, None)


def test_what_a_clinician_signs_in_with_is_kept(store: Store) -> None:
    """For an active one only."""
    store.run(lambda tx: tx.clinicians.add("Ana", EVENING))
    empty = store.run(lambda tx: tx.clinicians.sign_in("Ana"))
    store.run(lambda tx: tx.clinicians.set_sign_in("Ana", SignIn(password_hash="scrypt$…", totp=b"secret")))
    full = store.run(lambda tx: tx.clinicians.sign_in("Ana"))
    store.run(lambda tx: tx.clinicians.change("Ana", active=False))

    assert empty == SignIn(password_hash=None, totp=None)
    assert full == SignIn(password_hash="scrypt$…", totp=b"secret")
    assert store.run(lambda tx: tx.clinicians.sign_in("Ana")) is None


def test_the_clinic_s_settings_and_heartbeats_are_kept(store: Store) -> None:
    """The latest value stands."""
    store.run(lambda tx: tx.clinic.put("ladder", "a"))
    store.run(lambda tx: tx.clinic.put("ladder", "b"))
    for minute in range(3):
        store.run(partial(beat, EVENING + minute * MINUTE))

    assert store.run(lambda tx: (tx.clinic.get("ladder"), tx.clinic.get("other"))) == ("b", None)
    assert store.run(lambda tx: tx.clinic.beats()) == {"outbox": EVENING + 2 * MINUTE}

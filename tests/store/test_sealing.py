"""Promises about encryption at rest, checked against the standards it names and on the disk itself."""

import base64
import hmac
from functools import partial
from hashlib import sha256
from pathlib import Path

import pytest
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from sqlalchemy import LargeBinary, func, select

from coachbot.coach.actions import Urgency
from coachbot.coach.case import Role
from coachbot.coach.events import Told
from coachbot.store import BadKeyError, Envelope, Note, SignIn, Store, Transaction, UnsealError, new_key
from coachbot.store import store as store_module
from coachbot.store.rotation import SEALED, Place
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import metadata
from conftest import KEY
from helpers.cases import CHILD, EVENING, draft, save, with_night

SECRETS = (CHILD, "blue-elephant", "+351912345678", "k7mq-2wxp", "otp-secret")
"""Words that must not stand readable anywhere on the disk."""


def fill(store: Store) -> int:
    """Put each of the secret words wherever words are kept. Returns the case's id."""
    child, words, phone, code, secret = SECRETS
    case = store.run(lambda tx: tx.cases.add(draft(child), EVENING))
    told = Told(by="Ana", text=words)
    store.run(lambda tx: save(tx, tx.cases.load(case.id), with_night(case), told, EVENING))
    contact = store.run(
        lambda tx: tx.people.add_contact(case.id, Role.PARENT, channel="sms", address=phone, language="en", now=EVENING)
    )
    store.run(lambda tx: tx.invites.add(case.id, Role.PARENT, code, EVENING, EVENING))
    store.run(lambda tx: tx.clinicians.add("Ana", EVENING, reach=("sms", phone)))
    store.run(lambda tx: tx.clinicians.set_sign_in("Ana", SignIn(password_hash="x", totp=secret.encode())))
    store.run(lambda tx: tx.notes.add(Note(case_id=case.id, alert=1, at=EVENING, by="Ana", kind="note", words=words)))
    message = store.run(lambda tx: tx.messages.receive("sms", "1", phone, text=words, button=words, at=EVENING))
    assert message
    store.run(lambda tx: tx.messages.settle(message, "decided", case_id=case.id, evidence=(words,)))
    buttons = (((words, "yes"),),)
    to_family = Envelope(
        case_id=case.id, key="a", urgency=Urgency.REPLY, text=child, contact_id=contact, buttons=buttons
    )
    to_stranger = Envelope(case_id=None, key="b", urgency=Urgency.REPLY, text=words, stranger=("sms", phone))
    store.run(lambda tx: tx.outbox.add([to_family, to_stranger], EVENING))
    return case.id


def read_all(store: Store, case_id: int) -> str:
    """All that can be read back of what `fill` wrote."""
    parts: list[object] = [
        *store.run(lambda tx: list(tx.cases.history(case_id))),
        *store.run(lambda tx: tx.conversation(case_id)),
        store.run(lambda tx: tx.people.find("sms", SECRETS[2])),
        store.run(lambda tx: tx.clinicians.find("sms", SECRETS[2])),
        store.run(lambda tx: tx.clinicians.sign_in("Ana")),
        *store.run(lambda tx: tx.notes.of_case(case_id)),
        store.run(lambda tx: tx.cases.load(case_id)),
    ]
    assert all(parts)
    return repr(parts)


def test_no_secret_word_is_readable_on_the_disk(sqlite_url: str) -> None:
    """The files of a SQLite store hold none of them, while it is open and when it is closed."""
    store = Store.open(sqlite_url, KEY)
    fill(store)
    folder = Path(sqlite_url.removeprefix("sqlite:///")).parent
    opened = b"".join(path.read_bytes() for path in folder.iterdir())
    store.close()
    closed = b"".join(path.read_bytes() for path in folder.iterdir())

    for word in SECRETS:
        assert word.encode() not in opened
        assert word.encode() not in closed
    assert b"invited" in closed  # the search does find what is readable


def test_a_new_key_in_front_reads_what_the_old_one_sealed(store_url: str) -> None:
    """With both keys everything is read and every address found; with the new one alone nothing is."""
    old = Store.open(store_url, KEY)
    case_id = fill(old)
    before = read_all(old, case_id)
    old.close()
    key = new_key()
    both, new = Store.open(store_url, f"{key},{KEY}"), Store.open(store_url, key)

    assert read_all(both, case_id) == before
    with pytest.raises(UnsealError, match="add the clinic's earlier key"):
        new.run(lambda tx: tx.cases.load(case_id))
    assert new.run(lambda tx: tx.people.find("sms", SECRETS[2])) == []
    both.close()
    new.close()


@pytest.mark.parametrize("broken_off_after", [0, 1, 4, 9])
def test_after_a_rotation_the_new_key_alone_opens_everything(store_url: str, broken_off_after: int) -> None:
    """Also where the rotation was broken off half way and begun again; nothing is left under the old key."""
    old = Store.open(store_url, KEY)
    case_id = fill(old)
    before = read_all(old, case_id)
    old.close()
    key = new_key()
    both = Store.open(store_url, f"{key},{KEY}")
    place: Place | None = Place()
    for _ in range(broken_off_after):
        assert place is not None
        place = both.run(partial(Transaction.reseal, limit=1, place=place)).following
    half_way = read_all(both, case_id)
    both.reseal()
    again = both.reseal()
    both.close()
    new = Store.open(store_url, key)

    assert (half_way, again) == (before, 0)
    assert read_all(new, case_id) == before
    new.check()
    new.close()


@pytest.mark.parametrize("batch", [1, 2, 500])
def test_a_rotation_in_batches_of_any_size_leaves_nothing_out(
    sqlite_url: str, batch: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The second round finds nothing, and the first has counted every sealed value."""
    monkeypatch.setattr(store_module, "RESEAL_BATCH", batch)
    old = Store.open(sqlite_url, KEY)
    fill(old)
    old.close()
    both = Store.open(sqlite_url, f"{new_key()},{KEY}")

    def sealed(tx: Transaction) -> int:
        columns = [one.table.c[one.column] for one in SEALED]
        counts = [select(func.count()).where(column.is_not(None)) for column in columns]
        return sum(tx._connection.execute(count).scalar_one() for count in counts)

    assert both.reseal() == both.run(sealed) > len(SEALED)
    assert both.reseal() == 0
    both.close()


def test_a_key_is_not_dropped_before_its_values_were_sealed_anew(store_url: str) -> None:
    """The store knows the names of the keys that may have sealed something, and refuses to start without one."""
    key = new_key()
    old = Store.open(store_url, KEY)
    old.check()
    fill(old)
    old.close()
    both = Store.open(store_url, f"{key},{KEY}")
    both.check()
    both.run(partial(Transaction.reseal, limit=1, place=Place()))
    new = Store.open(store_url, key)
    with pytest.raises(UnsealError, match="coachbot key rotate"):
        new.check()
    both.reseal()
    new.check()
    both.check()
    for one in (both, new):
        one.close()


def test_a_rotation_knows_every_sealed_column() -> None:
    """Each column of bytes is either sealed anew or is only what something is found by."""
    binary = {
        (table.name, column.name)
        for table in metadata.sorted_tables
        for column in table.columns
        if isinstance(column.type, LargeBinary) and not column.name.endswith("_hash")
    }

    assert {(one.table.name, one.column) for one in SEALED} == binary


def test_a_store_is_not_started_with_a_key_that_does_not_fit(store_url: str) -> None:
    """The check at the start says so, before any message is taken in."""
    right, wrong = Store.open(store_url, KEY), Store.open(store_url, new_key())
    wrong.check()
    fill(right)
    right.check()
    with pytest.raises(UnsealError, match="add the clinic's earlier key"):
        wrong.check()
    right.close()
    wrong.close()


@pytest.mark.parametrize("key", ["", " , ", "not base64!", base64.urlsafe_b64encode(b"short").decode(), KEY + KEY])
def test_a_bad_key_is_refused_with_what_to_do(key: str) -> None:
    """The message says what a key looks like, and never repeats it."""
    with pytest.raises(BadKeyError) as caught:
        Sealer(key)

    assert "32 bytes" in str(caught.value) or "make one" in str(caught.value)
    assert not key.strip(" ,") or key not in str(caught.value)


def test_new_keys_are_good_and_differ() -> None:
    """What `new_key` gives, `Sealer` takes."""
    assert Sealer(new_key()).seal(Purpose.CASE, b"") != Sealer(new_key()).seal(Purpose.CASE, b"")


def test_the_same_words_never_look_the_same_twice() -> None:
    """Equal texts cannot be told by their sealed form; only by the lookup that is meant for it."""
    sealer = Sealer(KEY)

    assert sealer.seal(Purpose.ADDRESS, b"777") != sealer.seal(Purpose.ADDRESS, b"777")
    assert sealer.lookup(Purpose.ADDRESS, "777") == sealer.lookup(Purpose.ADDRESS, "777")
    assert sealer.lookup(Purpose.ADDRESS, "777") != sealer.lookup(Purpose.INVITE, "777")


def test_changed_or_misplaced_bytes_are_not_opened() -> None:
    """Each bit is under the tag, and so is the purpose."""
    sealer = Sealer(KEY)
    sealed = sealer.seal(Purpose.MESSAGE, b"5")

    for place in range(len(sealed)):
        with pytest.raises(UnsealError):
            sealer.open(Purpose.MESSAGE, sealed[:place] + bytes([sealed[place] ^ 1]) + sealed[place + 1 :])
    with pytest.raises(UnsealError):
        sealer.open(Purpose.CASE, sealed)
    with pytest.raises(UnsealError):
        sealer.open(Purpose.MESSAGE, b"")


def test_anybody_with_the_key_can_open_it_by_the_standards_alone() -> None:
    """HKDF as RFC 5869 2.2 and 2.3 write it, HMAC-SHA256 as RFC 2104, AES-GCM as SP 800-38D: nothing of our own."""
    master = base64.urlsafe_b64decode(KEY)

    def derive(use: bytes) -> bytes:
        extracted = hmac.new(bytes(32), master, sha256).digest()
        return hmac.new(extracted, b"coachbot " + use + b"\x01", sha256).digest()

    sealed = Sealer(KEY).seal(Purpose.MESSAGE, "água".encode())

    assert sealed[:5] == b"\x01" + derive(b"key name")[:4]
    assert AESGCM(derive(b"sealing")).decrypt(sealed[5:17], sealed[17:], b"message").decode() == "água"
    assert (
        Sealer(KEY).lookup(Purpose.ADDRESS, "sms:1") == hmac.new(derive(b"lookup"), b"address\0sms:1", sha256).digest()
    )

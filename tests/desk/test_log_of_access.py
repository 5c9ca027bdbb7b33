"""Promises about what the desk keeps, over both databases."""

from collections.abc import Iterator
from datetime import timedelta

import pytest
from sqlalchemy import text

from coachbot.desk import accounts, sessions
from coachbot.store import Accessed, LawError, Note, Store, Transaction
from conftest import KEY
from helpers.cases import draft
from helpers.desk_bench import NOON

LOOKED = Accessed(at=NOON, by="Imani Osei", case_id=7, what="child.child")


@pytest.fixture
def store(store_url: str) -> Iterator[Store]:
    """An empty store, once over each database."""
    store = Store.open(store_url, KEY)
    yield store
    store.close()


@pytest.mark.parametrize("deed", ["UPDATE access SET what = 'nothing'", "DELETE FROM access"])
def test_the_log_of_access_can_only_be_added_to(store: Store, deed: str) -> None:
    """The database itself refuses to change or delete an entry, whoever asks."""
    store.run(lambda tx: tx.access.add([LOOKED]))
    with pytest.raises(LawError, match="only ever added to"):
        store.run(lambda tx: tx._connection.execute(text(deed)))

    assert store.run(lambda tx: tx.access.of_case(7)) == [LOOKED]


def test_a_code_of_an_older_step_is_not_taken_either(store: Store) -> None:
    """What was seen over a shoulder a moment ago opens nothing once a newer code was used."""

    def work(tx: Transaction) -> list[bool]:
        accounts.add(tx, "Imani Osei", NOON)
        clinician = tx.clinicians.named("Imani Osei")
        assert clinician is not None
        return [tx.sessions.use_code(clinician.id, step) for step in (10, 10, 9, 11)]

    assert store.run(work) == [True, False, False, True]


def test_sessions_past_their_limits_are_swept_away(store: Store) -> None:
    """Whenever somebody signs in; of all that are left none is past its limits."""

    def begin(tx: Transaction) -> list[bool]:
        accounts.add(tx, "Imani Osei", NOON)
        clinician = tx.clinicians.named("Imani Osei")
        assert clinician is not None
        times = (NOON, NOON + timedelta(minutes=29), NOON + timedelta(minutes=31))
        tokens = [sessions.begin(tx, clinician.id, at, None) for at in times]
        return [tx.sessions.get(sessions.hashed(token)) is not None for token in tokens]

    assert store.run(begin) == [False, True, True]


def test_notes_are_sealed_and_go_with_the_family(store: Store) -> None:
    """No word of a note lies open in the database, and none outlives the family."""
    case = store.run(lambda tx: tx.cases.add(draft(), NOON))
    note = Note(case_id=case.id, alert=None, at=NOON, by="Imani Osei", kind="note", words="Mother sounds tired")
    store.run(lambda tx: tx.notes.add(note))
    kept = store.run(lambda tx: tx._connection.execute(text("SELECT words FROM notes")).scalar_one())

    assert store.run(lambda tx: tx.notes.of_case(case.id)) == [note]
    assert b"tired" not in bytes(kept)
    store.run(lambda tx: tx.erase(case.id, NOON))
    assert store.run(lambda tx: tx.notes.of_case(case.id)) == []

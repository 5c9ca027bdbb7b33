"""What is past its time goes, from tables, history and the file itself; what is not stays."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from sqlalchemy import make_url

from coachbot.bootstrap import retain
from coachbot.coach.case import State
from coachbot.coach.events import Acknowledged, Ended
from coachbot.rehearsal.stage import ON_CALL_NAME, PARENT, Stage, cast
from coachbot.service.retention import Retention, erase_again
from coachbot.settings import Settings
from coachbot.store import NoSuchCaseError, Store, Tombstone
from conftest import KEY
from helpers.kept import kept, sealed
from helpers.played import played
from service.conftest import to_the_end_of_the_lesson

YEAR = timedelta(days=365)
NAME = "Noor"
WORDS = "the purple one tasted of soap"


def retention(stage: Stage, keep: timedelta | None = YEAR) -> Retention:
    """What `coachbot serve` runs every hour."""
    return Retention(stage.coachbot.store, stage.coachbot.deciding, stage.clock, keep)


@pytest.fixture
async def ended(store: Store) -> Stage:
    """The family's programme was ended by the clinician, and all messages have gone."""
    return await played(store, to_the_end)


async def to_the_end(stage: Stage) -> None:
    """From the invitation on."""
    await to_the_end_of_the_lesson(stage)
    await stage.write(PARENT, WORDS)
    store, deciding, now = stage.coachbot.store, stage.coachbot.deciding, stage.clock.now
    event = Ended(by=ON_CALL_NAME, note="moved away")
    await store.transact(lambda tx: deciding.happen(tx, tx.cases.load(stage.case_id), event, now))
    await stage.forward(timedelta(minutes=1))
    assert stage.case.state is State.WITHDRAWN


async def test_a_family_is_erased_when_its_time_is_over_and_not_before(ended: Stage) -> None:
    """Nothing of it stays in any table but the proof and who did it; nobody is written to."""
    store = ended.coachbot.store
    ended.clock.now += YEAR - timedelta(days=1)
    assert await retention(ended).run() == 0
    assert NAME in kept(store)
    assert WORDS in kept(store)

    ended.clock.now += timedelta(days=2)
    before = {phone: len(said) for phone, said in ended.spoken.items()}
    assert await retention(ended).run() == 1
    await ended.forward(timedelta(days=1))

    assert NAME not in kept(store)
    assert WORDS not in kept(store)
    assert {phone: len(said) for phone, said in ended.spoken.items()} == before
    with pytest.raises(NoSuchCaseError):
        store.run(lambda tx: tx.cases.load(ended.case_id))
    [stone] = store.run(lambda tx: tx.tombstones())
    assert (stone.case_id, stone.received > 0, stone.nights) == (ended.case_id, True, 0)
    assert [(one.by, one.what) for one in store.run(lambda tx: tx.access.of_case(ended.case_id))] == [
        ("coachbot", "retention.erased")
    ]
    assert await retention(ended).run() == 0


async def test_nothing_goes_while_somebody_may_still_need_it(practising: Stage) -> None:
    """A family that practises, and one with an open alert, stay however old they are; so does all, if set so."""
    assert await retention(practising, timedelta(0)).run() == 0
    await practising.write(PARENT, "she is choking and cannot breathe")
    await practising.write(PARENT, "stop")
    practising.clock.now += 2 * YEAR
    assert practising.case.open_alerts
    assert await retention(practising).run() == 0
    assert practising.case.child.name == NAME


async def test_for_ever_means_for_ever(ended: Stage) -> None:
    """`never`."""
    ended.clock.now += 40 * YEAR
    assert Settings({"COACHBOT_KEEP_DAYS": "never"}).keep is None
    assert Settings({}).keep == YEAR
    assert await retention(ended, None).run() == 0
    assert ended.case.child.name == NAME


async def test_an_invitation_that_nobody_opened_goes_too(stage: Stage) -> None:
    """A name is kept with it."""
    stage.clock.now += YEAR + timedelta(days=1)

    assert await retention(stage).run() == 1
    assert NAME not in kept(stage.coachbot.store)


async def test_what_strangers_wrote_goes_with_the_clinic_s_own_case(stage: Stage) -> None:
    """Words of people whom no family knows are nobody's record; the next one is heard as before."""
    store, deciding = stage.coachbot.store, stage.coachbot.deciding
    await stage.write("stranger-1", "my child is choking on something")
    assert "choking" in kept(store)
    desk = store.run(lambda tx: int(tx.clinic.get("front_desk") or 0))
    stage.clock.now += 2 * YEAR
    await retention(stage).run()
    assert "choking" in kept(store), "its alert is open"

    taken = Acknowledged(by=ON_CALL_NAME, alert=1)
    await store.transact(lambda tx: deciding.happen(tx, tx.cases.load(desk), taken, stage.clock.now))
    stage.clock.now += 2 * YEAR
    await retention(stage).run()
    assert "choking" not in kept(store)
    assert "stranger-1" not in kept(store)
    await stage.write("stranger-1", "my child is choking on something")
    assert "911" in (stage.last("stranger-1") or pytest.fail("not heard")).text


async def test_the_file_itself_holds_nothing_of_an_erased_family(sqlite_url: str) -> None:
    """SQLite, file and write-ahead log: no sealed value that was the family's, let alone its words.

    Sources: SQLite, "PRAGMA secure_delete" and "PRAGMA wal_checkpoint(TRUNCATE)".
    """
    store = Store.open(sqlite_url, KEY)
    stage = await cast(store)
    before = sealed(store)
    stage.clock.now += YEAR + timedelta(days=1)
    assert all(one in raw(sqlite_url) for one in before), "the search finds what is there"
    await retention(stage).run()
    lost = before - sealed(store)

    assert lost
    assert not [one for one in lost if one in raw(sqlite_url)]
    assert NAME.encode() not in raw(sqlite_url)
    store.close()


def raw(url: str) -> bytes:
    """The database's files, as they lie on the disk."""
    path = Path(str(make_url(url).database))
    return b"".join(one.read_bytes() for one in path.parent.glob(f"{path.name}*"))


async def test_what_was_erased_before_a_restore_is_erased_again(ended: Stage) -> None:
    """By the proofs that the newest backup brings along; a family that has got such a number since is left alone."""
    store, deciding, now = ended.coachbot.store, ended.coachbot.deciding, ended.clock.now
    opened = store.run(lambda tx: tx.cases.opened_at(ended.case_id))
    assert opened
    proof = Tombstone(case_id=ended.case_id, created_at=opened, erased_at=now, events=1, nights=0, received=1, sent=1)
    another = replace(proof, created_at=opened + timedelta(seconds=1))
    never = replace(proof, case_id=9_999)

    assert store.run(lambda tx: erase_again(tx, deciding, [another, never], now)) == 0
    assert ended.case.child.name == NAME
    assert store.run(lambda tx: erase_again(tx, deciding, [proof], now)) == 1
    assert NAME not in kept(store)
    assert store.run(lambda tx: erase_again(tx, deciding, [proof], now)) == 0


def test_a_list_that_is_none_is_refused(store: Store) -> None:
    """Before anything is erased."""
    with pytest.raises(ValueError, match="JSON is malformed"):
        retain(store, Settings({}), ["no json"])

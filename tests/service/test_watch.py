"""The dead-man's check, against a real HTTP server: silence where something is amiss, a post for alerts unheard."""

import json
from collections.abc import AsyncIterator, Iterator
from datetime import timedelta

import pytest

from coachbot import logs
from coachbot.channels.base import Ending, Receipt
from coachbot.rehearsal.stage import BACKUP_NAME, ON_CALL_NAME, PARENT, Stage
from coachbot.service.watch import Watch
from coachbot.settings import Settings
from coachbot.store import Store, Transaction, UnavailableError
from conftest import KEY
from helpers.monitor import Monitor, monitor

GRAVE = "she is choking and cannot breathe"
MINUTE = timedelta(minutes=1)


@pytest.fixture
def store(sqlite_url: str) -> Iterator[Store]:
    """One database is enough here: what the watch reads is tested over both with the store."""
    opened = Store.open(sqlite_url, KEY)
    yield opened
    opened.close()


@pytest.fixture
def outside() -> Iterator[Monitor]:
    """The monitor outside."""
    with monitor() as running:
        yield running


async def watching(stage: Stage, **settings: str) -> Watch:
    """A watch over the stage, whose heart has just beaten."""
    given = {f"COACHBOT_{name}": value for name, value in settings.items()}
    await felt(stage)
    return Watch(stage.coachbot.store, Settings(given), stage.coachbot.channels, stage.clock)


async def felt(stage: Stage) -> None:
    """One beat, and every channel's sign."""
    await stage.coachbot.heartbeat.beat()
    await stage.coachbot.signs.give()


async def off_duty(stage: Stage, *, active: bool) -> None:
    """Nobody is on duty any more."""

    def work(tx: Transaction) -> None:
        for name in (ON_CALL_NAME, BACKUP_NAME):
            tx.clinicians.change(name, duty="none", active=active)

    await stage.coachbot.store.transact(work)


@pytest.fixture
async def watch(practising: Stage, outside: Monitor) -> AsyncIterator[Watch]:
    """A watch that tells the monitor."""
    made = await watching(practising, WATCH_URL=outside.url)
    yield made
    await made.close()


async def test_each_healthy_look_asks_for_the_address_and_says_nothing(watch: Watch, outside: Monitor) -> None:
    """So that the monitor raises the alarm when it is not asked for any more."""
    await watch.look()
    await watch.look()

    assert outside.taken() == [("GET", "/check/3f0c", None)] * 2


async def test_silence_when_the_heart_stops(watch: Watch, outside: Monitor, practising: Stage) -> None:
    """The process still looks, but no beat is felt."""
    practising.clock.now += 3 * MINUTE
    await practising.coachbot.signs.give()
    await watch.look()
    assert outside.taken() == []

    await practising.coachbot.heartbeat.beat()
    await watch.look()
    assert len(outside.taken()) == 1


async def test_silence_when_a_channel_is_down(watch: Watch, outside: Monitor, practising: Stage) -> None:
    """Families write and nobody hears."""
    await practising.texts.stop()
    practising.clock.now += 3 * MINUTE
    await felt(practising)
    await watch.look()

    assert outside.taken() == []


async def test_silence_when_an_alert_would_reach_nobody(watch: Watch, outside: Monitor, practising: Stage) -> None:
    """Before there is any alert: the outside hears that nobody is on duty."""
    await off_duty(practising, active=True)
    await watch.look()

    assert outside.taken() == []


async def test_silence_when_the_store_cannot_be_read(
    watch: Watch, outside: Monitor, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And the next look comes all the same."""

    async def unavailable(*_: object) -> None:
        raise UnavailableError("gone")

    with monkeypatch.context() as patch:
        patch.setattr(Store, "read", unavailable)
        await watch.look()
    assert outside.taken() == []
    await watch.look()
    assert len(outside.taken()) == 1


async def test_an_alert_that_reaches_nobody_is_posted(watch: Watch, outside: Monitor, practising: Stage) -> None:
    """How many, and not a word more; again after five minutes; and all is well once somebody has heard it."""
    sent, gone = Receipt(ending=Ending.SENT), Receipt(ending=Ending.GONE)
    practising.phones.fail(sent, gone, sent, *[gone] * 20)  # safety text, alert, the child's text, the alert again
    await practising.write(PARENT, GRAVE)
    await watch.look()
    assert outside.taken() == [("GET", "/check/3f0c", None)], "it may still be on its way"

    practising.clock.now += 3 * MINUTE
    await felt(practising)
    for _ in range(3):
        await watch.look()
    [(method, path, told)] = outside.taken()
    assert (method, path) == ("POST", "/check/3f0c/fail")
    assert told == {"alerts_undelivered": 1}

    practising.clock.now += 5 * MINUTE
    await watch.look()
    assert len(outside.taken()) == 1

    practising.phones._failures.clear()
    await practising.forward(timedelta(hours=1))
    await felt(practising)
    await watch.look()
    assert outside.taken() == [("GET", "/check/3f0c", None)]


async def test_a_clinic_without_anybody_to_tell_is_told_outside(
    watch: Watch, outside: Monitor, practising: Stage
) -> None:
    """No message is even written where nobody has a chat."""
    await off_duty(practising, active=False)
    await practising.write(PARENT, GRAVE)
    practising.clock.now += 3 * MINUTE
    await watch.look()

    assert [method for method, _, _ in outside.taken()] == ["POST"]


async def test_a_monitor_that_does_not_answer_is_told_again_and_its_address_not_logged(
    watch: Watch, outside: Monitor, practising: Stage, capsys: pytest.CaptureFixture[str]
) -> None:
    """The address may hold a secret."""
    logs.configure("json")
    practising.phones.fail(Receipt(ending=Ending.SENT), *[Receipt(ending=Ending.GONE)] * 20)
    await practising.write(PARENT, GRAVE)
    practising.clock.now += 3 * MINUTE
    outside.status = 503
    await watch.look()
    await watch.look()
    assert len(outside.taken()) == 2

    told = capsys.readouterr().err
    assert [json.loads(line)["action"] for line in told.splitlines()][-4:] == [
        "alerts_undelivered",
        "watch_unheard",
    ] * 2
    assert "3f0c" not in told


async def test_another_address_may_be_posted_to(practising: Stage, outside: Monitor) -> None:
    """And without any address the log alone tells."""
    own = await watching(practising, WATCH_FAIL_URL=f"{outside.url}/own")
    await practising.write(PARENT, "hello")
    practising.phones.fail(Receipt(ending=Ending.SENT), *[Receipt(ending=Ending.GONE)] * 20)
    await practising.write(PARENT, GRAVE)
    practising.clock.now += 3 * MINUTE
    await own.look()
    await own.close()
    nobody = await watching(practising)
    await nobody.look()
    await nobody.close()

    assert [(method, path) for method, path, _ in outside.taken()] == [("POST", "/check/3f0c/own")]

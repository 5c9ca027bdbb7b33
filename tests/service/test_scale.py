"""What must hold however many families there are, in short: the same clinics that `tests/bench` measures in long."""

import pytest

from bench.bench_workers import check, together
from bench.clinics import BEDTIME, CHANNEL, CLINICIAN_ADDRESS, Wire, address, coachbot, fill
from coachbot.channels.base import Incoming
from coachbot.store import Status, Store, Transaction, new_key

FAMILIES = 100


async def test_in_the_bedtime_wave_every_family_gets_its_own_prompt_once(store: Store) -> None:
    """One waits for each family after the beat, however often it beats, and all of them are sent."""
    fill(store, FAMILIES)
    wire = Wire()
    bot = coachbot(store, wire)
    await bot.heartbeat.beat()
    await bot.heartbeat.beat()
    assert {status for _, _, status in store.run(_written)} == {Status.WAITING}

    await bot.settle()

    prompts = [message for _, message in wire.handed if message.file]
    assert sorted(message.address for message in prompts) == sorted(map(address, range(1, FAMILIES + 1)))
    assert all(f"Kid {message.address.partition('-')[2]}" in message.text for message in prompts)
    assert {status for _, _, status in store.run(_written)} == {Status.SENT}
    assert len({(case, key) for case, key, _ in store.run(_written)}) == len(wire.handed)


async def test_an_alarm_overtakes_the_whole_wave(store: Store) -> None:
    """Whatever waits, the next messages to be handed over are the safety text and the alert."""
    fill(store, FAMILIES)
    wire = Wire()
    bot = coachbot(store, wire)
    await bot.heartbeat.beat()
    words = "she is choking and cant breathe"
    await bot.inbox.receive(Incoming(channel=CHANNEL, channel_id="1", address=address(90), at=BEDTIME, text=words))
    await bot.sender.pump()

    assert [message.address for _, message in wire.handed[:2]] == [address(90), CLINICIAN_ADDRESS]


@pytest.mark.postgres
def test_two_processes_share_a_wave_and_send_nothing_twice(postgres_url: str) -> None:
    """By the channels' own logs, whoever beats and sends."""
    key = new_key()
    store = Store.open(postgres_url, key)
    fill(store, FAMILIES)
    store.close()
    _, sent = together(postgres_url, key, 2)

    assert check(sent, FAMILIES) == sum(map(len, sent))


def _written(tx: Transaction) -> list[tuple[int, str, Status]]:
    return [(case, one.key, one.status) for case in range(1, FAMILIES + 1) for one in tx.outbox.of_case(case)]

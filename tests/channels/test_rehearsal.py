"""Phones in memory."""

from datetime import UTC, datetime, timedelta

import pytest

from coachbot.channels.base import Channel, ChannelError, Ending, Incoming, Outgoing, Receipt
from coachbot.channels.rehearsal import RehearsalChannel

NOW = datetime(2026, 3, 1, 20, 0, tzinfo=UTC)


class Kept(list[Incoming]):
    """Receives by keeping."""

    async def __call__(self, incoming: Incoming) -> None:
        """Keep it."""
        self.append(incoming)


def phones() -> RehearsalChannel:
    """A channel whose clock stands still."""
    return RehearsalChannel(lambda: NOW)


def hello(text: str = "Hello") -> Outgoing:
    """A message to the parent."""
    return Outgoing(address="parent", text=text, buttons=((("OK", "1:next:2"),),))


async def test_what_is_sent_arrives_on_that_phone_with_its_buttons() -> None:
    """Each address has a phone of its own, oldest message first."""
    channel: Channel = phones()

    receipts = [await channel.send(hello()), await channel.send(hello("Again"))]

    assert isinstance(channel, RehearsalChannel)
    assert channel.phones["parent"] == [hello(), hello("Again")]
    assert channel.phones["child"] == []
    assert [receipt.ending for receipt in receipts] == [Ending.SENT, Ending.SENT]
    assert receipts[0].channel_id != receipts[1].channel_id


async def test_what_is_written_and_pressed_is_received() -> None:
    """With the channel's clock, and an id of its own each time unless it is given."""
    channel, kept = phones(), Kept()
    await channel.start(kept)

    await channel.write("parent", "4 3 5 5 2", language="es")
    await channel.press("child", "1:rate:3:left:4", channel_id="twice")
    await channel.press("child", "1:rate:3:left:4", channel_id="twice")

    assert [(one.address, one.text, one.button, one.language, one.at) for one in kept] == [
        ("parent", "4 3 5 5 2", None, "es", NOW),
        ("child", None, "1:rate:3:left:4", None, NOW),
        ("child", None, "1:rate:3:left:4", None, NOW),
    ]
    assert kept[1].channel_id == kept[2].channel_id == "twice"
    assert kept[0].channel_id != "twice"


async def test_sends_fail_as_told_and_then_no_more() -> None:
    """A message with an unknown ending arrived; one that failed did not."""
    channel = phones()
    later = Receipt(ending=Ending.LATER, wait=timedelta(seconds=3))
    channel.fail(later, Receipt(ending=Ending.UNKNOWN), Receipt(ending=Ending.GONE))

    endings = [await channel.send(hello(str(n))) for n in range(4)]

    assert endings[0] == later
    assert [receipt.ending for receipt in endings[1:]] == [Ending.UNKNOWN, Ending.GONE, Ending.SENT]
    assert [message.text for message in channel.phones["parent"]] == ["1", "3"]


async def test_a_phone_before_the_start_or_after_the_stop_says_what_to_do() -> None:
    """Nothing vanishes silently."""
    channel = phones()
    with pytest.raises(ChannelError, match="start the channel first"):
        await channel.write("parent", "hello")
    await channel.start(Kept())
    await channel.stop()

    with pytest.raises(ChannelError, match="start the channel first"):
        await channel.press("parent", "1:next:2")

"""The SMS channel over SMPP, against an SMSC that others wrote (npm's smpp)."""

import asyncio
from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from coachbot.channels.base import ChannelError, Ending, Incoming, Outgoing, Part, Report
from coachbot.channels.sms import Account, SmsChannel, line, session
from coachbot.channels.sms import channel as sms
from peers.smsc_peer import OWN, SmscPeer, free_port

pytestmark = pytest.mark.emulator

PARENT, CHILD = "+15550123", "+15550124"
NOW = datetime(2026, 3, 1, 20, 0, tzinfo=UTC)


class Inbox:
    """Keeps what comes; can refuse, as a store does that cannot be reached."""

    def __init__(self) -> None:
        self.kept: list[Incoming] = []
        self.reports: list[Report] = []
        self.refusals = 0
        self.unknown = 0

    async def receive(self, incoming: Incoming) -> None:
        """Keep a message, unless told to refuse."""
        if self.refusals:
            self.refusals -= 1
            raise ConnectionError("the store is away")
        self.kept.append(incoming)

    async def hear(self, report: Report) -> bool:
        """Keep a report, unless it is not known yet."""
        if self.unknown:
            self.unknown -= 1
            return False
        self.reports.append(report)
        return True


@pytest.fixture(autouse=True)
def _quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pauses and time-outs short enough for tests."""
    monkeypatch.setattr(line, "PAUSES", (timedelta(milliseconds=20), timedelta(milliseconds=100)))
    monkeypatch.setattr(session, "ANSWER", timedelta(seconds=0.5))
    monkeypatch.setattr(sms, "PATIENCE", (timedelta(milliseconds=20), timedelta(seconds=1)))


@pytest.fixture
def inbox() -> Inbox:
    """Where messages go."""
    return Inbox()


def made(peer: SmscPeer, password: str = "right", **more: object) -> SmsChannel:
    """A channel at the test server, not started."""
    account = Account(host="127.0.0.1", port=peer.port, system_id=peer.account, password=password)
    how: dict[str, Any] = {"clock": lambda: NOW, **more}
    return SmsChannel(account, number=OWN, region="US", per_second=100, **how)


@pytest.fixture
async def channel(smsc_peer: SmscPeer) -> AsyncIterator[SmsChannel]:
    """A channel at the test server, not started."""
    one = made(smsc_peer)
    yield one
    await one.stop()


@pytest.fixture
async def started(channel: SmsChannel, inbox: Inbox) -> SmsChannel:
    """A channel that is bound and hears."""
    await channel.start(inbox.receive, inbox.hear)
    return channel


@pytest.mark.parametrize("text", ["Hello", "Señor: 5 € {ok} [~^|\\]", "Ça va? @£$¥", "Noël à l’heure 🙂"])
async def test_words_arrive_as_they_were_written(started: SmsChannel, smsc_peer: SmscPeer, text: str) -> None:
    """In the GSM alphabet with its extension table, or in UCS-2; decoded by the server, not by us."""
    receipt = await started.send(Outgoing(address=PARENT, text=text))
    [sent] = await smsc_peer.sent(PARENT)

    assert receipt.ending is Ending.SENT
    assert receipt.channel_id == sent["id"]
    assert (sent["text"], sent["part"], sent["from"], sent["from_ton"], sent["to_ton"]) == (text, None, OWN[1:], 1, 1)


@pytest.mark.parametrize("text", ["a" * 152 + "€" + "b" * 200, "ê" + "x" * 65 + "🙂" + "y" * 100, "é" * 500])
async def test_long_words_arrive_whole(started: SmsChannel, smsc_peer: SmscPeer, text: str) -> None:
    """Pieces are numbered, share a reference, and none breaks a character in two."""
    receipt = await started.send(Outgoing(address=PARENT, text=text))
    sent = await smsc_peer.sent(PARENT)

    assert receipt.names == tuple(one["id"] for one in sent)
    assert "".join(one["text"] for one in sent) == text
    assert [one["part"][1:] for one in sent] == [[len(sent), number] for number in range(1, len(sent) + 1)]
    assert len({one["part"][0] for one in sent}) == 1


async def test_a_message_that_expires_is_not_kept_for_a_phone_that_is_off(
    started: SmsChannel, smsc_peer: SmscPeer
) -> None:
    """Its last moment goes along as the validity period."""
    await started.send(Outgoing(address=PARENT, text="tonight", expires=NOW + timedelta(hours=2)))

    assert (await smsc_peer.sent(PARENT))[0]["validity"] == "2026-03-01T22:00:00.000Z"


@pytest.mark.parametrize(
    ("status", "ending"),
    [
        (0x58, Ending.LATER),
        (0x14, Ending.LATER),
        (0x08, Ending.LATER),
        (0x0A, Ending.LATER),
        (0x0B, Ending.GONE),
        (0x45, Ending.NEVER),
        (0x0400, Ending.NEVER),
    ],
)
async def test_a_refusal_is_typed(started: SmsChannel, smsc_peer: SmscPeer, status: int, ending: Ending) -> None:
    """Only throttling, a full queue and the system's own error are worth another try (SMPP 3.4, 5.1.3)."""
    await smsc_peer.fault("status", status=status)

    assert (await started.send(Outgoing(address=PARENT, text="hello"))).ending is ending


async def test_being_throttled_holds_everything_for_a_while(started: SmsChannel, smsc_peer: SmscPeer) -> None:
    """Also what goes to somebody else; a full queue is one phone's own."""
    await smsc_peer.fault("status", status=0x14)
    await started.send(Outgoing(address=PARENT, text="hello"))
    assert not started.pace.ask(CHILD, NOW)
    await smsc_peer.fault("status", status=0x58)
    await started.send(Outgoing(address=PARENT, text="hello"))

    assert started.pace.ask(CHILD, NOW) == sms.THROTTLE


async def test_a_message_cut_halfway_is_sent_whole_again(
    smsc_peer: SmscPeer, inbox: Inbox, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Throttled at the second piece: later, under the same reference, so that no phone shows half of it twice."""
    monkeypatch.setattr(sms, "THROTTLE", timedelta(milliseconds=50))
    one = made(smsc_peer, clock=lambda: datetime.now(UTC))
    await one.start(inbox.receive)
    await smsc_peer.fault("status", status=0x58, after=1)
    message = Outgoing(address=PARENT, text="a" * 300)

    assert (await one.send(message)).ending is Ending.LATER
    assert (await one.send(message)).ending is Ending.SENT
    await one.stop()
    assert len({one["part"][0] for one in await smsc_peer.sent(PARENT, 3)}) == 1


async def test_no_answer_leaves_the_end_unknown(started: SmsChannel, smsc_peer: SmscPeer) -> None:
    """A silent server may have taken it."""
    await smsc_peer.fault("lose")

    assert (await started.send(Outgoing(address=PARENT, text="hello"))).ending is Ending.UNKNOWN


async def test_a_line_cut_with_messages_in_flight(started: SmsChannel, smsc_peer: SmscPeer) -> None:
    """They end as unknown at once, the line comes back by itself, and the next goes out."""
    await smsc_peer.fault("lose", times=3)
    sends = [asyncio.create_task(started.send(Outgoing(address=PARENT, text=text))) for text in "abc"]
    await smsc_peer.sent(PARENT, 3)
    await smsc_peer.cut()

    assert [one.ending for one in await asyncio.gather(*sends)] == [Ending.UNKNOWN] * 3
    await smsc_peer.bound(2)
    await asyncio.sleep(0.05)
    assert (await started.send(Outgoing(address=PARENT, text="d"))).ending is Ending.SENT


@pytest.mark.usefixtures("started")
async def test_a_server_that_is_deaf_is_left(smsc_peer: SmscPeer, monkeypatch: pytest.MonkeyPatch) -> None:
    """An enquiry without an answer ends the connection, and another is made."""
    monkeypatch.setattr(session, "ENQUIRY", timedelta(milliseconds=50))
    await smsc_peer.set(deaf=True)
    await smsc_peer.cut()
    await smsc_peer.bound(3)

    assert (await smsc_peer.state())["enquiries"] >= 1


async def test_no_more_are_in_flight_than_the_window_holds(smsc_peer: SmscPeer, inbox: Inbox) -> None:
    """The third of three waits while two have no answer."""
    one = made(smsc_peer, window=2)
    await one.start(inbox.receive)
    await smsc_peer.fault("lose", times=2)
    sends = [asyncio.create_task(one.send(Outgoing(address=PARENT, text=text))) for text in "abc"]
    await smsc_peer.sent(PARENT, 2)
    await asyncio.sleep(0.1)
    assert len(await smsc_peer.sent(PARENT, 2)) == 2

    assert [one.ending for one in await asyncio.gather(*sends)] == [Ending.UNKNOWN, Ending.UNKNOWN, Ending.SENT]
    await one.stop()


async def test_an_smsc_out_of_reach_is_waited_out(inbox: Inbox) -> None:
    """Starting goes on; what is sent meanwhile never left."""
    account = Account(host="127.0.0.1", port=free_port(), system_id="clinic", password="right")
    one = SmsChannel(account, number=OWN)
    await one.start(inbox.receive)

    assert (await one.send(Outgoing(address=PARENT, text="hello"))).ending is Ending.LATER
    assert not one.up
    await one.stop()


async def test_a_wrong_password_is_said_at_once(smsc_peer: SmscPeer, inbox: Inbox) -> None:
    """The message names the settings; the password is not in it."""
    one = made(smsc_peer, password="wrong")
    with pytest.raises(ChannelError, match="COACHBOT_SMS_PASSWORD") as refused:
        await one.start(inbox.receive)

    assert "wrong" not in str(refused.value)
    await one.stop()


async def test_a_wrong_password_holds_up_a_process_that_only_sends(smsc_peer: SmscPeer) -> None:
    """Nothing has left, and somebody must set another; each try asks anew."""
    one = made(smsc_peer, password="wrong")
    for _ in range(2):
        receipt = await one.send(Outgoing(address=PARENT, text="hello"))
        assert (receipt.ending, receipt.wait) == (Ending.LATER, timedelta(minutes=1))
    await one.stop()


async def test_a_process_that_only_sends_does_not_hear(channel: SmsChannel, smsc_peer: SmscPeer) -> None:
    """It binds to send, so that what families write goes to the process that keeps it."""
    assert (await channel.send(Outgoing(address=PARENT, text="hello"))).ending is Ending.SENT
    await smsc_peer.write(PARENT, "4")
    await asyncio.sleep(0.1)

    state = await smsc_peer.state()
    assert (state["binds"], state["waiting"]) == (["bind_transmitter"], 1)
    assert not channel.up


async def test_starting_after_sending_binds_anew_and_loses_nothing(
    channel: SmsChannel, smsc_peer: SmscPeer, inbox: Inbox
) -> None:
    """What is in flight ends first."""
    await channel.send(Outgoing(address=PARENT, text="hello"))
    await channel.start(inbox.receive)
    await smsc_peer.write(PARENT, "4")
    await smsc_peer.taken()

    assert [one.text for one in inbox.kept] == ["4"]
    assert channel.up
    await channel.stop()
    assert not channel.up


@pytest.mark.usefixtures("started")
async def test_a_reply_comes_in(smsc_peer: SmscPeer, inbox: Inbox) -> None:
    """With its number in E.164, the channel's clock, and no name, for SMPP gives none."""
    await smsc_peer.write(PARENT, "No pasò: niña [2] €")
    await smsc_peer.taken()

    assert inbox.kept == [Incoming(channel="sms", channel_id=None, address=PARENT, at=NOW, text="No pasò: niña [2] €")]


@pytest.mark.usefixtures("started")
async def test_replies_in_other_codings(smsc_peer: SmscPeer, inbox: Inbox) -> None:
    """Latin-1, UCS-2, a message class, a payload, and what is no text at all."""
    await smsc_peer.write(PARENT, hex="ñé".encode("latin-1").hex(), data_coding=3)
    await smsc_peer.write(PARENT, hex="bajó 🙂".encode("utf-16-be").hex(), data_coding=8)
    await smsc_peer.write(PARENT, hex=b"flash".hex(), data_coding=0x10)
    await smsc_peer.write(PARENT, hex="00ff", data_coding=4)
    await smsc_peer.write(PARENT, message_payload={"message": "x" * 300})
    await smsc_peer.taken()

    assert [one.text for one in inbox.kept] == ["ñé", "bajó 🙂", "flash", "[data]", "x" * 300]


@pytest.mark.usefixtures("started")
async def test_pieces_come_with_their_numbers(smsc_peer: SmscPeer, inbox: Inbox) -> None:
    """By header with 8 and 16 bits, and by optional parameters."""
    await smsc_peer.write(PARENT, "one", udh="050003cc0201")
    await smsc_peer.write(PARENT, "two", udh="06080412340203")
    await smsc_peer.write(PARENT, "two", udh="06080412340202")
    await smsc_peer.write(PARENT, "three", sar_msg_ref_num=7, sar_total_segments=3, sar_segment_seqnum=1)
    await smsc_peer.taken()

    assert [(one.text, one.part) for one in inbox.kept] == [
        ("one", Part(reference=0xCC, total=2, number=1)),
        ("two", None),
        ("two", Part(reference=0x1234, total=2, number=2)),
        ("three", Part(reference=7, total=3, number=1)),
    ]


@pytest.mark.usefixtures("started")
async def test_what_cannot_be_kept_comes_again(smsc_peer: SmscPeer, inbox: Inbox) -> None:
    """It is answered by a temporary fault, and confirmed only once it has been kept."""
    inbox.refusals = 2
    await smsc_peer.write(PARENT, "he is choking")
    await smsc_peer.taken()

    assert [one.text for one in inbox.kept] == ["he is choking"]
    assert (await smsc_peer.state())["answers"] == [0x64, 0x64, 0]


@pytest.mark.parametrize("hexadecimal", [False, True])
async def test_receipts_are_no_replies(
    started: SmsChannel, smsc_peer: SmscPeer, inbox: Inbox, *, hexadecimal: bool
) -> None:
    """They come to be heard by, under the name that the submission was answered with, hexadecimal there or not."""
    await smsc_peer.set(hex=hexadecimal, receipts={"state": "UNDELIV"})
    sent = await started.send(Outgoing(address=PARENT, text="hello"))
    await smsc_peer.sent(PARENT)
    await asyncio.sleep(0.1)
    await smsc_peer.taken()

    [report] = inbox.reports
    assert sent.channel_id in report.names
    assert (report.address, report.ending) == (PARENT, Ending.NEVER)
    assert inbox.kept == []


@pytest.mark.usefixtures("started")
async def test_words_that_look_like_a_receipt_are_a_reply(smsc_peer: SmscPeer, inbox: Inbox) -> None:
    """What it is says esm_class, not its words; and the other way round."""
    await smsc_peer.write(PARENT, "id:12 stat:UNDELIV")
    await smsc_peer.write(PARENT, "4", esm_class=0x08)
    await smsc_peer.write(PARENT, "nothing of use", esm_class=0x04)
    await smsc_peer.taken()

    assert [one.text for one in inbox.kept] == ["id:12 stat:UNDELIV"]
    assert inbox.reports == []


@pytest.mark.usefixtures("started")
async def test_a_receipt_that_comes_too_soon_waits(smsc_peer: SmscPeer, inbox: Inbox) -> None:
    """It is confirmed once somebody knows what it is about, and holds up no words meanwhile."""
    inbox.unknown = 3
    await smsc_peer.receipt("77", "DELIVRD", PARENT)
    await smsc_peer.taken()

    assert [one.ending for one in inbox.reports] == [Ending.SENT]


async def test_octets_that_are_no_pdu_we_know(started: SmsChannel, smsc_peer: SmscPeer) -> None:
    """An unknown command is refused and the line stays; a length that cannot be ends it, and another is made."""
    await smsc_peer.raw(bytes.fromhex("00000010000001ff0000000000000001"))
    await smsc_peer.raw(bytes.fromhex("00000010000001030000000000000001"))
    assert (await started.send(Outgoing(address=PARENT, text="still here"))).ending is Ending.SENT
    await smsc_peer.raw(b"\xff\xff\xff\xff")
    await smsc_peer.bound(2)


async def test_nothing_can_be_sent_to_what_is_no_number(started: SmsChannel) -> None:
    """A firm's name has no phone, and an empty message no segment."""
    assert (await started.send(Outgoing(address="FIRM", text="hello"))).ending is Ending.GONE
    assert (await started.send(Outgoing(address=PARENT, text=""))).ending is Ending.NEVER


@pytest.mark.parametrize("number", ["", "CLINIC", "+"])
def test_a_sender_that_nobody_can_answer_is_refused(number: str) -> None:
    """Families must be able to reply."""
    account = Account(host="localhost", port=1, system_id="a", password="b")
    with pytest.raises(ChannelError, match="COACHBOT_SMS_NUMBER"):
        SmsChannel(account, number=number)


def test_a_password_that_smpp_would_cut_is_refused() -> None:
    """SMPP 3.4, 4.1.5: at most eight signs."""
    with pytest.raises(ChannelError, match="COACHBOT_SMS_PASSWORD is longer than the 8"):
        Account(host="localhost", port=1, system_id="a", password="123456789")

"""The Telegram channel over HTTP, against a Bot API server that others wrote (npm's telegram-test-api)."""

import asyncio
import base64
import json
import logging
from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta

import httpx
import pytest
import uvicorn
from starlette.applications import Starlette

from coachbot.channels.base import ChannelError, Ending, File, Incoming, Outgoing, Receipt
from coachbot.channels.telegram import TelegramChannel, bot, listening
from coachbot.channels.telegram import channel as telegram
from peers.telegram_peer import TelegramPeer

pytestmark = pytest.mark.emulator

PARENT, CHILD = 1001, 1002
NOW = datetime(2026, 3, 1, 20, 0, tzinfo=UTC)
PICTURE = File(name="left.png", media="image/png", data=b"\x89PNG picture")
PAPER = File(name="report.pdf", media="application/pdf", data=b"%PDF paper")


class Inbox:
    """Keeps what comes; can refuse, as a store does that cannot be reached."""

    def __init__(self) -> None:
        self.kept: list[Incoming] = []
        self.refusals = 0
        self._came = asyncio.Event()

    async def receive(self, incoming: Incoming) -> None:
        """Keep a message, unless told to refuse."""
        if self.refusals:
            self.refusals -= 1
            raise ConnectionError("the store is away")
        self.kept.append(incoming)
        self._came.set()

    async def texts(self, count: int) -> list[str]:
        """The first `count` texts or presses, once they have come."""
        async with asyncio.timeout(10):
            while len(self.kept) < count:
                self._came.clear()
                await self._came.wait()
        return [one.text or f"pressed {one.button}" for one in self.kept]


@pytest.fixture(autouse=True)
def _quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pauses and time-outs short enough for tests."""
    monkeypatch.setattr(listening, "PAUSES", (timedelta(milliseconds=20), timedelta(milliseconds=100)))
    monkeypatch.setattr(bot, "ANSWER", 0.5)


@pytest.fixture
def inbox() -> Inbox:
    """Where messages go."""
    return Inbox()


@pytest.fixture
async def channel(telegram_peer: TelegramPeer) -> AsyncIterator[TelegramChannel]:
    """A channel at the test server, not started."""
    made = TelegramChannel(telegram_peer.token, api_url=telegram_peer.url, clock=lambda: NOW)
    yield made
    await made.stop()


@pytest.fixture
async def started(channel: TelegramChannel, inbox: Inbox) -> TelegramChannel:
    """A channel that polls."""
    await channel.start(inbox.receive)
    return channel


def to(chat: int, text: str, *labels: str, file: File | None = None) -> Outgoing:
    """A message with buttons in one row."""
    row = tuple((label, f"5:rate:1:left:{label}") for label in labels)
    return Outgoing(address=str(chat), text=text, buttons=(row,) if row else (), file=file)


async def until_confirmed(peer: TelegramPeer) -> None:
    """Wait until Telegram has been told that everything was taken."""
    async with asyncio.timeout(10):
        while await peer.unconfirmed():  # noqa: ASYNC110 - the other side is another process
            await asyncio.sleep(0.02)


@pytest.mark.usefixtures("started")
async def test_words_arrive_in_order_with_the_deep_links_code(telegram_peer: TelegramPeer, inbox: Inbox) -> None:
    """What people type, each in their own chat."""
    await telegram_peer.write(PARENT, "/start K3JX9QTM")
    await telegram_peer.write(CHILD, "4 3 5 5 2 👍")
    await telegram_peer.write(PARENT, voice={"file_id": "a", "file_unique_id": "a", "duration": 3})

    assert await inbox.texts(3) == ["/start K3JX9QTM", "4 3 5 5 2 👍", "[voice]"]
    assert [one.address for one in inbox.kept] == [str(PARENT), str(CHILD), str(PARENT)]
    assert len({one.channel_id for one in inbox.kept}) == 3
    assert abs(inbox.kept[0].at - datetime.now(UTC)) < timedelta(minutes=1)


@pytest.mark.usefixtures("started")
async def test_an_edit_arrives_as_a_message_of_its_own(telegram_peer: TelegramPeer, inbox: Inbox) -> None:
    """A parent corrects a rating by editing it."""
    await telegram_peer.write(PARENT, "4")
    chat, user = {"id": PARENT, "type": "private"}, {"id": PARENT, "is_bot": False, "first_name": "Test"}
    edited = {"message_id": 1, "chat": chat, "from": user, "date": 1772395170, "edit_date": 1772395200, "text": "3"}
    await telegram_peer.update(edited_message=edited)

    assert await inbox.texts(2) == ["4", "3"]
    assert inbox.kept[1].at == NOW


async def test_a_press_comes_back_with_its_data_and_takes_the_buttons_off(
    telegram_peer: TelegramPeer, started: TelegramChannel, inbox: Inbox
) -> None:
    """The phone shows for a moment what was pressed, and cannot press twice."""
    receipt = await started.send(to(PARENT, "How was left?", "1", "2", "3"))
    (sent,) = await telegram_peer.sent(PARENT)
    under = {"message_id": sent["message_id"], "text": sent["text"], "reply_markup": sent["reply_markup"]}

    await telegram_peer.press(PARENT, "5:rate:1:left:3", under)

    assert receipt == Receipt(ending=Ending.SENT, channel_id=str(sent["message_id"]))
    assert [[one["text"] for one in row] for row in sent["reply_markup"]["inline_keyboard"]] == [["1", "2", "3"]]
    assert await inbox.texts(1) == ["pressed 5:rate:1:left:3"]
    await until_confirmed(telegram_peer)
    assert [call["text"] for call in await telegram_peer.calls("answerCallbackQuery")] == ["3"]
    assert [one["reply_markup"] for one in await telegram_peer.sent(PARENT)] == [None]


@pytest.mark.usefixtures("started")
async def test_a_press_that_cannot_be_answered_is_kept_all_the_same(telegram_peer: TelegramPeer, inbox: Inbox) -> None:
    """Telegram answers only within a while; the press counts anyway, and what follows is heard."""
    await telegram_peer.refuse("answerCallbackQuery", 400, "Bad Request: query is too old")

    await telegram_peer.press(PARENT, "5:next:2")
    await telegram_peer.write(PARENT, "ok")

    assert await inbox.texts(2) == ["pressed 5:next:2", "ok"]


async def test_a_press_answered_with_429_holds_the_sends_back(
    telegram_peer: TelegramPeer, started: TelegramChannel, inbox: Inbox
) -> None:
    """Telegram counts every call."""
    await telegram_peer.refuse("answerCallbackQuery", 429, "Too Many Requests: retry after 5", retry_after=5)

    await telegram_peer.press(PARENT, "5:next:2")
    await inbox.texts(1)
    await until_confirmed(telegram_peer)

    assert started.pace.ask(str(CHILD), NOW) == timedelta(seconds=5)


async def test_an_invitations_link_opens_the_chat_and_sends_the_code(channel: TelegramChannel, inbox: Inbox) -> None:
    """As Telegram's page on deep links has it: t.me, the bot's name, and up to 64 of A-Z a-z 0-9 _ - after ?start=."""
    before = channel.invite_link("K3JX-9QTM")
    await channel.start(inbox.receive)

    assert before is None
    assert channel.invite_link("K3JX-9QTM") == "https://t.me/TestNameBot?start=K3JX-9QTM"
    with pytest.raises(ValueError, match="64"):
        channel.invite_link("a" * 65)


async def test_a_picture_goes_with_its_caption_and_a_paper_with_its_name(
    telegram_peer: TelegramPeer, channel: TelegramChannel
) -> None:
    """As a picture that the phone shows, and as a file that keeps its name."""
    endings = [
        (await channel.send(to(PARENT, "Chin up.", "OK", file=PICTURE))).ending,
        (await channel.send(to(PARENT, "The report.", file=PAPER))).ending,
        (await channel.send(to(PARENT, "a" * 1025, "OK", file=PICTURE))).ending,
    ]
    picture, paper, bare, words = await telegram_peer.sent(PARENT)

    assert endings == [Ending.SENT] * 3
    assert (picture["caption"], picture["file"]["name"]) == ("Chin up.", "left.png")
    assert base64.b64decode(picture["file"]["data"]) == PICTURE.data
    assert picture["reply_markup"]["inline_keyboard"][0][0]["callback_data"] == "5:rate:1:left:OK"
    assert (paper["file"]["name"], paper["file"]["media"]) == ("report.pdf", "application/pdf")
    assert len(await telegram_peer.calls("sendDocument")) == 1
    assert ("caption" in bare, "reply_markup" in bare) == (False, False)
    assert (words["text"], "reply_markup" in words) == ("a" * 1025, True)


async def test_a_long_text_goes_in_pieces(telegram_peer: TelegramPeer, channel: TelegramChannel) -> None:
    """Telegram takes 4096 characters at most (Bot API, sendMessage)."""
    receipt = await channel.send(to(PARENT, "word " * 1000, "OK"))
    pieces = await telegram_peer.sent(PARENT)

    assert receipt.ending is Ending.SENT
    assert [len(one["text"]) <= 4096 for one in pieces] == [True, True]
    assert " ".join(one["text"] for one in pieces).split() == ["word"] * 1000
    assert ["reply_markup" in one for one in pieces] == [False, True]


async def test_too_many_messages_wait_as_long_as_telegram_says(
    telegram_peer: TelegramPeer, channel: TelegramChannel
) -> None:
    """429: this message later, and everyone else's too."""
    await telegram_peer.refuse("sendMessage", 429, "Too Many Requests: retry after 7", retry_after=7)

    receipt = await channel.send(to(PARENT, "Hello"))

    assert receipt == Receipt(ending=Ending.LATER, wait=timedelta(seconds=7))
    assert channel.pace.ask(str(CHILD), NOW) == timedelta(seconds=7)
    assert (await channel.send(to(PARENT, "Hello"))).ending is Ending.SENT


@pytest.mark.parametrize(
    ("code", "description", "ends"),
    [
        (403, "Forbidden: bot was blocked by the user", Ending.GONE),
        (400, "Bad Request: chat not found", Ending.GONE),
        (400, "Bad Request: can't parse entities", Ending.NEVER),
        (401, "Unauthorized", Ending.LATER),
        (502, "Bad Gateway", Ending.UNKNOWN),
    ],
)
async def test_a_refusal_ends_the_send_as_it_means(
    telegram_peer: TelegramPeer, channel: TelegramChannel, code: int, description: str, ends: Ending
) -> None:
    """One try, one ending, nothing raised."""
    await telegram_peer.refuse("sendMessage", code, description)

    assert (await channel.send(to(PARENT, "Hello"))).ending is ends
    assert await telegram_peer.sent(PARENT) == []
    assert len(await telegram_peer.calls("sendMessage")) == 1


async def test_a_cut_line_and_a_silent_server_leave_it_unknown(
    telegram_peer: TelegramPeer, channel: TelegramChannel
) -> None:
    """Whether the message arrived or not: nobody can tell from here, and the channel does not try again."""
    endings = []
    for fault in (telegram_peer.drop, telegram_peer.lose, telegram_peer.hang):
        await fault("sendMessage")
        endings.append((await channel.send(to(PARENT, "Hello"))).ending)

    assert endings == [Ending.UNKNOWN] * 3
    assert len(await telegram_peer.sent(PARENT)) == 1


async def test_a_send_ends_before_the_outbox_lets_another_take_it(
    telegram_peer: TelegramPeer, channel: TelegramChannel, monkeypatch: pytest.MonkeyPatch
) -> None:
    """However long the calls of one message take together."""
    monkeypatch.setattr(telegram, "SEND_LIMIT", timedelta(milliseconds=100))
    await telegram_peer.hang("sendPhoto")

    assert (await channel.send(to(PARENT, "Chin up.", file=PICTURE))).ending is Ending.UNKNOWN


async def test_a_server_that_is_not_there_means_later() -> None:
    """Nothing can have left."""
    channel = TelegramChannel("1:test", api_url="http://127.0.0.1:9")

    assert (await channel.send(to(PARENT, "Hello"))).ending is Ending.LATER
    await channel.stop()


async def test_words_that_have_gone_out_are_not_sent_twice(
    telegram_peer: TelegramPeer, channel: TelegramChannel
) -> None:
    """Stopped between two pieces of text the ending is unknown; between a picture and its words, later."""
    await telegram_peer.refuse("sendMessage", 429, "Too Many Requests", after=1, retry_after=7)
    words = await channel.send(to(PARENT, "word " * 1000))
    await telegram_peer.refuse("sendMessage", 429, "Too Many Requests", retry_after=7)
    pictured = await channel.send(to(PARENT, "a" * 1025, file=PICTURE))

    assert (words.ending, pictured.ending) == (Ending.UNKNOWN, Ending.LATER)
    assert len(await telegram_peer.sent(PARENT)) == 2


async def test_nothing_is_confirmed_before_it_is_kept(
    telegram_peer: TelegramPeer, channel: TelegramChannel, inbox: Inbox
) -> None:
    """While the store is away the same message comes again, and the one after it waits its turn."""
    inbox.refusals = 2
    await telegram_peer.write(PARENT, "first")
    await telegram_peer.write(PARENT, "second")

    await channel.start(inbox.receive)

    assert await inbox.texts(2) == ["first", "second"]
    await until_confirmed(telegram_peer)


async def test_a_message_in_hand_at_a_crash_comes_again_with_the_same_id(telegram_peer: TelegramPeer) -> None:
    """Kept, but not confirmed: the next process gets it once more and can recognise it."""
    seen: list[str | None] = []
    struck = asyncio.Event()

    async def keep_and_die(incoming: Incoming) -> None:
        seen.append(incoming.channel_id)
        struck.set()
        await asyncio.Event().wait()

    crashed = TelegramChannel(telegram_peer.token, api_url=telegram_peer.url)
    await telegram_peer.write(PARENT, "choking")
    await crashed.start(keep_and_die)
    await asyncio.wait_for(struck.wait(), 10)
    await crashed.stop()

    after, inbox = TelegramChannel(telegram_peer.token, api_url=telegram_peer.url), Inbox()
    await after.start(inbox.receive)

    assert await inbox.texts(1) == ["choking"]
    assert [one.channel_id for one in inbox.kept] == seen
    await until_confirmed(telegram_peer)
    await after.stop()


@pytest.mark.usefixtures("started")
async def test_what_is_said_in_a_group_is_confirmed_and_dropped(telegram_peer: TelegramPeer, inbox: Inbox) -> None:
    """It does not come again for ever, nor hold up what follows."""
    group = {"id": -5, "type": "group", "title": "Family"}
    await telegram_peer.update(message={"message_id": 1, "chat": group, "date": 1772395170, "text": "4"})
    await telegram_peer.write(PARENT, "5")

    assert await inbox.texts(1) == ["5"]
    await until_confirmed(telegram_peer)


@pytest.mark.usefixtures("started")
async def test_polling_goes_on_after_faults(telegram_peer: TelegramPeer, inbox: Inbox) -> None:
    """Cut lines, errors of the server and a second poller pass; then messages come again."""
    await telegram_peer.drop("getUpdates", times=2)
    await telegram_peer.refuse("getUpdates", 409, "Conflict: terminated by other getUpdates request")
    await telegram_peer.refuse("getUpdates", 502, "Bad Gateway")

    for text in ("one", "two", "three", "four", "five", "six"):
        await telegram_peer.write(PARENT, text)

    assert await inbox.texts(6) == ["one", "two", "three", "four", "five", "six"]


async def test_it_is_up_while_telegram_answers(
    telegram_peer: TelegramPeer, channel: TelegramChannel, inbox: Inbox
) -> None:
    """Not before it is started, not while the questions for updates fail, not after it was stopped."""
    assert not channel.up
    await telegram_peer.refuse("getUpdates", 502, "Bad Gateway", after=1)
    await channel.start(inbox.receive)
    seen: list[bool] = []
    async with asyncio.timeout(30):
        while seen != [True, False, True]:
            if seen[-1:] != [channel.up] and (seen or channel.up):
                seen.append(channel.up)
                await telegram_peer.write(PARENT, "hello")  # or a question for updates is held for long
            await asyncio.sleep(0.005)
    await channel.stop()
    assert not channel.up


async def test_a_start_while_telegram_is_away_is_made_up_for(
    telegram_peer: TelegramPeer, channel: TelegramChannel, inbox: Inbox
) -> None:
    """The service comes up, and hears as soon as it can."""
    await telegram_peer.drop("getMe")
    await telegram_peer.drop("deleteWebhook", times=2)
    await channel.start(inbox.receive)

    await telegram_peer.write(PARENT, "hello")

    assert await inbox.texts(1) == ["hello"]


async def test_a_refused_token_stops_the_start_and_is_not_repeated(
    telegram_peer: TelegramPeer, channel: TelegramChannel, inbox: Inbox
) -> None:
    """The message says what to set; the token is in neither it nor what lies behind it."""
    await telegram_peer.refuse("getMe", 401, "Unauthorized")

    with pytest.raises(ChannelError, match="set it to the bot's current token") as raised:
        await channel.start(inbox.receive)

    assert telegram_peer.token not in str(raised.value)
    assert raised.value.__suppress_context__


async def test_the_log_holds_no_token_text_or_address(
    telegram_peer: TelegramPeer,
    started: TelegramChannel,
    inbox: Inbox,
    caplog: pytest.LogCaptureFixture,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """Whatever level the rest logs at."""
    caplog.set_level(logging.DEBUG)
    await telegram_peer.refuse("sendMessage", 400, f"Bad Request: {PARENT} left was hard")
    await started.send(to(PARENT, "left was hard"))
    await telegram_peer.write(PARENT, "left was hard")
    await inbox.texts(1)
    await until_confirmed(telegram_peer)

    logged = caplog.text + "".join(capsys.readouterr())
    assert "telegram_send_failed" in logged
    assert not any(secret in logged for secret in (telegram_peer.token, "left was hard", str(PARENT)))


async def test_updates_are_posted_to_the_webhook_in_order_until_taken(
    telegram_peer: TelegramPeer, inbox: Inbox, unused_tcp_port: int
) -> None:
    """A post that could not be kept comes again; the one after it waits."""
    url = f"http://127.0.0.1:{unused_tcp_port}/telegram"
    channel = TelegramChannel(telegram_peer.token, api_url=telegram_peer.url, webhook_url=url, secret="a-Secret_1")
    app = Starlette(routes=channel.routes(inbox.receive))
    server = uvicorn.Server(uvicorn.Config(app, port=unused_tcp_port, log_config=None, ws="none", lifespan="off"))
    serving = asyncio.create_task(server.serve())
    inbox.refusals = 1
    await telegram_peer.write(PARENT, "first")
    await channel.start(inbox.receive)
    await telegram_peer.write(PARENT, "second")

    assert await inbox.texts(2) == ["first", "second"]
    await until_confirmed(telegram_peer)
    (asked,) = await telegram_peer.calls("setWebhook")
    assert asked["max_connections"] == "1"
    assert json.loads(asked["allowed_updates"]) == ["message", "edited_message", "callback_query"]
    await channel.stop()
    server.should_exit = True
    await serving


async def post(inbox: Inbox, body: bytes | AsyncIterator[bytes], headers: dict[str, str]) -> int:
    """Post to a webhook. Returns the status of the answer."""
    channel = TelegramChannel("1:test", webhook_url="https://clinic.example/telegram", secret="a-Secret_1")
    web = httpx.ASGITransport(Starlette(routes=channel.routes(inbox.receive)))
    async with httpx.AsyncClient(transport=web, base_url="https://clinic.example") as client:
        return (await client.post("/telegram", content=body, headers=headers)).status_code


@pytest.mark.parametrize("secret", [None, "", "wrong", "a-Secret_", "a-Secret_1 "])
async def test_a_post_without_the_secret_is_turned_away_unread(inbox: Inbox, secret: str | None) -> None:
    """Anybody can find the address; only Telegram knows the secret."""
    headers = {} if secret is None else {"X-Telegram-Bot-Api-Secret-Token": secret}

    assert await post(inbox, b"{", headers) == 403
    assert inbox.kept == []


async def test_a_post_larger_than_any_update_is_turned_away_before_it_is_all_read(inbox: Inbox) -> None:
    """Whether it says how large it is or not (Bot API: a message has at most 4,096 characters)."""
    read = 0

    async def endless() -> AsyncIterator[bytes]:
        nonlocal read
        while read < 50_000_000:
            read += 100_000
            yield bytes(100_000)

    secret = {"X-Telegram-Bot-Api-Secret-Token": "a-Secret_1"}
    assert await post(inbox, endless(), secret) == 413
    assert await post(inbox, bytes(2_000_000), secret) == 413
    assert read < 2_000_000


@pytest.mark.parametrize("body", [b"{", b"[]", b'{"no": 1}', b"\xff"])
async def test_a_post_that_is_no_update_is_an_error_and_nothing_else(inbox: Inbox, body: bytes) -> None:
    """It does not bring the service down."""
    assert await post(inbox, body, {"X-Telegram-Bot-Api-Secret-Token": "a-Secret_1"}) == 400

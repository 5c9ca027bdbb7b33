"""What the Telegram channel makes of messages, updates and errors, without a server.

Limits are those of the Bot API: text 4096 characters, caption 1024, callback_data 1 to 64 bytes, secret token 1 to 256
of A-Z a-z 0-9 _ - (its pages on sendMessage, sendPhoto, InlineKeyboardButton and setWebhook, as python-telegram-bot
22.8's constants give them).
"""

import logging
from datetime import UTC, datetime, timedelta
from typing import Any

import httpx
import pytest
from hypothesis import given
from hypothesis import strategies as st
from telegram import Update
from telegram.error import (
    BadRequest,
    ChatMigrated,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)

from coachbot.channels.base import ChannelError, Ending, File, Outgoing, left_over
from coachbot.channels.telegram import TelegramChannel
from coachbot.channels.telegram.endings import ending
from coachbot.channels.telegram.parts import UnsendableError, keyboard, parts, split
from coachbot.channels.telegram.updates import incoming, label

NOW = datetime(2026, 3, 1, 20, 0, tzinfo=UTC)
WRITTEN = datetime(2026, 3, 1, 19, 59, 30, tzinfo=UTC)
CHAT = {"id": 7, "type": "private", "first_name": "Test"}
USER = {"id": 7, "is_bot": False, "first_name": "Test", "language_code": "es-419"}
PICTURE = File(name="left.png", media="image/png", data=b"picture")


def update(**fields: Any) -> Update:
    """An update as Telegram sends it."""
    return Update.de_json({"update_id": 901, **fields}, None)


def message(**fields: Any) -> dict[str, Any]:
    """A Message as Telegram sends it."""
    return {"message_id": 11, "date": int(WRITTEN.timestamp()), "chat": CHAT, "from": USER, **fields}


def caused(error: TelegramError, cause: Exception) -> TelegramError:
    """An error as the library raises it after a broken connection."""
    error.__cause__ = cause
    return error


@pytest.mark.parametrize(("typed", "chat"), [(" 4711 ", "4711"), ("@clinic", None), ("", None), ("٤٧", None)])
def test_only_the_number_of_a_chat_is_an_address(typed: str, chat: str | None) -> None:
    """A bot may write to a person only by chat_id (Bot API, sendMessage: names are for channels)."""
    assert TelegramChannel("123:abc").canonical(typed) == chat


def test_a_text_is_taken_with_telegrams_date_and_the_writers_language() -> None:
    """An Incoming without the chat's number in its id, since the number is an address."""
    came = incoming(update(message=message(text="/start K3JX-9QTM")), NOW)

    assert came is not None
    assert (came.channel, came.address, came.text, came.button) == ("telegram", "7", "/start K3JX-9QTM", None)
    assert came.at == WRITTEN
    assert came.language == "es-419"
    assert came.channel_id == "901-20260301195930"


def test_an_edited_message_is_a_new_one_with_the_date_of_the_edit() -> None:
    """A correction by editing counts as one written then."""
    edited = WRITTEN + timedelta(minutes=2)

    came = incoming(update(edited_message=message(text="left was 3", edit_date=int(edited.timestamp()))), NOW)

    assert came is not None
    assert (came.text, came.at) == ("left was 3", edited)


@pytest.mark.parametrize(
    ("fields", "text"),
    [
        ({"photo": [{"file_id": "a", "file_unique_id": "a", "width": 1, "height": 1}]}, "[photo]"),
        ({"photo": [{"file_id": "a", "file_unique_id": "a", "width": 1, "height": 1}], "caption": "up 5"}, "up 5"),
        ({"voice": {"file_id": "a", "file_unique_id": "a", "duration": 3}}, "[voice]"),
        (
            {
                "sticker": {
                    "file_id": "a",
                    "file_unique_id": "a",
                    "width": 1,
                    "height": 1,
                    "is_animated": False,
                    "is_video": False,
                    "type": "regular",
                }
            },
            "[sticker]",
        ),
        ({"location": {"longitude": 1.0, "latitude": 1.0}}, "[location]"),
        ({"something_new": {"a": 1}}, "[message]"),
    ],
)
def test_what_is_not_text_is_named_by_its_kind_unless_it_has_a_caption(fields: dict[str, Any], text: str) -> None:
    """Nothing that a family sends is lost, and nothing is passed on empty."""
    came = incoming(update(message=message(**fields)), NOW)

    assert came is not None
    assert came.text == text


def test_a_press_is_taken_with_our_clock_since_telegram_gives_no_date() -> None:
    """The data come back as they were given, with the query's own id."""
    query = {"id": "44", "from": USER, "chat_instance": "1", "data": "1:rate:3:left:4", "message": message(text="?")}

    came = incoming(update(callback_query=query), NOW)

    assert came is not None
    assert (came.button, came.text, came.at) == ("1:rate:3:left:4", None, NOW)
    assert (came.address, came.channel_id) == ("7", "press-44")


@pytest.mark.parametrize("kind", ["message", "callback_query"])
def test_what_happens_in_a_group_is_none_of_ours(kind: str) -> None:
    """Other people may read along there."""
    said = message(text="4", chat={"id": -5, "type": "group", "title": "Family"})
    query = {"id": "44", "from": USER, "chat_instance": "1", "data": "1:next:2", "message": said}

    assert incoming(update(**{kind: said if kind == "message" else query}), NOW) is None


@pytest.mark.parametrize("alphabet", [" \nabc", "👍é", "🧒🏽‍🦱 "])
@given(st.data())
def test_a_long_text_is_split_within_the_limit_and_loses_only_white_space(alphabet: str, data: st.DataObject) -> None:
    """Pieces are never empty, fit even if a character outside the first plane counts twice, and say the same."""
    text = data.draw(st.text(alphabet, max_size=120))

    pieces = list(split(text, 20))

    assert all(0 < len(piece.encode("utf-16-le")) // 2 <= 20 for piece in pieces)
    assert "".join("".join(pieces).split()) == "".join(text.split())


def test_a_text_is_split_at_paragraphs_first() -> None:
    """A reader gets whole thoughts."""
    text = "Open wide.\n\nTake a little sip now.\nThen swallow."

    assert list(split(text, 40)) == ["Open wide.", "Take a little sip now.\nThen swallow."]
    assert [len(piece) for piece in split("a" * 4097, 4096)] == [4096, 1]


@pytest.mark.parametrize(("length", "calls"), [(0, 1), (1024, 1), (1025, 2), (5121, 3)])
def test_a_picture_has_its_words_as_caption_if_they_fit(length: int, calls: int) -> None:
    """Longer words follow the picture, and the buttons are under whatever comes last."""
    made = parts(Outgoing(address="7", text="a" * length, file=PICTURE, buttons=((("OK", "1:next:2"),),)))

    assert len(made) == calls
    assert made[0].file == PICTURE
    assert "".join(part.text for part in made) == "a" * length
    assert [part.keyboard is not None for part in made] == [False] * (calls - 1) + [True]


def test_a_buttons_data_may_be_64_bytes_and_no_more() -> None:
    """Counted in bytes, not in characters: é takes two."""
    assert keyboard(((("a", "é" * 32),),)) is not None
    with pytest.raises(UnsendableError, match="64 bytes"):
        keyboard(((("a", "é" * 32 + "a"),),))


@pytest.mark.parametrize(
    "unsendable", [Outgoing(address="7", text=" "), Outgoing(address="7", text="a", buttons=((("a", "b" * 65),),))]
)
async def test_a_message_that_telegram_cannot_take_is_not_even_tried(unsendable: Outgoing) -> None:
    """It would fail for ever."""
    receipt = await TelegramChannel("1:test", api_url="http://127.0.0.1:9").send(unsendable)

    assert receipt.ending is Ending.NEVER


@pytest.mark.parametrize(
    ("error", "ends", "wait"),
    [
        (RetryAfter(timedelta(seconds=7)), Ending.LATER, timedelta(seconds=7)),
        (Forbidden("Forbidden: bot was blocked by the user"), Ending.GONE, None),
        (Forbidden("Forbidden: user is deactivated"), Ending.GONE, None),
        (ChatMigrated(8), Ending.GONE, None),
        (BadRequest("Bad Request: chat not found"), Ending.GONE, None),
        (BadRequest("Bad Request: message text is empty"), Ending.NEVER, None),
        (InvalidToken("Unauthorized"), Ending.LATER, timedelta(minutes=1)),
        (caused(TimedOut(), httpx.ConnectTimeout("")), Ending.LATER, None),
        (caused(TimedOut(), httpx.PoolTimeout("")), Ending.LATER, None),
        (caused(NetworkError("no route"), httpx.ConnectError("")), Ending.LATER, None),
        (caused(TimedOut(), httpx.ReadTimeout("")), Ending.UNKNOWN, None),
        (caused(TimedOut(), httpx.WriteTimeout("")), Ending.UNKNOWN, None),
        (caused(NetworkError("cut"), httpx.ReadError("")), Ending.UNKNOWN, None),
        (caused(NetworkError("cut"), httpx.RemoteProtocolError("")), Ending.UNKNOWN, None),
        (NetworkError("Bad Gateway"), Ending.UNKNOWN, None),
        (TelegramError("Invalid server response"), Ending.UNKNOWN, None),
    ],
)
def test_each_error_ends_a_send_in_its_own_way(error: TelegramError, ends: Ending, wait: timedelta | None) -> None:
    """What surely never left is tried later; what may have arrived is unknown (law 7)."""
    receipt = ending(error)

    assert (receipt.ending, receipt.wait) == (ends, wait)


def test_a_press_takes_off_the_buttons_of_its_own_question() -> None:
    """A rating's other numbers go; a clinician can still lift the hold after acknowledging."""
    rating = ((("1", "9:rate:3:left:1"), ("2", "9:rate:3:left:2")), (("Skip", "9:rate:3:left:skipped"),))
    alert = ((("Acknowledge", "9:acknowledge:1"),), (("Lift", "9:lift:1"),), (("End", "9:end:1"),))

    assert left_over(rating, "9:rate:3:left:2") == ()
    assert left_over(alert, "9:acknowledge:1") == alert[1:]
    assert label(rating, "9:rate:3:left:skipped") == "Skip"
    assert label(rating, "9:rate:4:left:1") is None


@pytest.mark.parametrize(
    ("settings", "said"),
    [
        ({"webhook_url": "https://clinic.example/hook", "secret": ""}, "WEBHOOK_SECRET must be 1 to 256"),
        ({"webhook_url": "https://clinic.example/hook", "secret": "a" * 257}, "WEBHOOK_SECRET must be 1 to 256"),
        ({"webhook_url": "https://clinic.example/hook", "secret": "no spaces"}, "WEBHOOK_SECRET must be 1 to 256"),
        ({"webhook_url": "https://clinic.example/", "secret": "a"}, "a path of its own"),
        ({"webhook_url": "clinic.example/hook", "secret": "a"}, "must be a web address"),
    ],
)
def test_settings_that_telegram_would_refuse_are_refused_before_the_start(settings: dict[str, str], said: str) -> None:
    """The message names the setting."""
    with pytest.raises(ChannelError, match=said):
        TelegramChannel("1:test", **settings)  # type: ignore[arg-type]


def test_an_empty_token_is_refused() -> None:
    """Before the library says so in its own words."""
    with pytest.raises(ChannelError, match="COACHBOT_TELEGRAM_TOKEN is empty"):
        TelegramChannel(" ")


def test_the_libraries_may_not_log_what_they_carry() -> None:
    """At INFO httpx logs addresses with the token in them; the bot's library logs what people wrote."""
    TelegramChannel("1:test")

    assert not logging.getLogger("httpx").isEnabledFor(logging.INFO)
    assert not logging.getLogger("httpcore.connection").isEnabledFor(logging.DEBUG)
    assert not logging.getLogger("telegram.Bot").isEnabledFor(logging.CRITICAL)

"""A family and its clinician over Telegram, with the real process."""

import json
import re

import pytest

from acceptance.conftest import CHILD, CLINICIAN, PARENT, Clinic, until
from coachbot.coach.case import Role, State

pytestmark = pytest.mark.emulator


def data(message: dict[str, object], deed: str) -> str:
    """The data of the button under a message that does this."""
    markup = message["reply_markup"]
    rows = json.loads(markup)["inline_keyboard"] if isinstance(markup, str) else markup["inline_keyboard"]  # type: ignore[index]
    found: list[str] = [button["callback_data"] for row in rows for button in row]
    return next(one for one in found if f":{deed}" in one)


async def test_from_the_invitation_to_a_lifted_hold(clinic: Clinic) -> None:
    """Code, consent, lesson at bedtime, an alarm, the clinician's buttons and note; nothing secret in the log."""
    async with clinic.serving():
        await until(clinic.started, "it did not start")
        done = clinic.enrol()
        codes = dict(done.codes)
        await clinic.peer.write(PARENT, f"/start {codes[Role.PARENT]}")
        asked = await clinic.hears(PARENT, "Do you agree?")
        await clinic.peer.write(CHILD, codes[Role.CHILD])
        await clinic.hears(CHILD, "grown-up")
        await clinic.peer.press(PARENT, data(asked, "consent:agree"))
        await clinic.hears(PARENT, "with a lesson")
        lesson = await clinic.hears(PARENT, "a throat is soft and wide")
        await clinic.peer.press(PARENT, data(lesson, "next:0"))
        await clinic.hears(PARENT, "sits up tall")
        await clinic.peer.write(CHILD, "i cant breathe")
        await clinic.hears(CHILD, "911")
        await clinic.hears(PARENT, "Call 911 now")
        alert = await clinic.hears(CLINICIAN, "EMERGENCY")
        await clinic.peer.press(CLINICIAN, data(alert, "lift"))
        await clinic.hears(CLINICIAN, "why practice is safe")
        await clinic.peer.write(CLINICIAN, "Spoke with the mother, child is well.")
        await clinic.hears(PARENT, "can go on")

    assert clinic.case(done.case.id).state is State.LESSON
    log = clinic.log()
    secrets = (
        clinic.peer.token,
        clinic.environment["COACHBOT_KEY"],
        "Noor",
        "breathe",
        str(CLINICIAN),
        codes[Role.PARENT],
    )
    assert not [secret for secret in secrets if re.search(rf"(?<![\w.:]){re.escape(secret)}(?![\w.])", log)]
    assert all(json.loads(line)["action"] for line in log.splitlines())


async def test_a_blocked_bot_is_told_to_the_clinician(clinic: Clinic) -> None:
    """The family cannot be reached: an alert says so."""
    done = clinic.enrol()
    async with clinic.serving():
        await clinic.peer.write(PARENT, dict(done.codes)[Role.PARENT])
        asked = await clinic.hears(PARENT, "Do you agree?")
        await clinic.peer.refuse("sendMessage", 403, "Forbidden: bot was blocked by the user")
        await clinic.peer.press(PARENT, data(asked, "consent:agree"))
        await clinic.hears(CLINICIAN, "reach")

    assert not clinic.case(done.case.id).parents[0].reachable


async def test_a_token_that_telegram_refuses_is_one_clear_line(clinic: Clinic) -> None:
    """No traceback, no token in it."""
    await clinic.peer.refuse("getMe", 401, "Unauthorized")
    with pytest.raises(AssertionError, match="COACHBOT_TELEGRAM_TOKEN") as error:
        async with clinic.serving() as process:
            await until(lambda: _ended(process), "it did not stop")

    assert "Traceback" not in str(error.value)
    assert clinic.peer.token not in str(error.value)


async def _ended(process: object) -> bool:
    return process.poll() is not None  # type: ignore[attr-defined]

"""`coachbot serve` that kills itself at one step: the number given counts commits and sends, before and after.

Run as a program by `test_kill.py`; with 0 it lives. Leases are short, so that what a dead sender left comes back soon.
"""

import os
import signal
import sys
from collections.abc import Awaitable, Callable
from datetime import timedelta
from typing import Any

from coachbot.channels.telegram import TelegramChannel
from coachbot.cli import main
from coachbot.service import sending
from coachbot.store import Store

STEP = int(sys.argv[1])
steps = 0


def step() -> None:
    """Die if this is the step."""
    global steps  # noqa: PLW0603 - one process, one count
    steps += 1
    if steps == STEP:
        os.kill(os.getpid(), signal.SIGKILL)


def around(method: Callable[..., Awaitable[Any]]) -> Callable[..., Awaitable[Any]]:
    """The same method with a step before and after it."""

    async def stepped(*arguments: Any, **named: Any) -> Any:
        step()
        found = await method(*arguments, **named)
        step()
        return found

    return stepped


Store.transact = around(Store.transact)  # type: ignore[assignment,method-assign]
TelegramChannel.send = around(TelegramChannel.send)  # type: ignore[assignment,method-assign]
sending.LEASE = timedelta(seconds=1)
sys.exit(main(["serve", "--only", "channels", "--only", "heartbeat", "--only", "outbox"]))

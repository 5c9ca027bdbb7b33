"""`coachbot serve` for tests of faults: forked, so that each process is there at once, and real in all else.

Run as a program it loads everything, says "ready", and forks a process for each line of JSON on its input: the
environment, where to log, the parts to serve, and the step (commits and sends, before and after) at which the process
kills itself; 0 for none. It answers with the process's number.

`CLOCK` names a file with the seconds by which the clock is ahead; `TROUBLE` one that says what ails the database while
it is there: "full" or "read-only", as SQLite itself brings them about.
"""

import json
import os
import signal
import sys
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, event

from coachbot import bootstrap, cli, serving
from coachbot.channels.telegram import TelegramChannel
from coachbot.settings import PREFIX
from coachbot.store import Store
from coachbot.store import store as store_module

__all__ = ["serving"]

CLOCK, TROUBLE = "FAULTS_CLOCK", "FAULTS_TROUBLE"
NO_LIMIT = 1_073_741_823
"""Pages: SQLite's own default for `max_page_count`."""


class Steps:
    """Counts the steps, and dies at one of them."""

    def __init__(self, last: int) -> None:
        self.left = last

    def step(self) -> None:
        """Die if this is the one."""
        self.left -= 1
        if self.left == 0:
            os.kill(os.getpid(), signal.SIGKILL)

    def around(self, method: Callable[..., Awaitable[Any]]) -> Callable[..., Awaitable[Any]]:
        """The same method with a step before and after it."""

        async def stepped(*arguments: Any, **named: Any) -> Any:
            self.step()
            found = await method(*arguments, **named)
            self.step()
            return found

        return stepped


def ahead() -> timedelta:
    """By how much the clock is ahead."""
    return timedelta(seconds=float(Path(os.environ[CLOCK]).read_text(encoding="ascii") or 0))


def clock() -> datetime:
    """The present instant by a clock that tests move."""
    return datetime.now(UTC) + ahead()


def trouble(connection: Any) -> None:
    """Bring about what the file says. Both are switches of SQLite's own; the errors that come of them are real."""
    if connection.dialect.name != "sqlite":
        return
    path = Path(os.environ[TROUBLE])
    ails = path.read_text(encoding="ascii").strip() if path.exists() else ""
    writes = connection.exec_driver_sql("PRAGMA query_only").scalar() == 0 or connection.info.pop("ailing", False)
    if writes and ails == "read-only":
        connection.info["ailing"] = True
    connection.exec_driver_sql(f"PRAGMA max_page_count = {1 if ails == 'full' else NO_LIMIT}")
    if writes:
        connection.exec_driver_sql(f"PRAGMA query_only = {int(ails == 'read-only')}")


def serve(order: dict[str, Any]) -> None:
    """Be `coachbot serve`."""
    for name in [name for name in os.environ if name.startswith(PREFIX)]:
        del os.environ[name]
    os.environ.update(order["environment"])
    log = os.open(order["log"], os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)
    os.dup2(log, 2)
    os.dup2(log, 1)
    os.dup2(os.open(os.devnull, os.O_RDONLY), 0)
    if order["step"]:
        steps = Steps(order["step"])
        Store.transact = steps.around(Store.transact)  # type: ignore[assignment,method-assign]
        TelegramChannel.send = steps.around(TelegramChannel.send)  # type: ignore[assignment,method-assign]
    store_module.LATELY = 3.0
    assert bootstrap.build.__kwdefaults__
    bootstrap.build.__kwdefaults__["clock"] = clock
    event.listen(Engine, "begin", trouble, insert=True)
    os._exit(cli.main(["serve", *(word for part in order["only"] for word in ("--only", part))]))


def main() -> None:
    """Fork a process for each order."""
    bootstrap.warm_up()
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)
    print("ready", flush=True)
    for line in sys.stdin:
        order = json.loads(line)
        pid = os.fork()
        if pid == 0:
            signal.signal(signal.SIGCHLD, signal.SIG_DFL)
            serve(order)
        print(pid, flush=True)


if __name__ == "__main__":
    main()

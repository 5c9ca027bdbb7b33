"""The whole program as a process: asked how it fares, then told to stop as a supervisor would."""

import asyncio
import signal
import socket
import time

import httpx
import pytest

from acceptance.conftest import PARENT, Clinic, until
from coachbot.coach.case import Role
from coachbot.serving import GRACE
from coachbot.store import Transaction
from helpers.served import free_port

pytestmark = pytest.mark.emulator

WHOLE = ("-m", "coachbot", "serve")


async def test_it_says_how_it_fares_and_stops_at_once_when_told(clinic: Clinic) -> None:
    """A browser that holds its line open does not hold it up; the log's last word is `stopped`."""
    port = free_port()
    clinic.enrol()
    served = Clinic({**clinic.environment, "COACHBOT_DESK_PORT": str(port)}, clinic.peer, clinic.folder)
    async with httpx.AsyncClient(base_url=f"http://127.0.0.1:{port}") as desk, served.serving(*WHOLE) as process:

        async def ready() -> bool:
            try:
                return (await desk.get("/ready")).status_code == 200
            except httpx.TransportError:
                return False

        await until(ready, "it was never ready")
        assert (await desk.get("/live")).text == "live"
        assert "coachbot_heartbeat_age_seconds" in (await desk.get("/metrics")).text
        assert "telegram" in (await desk.get("/status")).text
        begun = time.monotonic()
        process.send_signal(signal.SIGTERM)
        code = await asyncio.to_thread(process.wait, 30)
        took = time.monotonic() - begun

    assert code == 0
    assert took < GRACE, "nothing was in flight"
    assert '"action": "stopped"' in served.log().splitlines()[-1]


async def test_what_is_in_flight_is_ended_and_settled(clinic: Clinic) -> None:
    """A send that Telegram does not answer ends as unknown within the grace; nothing stays claimed; the exit is 0."""
    done = clinic.enrol()
    await clinic.peer.hang("sendMessage", times=9)
    async with clinic.serving() as process:
        await until(clinic.started, "it did not start")
        await clinic.peer.write(PARENT, dict(done.codes)[Role.PARENT])

        async def in_flight() -> bool:
            return "claimed" in states(clinic)

        await until(in_flight, "nothing was sent")
        begun = time.monotonic()
        process.send_signal(signal.SIGTERM)
        code = await asyncio.to_thread(process.wait, 60)
        took = time.monotonic() - begun

    assert code == 0
    assert took < 2 * GRACE
    assert set(states(clinic)) <= {"unknown", "waiting"}


def states(clinic: Clinic) -> list[str]:
    """Where all outgoing messages are."""

    def work(tx: Transaction) -> list[str]:
        return [str(one.status) for case in tx.cases.all() for one in tx.outbox.of_case(case.id)]

    found: list[str] = clinic.run(work)
    return found


async def test_a_port_that_is_taken_is_one_clear_line(clinic: Clinic) -> None:
    """Not a library's warning."""
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = str(taken.getsockname()[1])
        served = Clinic({**clinic.environment, "COACHBOT_DESK_PORT": port}, clinic.peer, clinic.folder)
        with pytest.raises(AssertionError, match="change COACHBOT_DESK_HOST or COACHBOT_DESK_PORT") as error:
            async with served.serving(*WHOLE) as process:
                await asyncio.to_thread(process.wait, 30)

    assert "Traceback" not in str(error.value)

"""Fixtures for an SMSC that others wrote: npm's `smpp`, run by `smsc_server.js`."""

import asyncio
import itertools
import shutil
import socket
import subprocess
from collections.abc import AsyncIterator, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import httpx
import pytest

HERE = Path(__file__).parent
OWN = "+15550100"

Json = dict[str, Any]

_names = (f"clinic{number}" for number in itertools.count(1))


@dataclass(frozen=True, slots=True)
class SmscPeer:
    """One account at the SMSC, seen from the networks' side."""

    port: int
    control: str
    account: str
    client: httpx.AsyncClient

    async def write(self, sender: str, text: str = "", **more: Any) -> None:
        """Somebody writes to the clinic's number; `more` are further fields of the deliver_sm, or `udh` and `hex`."""
        await self._post("deliver", source_addr=sender.removeprefix("+"), destination_addr=OWN[1:], text=text, **more)

    async def state(self) -> Json:
        """What was submitted, what still waits to be taken, what was answered to what came in, who is bound."""
        return dict(await self._post("state"))

    async def sent(self, to: str, count: int = 1, seconds: float = 10) -> list[Json]:
        """What was submitted to a number, once it is at least `count` segments."""
        async with asyncio.timeout(seconds):
            while len(found := await self._sent(to)) < count:  # noqa: ASYNC110 - another process cannot wake us
                await asyncio.sleep(0.02)
        return found

    async def set(self, **wanted: Any) -> None:
        """`receipts`: of which state, how many `times`, whether `first`; `hex` names; `deaf` to enquiries."""
        await self._post("set", **wanted)

    async def fault(self, kind: str, **more: Any) -> None:
        """Answer submissions with a `status`, `drop` the connection before, or `lose` the answer."""
        await self._post("fault", kind=kind, **more)

    async def receipt(self, name: str, state: str, number: str) -> None:
        """Report on a message that was taken."""
        await self._post("receipt", id=name, state=state, **{"from": number.removeprefix("+"), "to": OWN[1:]})

    async def cut(self) -> None:
        """Cut all connections."""
        await self._post("cut")

    async def raw(self, pdu: bytes) -> None:
        """Send any octets."""
        await self._post("raw", hex=pdu.hex())

    async def bound(self, times: int = 1, seconds: float = 30) -> None:
        """Wait until the other side has bound so many times in all."""
        async with asyncio.timeout(seconds):
            while len((await self.state())["binds"]) < times:  # noqa: ASYNC110 - another process cannot wake us
                await asyncio.sleep(0.02)

    async def taken(self, seconds: float = 10) -> None:
        """Wait until all that came in was taken."""
        async with asyncio.timeout(seconds):
            while (await self.state())["waiting"]:  # noqa: ASYNC110 - another process cannot wake us
                await asyncio.sleep(0.02)

    async def _sent(self, to: str) -> list[Json]:
        return [one for one in (await self.state())["submitted"] if one["to"] == to.removeprefix("+")]

    async def _post(self, deed: str, **wanted: Any) -> Any:
        answer = await self.client.post(f"{self.control}/{deed}", json={"account": self.account, **wanted})
        return answer.raise_for_status().json()


def free_port() -> int:
    """A port on which nothing listens."""
    with socket.create_server(("127.0.0.1", 0)) as free:
        return int(free.getsockname()[1])


@pytest.fixture(scope="session")
def smsc_server() -> Iterator[tuple[int, str]]:
    """The port of a running SMSC, and the address to control it by."""
    node = shutil.which("node")
    if node is None or not (HERE / "node_modules" / "smpp").exists():
        pytest.skip("no Node, or its peers are not installed: run deploy/test once")
    port, control = free_port(), free_port()
    command = [node, str(HERE / "smsc_server.js"), str(port), str(control)]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as server:
        assert server.stdout
        assert server.stdout.readline() == "ready\n"
        yield port, f"http://127.0.0.1:{control}"
        server.terminate()


@pytest.fixture
async def smsc_peer(smsc_server: tuple[int, str]) -> AsyncIterator[SmscPeer]:
    """An account of its own at the SMSC for each test."""
    async with httpx.AsyncClient(verify=False) as client:  # plain HTTP: no authorities to read
        yield SmscPeer(*smsc_server, next(_names), client)

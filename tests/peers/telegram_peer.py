"""Fixtures for a Bot API server that others wrote: npm's `telegram-test-api`, run by `telegram_server.js`."""

import itertools
import shutil
import socket
import subprocess
from collections.abc import AsyncIterator, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import httpx
import pytest

HERE = Path(__file__).parent

Json = dict[str, Any]

_tokens = (f"{number}:test" for number in itertools.count(1))


@dataclass(frozen=True, slots=True)
class TelegramPeer:
    """One bot at the server, seen from Telegram's and its users' side."""

    url: str
    token: str
    client: httpx.AsyncClient

    async def write(self, chat: int, text: str | None = None, **more: Any) -> None:
        """A user writes in a chat of their own with the bot; `more` are further fields of the Message."""
        said = {} if text is None else {"text": text}
        message = {"botToken": self.token, **_from(chat), "date": int(datetime.now(UTC).timestamp()), **said, **more}
        await self._post("/sendMessage", message)

    async def press(self, chat: int, data: str, message: Json | None = None) -> None:
        """A user presses a button under a message that the bot sent."""
        under = {**_from(chat), "message_id": 1, "date": 1, **(message or {})}
        await self._post("/sendCallback", {"botToken": self.token, **_from(chat), "message": under, "data": data})

    async def update(self, **raw: Any) -> None:
        """Anything else: the fields of an Update but its number."""
        await self._post("/control/update", {"token": self.token, "raw": raw})

    async def sent(self, chat: int) -> list[Json]:
        """What the bot sent to a chat, as it stands there now."""
        return [one for one in await self.all_sent() if str(one["chat_id"]) == str(chat)]

    async def all_sent(self) -> list[Json]:
        """What the bot sent to any chat."""
        return list(await self._post("/control/sent", {"token": self.token}))

    async def calls(self, method: str) -> list[Json]:
        """The parameters of every call of a method, whatever came of it; those of a call with a file are left out."""
        found = await self._post("/control/calls", {"token": self.token})
        return [one["body"] for one in found if one["method"] == method]

    async def unconfirmed(self) -> list[Json]:
        """The updates that the bot has not confirmed."""
        return list(await self._post("/control/unconfirmed", {"token": self.token}))

    async def refuse(self, method: str, code: int, description: str, *, after: int = 0, **parameters: Any) -> None:
        """Answer one call of a method with an error, once `after` others have passed."""
        answer = {"code": code, "description": description, "parameters": parameters or None}
        await self._fault(method, "answer", 1, after=after, **answer)

    async def drop(self, method: str, times: int = 1) -> None:
        """Cut the connection on the next calls, without doing what they ask."""
        await self._fault(method, "drop", times)

    async def lose(self, method: str, times: int = 1) -> None:
        """Do what the next calls ask, then cut the connection instead of answering."""
        await self._fault(method, "lost", times)

    async def hang(self, method: str, times: int = 1) -> None:
        """Never answer the next calls."""
        await self._fault(method, "hang", times)

    async def _fault(self, method: str, kind: str, times: int, **more: Any) -> None:
        fault = {"token": self.token, "method": method, "kind": kind, "times": times, **more}
        await self._post("/control/fault", fault)

    async def _post(self, path: str, body: Json) -> Any:
        answer = await self.client.post(f"{self.url}{path}", json=body)
        return answer.raise_for_status().json()["result"]


def _from(chat: int) -> Json:
    """The sender and the private chat, which have one number at Telegram."""
    user = {"id": chat, "is_bot": False, "first_name": "Test", "language_code": "en"}
    return {"from": user, "chat": {"id": chat, "type": "private", "first_name": "Test"}}


@contextmanager
def running_server() -> Iterator[str]:
    """The address of a Bot API server that runs until the block ends; skips the test where there is none to run."""
    node = shutil.which("node")
    if node is None or not (HERE / "node_modules" / "telegram-test-api").exists():
        pytest.skip("no Node, or its peers are not installed: run deploy/test once")
    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    command = [node, str(HERE / "telegram_server.js"), str(port)]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as server:
        assert server.stdout
        assert server.stdout.readline() == "ready\n"
        yield f"http://127.0.0.1:{port}"
        server.terminate()


@pytest.fixture(scope="session")
def telegram_server() -> Iterator[str]:
    """The address of a running Bot API server."""
    with running_server() as server:
        yield server


@pytest.fixture
async def telegram_peer(telegram_server: str) -> AsyncIterator[TelegramPeer]:
    """A bot of its own at the server for each test."""
    async with httpx.AsyncClient(verify=False) as client:  # plain HTTP: no authorities to read
        yield TelegramPeer(telegram_server, next(_tokens), client)

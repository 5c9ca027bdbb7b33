"""How soon it starts with so many families: `python tests/bench/bench_start.py --help`.

Measured is `coachbot serve` as a process of its own, from its command to the desk's `/ready` saying yes: imports,
triage's rules, all texts, the database's check, the first heartbeat. Baselines, each a process of its own too: one
APScheduler job per family, added to a scheduler in memory that is then started; and python-telegram-bot's
PicklePersistence with as many users, loaded and then flushed once. Promise: under 2 s, with no work per family.
"""

import asyncio
import json
import os
import socket
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime, timedelta
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from time import perf_counter
from urllib.error import URLError
from urllib.request import urlopen

from apscheduler.schedulers.asyncio import AsyncIOScheduler
from telegram.ext import PicklePersistence

from bench.bench_inbox import pickled
from bench.bench_wave import seeded
from bench.clinics import CLINICIAN
from bench.figures import Figure, alone, apart, cpu_seconds, measured, parser, peak_megabytes
from coachbot.store import Store, new_key
from coachbot.store.tables import cases

TRIES = 3
PATIENCE = 60.0


class Telegram(BaseHTTPRequestHandler):
    """As much of a Bot API as a start needs: it knows the bot, and nobody has written."""

    def do_POST(self) -> None:
        """Answer a call; one for updates after a while."""
        self.rfile.read(int(self.headers.get("Content-Length", 0)))
        call = self.path.rpartition("/")[2]
        if call == "getUpdates":
            time.sleep(0.2)
        found: object = {"getMe": {"id": 1, "is_bot": True, "first_name": "bench"}, "getUpdates": []}.get(call, True)
        body = json.dumps({"ok": True, "result": found}).encode()
        with suppress(ConnectionError):  # the bot has been stopped meanwhile
            self.send_response(200)
            self.send_header("Content-Type", "application/json")
            self.send_header("Content-Length", str(len(body)))
            self.end_headers()
            self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        """Say nothing."""


@contextmanager
def telegram() -> Iterator[str]:
    """The URL of such a Bot API."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), Telegram)
    Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()


def served(url: str, key: str) -> tuple[float, float, float]:
    """The best of some starts: seconds from the command to readiness, those of the processor, and megabytes then."""
    with tempfile.TemporaryDirectory() as folder, telegram() as api:
        return min(_start(url, key, folder, api) for _ in range(TRIES))


def _start(url: str, key: str, folder: str, api: str) -> tuple[float, float, float]:
    port = free_port()
    settings = {
        "COACHBOT_DATA": folder,
        "COACHBOT_DATABASE_URL": url,
        "COACHBOT_KEY": key,
        "COACHBOT_TELEGRAM_TOKEN": "1:bench",
        "COACHBOT_TELEGRAM_API_URL": api,
        "COACHBOT_DESK_PORT": port,
    }
    command = [sys.executable, "-m", "coachbot", "serve"]
    begin = perf_counter()
    with (
        (Path(folder) / "log").open("ab") as log,
        subprocess.Popen(command, env=os.environ | settings, stderr=log) as run,
    ):
        try:
            while not _ready(port):
                assert run.poll() is None, (Path(folder) / "log").read_text(encoding="utf-8")[-2000:]
                assert perf_counter() - begin < PATIENCE, "it never was ready"
                time.sleep(0.01)
            return perf_counter() - begin, cpu_seconds(run.pid), peak_megabytes(run.pid)
        finally:
            run.terminate()


def _ready(port: str) -> bool:
    try:
        with urlopen(f"http://127.0.0.1:{port}/ready", timeout=5) as answer:
            return bool(answer.status == 200)
    except (URLError, OSError):
        return False


def free_port() -> str:
    """A port on which nobody listens at the moment."""
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        return str(listening.getsockname()[1])


def postponed(url: str, key: str) -> None:
    """Somebody can be reached, and nobody is due yet: what a wave takes is another benchmark's matter."""
    store = Store.open(url, key)
    store.run(lambda tx: tx.clinicians.reach(CLINICIAN, "telegram", "1"))
    store.run(lambda tx: tx._connection.execute(cases.update().values(due_at=datetime(2099, 1, 1, tzinfo=UTC))).close())
    store.close()


def scheduled(families: int) -> tuple[float, float]:
    """Seconds to start a scheduler with one job for each family, and megabytes."""
    return asyncio.run(_scheduled(families))


async def _scheduled(families: int) -> tuple[float, float]:
    begin = perf_counter()
    scheduler = AsyncIOScheduler(timezone=UTC)
    tomorrow = datetime.now(UTC) + timedelta(days=1)
    for family in range(families):
        scheduler.add_job(print, "date", run_date=tomorrow, args=[family], id=str(family))
    scheduler.start()
    await asyncio.sleep(0)
    seconds = perf_counter() - begin
    scheduler.shutdown(wait=False)
    return seconds, peak_megabytes()


def unpickled(families: int) -> tuple[float, float, float]:
    """Seconds to load a PicklePersistence of as many users, seconds of one flush, and megabytes."""
    with tempfile.TemporaryDirectory() as folder:
        return asyncio.run(_unpickled(Path(folder) / "persistence", families))


async def _unpickled(path: Path, families: int) -> tuple[float, float, float]:
    alone(pickled, path, families)
    begin = perf_counter()
    persistence: PicklePersistence[dict[object, object], dict[object, object], dict[object, object]]
    persistence = PicklePersistence(path)
    await persistence.get_user_data()
    await persistence.get_conversations("night")
    loaded = perf_counter()
    await persistence.flush()
    return loaded - begin, perf_counter() - loaded, peak_megabytes()


def measure(url: str, families: int) -> Iterator[Figure]:
    """All starts with so many families."""
    key, at = new_key(), apart(url, str(families))
    alone(seeded, at, key, families)
    alone(postponed, at, key)
    seconds, cpu, memory = served(at, key)
    group = f"{families} families"
    yield Figure(group, "coachbot serve: from command to ready", seconds, "s", 1.0)
    yield Figure(group, "coachbot serve: of that the processor's time", cpu, "s")
    yield Figure(group, "coachbot serve: memory", memory, "MB")
    if url.startswith("sqlite"):
        jobs, held = alone(scheduled, families)
        yield Figure(group, "APScheduler, a job for each: loop blocked", jobs, "s", jobs / seconds)
        yield Figure(group, "APScheduler, a job for each: memory", held, "MB")
        loaded, flushed, held = alone(unpickled, families)
        yield Figure(group, "PicklePersistence: load", loaded, "s", loaded / seconds)
        yield Figure(group, "PicklePersistence: each flush", flushed, "s")
        yield Figure(group, "PicklePersistence: memory", held, "MB")


def main() -> None:
    """Measure, then print the table and the JSON."""
    measured(measure, parser(__doc__, [1_000, 10_000, 100_000]).parse_args())


if __name__ == "__main__":
    main()

"""Replies a second through the whole inbox: `python tests/bench/bench_inbox.py --help`.

Each reply is kept once, its sender found, triaged, read, decided, answered and committed. Baselines in the same run:

- bare SQLAlchemy Core in one thread: the same reads and writes, the same bytes and durability, one commit a reply, and
  nothing triaged, read, decided, rendered or sealed (promise: at least half of it);
- the same through an asyncio driver of SQLite (`pip install aiosqlite`; left out where it is missing);
- the same conversation of five questions on python-telegram-bot's ConversationHandler, with a PicklePersistence of as
  many users that is flushed at each update. It triages nothing and reads one digit.
"""

import asyncio
import json
import pickle
import tempfile
from collections.abc import Callable, Generator, Iterator, Sequence
from contextlib import suppress
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from time import perf_counter
from typing import Any

from sqlalchemy import Executable, bindparam, func, insert, select, tuple_, update
from sqlalchemy.ext.asyncio import create_async_engine
from telegram import Update
from telegram.ext import Application, CommandHandler, ConversationHandler, MessageHandler, PicklePersistence, filters
from telegram.request import BaseRequest

from bench.clinics import BEDTIME, CHANNEL, Wire, address, coachbot, families, fill, quiet_logs
from bench.figures import Figure, alone, apart, core, empty, measured, parser, sample_rows
from coachbot.bootstrap import Coachbot
from coachbot.channels.base import Incoming
from coachbot.programme.positions import Position
from coachbot.store import Store, new_key
from coachbot.store.tables import cases, clinicians, contacts, history, messages, nights, outbox, swallows

ANSWERS = ("4", "3", "5", "2", "4")
"""What a user of the conversation handler says to the five questions of a night."""

DATA = Path(__file__).parents[1] / "reading" / "data"
REPLIES = 2000
LONGEST = 20.0
"""Seconds after which a baseline that does not come to its end is broken off; its rate is that so far."""


@cache
def replies(language: str) -> list[str]:
    """What families write when they are asked about one swallow: digits, words, slips of the pen, and the unclear."""
    lines = (DATA / f"seen.{language}.jsonl").read_text(encoding="utf-8").splitlines()
    records = [json.loads(line) for line in lines]
    return [record["text"] for record in records if record["asking"] not in ("all", "best", "note")]


def night_of(family: int) -> list[str]:
    """What a family answers in one night, in its language."""
    said = replies(families()[family % len(families())].language)
    return [said[(family * len(ANSWERS) + number) % len(said)] for number in range(len(ANSWERS))]


# --- ours -------------------------------------------------------------------------------------------------------------


def ours(url: str, key: str, families: int, at_once: int) -> float:
    """Replies a second with so many under way at a time."""
    quiet_logs()
    store = Store.open(url, key)
    rate = asyncio.run(_answered(coachbot(store, Wire()), families, at_once))
    store.close()
    return rate


def asked(url: str, key: str, size: int, families: int) -> None:
    """A clinic of that size of which twice so many families have been asked: half answer us, half the baselines."""
    quiet_logs()
    store = empty(url, key)
    fill(store, size)
    heartbeat, done = coachbot(store, Wire()).heartbeat, 0
    while done < min(2 * families, size):
        done += asyncio.run(heartbeat._tick_some(BEDTIME))
    store.close()


async def _answered(bot: Coachbot, families: int, at_once: int) -> float:
    """Each family answers its questions one after the other; so many families do so at a time."""

    async def night(some: Sequence[int]) -> None:
        for family in some:
            for number, words in enumerate(night_of(family)):
                name = f"{family}.{number}"
                message = Incoming(channel=CHANNEL, channel_id=name, address=address(family), at=BEDTIME, text=words)
                await bot.inbox.receive(message)

    begin = perf_counter()
    await asyncio.gather(*[night(range(start + 1, families + 1, at_once)) for start in range(at_once)])
    return families * len(ANSWERS) / (perf_counter() - begin)


# --- the same reads and writes ----------------------------------------------------------------------------------------

Step = tuple[Executable, dict[str, Any]]


class Bare:
    """One reply's reads and writes as Core's statements, with rows that the store has written."""

    def __init__(self, rows: dict[str, dict[str, Any]], nights_of: dict[int, int]) -> None:
        self.families = sorted(nights_of)
        self._nights = nights_of
        self._rows = rows
        at = (rows["contacts"]["address_hash"], rows["contacts"]["channel"])
        self._clinician = select(clinicians).where(clinicians.c.address_hash.in_(at[:1]), clinicians.c.channel == at[1])
        self._contact = select(contacts).where(contacts.c.address_hash.in_(at[:1]), contacts.c.channel == at[1])
        same: Any = bindparam("same_id")
        self._case = select(cases.c.id, cases.c.version, cases.c.document).where(cases.c.id == same)
        self._save = update(cases).where(cases.c.id == same, cases.c.version >= bindparam("same_version"))
        self._settle = update(messages).where(messages.c.id == same)

    def reply(self, number: int) -> Generator[Step, Any, None]:
        """The statements of reply `number`, in order; each is sent its result."""
        family, place = self.families[number // len(ANSWERS)], number % len(ANSWERS) + 1
        own = {"case_id": family, "night": self._nights[family], "position": tuple(Position)[place - 1], "place": place}
        message = self._without("messages", "id", "outcome", "case_id", "contact_id", "level", "category", "evidence")
        inserted = yield insert(messages).returning(messages.c.id), message | {"channel_id": f"bare{number}"}
        settled = {name: self._rows["messages"][name] for name in ("outcome", "level", "category", "evidence")}
        settled |= {"case_id": family, "contact_id": family, "same_id": inserted.scalar_one()}
        (yield self._clinician, {}).all()
        (yield self._contact, {}).all()
        (yield self._case, {"same_id": family}).all()
        yield self._save, self._without("cases", "id") | {"same_id": family, "same_version": 0}
        yield insert(history), self._rows["history"] | {"case_id": family, "seq": 1000 + number}
        yield insert(swallows), self._rows["swallows"] | own
        said = {"case_id": family, "key": f"bare:{number}", "recipient": f"contact:{family}", "contact_id": family}
        yield insert(outbox), self._without("outbox", "id") | said
        yield self._settle, settled

    def _without(self, table: str, *names: str) -> dict[str, Any]:
        return {name: value for name, value in self._rows[table].items() if name not in names}


def by_core(url: str, bare: Bare) -> float:
    """Replies a second by bare Core in this thread."""
    total = len(bare.families) * len(ANSWERS)
    with core(url).connect() as connection:
        begin = perf_counter()
        for number in range(total):
            steps, result = bare.reply(number), None
            with suppress(StopIteration):
                while True:
                    result = connection.execute(*steps.send(result))
            connection.commit()
        return total / (perf_counter() - begin)


def by_asyncio_driver(url: str, bare: Bare) -> float:
    """Replies a second by Core over aiosqlite, one after the other."""
    return asyncio.run(_by_asyncio_driver(url.replace("sqlite:", "sqlite+aiosqlite:"), bare))


async def _by_asyncio_driver(url: str, bare: Bare) -> float:
    total, done = len(bare.families) * len(ANSWERS), 0
    engine = create_async_engine(url)
    async with engine.connect() as connection:
        for pragma in ("journal_mode = WAL", "synchronous = FULL", "foreign_keys = ON", "secure_delete = ON"):
            await connection.exec_driver_sql(f"PRAGMA {pragma}")
        await connection.commit()
        begin = perf_counter()
        while done < total and perf_counter() - begin < LONGEST:
            steps, result = bare.reply(done), None
            with suppress(StopIteration):
                while True:
                    result = await connection.execute(*steps.send(result))
            await connection.commit()
            done += 1
        rate = done / (perf_counter() - begin)
    await engine.dispose()
    return rate


def taken(url: str, key: str, families: int) -> Bare:
    """The baselines' rows, and the families that have been asked and have not answered."""
    store = Store.open(url, key)
    rows = sample_rows(store, messages, cases, contacts, clinicians, history, swallows, outbox)
    night = select(nights.c.case_id, func.max(nights.c.number)).where(nights.c.case_id > families)
    latest = night.where(nights.c.status == "open").group_by(nights.c.case_id).limit(families)
    found = store.run(lambda tx: tx._connection.execute(latest).all())
    store.close()
    return Bare(rows, dict(map(tuple, found)))


def emptied(url: str, bare: Bare) -> None:
    """Take the answers of a baseline out again, for the next one."""
    with core(url).connect() as connection:
        for table in (outbox, history, swallows):
            mine: Any = table.c.case_id.in_(bare.families)
            if table is swallows:
                mine &= tuple_(table.c.case_id, table.c.night).in_(list(bare._nights.items()))
            elif table is history:
                mine &= table.c.seq >= 1000
            connection.execute(table.delete().where(mine))
        connection.execute(messages.delete().where(messages.c.channel_id.startswith("bare")))
        connection.commit()


# --- a conversation handler -------------------------------------------------------------------------------------------


class Offline(BaseRequest):
    """Answers every call of the Bot API at once, so that no network is measured."""

    read_timeout = None

    async def initialize(self) -> None:
        """Nothing to open."""

    async def shutdown(self) -> None:
        """Nothing to close."""

    async def do_request(self, url: str, *_: Any, **__: Any) -> tuple[int, bytes]:
        """A user for getMe, a message for anything else."""
        me = {"id": 1, "is_bot": True, "first_name": "bench", "username": "bench_bot"}
        sent = {"message_id": 1, "date": 0, "chat": {"id": 1, "type": "private"}, "text": ""}
        return 200, json.dumps({"ok": True, "result": me if url.endswith("getMe") else sent}).encode()


def by_conversation_handler(users: int) -> float:
    """Updates a second by ConversationHandler and PicklePersistence with as many users."""
    with tempfile.TemporaryDirectory() as folder:
        return asyncio.run(_conversing(Path(folder) / "persistence", users))


def pickled(path: Path, users: int) -> None:
    """A PicklePersistence's file of so many users who are in the midst of a programme."""
    kept = {
        user: {"nights": [{"marks": [4, 3, 5, 2, 4], "best": "up"} for _ in range(user % 14)]} for user in range(users)
    }
    empty_maps: dict[str, Any] = {"chat_data": {}, "bot_data": {}, "callback_data": None}
    talks = {"night": {(user, user): 0 for user in range(users)}}
    path.write_bytes(pickle.dumps({"user_data": kept, "conversations": talks, **empty_maps}))


async def _conversing(path: Path, users: int) -> float:
    pickled(path, users)
    persistence: Any = PicklePersistence(path, on_flush=True)
    app: Any = (
        Application.builder()
        .token("1:bench")
        .request(Offline())
        .get_updates_request(Offline())
        .updater(None)
        .persistence(persistence)
        .build()
    )
    questions: Any = {at: [MessageHandler(filters.TEXT, _answer(at))] for at in range(len(ANSWERS))}
    start: Any = [CommandHandler("night", _answer(-1))]
    app.add_handler(ConversationHandler(start, questions, [], name="night", persistent=True))
    await app.initialize()
    total, done = min(users * len(ANSWERS), REPLIES), 0
    begin = perf_counter()
    while done < total and perf_counter() - begin < LONGEST:
        await app.process_update(_update(done, app.bot))
        await app.update_persistence()
        await persistence.flush()
        done += 1
    return done / (perf_counter() - begin)


def _answer(at: int) -> Callable[..., Any]:
    async def answered(update: Any, context: Any) -> int:
        context.user_data.setdefault("tonight", {})[at] = update.message.text
        await update.message.reply_text("How was the next one, from 1 (hard) to 5 (easy)?")
        return at + 1 if at + 1 < len(ANSWERS) else ConversationHandler.END

    return answered


def _update(number: int, bot: Any) -> Any:
    user = number // len(ANSWERS)
    who = {"id": user, "is_bot": False, "first_name": "parent", "type": "private"}
    words = ANSWERS[number % len(ANSWERS)]
    message = {"message_id": number, "date": 0, "chat": who, "from": who, "text": words}
    return Update.de_json({"update_id": number, "message": message}, bot)


# --- the run ----------------------------------------------------------------------------------------------------------


def measure(url: str, size: int) -> Iterator[Figure]:
    """Ours and the baselines in a clinic of one size on one database."""
    families = min(REPLIES // len(ANSWERS), size // 2)
    rates, key = {}, new_key()
    for at_once in (1, 32):
        at = apart(url, f"{size}at{at_once}")
        alone(asked, at, key, size, families)
        rates[at_once] = alone(ours, at, key, families, at_once)
    bare = taken(at, key, families)
    baseline = alone(by_core, at, bare)
    group = f"{size} families"
    yield Figure(group, "bare Core, one thread, the same reads and writes", baseline, "/s", 1.0)
    for at_once, rate in rates.items():
        yield Figure(group, f"the whole inbox, {at_once} at once", rate, "/s", rate / baseline)
    if url.startswith("sqlite") and find_spec("aiosqlite"):
        emptied(at, bare)
        rate = alone(by_asyncio_driver, at, bare)
        yield Figure(group, "bare Core over aiosqlite", rate, "/s", rate / baseline)
    if url.startswith("sqlite"):
        rate = alone(by_conversation_handler, size)
        yield Figure(group, "ConversationHandler and PicklePersistence", rate, "/s", rate / baseline)


def main() -> None:
    """Measure, then print the table and the JSON."""
    chosen = parser(__doc__, [1_000, 10_000, 100_000]).parse_args()
    if not find_spec("aiosqlite"):
        print("the asyncio driver is left out: pip install aiosqlite to have it measured too")
    measured(measure, chosen)


if __name__ == "__main__":
    main()

"""What the benchmarks of speed share: figures with their table and JSON, fresh databases, a process for each run."""

import argparse
import json
import multiprocessing
import os
import platform
import tempfile
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar

from sqlalchemy import Engine, Table, make_url, select, text

from coachbot.store import Store, Transaction, new_key
from coachbot.store.engine import postgres_engine, sqlite_engine
from coachbot.store.tables import metadata

T = TypeVar("T")


@dataclass(frozen=True)
class Figure:
    """One measured line: `ratio` is to the baseline of its group."""

    group: str
    what: str
    value: float
    unit: str
    ratio: float | None = None


def show(figures: Mapping[str, Iterable[Figure]]) -> None:
    """Print the figures of each database as a table, line by line as they come, then everything as JSON."""
    done: dict[str, list[Figure]] = {name: [] for name in figures}
    for name, some in figures.items():
        for one in some:
            done[name].append(one)
            ratio = "" if one.ratio is None else f"{one.ratio:8.2f} x"
            print(f"{name:11} {one.group:18} {one.what:58} {one.value:12,.2f} {one.unit:3} {ratio}", flush=True)
    machine = {"cores": os.cpu_count(), "python": platform.python_version(), "system": platform.platform()}
    print(json.dumps({"machine": machine, **{name: [vars(one) for one in some] for name, some in done.items()}}))


def growing(
    measure: Callable[..., Iterable[Figure]], url: str, sizes: Sequence[int], *more: object
) -> Iterator[Figure]:
    """The figures of one database for each number of families."""
    for size in sizes:
        yield from measure(url, size, *more)


def measured(
    measure: Callable[..., Iterable[Figure]], chosen: argparse.Namespace, *more: object, sqlite: bool = True
) -> None:
    """Measure over each database that was asked for, then print the table and the JSON."""
    with databases(chosen.postgres, sqlite=sqlite) as urls:
        show({name: growing(measure, url, chosen.families, *more) for name, url in urls.items()})


# --- databases --------------------------------------------------------------------------------------------------------


def parser(description: str | None, families: Sequence[int]) -> argparse.ArgumentParser:
    """The arguments of every benchmark: how many families, one run for each number, and where PostgreSQL is."""
    made = argparse.ArgumentParser(description=description, formatter_class=argparse.RawDescriptionHelpFormatter)
    made.add_argument("--families", type=int, nargs="*", default=list(families), help="sizes, one run for each")
    made.add_argument("--postgres", help="URL of a PostgreSQL database that may be emptied")
    return made


@contextmanager
def databases(postgres: str | None, *, sqlite: bool = True) -> Iterator[Mapping[str, str]]:
    """Each kind of database with a URL; for SQLite that of a folder, see `apart`."""
    with tempfile.TemporaryDirectory(dir=os.environ.get("BENCH_DIR")) as folder:
        found = {"sqlite": f"sqlite:///{Path(folder)}"} if sqlite else {}
        yield found | ({"postgresql": postgres} if postgres else {})


def apart(url: str, name: str) -> str:
    """The URL of a database of that name: SQLite has a file for each, PostgreSQL the same one each time."""
    return f"{url}/{name}.sqlite3" if url.startswith("sqlite") else url


def empty(url: str, key: str) -> Store:
    """An open store there with nothing in it. A PostgreSQL database is emptied first."""
    store = Store.open(url, key)
    store.upgrade()
    if not url.startswith("sqlite"):
        tables = ", ".join(metadata.tables)
        store.run(lambda tx: tx._connection.execute(text(f"TRUNCATE {tables} RESTART IDENTITY")))
    return store


@contextmanager
def fresh_store(url: str) -> Iterator[Store]:
    """The same, closed again afterwards."""
    store = empty(url, new_key())
    try:
        yield store
    finally:
        store.close()


def core(url: str) -> Engine:
    """Bare SQLAlchemy over the same database with the same durability, for baselines."""
    parsed = make_url(url)
    if url.startswith("sqlite"):
        return sqlite_engine(parsed, read_only=False)
    return postgres_engine(parsed, 1, read_only=False)


def sample_rows(store: Store, *tables: Table) -> dict[str, dict[str, Any]]:
    """The latest row of each table as the store has written it, for the baselines to write as it is."""

    def latest(tx: Transaction, table: Table) -> dict[str, Any]:
        query = select(table).order_by(*[column.desc() for column in table.primary_key.columns]).limit(1)
        return dict(tx._connection.execute(query).mappings().one())

    return store.run(lambda tx: {table.name: latest(tx, table) for table in tables})


# --- processes --------------------------------------------------------------------------------------------------------


def alone(function: Callable[..., T], *arguments: object) -> T:
    """What the function returns when it runs in a fresh process: with its own memory and nothing warm."""
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(1, mp_context=context) as pool:
        return pool.submit(function, *arguments).result()


def cpu_seconds(process: int) -> float:
    """The processor's time that a process has had so far, which a busy machine stretches less than the clock's."""
    after_name = Path(f"/proc/{process}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
    return (int(after_name[11]) + int(after_name[12])) / os.sysconf("SC_CLK_TCK")


def peak_megabytes(process: int | str = "self") -> float:
    """The most memory that a process has held so far: Linux's `VmHWM`."""
    lines = Path(f"/proc/{process}/status").read_text(encoding="ascii").splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("VmHWM")) / 1024

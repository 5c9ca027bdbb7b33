"""Fixtures for all rooms: a store over each of the two databases."""

import logging
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import hypothesis
import psycopg
import pytest
import structlog
from sqlalchemy import make_url

from coachbot.store import Store
from coachbot.store.tables import access, metadata

# How long an example takes says how busy the machine is, not whether the code is right: speed is for the benchmarks.
hypothesis.settings.register_profile("coachbot", deadline=None, suppress_health_check=[hypothesis.HealthCheck.too_slow])
hypothesis.settings.load_profile("coachbot")

KEY = "Zm9yIHRlc3RzIG9ubHksIG5ldmVyIGZvciBhIGNsaW4="
"""32 bytes that keep no secret."""

SERVER = os.environ.get("COACHBOT_TEST_POSTGRES", "postgresql+psycopg://root@127.0.0.1:5432/postgres")
"""A PostgreSQL server on which the tests may make a database of their own and drop it again."""


@pytest.fixture(autouse=True)
def _logging_as_it_was() -> Iterator[None]:
    """Whatever a test, or a command that it runs, does to logging ends with it.

    A traceback is printed plainly: as structlog would have it, drawn with every variable, one takes seconds.
    """
    handlers = logging.getLogger().handlers[:]
    plain = structlog.dev.ConsoleRenderer(colors=False, exception_formatter=structlog.dev.plain_traceback)
    structlog.configure(processors=[structlog.processors.add_log_level, plain])
    yield
    logging.getLogger().handlers[:] = handlers
    structlog.reset_defaults()


@pytest.fixture(scope="session")
def sqlite_template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A SQLite file with its tables made, to be copied: cheaper than making them for each test."""
    path = tmp_path_factory.mktemp("template") / "template.sqlite3"
    _make_tables(f"sqlite:///{path}")
    return path


@pytest.fixture(scope="session")
def postgres_database() -> Iterator[str]:
    """The URL of a PostgreSQL database of this process's own, with its tables made."""
    name = f"coachbot_test_{os.getpid()}"
    with _server() as server:
        server.execute(f'CREATE DATABASE "{name}"')
    url = make_url(SERVER).set(database=name).render_as_string(hide_password=False)
    try:
        _make_tables(url)
        yield url
    finally:
        with _server() as server:
            server.execute(f'DROP DATABASE "{name}" WITH (FORCE)')


@pytest.fixture
def sqlite_url(sqlite_template: Path, tmp_path: Path) -> str:
    """The URL of an empty SQLite database."""
    path = tmp_path / "store.sqlite3"
    shutil.copy(sqlite_template, path)
    return f"sqlite:///{path}"


@pytest.fixture
def postgres_url(postgres_database: str) -> str:
    """The URL of an empty PostgreSQL database.

    Deleting few rows is far quicker than truncating many tables; only the log of access refuses to be deleted from.
    """
    tables = [table for table in reversed(metadata.sorted_tables) if table is not access]
    empty = "; ".join(f'DELETE FROM "{table}"' for table in tables)
    with psycopg.connect(_plain(postgres_database), autocommit=True) as connection:
        connection.execute(f"SET synchronous_commit = off; {empty}; TRUNCATE access")
    return postgres_database


@pytest.fixture(params=["sqlite", pytest.param("postgres", marks=pytest.mark.postgres)])
def store_url(request: pytest.FixtureRequest) -> str:
    """The URL of an empty database, once of each kind."""
    url: str = request.getfixturevalue(f"{request.param}_url")
    return url


@pytest.fixture
def store(store_url: str) -> Iterator[Store]:
    """An empty store, once over each database."""
    store = Store.open(store_url, KEY)
    yield store
    store.close()


@contextmanager
def _server() -> Iterator["psycopg.Connection[tuple[object, ...]]"]:
    try:
        connection = psycopg.connect(_plain(SERVER), autocommit=True, connect_timeout=3)
    except psycopg.OperationalError as error:
        pytest.skip(f"no PostgreSQL server at COACHBOT_TEST_POSTGRES ({SERVER}): {error}")
    with connection:
        yield connection


def _plain(url: str) -> str:
    return url.replace("postgresql+psycopg", "postgresql")


def _make_tables(url: str) -> None:
    store = Store.open(url, KEY)
    try:
        store.upgrade()
    finally:
        store.close()

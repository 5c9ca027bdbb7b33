"""Backup and restore, by the very scripts, over both databases: what was written is lost, and comes back the same."""

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy import make_url

from coachbot.rehearsal.stage import PARENT, cast
from coachbot.settings import SETTINGS
from coachbot.store import Store
from conftest import KEY, SERVER, _server
from helpers.kept import kept

DEPLOY = Path(__file__).parents[2] / "deploy"
NAME = f"coachbot_backup_{os.getpid()}"

needs_sqlite = pytest.mark.skipif(not shutil.which("sqlite3"), reason="no sqlite3: apt-get install sqlite3")
needs_postgres = pytest.mark.skipif(not shutil.which("pg_dump"), reason="no pg_dump: install postgresql-client")


class Database:
    """A database that can be lost."""

    def __init__(self, url: str, folder: Path) -> None:
        self.url = url
        self.folder = folder

    def lose(self) -> None:
        """Let all of it be gone."""
        if self.url.startswith("sqlite"):
            for path in Path(str(make_url(self.url).database)).parent.glob("store.sqlite3*"):
                path.unlink()
            return
        with _server() as server:
            server.execute(f'DROP DATABASE IF EXISTS "{NAME}" WITH (FORCE)')
            server.execute(f'CREATE DATABASE "{NAME}"')

    def run(self, script: str, *arguments: str, **settings: str) -> "subprocess.CompletedProcess[str]":
        """Run one of the scripts with the clinic's settings."""
        given = {"COACHBOT_DATABASE_URL": self.url, "COACHBOT_KEY": KEY, "COACHBOT_BACKUPS": str(self.folder)}
        path = f"{Path(sys.executable).parent}:{os.environ['PATH']}"
        environment = {**os.environ, "PATH": path, **given, **settings}
        return subprocess.run(
            [DEPLOY / script, *arguments], env=environment, capture_output=True, text=True, check=False
        )

    def backup(self) -> str:
        """Make one. Returns its path."""
        done = self.run("backup")
        assert done.returncode == 0, done.stderr
        return done.stdout.strip()

    def store(self) -> Store:
        """Open it."""
        return Store.open(self.url, KEY)


@pytest.fixture(params=[pytest.param("sqlite", marks=needs_sqlite), pytest.param("postgres", marks=needs_postgres)])
def database(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Database]:
    """An empty one of each kind, with its tables made."""
    url = f"sqlite:///{tmp_path / 'live' / 'store.sqlite3'}"
    if request.param == "postgres":
        url = make_url(SERVER).set(database=NAME).render_as_string(hide_password=False)
    made = Database(url, tmp_path / "backups")
    if request.param == "postgres":
        made.lose()
    store = made.store()
    store.upgrade()
    store.check()
    store.close()
    yield made
    if request.param == "postgres":
        with _server() as server:
            server.execute(f'DROP DATABASE IF EXISTS "{NAME}" WITH (FORCE)')


async def family(store: Store) -> int:
    """A family that has said something. Returns its case."""
    stage = await cast(store, start=datetime.now(UTC))
    await stage.write(PARENT, f"/start {next(iter(stage.codes.values()))}")
    await stage.write(PARENT, "yes")
    return stage.case_id


async def test_what_was_lost_comes_back_the_same(database: Database) -> None:
    """Made while the store is open; when the database is gone it brings every row back, and the key opens it."""
    store = database.store()
    case_id = await family(store)
    before = kept(store)
    assert "Noor" in before
    backup = database.backup()
    store.close()
    database.lose()
    restored = database.run("restore", backup)

    assert restored.returncode == 0, restored.stderr
    assert "the key opens them" in restored.stdout
    store = database.store()
    assert kept(store) == before
    assert store.run(lambda tx: tx.cases.load(case_id)).child.name == "Noor"
    store.run(lambda tx: tx.clinic.beat("again", datetime.now(UTC)))
    store.close()
    assert os.stat(backup).st_mode & 0o777 == 0o600  # noqa: PTH116 - of a path that is a string


async def test_an_older_backup_does_not_bring_back_what_was_erased_since(database: Database) -> None:
    """The newest backup leaves the list of erasures beside all of them."""
    store = database.store()
    case_id = await family(store)
    old = database.backup()
    store.run(lambda tx: tx.erase(case_id, datetime.now(UTC)))
    database.backup()
    store.close()
    database.lose()
    restored = database.run("restore", old)

    assert restored.returncode == 0, restored.stderr
    assert "1 erased" in restored.stdout
    store = database.store()
    assert "Noor" not in kept(store)
    store.close()


def test_backups_go_when_their_time_is_over(database: Database) -> None:
    """Those that are older than the days that are set, by the time in their names; none other, and no other file."""
    now = datetime.now(UTC)
    database.folder.mkdir()
    names = {
        days: f"coachbot-{now - timedelta(days=days):%Y%m%dT%H%M%SZ}.{kind}"
        for days, kind in ((29, "sqlite3"), (31, "sqlite3"), (400, "pgdump"))
    }
    for name in (*names.values(), "note.txt"):
        (database.folder / name).touch()
    new = Path(database.backup()).name

    assert {path.name for path in database.folder.iterdir()} == {new, names[29], "note.txt", "erased.jsonl"}


def test_a_backup_that_fails_says_why_and_deletes_nothing(database: Database) -> None:
    """Or the last good ones would go while no new one comes."""
    database.folder.mkdir()
    old = database.folder / "coachbot-20200101T000000Z.sqlite3"
    old.touch()
    failed = database.run("backup", COACHBOT_DATABASE_URL="sqlite:////nowhere/store.sqlite3")

    assert failed.returncode == 1
    assert "there is no database at /nowhere/store.sqlite3" in failed.stderr
    assert list(database.folder.iterdir()) == [old]


def test_a_restore_overwrites_nothing(database: Database) -> None:
    """A database that is there is left as it is."""
    backup = database.backup()
    store = database.store()
    store.run(lambda tx: tx.clinic.put("mine", "still here"))
    store.close()
    refused = database.run("restore", backup)

    assert refused.returncode == 1
    assert "stop the service" in refused.stderr
    store = database.store()
    assert store.run(lambda tx: tx.clinic.get("mine")) == "still here"
    store.close()


def test_the_wrong_key_and_the_wrong_file_are_said(database: Database) -> None:
    """One line that says what to do."""
    assert "there is no file" in database.run("restore", "nothing.sqlite3").stderr
    assert "say which" in database.run("restore").stderr
    wrong = database.folder.parent / "x.txt"
    wrong.touch()
    assert "does not fit COACHBOT_DATABASE_URL" in database.run("restore", str(wrong)).stderr
    assert "give a whole number" in database.run("backup", COACHBOT_BACKUP_DAYS="soon").stderr


def test_the_scripts_defaults_are_the_settings() -> None:
    """`settings.py` has the table."""
    script = (DEPLOY / "backup").read_text(encoding="utf-8")
    defaults = {setting.name: setting.default for setting in SETTINGS}
    for name in ("BACKUPS", "BACKUP_DAYS", "DATA"):
        assert f"${{COACHBOT_{name}:-{defaults[name]}}}" in script

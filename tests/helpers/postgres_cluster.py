"""A PostgreSQL of a test's own, to be restarted and made read-only without disturbing anybody."""

import os
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import psycopg
import pytest

PROGRAMS = sorted(Path("/usr/lib/postgresql").glob("*/bin"))


@dataclass(frozen=True, slots=True)
class Cluster:
    """A running server; `owner` is the account that it runs as, since PostgreSQL refuses to be root."""

    folder: Path
    port: int
    owner: str | None

    @property
    def url(self) -> str:
        """Its database, as the store takes it."""
        return f"postgresql+psycopg://test@127.0.0.1:{self.port}/postgres"

    def control(self, *words: str) -> None:
        """pg_ctl; `stop` takes a mode: "fast" as a supervisor does, "immediate" as a crash."""
        options = f"-p {self.port} -c listen_addresses=127.0.0.1 -c unix_socket_directories={self.folder}"
        self.do("pg_ctl", "-D", str(self.folder / "data"), "-l", str(self.folder / "log"), "-w", "-o", options, *words)

    def read_only(self, on: bool) -> None:
        """Let every transaction from now on only read, as a standby or a full disk's guard does; or no longer."""
        with psycopg.connect(self.url.replace("+psycopg", ""), autocommit=True) as connection:
            connection.execute("SET default_transaction_read_only = off")
            connection.execute(f"ALTER SYSTEM SET default_transaction_read_only = {'on' if on else 'off'}")
            connection.execute("SELECT pg_reload_conf()")

    def do(self, program: str, *words: str) -> None:
        """Run one of PostgreSQL's programs as the server's owner."""
        command = [str(PROGRAMS[-1] / program), *words]
        subprocess.run(command, check=True, user=self.owner, cwd=self.folder, stdout=subprocess.DEVNULL, timeout=60)


@contextmanager
def cluster() -> Iterator[Cluster]:
    """A server in a folder that goes; skips the test where its programs or an account for it are missing."""
    if not PROGRAMS:
        pytest.skip("PostgreSQL's programs are not in /usr/lib/postgresql: install the package postgresql")
    owner = "postgres" if os.geteuid() == 0 else None
    folder = Path(tempfile.mkdtemp(prefix="coachbot-cluster-"))
    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    made = Cluster(folder, port, owner)
    try:
        if owner:
            shutil.chown(folder, owner)
        made.do("initdb", "-D", str(folder / "data"), "-U", "test", "--auth=trust", "--encoding=UTF8", "--locale=C")
        made.control("start")
        yield made
        made.control("stop", "-m", "immediate")
    finally:
        shutil.rmtree(folder, ignore_errors=True)

"""The audit of dependencies fails on a known vulnerability, and only says so where nobody can be asked.

The service that answers speaks OSV's format (https://google.github.io/osv.dev/post-v1-query/) with an invented fault.
"""

import json
import shutil
import subprocess
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path
from threading import Thread

import pytest

ROOT = Path(__file__).parents[1]
FAULT = {
    "id": "OSV-2026-1",
    "summary": "an invented fault",
    "affected": [
        {
            "package": {"name": "markupsafe", "ecosystem": "PyPI"},
            "ranges": [{"type": "ECOSYSTEM", "events": [{"introduced": "0"}, {"fixed": "99.0"}]}],
        }
    ],
}


class Service(BaseHTTPRequestHandler):
    """Knows a fault of one package."""

    def do_POST(self) -> None:
        """Answer a query."""
        asked = json.loads(self.rfile.read(int(self.headers["content-length"])))
        known = {"vulns": [FAULT]} if asked["package"]["name"] == "markupsafe" else {}
        body = json.dumps(known).encode()
        self.send_response(200)
        self.send_header("content-length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="module")
def service() -> Iterator[str]:
    """The address of a service that answers."""
    server = HTTPServer(("127.0.0.1", 0), Service)
    thread = Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/v1/query"
    server.shutdown()
    thread.join()
    server.server_close()


def audit(tmp_path: Path, url: str, pinned: str) -> subprocess.CompletedProcess[str]:
    """Audit a list of one package."""
    if shutil.which("pip-audit") is None:
        pytest.skip("pip-audit is not installed: run deploy/test once")
    (tmp_path / "list.txt").write_text(f"{pinned}\n", encoding="utf-8")
    how = ["--vulnerability-service", "osv", "--osv-url", url, "--cache-dir", str(tmp_path / "cache")]
    command = [str(ROOT / "deploy" / "audit"), str(tmp_path / "list.txt"), *how]
    return subprocess.run(command, capture_output=True, text=True, check=False, timeout=120)


def test_a_known_vulnerability_fails_and_names_it(service: str, tmp_path: Path) -> None:
    """With the version in which it is mended."""
    done = audit(tmp_path, service, "markupsafe==3.0.2")

    assert done.returncode == 1
    assert "markupsafe 3.0.2: OSV-2026-1, mended in 99.0" in done.stderr


def test_without_one_it_passes(service: str, tmp_path: Path) -> None:
    """And says how much was asked."""
    done = audit(tmp_path, service, "idna==3.10")

    assert done.returncode == 0, done.stderr
    assert "1 packages audited, 0 known" in done.stdout


def test_where_nobody_answers_it_says_so_and_passes(tmp_path: Path) -> None:
    """A closed network is no reason not to build; a silent pass would be a lie."""
    done = audit(tmp_path, "http://127.0.0.1:9/v1/query", "idna==3.10")

    assert done.returncode == 0, done.stderr
    assert "NOT audited" in done.stderr


def test_other_trouble_fails(service: str, tmp_path: Path) -> None:
    """A list that cannot be read is no closed network."""
    assert audit(tmp_path, service, "no version at all!").returncode != 0

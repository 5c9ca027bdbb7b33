"""A monitor outside, as a real HTTP server on loopback that writes down what it is asked."""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from typing import Any


@dataclass
class Monitor:
    """What was asked for, in order: method, path, and the JSON that came with it. It answers with `status`."""

    url: str = ""
    status: int = 200
    asked: list[tuple[str, str, Any]] = field(default_factory=list)

    def taken(self) -> list[tuple[str, str, Any]]:
        """What was asked for since the last look."""
        asked, self.asked = self.asked, []
        return asked


@contextmanager
def monitor() -> Iterator[Monitor]:
    """Let one run."""
    made = Monitor()

    class Handler(BaseHTTPRequestHandler):
        def _answer(self) -> None:
            body = self.rfile.read(int(self.headers.get("content-length", 0)))
            made.asked.append((self.command, self.path, json.loads(body) if body else None))
            self.send_response(made.status)
            self.send_header("content-length", "0")
            self.end_headers()

        do_GET = do_POST = _answer  # noqa: N815 - the standard library's names

        def log_message(self, *_: object) -> None:
            """Say nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    made.url = f"http://127.0.0.1:{server.server_port}/check/3f0c"
    thread = Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield made
    finally:
        server.shutdown()
        server.server_close()
        thread.join()

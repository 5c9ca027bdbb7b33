"""An application on a port of its own, for those who must come by the network."""

import socket
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Thread

import uvicorn
from starlette.applications import Starlette


def free_port() -> int:
    """A port that nobody listens on."""
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        port: int = found.getsockname()[1]
        return port


@contextmanager
def served(app: Starlette) -> Iterator[str]:
    """Serve it until the block ends. Its address."""
    port = free_port()
    server = uvicorn.Server(uvicorn.Config(app, port=port, log_level="error", lifespan="off"))
    thread = Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started:
        thread.join(0.01)
    yield f"http://127.0.0.1:{port}"
    server.should_exit = True
    thread.join()

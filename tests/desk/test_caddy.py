"""The desk behind the real Caddy with the Caddyfile of `deploy/`: what the world gets and what it does not."""

import os
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from helpers.desk_bench import Bench
from helpers.served import free_port, served

CADDYFILE = Path(__file__).parents[2] / "deploy" / "Caddyfile"

pytestmark = pytest.mark.skipif(not shutil.which("caddy"), reason="no caddy: apt-get install caddy")


@pytest.fixture
def world(bench: Bench, tmp_path: Path) -> Iterator[httpx.Client]:
    """Who comes from outside, without TLS for want of a name."""
    with served(bench.app) as desk:
        address = f"http://127.0.0.1:{free_port()}"
        environment = {
            **os.environ,
            "DESK_NAME": address,
            "DESK_UPSTREAM": desk.removeprefix("http://"),
            "CADDY_ADMIN": f"unix/{tmp_path}/admin",
            "HOME": str(tmp_path),
            "XDG_DATA_HOME": str(tmp_path),
            "XDG_CONFIG_HOME": str(tmp_path),
        }
        command = ["caddy", "run", "--config", str(CADDYFILE), "--adapter", "caddyfile"]
        with (tmp_path / "log").open("wb") as log:
            process = subprocess.Popen(command, env=environment, stderr=log, stdout=log)
        transport = httpx.HTTPTransport(retries=8)
        with httpx.Client(base_url=address, transport=transport) as client:
            yield client
        process.terminate()
        process.wait(30)


def test_the_world_gets_the_desk_and_nothing_that_is_for_the_inside(world: httpx.Client) -> None:
    """However the address is spelled; the status page is for those who sign in."""
    assert world.get("/sign-in").status_code == 200
    for path in ("/metrics", "/live", "/ready", "/METRICS", "/%6detrics", "/metrics/", "/./metrics"):
        answer = world.get(path)
        assert answer.status_code == 404, path
        assert "coachbot_" not in answer.text
    status = world.get("/status")
    assert (status.status_code, status.headers["location"]) == (303, "/sign-in")

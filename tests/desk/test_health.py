"""Promises about the health checks."""

import pytest

from coachbot.store import Store, UnavailableError
from helpers.desk_bench import Bench


def test_ready_fails_when_the_store_is_out_of_reach(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """The process lives, yet can do nothing: whoever watches hears of it; people get a page that says what to do."""

    async def unavailable(*_: object) -> None:
        raise UnavailableError("the disk is gone")

    client = bench.sign_in("Imani Osei")
    for name in ("read", "transact"):
        monkeypatch.setattr(Store, name, unavailable)

    assert client.get("/live").status_code == 200
    assert client.get("/ready").status_code == 503
    assert client.get("/ready").json() == {"store": False, "heartbeat": False, "somebody_reachable": False}
    page = client.get("/alerts")
    assert page.status_code == 503
    assert "nothing was changed" in page.text
    assert "the disk is gone" not in page.text

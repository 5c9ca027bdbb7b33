"""Promises about the health checks, the status page and the metrics."""

from collections.abc import Callable
from datetime import timedelta
from typing import Any

import httpx
import pytest
from prometheus_client.parser import text_string_to_metric_families

from coachbot.channels.base import Ending, Receipt
from coachbot.coach.actions import Urgency
from coachbot.desk.probe import Probe
from coachbot.store import Envelope, Store, UnavailableError
from helpers.desk_bench import Bench, learns, practising, run

GRAVE = "she is choking and cannot breathe"
THROUGH_A_PROXY = ({"x-forwarded-for": "203.0.113.9"}, {"via": "1.1 caddy"}, {"forwarded": "for=203.0.113.9"})


async def unavailable(*_: object) -> None:
    """What the store does when the disk is gone."""
    raise UnavailableError("the disk is gone")


def refuse(monkeypatch: pytest.MonkeyPatch, *names: str) -> None:
    """Let these ways to the store be shut."""
    for name in names:
        monkeypatch.setattr(Store, name, unavailable)


def test_ready_fails_when_the_store_is_out_of_reach(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """The process lives, yet can do nothing: whoever watches hears of it; people get a page that says what to do."""
    client = bench.sign_in("Imani Osei")
    refuse(monkeypatch, "read", "transact")

    assert client.get("/live").status_code == 200
    assert client.get("/ready").status_code == 503
    assert client.get("/ready").json() == {
        "store": False,
        "heartbeat": False,
        "channels": False,
        "somebody_reachable": False,
    }
    page = client.get("/alerts")
    assert page.status_code == 503
    assert "nothing was changed" in page.text
    assert "the disk is gone" not in page.text


def test_ready_fails_when_the_store_can_be_read_but_not_written(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """A full disk still shows what is kept; nothing that comes in would be."""
    client = bench.client()
    assert client.get("/ready").status_code == 200
    bench.clock.passes(Probe().every)
    refuse(monkeypatch, "transact")

    assert client.get("/ready").status_code == 503
    assert client.get("/ready").json()["store"] is False


@pytest.mark.parametrize(
    ("sign", "tell"),
    [
        ("heartbeat", lambda tx, now: tx.signs.up(["rehearsal"], now)),
        ("channels", lambda tx, now: tx.clinic.beat("test", now)),
    ],
)
def test_ready_fails_while_heartbeat_or_channels_are_silent(
    bench: Bench, sign: str, tell: Callable[..., object]
) -> None:
    """Each is judged by when it was last felt, in whichever process; when it is felt again all is well."""
    client = bench.client()
    bench.clock.passes(timedelta(minutes=3))
    bench.coachbot.store.run(lambda tx: tell(tx, bench.clock.now))

    assert client.get("/ready").status_code == 503
    assert [name for name, works in client.get("/ready").json().items() if not works] == [sign]
    bench.coachbot.store.run(lambda tx: tx.clinic.beat("test", bench.clock.now))
    run(bench.phones.start(bench.coachbot.inbox.receive))
    run(bench.coachbot.signs.give())
    assert client.get("/ready").json() == dict.fromkeys(("store", "heartbeat", "channels", "somebody_reachable"), True)


def metrics(answer: httpx.Response) -> dict[tuple[str, str], float]:
    """All samples by name and label values, read by Prometheus's own parser."""
    assert answer.status_code == 200
    assert answer.headers["content-type"].startswith("text/plain; version=")
    found = {}
    for family in text_string_to_metric_families(answer.text):
        assert family.documentation
        for sample in family.samples:
            key = (sample.name, ",".join(value for _, value in sorted(sample.labels.items())))
            assert key not in found, "a sample stands there once"
            found[key] = sample.value
    return found


def test_metrics_count_what_happened_and_show_what_waits(bench: Bench) -> None:
    """Format: Prometheus text exposition, by `prometheus_client.parser`; names end in units, counters in _total."""
    before = metrics(bench.client().get("/metrics"))
    assert before["coachbot_alerts_unacknowledged", "emergency"] == 0
    family = learns(bench)
    bench.phones.fail(*[Receipt(ending=Ending.SENT)] * 2, Receipt(ending=Ending.GONE))
    family.says(GRAVE)
    bench.coachbot.store.run(
        lambda tx: tx.outbox.add(
            [Envelope(case_id=None, key="x", urgency=Urgency.NEWS, text="", clinician_id=1)], bench.clock.now
        )
    )
    bench.clock.passes(timedelta(minutes=1))
    run(bench.coachbot.signs.give())
    run(bench.coachbot.signs.give())
    after = metrics(bench.client().get("/metrics"))

    assert after["coachbot_messages_received_total", "replied"] == 1
    assert after["coachbot_messages_received_total", "pressed"] == 11
    assert after["coachbot_sends_total", "sent,safety"] == 1
    assert after["coachbot_sends_total", "sent,alert"] == 1
    assert after["coachbot_alerts_unacknowledged", "emergency"] == 1
    assert after["coachbot_oldest_alert_seconds", "emergency"] == 60
    assert after["coachbot_outbox_depth", "news"] == 1
    assert after["coachbot_oldest_unsent_seconds", "news"] == 60
    assert after["coachbot_oldest_unsent_seconds", "safety"] == 0
    assert after["coachbot_heartbeat_age_seconds", ""] == 60
    decided = after["coachbot_decide_seconds_count", ""]
    assert decided > 12
    assert after["coachbot_decide_seconds_bucket", "+Inf"] == decided
    assert after["coachbot_transaction_seconds_count", ""] > 12
    names = {name for name, _ in after}
    assert {name for name, _ in before} <= names


def test_metrics_tell_of_families_out_of_reach_and_alerts_that_nobody_got(bench: Bench) -> None:
    """Both by number only."""
    family = practising(bench)
    bench.phones.fail(*[Receipt(ending=Ending.GONE)] * 10)
    family.says(GRAVE)
    bench.clock.passes(timedelta(minutes=3))
    found = metrics(bench.client().get("/metrics"))

    assert found["coachbot_families_unreachable", ""] == 1
    assert found["coachbot_alerts_undelivered", ""] >= 1
    family.says("hello, we are back")
    assert metrics(bench.client().get("/metrics"))["coachbot_families_unreachable", ""] == 0


def test_metrics_and_status_name_nobody(bench: Bench) -> None:
    """No child, no clinician, no address: kinds and numbers only."""
    family = practising(bench)
    family.says(GRAVE)
    run(bench.coachbot.signs.give())
    for path in ("/metrics", "/status", "/ready"):
        text = bench.client().get(path).text
        assert not [word for word in ("Zebulonia", "Osei", "osei", family.address, "choking") if word in text], path


@pytest.mark.parametrize("headers", THROUGH_A_PROXY)
@pytest.mark.parametrize("path", ["/metrics", "/status"])
def test_nobody_reads_metrics_or_status_through_another_server(bench: Bench, path: str, headers: Any) -> None:
    """What the server before the desk passes on comes from the world: it must sign in."""
    answer = bench.client().get(path, headers=headers)

    assert answer.status_code == 303
    assert answer.headers["location"] == "/sign-in"
    assert bench.client().get(path).status_code == 200


def test_the_status_page_says_what_is_wrong(bench: Bench) -> None:
    """For the person who runs it: each sign in words, with an account or, on this machine, without."""
    family = practising(bench)
    family.says(GRAVE)
    bench.clock.passes(timedelta(minutes=30))
    for client in (bench.client(), bench.sign_in("Imani Osei")):
        text = client.get("/status").text
        assert "The clock has stopped." in text
        assert "Emergency: 1, oldest 30 minutes ago" in text
        assert "Messages may not be coming in." in text


def test_two_processes_counts_add_up(bench: Bench) -> None:
    """Each gives the store what is its own; `/metrics` of any of them shows the sum."""
    sample = ("coachbot_messages_received_total", '{"outcome": "replied"}')
    for _ in range(2):
        bench.coachbot.store.run(lambda tx: tx.signs.count({sample: 2.0}))

    assert metrics(bench.client().get("/metrics"))["coachbot_messages_received_total", "replied"] == 4

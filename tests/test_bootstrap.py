"""How everything is put together: one heartbeat in memory, logs that tell nothing of anybody."""

import json
import logging

import pytest
import structlog

from coachbot import logs
from coachbot.bootstrap import beating, process_name
from coachbot.rehearsal.stage import cast
from coachbot.store import Store


async def test_the_heartbeat_is_one_job_that_is_late_but_never_lost(store: Store) -> None:
    """Source: APScheduler 3 user guide, "Missed job executions and coalescing"."""
    stage = await cast(store)
    scheduler = beating(stage.coachbot.heartbeat.beat, seconds=15)
    scheduler.start(paused=True)

    (job,) = scheduler.get_jobs()
    assert job.misfire_grace_time is None
    assert job.coalesce is True
    assert job.max_instances == 1
    scheduler.shutdown(wait=False)


async def test_a_beat_leaves_a_sign_of_life(store: Store) -> None:
    """By process, so that several may beat."""
    stage = await cast(store)
    await stage.coachbot.heartbeat.beat()

    assert store.run(lambda tx: tx.clinic.beats()) == {process_name(): stage.clock.now}


def test_logs_are_json_lines_without_anybody_s_words(capsys: pytest.CaptureFixture[str]) -> None:
    """An exception is told by its kind and place; what a library says is not told at all."""
    logs.configure("json")
    try:
        raise_with("she is choking")
    except ValueError:
        structlog.get_logger().exception("message_failed", channel="telegram")
    logging.getLogger("somewhere").warning("token 12345:secret")

    first, second = map(json.loads, capsys.readouterr().err.splitlines())
    assert (first["action"], first["error"], first["level"]) == ("message_failed", "ValueError", "error")
    assert (second["action"], second["library"]) == ("library", "somewhere")
    assert "choking" not in str(first)
    assert "secret" not in str(second)


def raise_with(words: str) -> None:
    """Fail with somebody's words in the message."""
    raise ValueError(words)

"""What Prometheus asks for, in its text format: the signs of the moment, and what all processes have counted."""

import json
import math
import re
from collections.abc import Iterator, Mapping
from datetime import datetime

from prometheus_client import CONTENT_TYPE_LATEST, CollectorRegistry, generate_latest
from prometheus_client.metrics_core import GaugeMetricFamily, Metric
from prometheus_client.registry import Collector

from coachbot.coach.actions import Urgency
from coachbot.measures import REGISTRY
from coachbot.service.vitals import Vitals
from coachbot.store import Backlog
from coachbot.triage import Level

__all__ = ["CONTENT_TYPE_LATEST", "exposition"]

PART = re.compile(r"_(total|bucket|sum|count)$")
"""What a sample's name has besides its metric's."""


def exposition(found: Vitals, counted: Mapping[tuple[str, str], float], now: datetime) -> bytes:
    """The text of `/metrics`."""
    registry = CollectorRegistry()
    registry.register(_Said([*_gauges(found, now), *_counts(counted)]))
    return generate_latest(registry)


class _Said(Collector):
    def __init__(self, metrics: list[Metric]) -> None:
        self._metrics = metrics

    def collect(self) -> list[Metric]:
        """What was found."""
        return self._metrics


def _gauges(found: Vitals, now: datetime) -> Iterator[Metric]:
    waits, opened = found.backlog, found.alerts
    yield _gauge(
        "outbox_depth", "Messages not sent yet.", "urgency", {one.name: _count(waits.get(one)) for one in Urgency}
    )
    yield _gauge(
        "oldest_unsent_seconds",
        "Age of the oldest message not sent yet; 0 where there is none.",
        "urgency",
        {one.name: _age(waits.get(one), now) for one in Urgency},
    )
    yield _gauge(
        "alerts_unacknowledged",
        "Alerts that nobody has taken on.",
        "level",
        {one.name: _count(opened.get(one)) for one in Level},
    )
    yield _gauge(
        "oldest_alert_seconds",
        "Age of the oldest alert that nobody has taken on; 0 where there is none.",
        "level",
        {one.name: _age(opened.get(one), now) for one in Level},
    )
    yield GaugeMetricFamily("coachbot_alerts_undelivered", "Alerts that have reached no clinician.", found.undelivered)
    yield GaugeMetricFamily("coachbot_heartbeat_age_seconds", "Time since the last heartbeat.", _since(found.beat, now))
    yield _gauge(
        "channel_age_seconds",
        "Time since each channel was last known to take messages in.",
        "channel",
        {name: _since(at, now) for name, at in found.lines.items()},
    )
    yield GaugeMetricFamily(
        "coachbot_families_unreachable", "Families with no adult who can be written to.", found.unreachable
    )
    yield GaugeMetricFamily("coachbot_somebody_reachable", "1 if an alert would reach anybody.", int(found.reachable))


def _gauge(name: str, told: str, label: str, values: Mapping[str, float]) -> Metric:
    gauge = GaugeMetricFamily(f"coachbot_{name}", told, labels=[label])
    for value, number in values.items():
        gauge.add_metric([value.lower()], number)
    return gauge


def _counts(counted: Mapping[tuple[str, str], float]) -> Iterator[Metric]:
    """The instruments of `measures` with what the store holds in place of this process's own."""
    for own in REGISTRY.collect():
        metric = Metric(own.name, own.documentation, own.type)
        for (sample, labels), value in sorted(counted.items(), key=_in_order):
            if PART.sub("", sample) == own.name:
                metric.add_sample(sample, json.loads(labels), value)
        yield metric


def _in_order(item: tuple[tuple[str, str], float]) -> tuple[str, float, str]:
    """A histogram's buckets go up."""
    (sample, labels), _ = item
    return sample, float(json.loads(labels).get("le", 0)), labels


def _count(backlog: Backlog | None) -> int:
    return backlog.count if backlog else 0


def _age(backlog: Backlog | None, now: datetime) -> float:
    return (now - backlog.oldest).total_seconds() if backlog else 0.0


def _since(at: datetime | None, now: datetime) -> float:
    return (now - at).total_seconds() if at else math.inf

"""What a process counts and times, with Prometheus's own instruments; the store adds up what all processes counted.

Labels name kinds, never a person, a family or an address.
"""

import json
from threading import Lock

from prometheus_client import CollectorRegistry, Counter, Histogram

REGISTRY = CollectorRegistry()
"""All instruments of this process."""

QUICK = (0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0)
"""Seconds, from a decision's usual time to one at which people notice."""

RECEIVED = Counter(
    "coachbot_messages_received", "Messages taken in, by what became of them.", ["outcome"], registry=REGISTRY
)
SENDS = Counter(
    "coachbot_sends", "Tries to send, by how they ended and by urgency.", ["outcome", "urgency"], registry=REGISTRY
)
DECIDE = Histogram(
    "coachbot_decide_seconds", "Time to decide what one event means for a case.", buckets=QUICK, registry=REGISTRY
)
TRANSACTION = Histogram(
    "coachbot_transaction_seconds",
    "Time from asking for a transaction to its being durable.",
    buckets=QUICK,
    registry=REGISTRY,
)

Counted = dict[tuple[str, str], float]
"""Values by the sample's name and its labels, as JSON with sorted keys."""


class Tally:
    """What this process has counted since the store was last given it."""

    def __init__(self) -> None:
        self._given = _counted()
        self._lock = Lock()

    def fresh(self) -> Counted:
        """What has been added since, and is not nothing."""
        with self._lock:
            more = {key: value - self._given.get(key, 0.0) for key, value in _counted().items()}
        return {key: value for key, value in more.items() if value}

    def given(self, fresh: Counted) -> None:
        """The store has kept this."""
        with self._lock:
            for key, value in fresh.items():
                self._given[key] = self._given.get(key, 0.0) + value


def _counted() -> Counted:
    return {
        (sample.name, json.dumps(sample.labels, sort_keys=True)): sample.value
        for metric in REGISTRY.collect()
        for sample in metric.samples
        if not sample.name.endswith("_created")
    }

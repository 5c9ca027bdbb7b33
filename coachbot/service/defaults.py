"""What the clinic has set for all families that it enrols from now on; kept in the store as JSON."""

from dataclasses import dataclass, field, replace

import msgspec

from coachbot.programme.protocol import Protocol
from coachbot.programme.zones import zone
from coachbot.store import Transaction

SETTING = "clinic"
"""The setting that holds them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Defaults:
    """The clinic's time zone, and the protocol that enrolment starts from."""

    zone: str = "UTC"
    protocol: Protocol = field(default_factory=Protocol)

    def __post_init__(self) -> None:
        zone(self.zone)


def read(tx: Transaction, emergency_number: str) -> Defaults:
    """The clinic's defaults; until it has set any, the program's own with this emergency number."""
    kept = tx.clinic.get(SETTING)
    if kept is None:
        return Defaults(protocol=replace(Protocol(), emergency_number=emergency_number))
    return msgspec.json.decode(kept, type=Defaults)


def write(tx: Transaction, defaults: Defaults) -> None:
    """Keep them."""
    tx.clinic.put(SETTING, msgspec.json.encode(defaults).decode())

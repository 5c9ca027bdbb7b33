"""Cases and events as JSON and back. A field that a newer program added takes its default when an older row is read."""

from typing import get_args

import msgspec

from coachbot.coach.case import Case
from coachbot.coach.events import Event, Joined, Pressed, Replied, SendEnded, Stuck, Ticked

OPENED = "Opened"
"""The kind of a history's first row, which holds the case as it was opened."""

encode = msgspec.json.Encoder().encode
decode_case = msgspec.json.Decoder(Case).decode

_events = {kind.__name__: msgspec.json.Decoder(kind) for kind in get_args(Event)}
_actors = {
    Joined: "family",
    Replied: "family",
    Pressed: "family",
    Ticked: "clock",
    Stuck: "clock",
    SendEnded: "channel",
}


def kind_of(event: Event) -> str:
    """The word that the event is kept under. Histories depend on it: a class of event may not be renamed."""
    return type(event).__name__


def actor_of(event: Event) -> str:
    """Whose doing it was: family, clock, channel or clinician."""
    return _actors.get(type(event), "clinician")


def decode_event(kind: str, text: bytes) -> Event:
    """The event that was kept under `kind`."""
    event: Event = _events[kind].decode(text)
    return event

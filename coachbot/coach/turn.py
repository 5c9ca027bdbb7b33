"""The pen of `decide`: collects what one event changes and says, and hands it over as a decision."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from typing import TypedDict, Unpack

from coachbot.coach.actions import Action, Button, Decision, Line, Say, Urgency, Value
from coachbot.coach.case import Case, Contact, Night
from coachbot.programme.protocol import Who

Rows = tuple[tuple[Button, ...], ...]


class Post(TypedDict, total=False):
    """When and how urgently a message is to go: fields of `Say`."""

    key: str
    urgency: Urgency
    expires: datetime | None


class How(Post, total=False):
    """What goes with a message's words: the remaining fields of `Say`."""

    buttons: Rows
    picture: str | None
    attachment: str | None
    alert: int | None


class Refused(ValueError):
    """A clinician's wish that cannot be done; `line` tells why and what to do."""

    def __init__(self, text: str, **args: Value) -> None:
        super().__init__(text)
        self.line = line(text, **args)


def line(text: str, **args: Value) -> Line:
    """One text by its id."""
    return Line(id=text, args=args)


class Turn:
    """The case as it changes, and the actions so far. Lives for one event; nothing of it outlives `decision`."""

    def __init__(self, case: Case, now: datetime) -> None:
        self.case = case
        self.now = now
        self._actions: list[Action] = []

    def change(self, **changes: object) -> None:
        """Put new values into the case."""
        self.case = replace(self.case, **changes)  # type: ignore[arg-type]

    def change_night(self, **changes: object) -> Night:
        """Put new values into the latest night."""
        night = replace(self.case.nights[-1], **changes)  # type: ignore[arg-type]
        self.change(nights=(*self.case.nights[:-1], night))
        return night

    def change_contact(self, contact: int, **changes: object) -> None:
        """Put new values into one contact."""
        self.change(
            contacts=tuple(
                replace(one, **changes) if one.id == contact else one  # type: ignore[arg-type]
                for one in self.case.contacts
            )
        )

    def act(self, action: Action) -> None:
        """Add an action."""
        self._actions.append(action)

    def say(self, to: int | Who | str, *lines: Line, **how: Unpack[How]) -> None:
        """Send one message. Without a key of its own it gets the case's next number."""
        self.change(serial=self.case.serial + 1)
        how.setdefault("key", f"say:{self.case.serial}")
        how.setdefault("urgency", Urgency.REPLY)
        self.act(Say(to=to, lines=lines, **how))

    def say_all(self, *lines: Line, to: Iterable[Contact] | None = None, **how: Unpack[How]) -> int:
        """Send the same message to all of the family's open chats, or to those given. Returns to how many it went."""
        chats = [contact for contact in (self.case.contacts if to is None else to) if contact.open]
        for contact in chats:
            self.say(contact.id, *lines, **how)
        return len(chats)

    def decision(self) -> Decision:
        """What has come of it."""
        return Decision(case=self.case, actions=tuple(self._actions))

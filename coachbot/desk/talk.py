"""A family's conversation as it is shown: who said what to whom, when, and how a message fared."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from coachbot.coach.case import Case
from coachbot.store import Message, Written
from coachbot.store.envelopes import Status
from coachbot.triage import Level

SILENT = (Status.SENT, Status.WAITING, Status.CLAIMED)
"""What needs no word about how it fared; the rest did not, or may not have, arrived."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Saying:
    """One message. `who` is ``parent``, ``child`` or ``coach``; where the coach wrote, `to` is the reader's role.

    `delivered` says that its channel has reported so; most channels report nothing.
    """

    who: str
    to: str
    text: str
    button: bool
    at: datetime
    level: Level
    category: str
    status: Status | None = None
    delivered: bool = False

    @property
    def failed(self) -> bool:
        """Whether it did not arrive, or nobody knows whether it did."""
        return self.status is not None and self.status not in SILENT


def sayings(case: Case, talk: Sequence[Message | Written]) -> list[Saying]:
    """What was said between the family and the coach. A button that was pressed reads as its label."""
    roles = {contact.id: str(contact.role) for contact in case.contacts}
    labels = {
        data: label for one in talk if isinstance(one, Written) for row in one.body.buttons for label, data in row
    }
    family = [one for one in talk if isinstance(one, Message) or one.contact_id is not None]
    return [_heard(one, roles, labels) if isinstance(one, Message) else _said(one, roles) for one in family]


def _heard(message: Message, roles: dict[int, str], labels: dict[str, str]) -> Saying:
    return Saying(
        who=roles.get(message.contact_id or 0, "parent"),
        to="coach",
        text=message.text if message.text is not None else labels.get(message.button or "", message.button or ""),
        button=message.text is None,
        at=message.at,
        level=message.level or Level.NONE,
        category=message.category or "",
    )


def _said(written: Written, roles: dict[int, str]) -> Saying:
    return Saying(
        who="coach",
        to=roles.get(written.contact_id or 0, "parent"),
        text=written.body.text,
        button=False,
        at=written.settled_at or written.created_at,
        level=Level.NONE,
        category="",
        status=written.status,
        delivered=written.delivered,
    )

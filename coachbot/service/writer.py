"""Turns what the coach wants said into messages in their readers' words, rendered when they are written down."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from coachbot.coach.actions import Line, Say, Value
from coachbot.coach.case import Case, Contact, Role
from coachbot.coach.texts import Audience
from coachbot.programme.protocol import Who
from coachbot.store import Clinician, Envelope, Transaction
from coachbot.voice.catalogue import Catalogue, Form

TONES = ((8, "young"), (13, "middle"))
"""A child younger than so many years is spoken to in this tone; an older one as a teenager."""

TYPED = ("sms",)
"""Channels without buttons and pictures: their readers get each text's typed form."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reader:
    """For whom a message is written: the form that its texts take, and where they go."""

    audience: Audience
    language: str
    channel: str
    to: Mapping[str, int | tuple[str, str]]


@dataclass(frozen=True, slots=True)
class Writer:
    """Writes envelopes out of the clinic's texts."""

    catalogue: Catalogue

    def envelopes(self, tx: Transaction, case: Case, say: Say, now: datetime) -> Iterator[Envelope]:
        """The message to each of its readers."""
        for reader in readers(tx, case, say.to):
            yield self.envelope(case, say, reader, now)

    def envelope(self, case: Case, say: Say, reader: Reader, now: datetime) -> Envelope:
        """The message to one reader."""
        common = common_values(case, now)
        typed = reader.channel in TYPED
        buttons = (
            ()
            if typed
            else tuple(
                tuple((self.words([button.label], reader, common), f"{case.id}:{button.data}") for button in row)
                for row in say.buttons
            )
        )
        to: Mapping[str, Any] = reader.to
        return Envelope(
            case_id=case.id,
            key=say.key,
            urgency=say.urgency,
            text=self.words(say.lines, reader, common),
            buttons=buttons,
            picture=_in(reader, say.picture),
            attachment=_in(reader, say.attachment),
            expires=say.expires,
            alert=say.alert,
            **to,
        )

    def words(self, lines: Iterable[Line], reader: Reader, common: Mapping[str, Value]) -> str:
        """Texts as this reader gets them, one paragraph each."""
        form: Form = "sms" if reader.channel in TYPED else "chat"
        return "\n\n".join(
            self.catalogue.render(line, language=reader.language, audience=reader.audience, common=common, form=form)
            for line in lines
        )


def readers(tx: Transaction, case: Case, to: int | Who | str) -> Iterator[Reader]:
    """Everyone whom `to` means and who has a chat. A group with nobody on duty means all clinicians instead."""
    if isinstance(to, int):
        yield _family(case.contact(to))
        return
    if isinstance(to, Who):
        found = tx.clinicians.on_duty(to) or tx.clinicians.on_duty(Who.ALL)
    else:
        named = tx.clinicians.named(to)
        found = [named] if named else []
    yield from filter(None, map(clinician_reader, found))


def common_values(case: Case, now: datetime) -> dict[str, Value]:
    """What every text may use besides its own variables."""
    return {"child": case.child.name, "emergency": case.protocol.emergency_number, "tone": tone(case, now)}


def tone(case: Case, now: datetime) -> str:
    """How a child of that age is spoken to."""
    age = now.year - case.child.birth_year
    return next((name for below, name in TONES if age < below), "teen")


def _family(contact: Contact) -> Reader:
    audience = Audience.CHILD if contact.role is Role.CHILD else Audience.PARENT
    return Reader(audience=audience, language=contact.language, channel=contact.channel, to={"contact_id": contact.id})


def _in(reader: Reader, name: str | None) -> str | None:
    """The name of a picture or file in its reader's language, ``en/posture``; none where only words can go."""
    return None if name is None or reader.channel in TYPED else f"{reader.language}/{name}"


def clinician_reader(clinician: Clinician) -> Reader | None:
    """A clinician as a reader, or None for one who has no chat and is left to the desk."""
    if clinician.channel is None:
        return None
    to = {"clinician_id": clinician.id}
    return Reader(audience=Audience.CLINICIAN, language=clinician.language, channel=clinician.channel, to=to)

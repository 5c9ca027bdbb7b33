"""Who is at the other end: families' chats, invitations, clinicians. Addresses are sealed, and found by their HMAC."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import ColumnElement, Connection, Row, Select, Table, and_, bindparam, func, select

from coachbot.coach.case import Role
from coachbot.programme.protocol import Who
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import clinicians, contacts, invites


@dataclass(frozen=True, slots=True, kw_only=True)
class ContactRow:
    """A family's chat, without its address."""

    id: int
    case_id: int
    role: Role
    language: str
    channel: str
    active: bool
    joined_at: datetime


class People:
    """The contacts of one transaction."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def add_contact(self, case_id: int, role: Role, *, channel: str, address: str, language: str, now: datetime) -> int:
        """Link a chat to a case. Returns the contact's id.

        Raises:
            LawError: out of the transaction, if that chat is linked to that case already.
        """
        row = {
            "case_id": case_id,
            "role": role,
            "language": language,
            "channel": channel,
            **_address(self._sealer, channel, address),
            "active": True,
            "joined_at": now,
        }
        contact_id: int = self._connection.execute(contacts.insert().returning(contacts.c.id), row).scalar_one()
        return contact_id

    def find(self, channel: str, address: str) -> list[ContactRow]:
        """The active contacts at an address, the latest joined first: siblings have a case each."""
        rows = self._connection.execute(_CONTACTS_AT, _place(self._sealer, channel, address))
        return [_contact(row) for row in rows]

    def of_case(self, case_id: int) -> list[ContactRow]:
        """All contacts that a case has had."""
        query = select(contacts).where(contacts.c.case_id == case_id).order_by(contacts.c.id)
        return [_contact(row) for row in self._connection.execute(query)]

    def address_of(self, contact_id: int) -> tuple[str, str] | None:
        """Channel and address of a contact, or None if it is gone."""
        query = select(contacts.c.channel, contacts.c.address).where(contacts.c.id == contact_id)
        row = self._connection.execute(query).first()
        return (row.channel, self._sealer.open(Purpose.ADDRESS, row.address).decode()) if row else None


class InviteFault(StrEnum):
    """Why an invitation does not open."""

    UNKNOWN = "unknown"
    USED = "used"
    EXPIRED = "expired"


@dataclass(frozen=True, slots=True, kw_only=True)
class Invite:
    """What an invitation opens."""

    case_id: int
    role: Role


class Invites:
    """The invitations of one transaction. A code is never kept, only what it is found by."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def add(self, case_id: int, role: Role, code: str, now: datetime, expires: datetime) -> None:
        """Keep an invitation. The code is the caller's to draw, of at least 60 random bits."""
        code_hash = self._sealer.lookup(Purpose.INVITE, code)
        row = {"code_hash": code_hash, "case_id": case_id, "role": role, "created_at": now, "expires_at": expires}
        self._connection.execute(invites.insert(), row)

    def open_until(self, now: datetime) -> datetime | None:
        """When the last of the invitations that still open runs out, or None if none does."""
        still = and_(invites.c.used_at.is_(None), invites.c.expires_at > now)
        until: datetime | None = self._connection.execute(select(func.max(invites.c.expires_at)).where(still)).scalar()
        return until

    def use(self, code: str, now: datetime) -> Invite | InviteFault:
        """Use an invitation up, or say why it does not open. Of two who try at once, one gets it."""
        this = invites.c.code_hash.in_(self._sealer.lookups(Purpose.INVITE, code))
        fit = and_(this, invites.c.used_at.is_(None), invites.c.expires_at > now)
        use = invites.update().where(fit).values(used_at=now).returning(invites.c.case_id, invites.c.role)
        if row := self._connection.execute(use).first():
            return Invite(case_id=row.case_id, role=Role(row.role))
        found = self._connection.execute(select(invites.c.used_at).where(this)).first()
        if found is None:
            return InviteFault.UNKNOWN
        return InviteFault.USED if found.used_at else InviteFault.EXPIRED


@dataclass(frozen=True, slots=True, kw_only=True)
class Clinician:
    """One who may be alerted, or may sign in at the desk, without address and secrets."""

    id: int
    name: str
    role: str
    duty: str
    language: str
    active: bool
    channel: str | None
    awaiting_case_id: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SignIn:
    """What a clinician signs in with."""

    password_hash: str | None
    totp: bytes | None


class Clinicians:
    """The clinicians of one transaction."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def add(
        self,
        name: str,
        now: datetime,
        *,
        role: str = "clinician",
        duty: str = "none",
        language: str = "en",
        reach: tuple[str, str] | None = None,
    ) -> int:
        """Keep a clinician, reached at a (channel, address) if given. Returns the id; a name can be given once."""
        row = {"name": name, "role": role, "duty": duty, "language": language, "active": True, "created_at": now}
        if reach:
            row |= {"channel": reach[0], **_address(self._sealer, *reach)}
        clinician_id: int = self._connection.execute(clinicians.insert().returning(clinicians.c.id), row).scalar_one()
        return clinician_id

    def change(self, name: str, **values: str | bool) -> None:
        """Change role, duty, language or active."""
        if unknown := values.keys() - {"role", "duty", "language", "active"}:
            raise ValueError(f"a clinician's {', '.join(sorted(unknown))} cannot be changed so")
        self._connection.execute(clinicians.update().where(clinicians.c.name == name), values)

    def reach(self, name: str, channel: str, address: str) -> None:
        """Set where a clinician is reached."""
        row = {"channel": channel, **_address(self._sealer, channel, address)}
        self._connection.execute(clinicians.update().where(clinicians.c.name == name), row)

    def all(self) -> list[Clinician]:
        """Every clinician, by name."""
        return self._select(select(clinicians).order_by(clinicians.c.name))

    def named(self, name: str) -> Clinician | None:
        """The clinician of that name."""
        return next(iter(self._select(select(clinicians).where(clinicians.c.name == name))), None)

    def on_duty(self, who: Who) -> list[Clinician]:
        """The active ones whom one step of a ladder reaches, by name."""
        query = select(clinicians).where(clinicians.c.active).order_by(clinicians.c.name)
        return self._select(query if who is Who.ALL else query.where(clinicians.c.duty == who))

    def find(self, channel: str, address: str) -> Clinician | None:
        """The active clinician who writes from that address."""
        row = self._connection.execute(_CLINICIANS_AT, _place(self._sealer, channel, address)).first()
        return _clinician(row) if row else None

    def await_note(self, name: str, case_id: int | None) -> None:
        """The next words of this clinician belong to this case; None ends that."""
        self._connection.execute(clinicians.update().where(clinicians.c.name == name), {"awaiting_case_id": case_id})

    def set_sign_in(self, name: str, sign_in: SignIn) -> None:
        """Keep what a clinician signs in with: a password's hash, and the secret of the one-time codes, sealed."""
        totp = self._sealer.seal(Purpose.SIGN_IN, sign_in.totp) if sign_in.totp else None
        row = {"password_hash": sign_in.password_hash, "totp": totp}
        self._connection.execute(clinicians.update().where(clinicians.c.name == name), row)

    def sign_in(self, name: str) -> SignIn | None:
        """What an active clinician signs in with, or None if there is no such one."""
        query = select(clinicians.c.password_hash, clinicians.c.totp).where(
            clinicians.c.name == name, clinicians.c.active
        )
        row = self._connection.execute(query).first()
        if row is None:
            return None
        totp = self._sealer.open(Purpose.SIGN_IN, row.totp) if row.totp else None
        return SignIn(password_hash=row.password_hash, totp=totp)

    def _select(self, query: Select[Any]) -> list[Clinician]:
        return [_clinician(row) for row in self._connection.execute(query)]


def _address(sealer: Sealer, channel: str, address: str) -> dict[str, bytes]:
    return {
        "address_hash": sealer.lookup(Purpose.ADDRESS, f"{channel}:{address}"),
        "address": sealer.seal(Purpose.ADDRESS, address.encode()),
    }


def _place(sealer: Sealer, channel: str, address: str) -> dict[str, Any]:
    return {"hashes": sealer.lookups(Purpose.ADDRESS, f"{channel}:{address}"), "there": channel}


def _at(table: Table) -> ColumnElement[bool]:
    hashes: Any = bindparam("hashes", expanding=True)
    return and_(table.c.address_hash.in_(hashes), table.c.channel == bindparam("there"), table.c.active)


def _contact(row: Row[Any]) -> ContactRow:
    return ContactRow(
        id=row.id,
        case_id=row.case_id,
        role=Role(row.role),
        language=row.language,
        channel=row.channel,
        active=row.active,
        joined_at=row.joined_at,
    )


def _clinician(row: Row[Any]) -> Clinician:
    return Clinician(
        id=row.id,
        name=row.name,
        role=row.role,
        duty=row.duty,
        language=row.language,
        active=row.active,
        channel=row.channel,
        awaiting_case_id=row.awaiting_case_id,
    )


# Made once: in the way of every message, making a statement costs as much as running it.
_CONTACTS_AT = select(contacts).where(_at(contacts)).order_by(contacts.c.id.desc())
_CLINICIANS_AT = select(clinicians).where(_at(clinicians)).order_by(clinicians.c.id)

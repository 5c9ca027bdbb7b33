"""Key rotation: what an earlier key sealed is sealed anew with the first, a batch a transaction.

Which values are left is read from the values themselves, so a rotation that was broken off goes on where it stopped.
The store remembers the names of the keys in use, so that none is dropped too early.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, LargeBinary, Row, Table, bindparam, func, literal, select, tuple_

from coachbot.store.clinic import Clinic
from coachbot.store.errors import UnsealError
from coachbot.store.messages import decode_body
from coachbot.store.pieces import address_of
from coachbot.store.sealing import FORMAT, HEAD_BYTES, Purpose, Sealer
from coachbot.store.tables import cases, clinicians, contacts, history, messages, notes, outbox, pieces


@dataclass(frozen=True, slots=True)
class _Sealed:
    """A sealed column; `address` reads the address out of it where the row is found by that."""

    table: Table
    column: str
    purpose: Purpose
    address: Callable[[bytes], str] | None = None


@dataclass(frozen=True, slots=True)
class Place:
    """How far a round has come: the column, by its number in `SEALED`, and the key of the row done last."""

    column: int = 0
    after: tuple[Any, ...] | None = None


@dataclass(frozen=True, slots=True)
class Step:
    """What one batch did: how many values, and where to go on; None at the end of the round."""

    count: int
    following: Place | None


def reseal(connection: Connection, sealer: Sealer, limit: int, place: Place) -> Step:
    """Seal anew up to `limit` values of one column, from `place` on.

    Raises:
        UnsealError: if a value was sealed with a key that is not among the sealer's.
    """
    rows = _reseal(connection, sealer, SEALED[place.column], limit, place.after)
    if len(rows) == limit:
        return Step(len(rows), Place(place.column, rows[-1]))
    following = place.column + 1
    return Step(len(rows), Place(following) if following < len(SEALED) else None)


def _reseal(
    connection: Connection, sealer: Sealer, sealed: _Sealed, limit: int, after: tuple[Any, ...] | None
) -> list[tuple[Any, ...]]:
    column = sealed.table.c[sealed.column]
    keys = list(sealed.table.primary_key.columns)
    head = func.substr(column, 1, len(sealer.head), type_=LargeBinary)
    left = select(sealed.table).where(column.is_not(None), head != literal(sealer.head)).order_by(*keys).limit(limit)
    if after is not None:
        values = [literal(value, key.type) for key, value in zip(keys, after, strict=True)]
        left = left.where(tuple_(*keys) > tuple_(*values))
    rows = connection.execute(left.with_for_update()).all()
    if rows:
        same = [key == bindparam(f"same_{key.name}") for key in keys]
        changes = [
            {f"same_{key.name}": getattr(row, key.name) for key in keys} | _anew(sealer, sealed, row) for row in rows
        ]
        connection.execute(sealed.table.update().where(*same), changes)
    return [tuple(getattr(row, key.name) for key in keys) for row in rows]


def _anew(sealer: Sealer, sealed: _Sealed, row: Row[Any]) -> dict[str, bytes]:
    plain = sealer.open(sealed.purpose, getattr(row, sealed.column))
    anew = {sealed.column: sealer.seal(sealed.purpose, plain)}
    if sealed.address:
        anew["address_hash"] = sealer.lookup(Purpose.ADDRESS, f"{row.channel}:{sealed.address(plain)}")
    return anew


SEALED = (
    _Sealed(cases, "document", Purpose.CASE),
    _Sealed(history, "payload", Purpose.EVENT),
    _Sealed(messages, "body", Purpose.MESSAGE, lambda plain: decode_body(plain).address),
    _Sealed(messages, "evidence", Purpose.EVIDENCE),
    _Sealed(pieces, "words", Purpose.MESSAGE, address_of),
    _Sealed(outbox, "body", Purpose.OUTGOING),
    _Sealed(contacts, "address", Purpose.ADDRESS, bytes.decode),
    _Sealed(clinicians, "address", Purpose.ADDRESS, bytes.decode),
    _Sealed(clinicians, "totp", Purpose.SIGN_IN),
    _Sealed(notes, "words", Purpose.NOTE),
)

SETTING = "keys"
"""The setting that holds the names of the keys in use, which stand in every sealed value too."""


def unnamed(connection: Connection, sealer: Sealer) -> bool:
    """Whether the names that are remembered are no longer those of the keys in use.

    Raises:
        UnsealError: if something is sealed with a key that was in use and is not among those given.
    """
    kept = _names(connection)
    missing = kept - sealer.names
    if any(_has_sealed(connection, bytes.fromhex(name)) for name in missing):
        raise UnsealError(
            "some of what is kept is sealed with a key that is not among those given: add the clinic's earlier key "
            "after a comma, and run `coachbot key rotate` before you drop it"
        )
    return bool(missing) or sealer.first not in kept


def remember(connection: Connection, sealer: Sealer) -> None:
    """Remember the name of the first key, which seals from now on, and forget those of keys that were dropped."""
    kept = _names(connection) & sealer.names
    Clinic(connection).put(SETTING, " ".join(sorted({*kept, sealer.first})))


def _names(connection: Connection) -> set[str]:
    return set((Clinic(connection).get(SETTING) or "").split())


def _has_sealed(connection: Connection, name: bytes) -> bool:
    """Looks through everything; asked only once a key was dropped."""
    for sealed in SEALED:
        column = sealed.table.c[sealed.column]
        head = func.substr(column, 1, HEAD_BYTES, type_=LargeBinary)
        if connection.execute(select(column).where(head == literal(FORMAT + name)).limit(1)).first():
            return True
    return False

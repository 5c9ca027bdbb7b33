"""Key rotation: what an earlier key sealed is sealed anew with the first, a batch a transaction.

Which values are left is read from the values themselves, so a rotation that was broken off goes on where it stopped.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, LargeBinary, Row, Table, bindparam, func, literal, select

from coachbot.store.messages import decode_body
from coachbot.store.pieces import address_of
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import cases, clinicians, contacts, history, messages, notes, outbox, pieces


@dataclass(frozen=True, slots=True)
class _Sealed:
    """A sealed column; `address` reads the address out of it where the row is found by that."""

    table: Table
    column: str
    purpose: Purpose
    address: Callable[[bytes], str] | None = None


def reseal(connection: Connection, sealer: Sealer, limit: int) -> int:
    """Seal anew up to `limit` values of one column. Returns how many it was; 0 when no column has any left.

    Raises:
        UnsealError: if a value was sealed with a key that is not among the sealer's.
    """
    counts = (_reseal(connection, sealer, sealed, limit) for sealed in SEALED)
    return next(filter(None, counts), 0)


def _reseal(connection: Connection, sealer: Sealer, sealed: _Sealed, limit: int) -> int:
    column = sealed.table.c[sealed.column]
    head = func.substr(column, 1, len(sealer.head), type_=LargeBinary)
    left = select(sealed.table).where(column.is_not(None), head != literal(sealer.head)).limit(limit)
    rows = connection.execute(left.with_for_update()).all()
    if rows:
        keys = sealed.table.primary_key.columns
        same = [key == bindparam(f"same_{key.name}") for key in keys]
        changes = [
            {f"same_{key.name}": getattr(row, key.name) for key in keys} | _anew(sealer, sealed, row) for row in rows
        ]
        connection.execute(sealed.table.update().where(*same), changes)
    return len(rows)


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

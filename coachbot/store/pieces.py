"""Pieces of longer messages, kept until the last has come: the network forgets a piece as soon as it was taken."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import ColumnElement, Connection, and_, func, select

from coachbot.store.dialects import insert_or_ignore
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import pieces

GAP = "[...]"
"""Stands for a piece that never came."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gathered:
    """A message put together again; `at` is when its first piece came."""

    channel: str
    address: str
    text: str
    at: datetime


@dataclass(frozen=True, slots=True)
class Longer:
    """Which longer message: its pieces share all of these."""

    channel: str
    address_hash: bytes
    reference: int
    total: int


class Pieces:
    """The pieces of one transaction."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def add(
        self, channel: str, address: str, *, reference: int, total: int, number: int, text: str, at: datetime
    ) -> Gathered | None:
        """Keep a piece; one that is there already is passed by. Returns the whole once nothing is missing."""
        address_hash = self._sealer.lookup(Purpose.ADDRESS, f"{channel}:{address}")
        longer = Longer(channel, address_hash, reference, total)
        row = {
            "channel": channel,
            "address_hash": address_hash,
            "reference": reference,
            "total": total,
            "number": number,
            "words": self._sealer.seal(Purpose.MESSAGE, _packed(address, text)),
            "received_at": at,
        }
        self._connection.execute(insert_or_ignore(self._connection, pieces), row)
        here = self._connection.execute(select(func.count()).select_from(pieces).where(_of(longer))).scalar_one()
        return self.take(longer) if here == total else None

    def overdue(self, before: datetime) -> list[Longer]:
        """The messages whose first piece came before then."""
        which = (pieces.c.channel, pieces.c.address_hash, pieces.c.reference, pieces.c.total)
        query = select(*which).group_by(*which).having(func.min(pieces.c.received_at) <= before)
        return [Longer(*row) for row in self._connection.execute(query)]

    def take(self, longer: Longer) -> Gathered | None:
        """Take out what there is of a message, with a mark where something is missing; None if it is gone."""
        rows = self._connection.execute(pieces.delete().where(_of(longer)).returning(pieces)).all()
        if not rows:
            return None
        opened = {row.number: self._sealer.open(Purpose.MESSAGE, row.words) for row in rows}
        words: defaultdict[int, bytes] = defaultdict(lambda: GAP.encode("utf-16-be"))
        words.update({number: plain.partition(b"\n")[2] for number, plain in opened.items()})
        text = b"".join(words[number] for number in range(1, longer.total + 1)).decode("utf-16-be", "replace")
        address = address_of(next(iter(opened.values())))
        return Gathered(channel=longer.channel, address=address, text=text, at=min(row.received_at for row in rows))


def address_of(plain: bytes) -> str:
    """The address in what is sealed of a piece."""
    return plain.partition(b"\n")[0].decode()


def _packed(address: str, text: str) -> bytes:
    """Words in UTF-16, for a phone may cut a character in two that takes two units."""
    return address.encode() + b"\n" + text.encode("utf-16-be", "surrogatepass")


def _of(longer: Longer) -> ColumnElement[bool]:
    return and_(
        pieces.c.channel == longer.channel,
        pieces.c.address_hash == longer.address_hash,
        pieces.c.reference == longer.reference,
        pieces.c.total == longer.total,
    )

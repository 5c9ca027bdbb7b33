"""The outbox: most urgent first, then oldest; one message in flight for each recipient, in that recipient's order.

A message is claimed for a while (its lease), sent outside any transaction, and settled. A claim whose lease has run out
belongs to a sender that died: whether its message went out is unknown (law 7).
"""

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import Any

import msgspec
from sqlalchemy import (
    Column,
    ColumnElement,
    Connection,
    FromClause,
    Integer,
    Row,
    ScalarSelect,
    Select,
    and_,
    bindparam,
    exists,
    func,
    literal_column,
    null,
    or_,
    select,
)
from sqlalchemy.sql.dml import ReturningUpdate

from coachbot.coach.actions import Urgency
from coachbot.coach.events import Outcome
from coachbot.store.dialects import insert_or_ignore
from coachbot.store.documents import encode
from coachbot.store.envelopes import Backlog, Body, Claimed, EndedSend, Envelope, Status, Written, recipient
from coachbot.store.errors import UnsealError
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import clinicians, contacts, deliveries, outbox

SENT_AGAIN = (Urgency.SAFETY, Urgency.ALERT)
"""Law 7: what is sent again when nobody knows whether it went out."""

_AGAIN = [int(urgency) for urgency in SENT_AGAIN]

AHEAD = timedelta(minutes=2)
"""No lease is longer, and hardly a wait: what lies further ahead was written before the clock was set back."""

# Written out, not bound: a database uses a partial index only for a condition that it can read in the statement.
WAITING: ColumnElement[str] = literal_column("'waiting'")
CLAIMED: ColumnElement[str] = literal_column("'claimed'")


class Outbox:
    """The outgoing messages of one transaction."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def add(self, envelopes: Sequence[Envelope], now: datetime) -> None:
        """Put messages in; one that is there already (same case, key and recipient) is passed by."""
        if envelopes:
            rows = [self._row(envelope, now) for envelope in envelopes]
            self._connection.execute(insert_or_ignore(self._connection, outbox), rows)

    def claim(self, now: datetime, limit: int, lease: timedelta) -> list[Claimed]:
        """Take up to `limit` messages to send, for `lease`; nobody else gets them meanwhile.

        Each is the first in its recipient's line, with none of that recipient's in flight, and has not expired.
        """
        ids: list[int] = []
        for urgency in Urgency:
            if len(ids) < limit:
                ids += self._claim(urgency, limit - len(ids), now, now + lease)
        rows = self._connection.execute(_CLAIMED.where(outbox.c.id.in_(ids))).all() if ids else []
        return sorted(map(self._claimed, rows), key=lambda one: ids.index(one.id))

    def settle(
        self,
        message_id: int,
        outcome: Outcome,
        at: datetime,
        channel_id: str | None = None,
        *,
        pause: timedelta = timedelta(0),
    ) -> EndedSend | None:
        """Say how a send ended; `channel_id` is the channel's name for what was sent.

        What is sent again (law 7) waits for `pause` first.

        Returns what the coach is to hear, or None: when the message will be sent again (law 7), or had ended before.
        """
        if outcome is Outcome.UNKNOWN and self._sent_again(message_id, at + pause):
            return None
        before = _SETTLED_FROM.get(outcome, [Status.CLAIMED])
        return next(iter(self._end([message_id], Status(outcome), outcome, at, channel_id, before=before)), None)

    def lose(self, message_id: int, outcome: Outcome, at: datetime) -> EndedSend | None:
        """What was sent has not arrived, as its channel has learned since. None if it had not been sent."""
        mine = (outbox.c.id == message_id) & (outbox.c.status == Status.SENT)
        lost = outbox.update().where(mine).values(status=Status(outcome), settled_at=at)
        row = self._connection.execute(lost.returning(outbox)).first()
        return EndedSend(case_id=row.case_id, key=row.key, contact_id=row.contact_id, outcome=outcome) if row else None

    def put_back(self, message_id: int, not_before: datetime) -> None:
        """Let a claimed message wait until then: the channel said later."""
        mine = (outbox.c.id == message_id) & (outbox.c.status == CLAIMED)
        self._connection.execute(outbox.update().where(mine), _WAITING_AGAIN | {"not_before": not_before})

    def lapse(self, now: datetime, limit: int = 500) -> list[EndedSend]:
        """End what has expired, and what a dead sender left behind, save what is sent again (law 7).

        Returns what the coach is to hear, at most `limit` of each; call again while anything comes.
        """
        left = (outbox.c.status == CLAIMED) & (outbox.c.lease_until <= now)
        again = outbox.c.urgency.in_(_AGAIN)
        self._connection.execute(outbox.update().where(left, again), _WAITING_AGAIN | {"not_before": now})
        expired = (outbox.c.status == WAITING) & (outbox.c.expires_at <= now)
        return [
            *self._end(self._some(left & ~again, outbox.c.lease_until, limit), Status.UNKNOWN, Outcome.UNKNOWN, now),
            *self._end(self._some(expired, outbox.c.expires_at, limit), Status.EXPIRED, Outcome.NEVER, now),
        ]

    def set_back(self, now: datetime) -> None:
        """The clock has been set back: let nobody wait for an instant that was near when it was written and is far now.

        Claims go back as of a sender that died; what was put off may be tried now. A prompt to practise keeps its time:
        it was written for an evening that is yet to come.
        """
        ahead = now + AHEAD
        far = (outbox.c.created_at > ahead) | (outbox.c.not_before > ahead)
        any_time = outbox.c.urgency != int(Urgency.PROMPT)
        waits = (outbox.c.status == WAITING) & (outbox.c.not_before > now) & far & any_time
        self._connection.execute(outbox.update().where(waits), {"not_before": now})
        held = (outbox.c.status == CLAIMED) & (outbox.c.lease_until > ahead)
        self._connection.execute(outbox.update().where(held), {"lease_until": now})

    def take_back(self, case_id: int, urgencies: Sequence[Urgency], now: datetime) -> None:
        """Do not send what waits for a family at these urgencies: practice is on hold, or the family has stopped."""
        family = (outbox.c.case_id == case_id) & outbox.c.contact_id.is_not(None) & (outbox.c.status == WAITING)
        mine = family & outbox.c.urgency.in_([int(urgency) for urgency in urgencies])
        self._connection.execute(outbox.update().where(mine), {"status": Status.CANCELLED, "settled_at": now})

    def unsent(self) -> dict[Urgency, Backlog]:
        """What waits or is on its way, by urgency; an urgency with nothing is left out."""
        query = select(outbox.c.urgency, func.count().label("number"), func.min(outbox.c.created_at).label("oldest"))
        # One query for each state, for each has an index of its own.
        states = [query.where(outbox.c.status == state).group_by(outbox.c.urgency) for state in (WAITING, CLAIMED)]
        rows = [row for state in states for row in self._connection.execute(state)]
        by_urgency = {urgency: [row for row in rows if row.urgency == urgency] for urgency in Urgency}
        return {
            urgency: Backlog(count=sum(row.number for row in found), oldest=min(row.oldest for row in found))
            for urgency, found in by_urgency.items()
            if found
        }

    def of_case(self, case_id: int) -> list[Written]:
        """All that was written to anybody about a case, in order."""
        query = select(outbox, _DELIVERED).where(outbox.c.case_id == case_id).order_by(outbox.c.id)
        return [self._written(row) for row in self._connection.execute(query)]

    def _row(self, envelope: Envelope, now: datetime) -> dict[str, Any]:
        body = Body(
            text=envelope.text,
            buttons=envelope.buttons,
            picture=envelope.picture,
            attachment=envelope.attachment,
            stranger=envelope.stranger,
        )
        return {
            "case_id": envelope.case_id,
            "key": envelope.key,
            "recipient": self._recipient(envelope),
            "contact_id": envelope.contact_id,
            "clinician_id": envelope.clinician_id,
            "urgency": int(envelope.urgency),
            "status": Status.WAITING,
            "body": self._sealer.seal(Purpose.OUTGOING, encode(body)),
            "alert": envelope.alert,
            "created_at": now,
            "not_before": envelope.not_before or now,
            "expires_at": envelope.expires,
            "attempts": 0,
            "farewell": False,
        }

    def _recipient(self, envelope: Envelope) -> str:
        if envelope.stranger:
            return "stranger:" + self._sealer.lookup(Purpose.ADDRESS, ":".join(envelope.stranger)).hex()
        return recipient(contact_id=envelope.contact_id, clinician_id=envelope.clinician_id)

    def _claim(self, urgency: Urgency, most: int, now: datetime, until: datetime) -> list[int]:
        wanted = {"level": int(urgency), "most": most, "now": now, "until": until}
        rows = self._connection.execute(_CLAIM, wanted).all()
        return [row.id for row in sorted(rows, key=lambda row: (row.not_before, row.id))]

    def _sent_again(self, message_id: int, not_before: datetime) -> bool:
        mine = (outbox.c.id == message_id) & (outbox.c.status == CLAIMED) & outbox.c.urgency.in_(_AGAIN)
        done = self._connection.execute(outbox.update().where(mine), _WAITING_AGAIN | {"not_before": not_before})
        return bool(done.rowcount)

    def _some(self, condition: ColumnElement[bool], order: Column[datetime], limit: int) -> list[int]:
        query = select(outbox.c.id).where(condition).order_by(order).limit(limit)
        return list(self._connection.execute(query.with_for_update(skip_locked=True)).scalars())

    def _end(
        self,
        ids: Sequence[int],
        status: Status,
        outcome: Outcome,
        at: datetime,
        channel_id: str | None = None,
        *,
        before: Sequence[Status] = (Status.WAITING, Status.CLAIMED),
    ) -> list[EndedSend]:
        """End those that still stand as one of `before`: the database looks and writes in one statement."""
        if not ids:
            return []
        values = {"status": status, "settled_at": at, "channel_id": channel_id, "ids": ids, "before": before}
        rows = self._connection.execute(_END, values).all()
        self._bury([row for row in rows if row.farewell])
        return [EndedSend(case_id=row.case_id, key=row.key, contact_id=row.contact_id, outcome=outcome) for row in rows]

    def _bury(self, rows: Sequence[Row[Any]]) -> None:
        """The last words to an erased family have ended: they go, and the address with the last of them."""
        if not rows:
            return
        self._connection.execute(outbox.delete().where(outbox.c.id.in_([row.id for row in rows])))
        still = exists().where(outbox.c.contact_id == contacts.c.id, outbox.c.case_id == contacts.c.case_id)
        erased = contacts.c.case_id.in_({row.case_id for row in rows})
        self._connection.execute(contacts.delete().where(erased, ~still))

    def _claimed(self, row: Row[Any]) -> Claimed:
        try:
            body = self._body(row)
            channel, address = body.stranger or (row.channel, self._address(row.address))
        except UnsealError:  # changed bytes: it can be sent to nobody, and must not keep back what can
            body, channel, address = Body(text=""), None, None
        return Claimed(
            id=row.id,
            case_id=row.case_id,
            key=row.key,
            contact_id=row.contact_id,
            clinician_id=row.clinician_id,
            channel=channel,
            address=address,
            urgency=Urgency(row.urgency),
            attempts=row.attempts,
            created_at=row.created_at,
            expires=row.expires_at,
            body=body,
            alert=row.alert,
        )

    def _written(self, row: Row[Any]) -> Written:
        return Written(
            id=row.id,
            key=row.key,
            contact_id=row.contact_id,
            clinician_id=row.clinician_id,
            status=Status(row.status),
            delivered=row.delivered,
            created_at=row.created_at,
            settled_at=row.settled_at,
            body=self._body(row),
        )

    def _body(self, row: Row[Any]) -> Body:
        return _decode(self._sealer.open(Purpose.OUTGOING, row.body))

    def _address(self, sealed: bytes | None) -> str | None:
        return self._sealer.open(Purpose.ADDRESS, sealed).decode() if sealed else None


def _fresh(row: FromClause) -> ColumnElement[bool]:
    return or_(row.c.expires_at.is_(None), row.c.expires_at > bindparam("now"))


def _first_in_line(row: FromClause) -> ScalarSelect[int]:
    line = outbox.alias("line")
    return (
        select(line.c.id)
        .where(line.c.recipient == row.c.recipient, line.c.status == WAITING, _fresh(line))
        .order_by(line.c.urgency, line.c.id)
        .limit(literal_column("1"))
        .scalar_subquery()
    )


def _claim_next() -> ReturningUpdate[Any]:
    """Claim the next messages of one urgency. Locked by the way, and those that another process has locked passed by.

    Urgency and limit are put into the statement, not bound to it: PostgreSQL would plan for any limit, and badly.
    """
    row, flying = outbox.alias("candidate"), outbox.alias("flying")
    in_flight = exists().where(flying.c.recipient == row.c.recipient, flying.c.status == CLAIMED)
    picked = (
        select(row.c.id)
        .where(row.c.status == WAITING, row.c.urgency == bindparam("level", type_=Integer, literal_execute=True))
        .where(row.c.not_before <= bindparam("now"), _fresh(row), row.c.id == _first_in_line(row), ~in_flight)
        .order_by(row.c.not_before, row.c.id)
        .limit(bindparam("most", type_=Integer, literal_execute=True))
        .with_for_update(skip_locked=True)
        .cte("picked")
    )
    values = {"status": CLAIMED, "lease_until": bindparam("until"), "attempts": outbox.c.attempts + 1}
    claim = outbox.update().where(outbox.c.id == picked.c.id).values(values)
    return claim.returning(outbox.c.id, outbox.c.not_before)


def _delivered() -> ColumnElement[bool]:
    """Whether a channel that reports has reported of each piece that it arrived."""
    reports = select(deliveries.c.id).where(deliveries.c.outbox_id == outbox.c.id)
    return and_(reports.exists(), ~reports.where(deliveries.c.outcome.is_distinct_from(Outcome.SENT)).exists())


_CLAIM = _claim_next()
_DELIVERED = _delivered().label("delivered")
_CLAIMED: Select[Any] = (
    select(
        outbox,
        func.coalesce(contacts.c.channel, clinicians.c.channel).label("channel"),
        func.coalesce(contacts.c.address, clinicians.c.address).label("address"),
    )
    .outerjoin(contacts, contacts.c.id == outbox.c.contact_id)
    .outerjoin(clinicians, clinicians.c.id == outbox.c.clinician_id)
)
_END = (
    outbox.update()
    .where(outbox.c.id.in_(bindparam("ids", expanding=True)))
    .where(outbox.c.status.in_(bindparam("before", expanding=True)))
    .values(lease_until=null())
    .returning(outbox.c.case_id, outbox.c.key, outbox.c.contact_id, outbox.c.farewell, outbox.c.id)
)
# A sender that was thought dead may yet say that it did send, while the message waits to be sent again.
_SETTLED_FROM = {Outcome.SENT: [Status.CLAIMED, Status.WAITING]}
_WAITING_AGAIN: dict[str, Any] = {"status": Status.WAITING, "lease_until": None}
_decode = msgspec.json.Decoder(Body).decode

"""Quick looks over all cases at once, for a list that is read often: what has changed, what is open, what is unread."""

from collections.abc import Collection, Iterator
from itertools import islice

from sqlalchemy import Connection, func, select

from coachbot.coach.case import Case
from coachbot.store.documents import decode_case
from coachbot.store.sealing import Purpose, Sealer
from coachbot.store.tables import alerts, cases, messages

CHUNK = 500
"""How many ids one statement names: both databases take more, not any number."""


class Board:
    """All cases of one transaction at a glance."""

    def __init__(self, connection: Connection, sealer: Sealer) -> None:
        self._connection = connection
        self._sealer = sealer

    def versions(self) -> dict[int, int]:
        """The version of every case by its id: a case whose version is known need not be opened again."""
        return {row[0]: row[1] for row in self._connection.execute(select(cases.c.id, cases.c.version))}

    def cases(self, ids: Collection[int]) -> Iterator[tuple[int, Case]]:
        """These cases with their versions, opened one after the other."""
        left = iter(ids)
        while some := list(islice(left, CHUNK)):
            query = select(cases.c.version, cases.c.document).where(cases.c.id.in_(some))
            for version, document in self._connection.execute(query):
                yield version, decode_case(self._sealer.open(Purpose.CASE, document))

    def unread(self) -> dict[int, int]:
        """How many unread messages wait, by case."""
        waits = messages.c.unread_at.is_not(None) & messages.c.read_at.is_(None) & messages.c.case_id.is_not(None)
        query = select(messages.c.case_id, func.count()).where(waits).group_by(messages.c.case_id)
        return {row[0]: row[1] for row in self._connection.execute(query)}

    def open_alerts(self) -> list[tuple[int, int, int]]:
        """Case, number and level of every open alert: the worst first, then the oldest."""
        query = select(alerts.c.case_id, alerts.c.number, alerts.c.level).where(alerts.c.acknowledged_at.is_(None))
        ordered = query.order_by(alerts.c.level.desc(), alerts.c.raised_at, alerts.c.case_id, alerts.c.number)
        return [(case_id, number, level) for case_id, number, level in self._connection.execute(ordered)]

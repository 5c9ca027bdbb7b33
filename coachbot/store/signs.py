"""Signs of how the service fares, over all its processes: what is up, what was counted, what waits for somebody."""

from collections.abc import Iterable, Mapping
from datetime import datetime

from sqlalchemy import Connection, exists, func, select, text

from coachbot.store.dialects import insert_or_add, insert_or_update
from coachbot.store.envelopes import Backlog, Status
from coachbot.store.tables import alerts, cases, lines, outbox, settings, tallies
from coachbot.triage.levels import Level

Sample = tuple[str, str]
"""A sample's name and its labels as JSON, as `coachbot.measures` makes them."""

PROBE = "probed"


class Signs:
    """The signs of one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def up(self, channels: Iterable[str], at: datetime) -> None:
        """Say that these channels take messages in."""
        for channel in sorted(channels):
            statement = insert_or_update(self._connection, lines, "channel", "up_at")
            self._connection.execute(statement, {"channel": channel, "up_at": at})

    def lines(self) -> dict[str, datetime]:
        """When each channel was last up."""
        return {row.channel: row.up_at for row in self._connection.execute(select(lines))}

    def count(self, more: Mapping[Sample, float]) -> None:
        """Add to what was counted before. In one order for all, so that two processes never wait for each other."""
        rows = [{"sample": key[0], "labels": key[1], "value": value} for key, value in sorted(more.items())]
        if rows:
            self._connection.execute(insert_or_add(self._connection, tallies, "value"), rows)

    def counted(self) -> dict[Sample, float]:
        """All that was counted."""
        return {(row.sample, row.labels): row.value for row in self._connection.execute(select(tallies))}

    def open_alerts(self) -> dict[Level, Backlog]:
        """The alerts that nobody has acknowledged, by level; a level without any is left out."""
        query = select(alerts.c.level, func.count(), func.min(alerts.c.raised_at))
        rows = self._connection.execute(query.where(alerts.c.acknowledged_at.is_(None)).group_by(alerts.c.level))
        return {Level(level): Backlog(count=count, oldest=oldest) for level, count, oldest in rows}

    def undelivered(self, before: datetime) -> int:
        """How many open alerts, raised before then, have been sent to no clinician at all."""
        told = exists().where(
            outbox.c.case_id == alerts.c.case_id,
            outbox.c.alert == alerts.c.number,
            outbox.c.clinician_id.is_not(None),
            outbox.c.status == Status.SENT,
        )
        unheard = (alerts.c.acknowledged_at.is_(None)) & (alerts.c.raised_at < before) & ~told
        return self._connection.execute(select(func.count()).select_from(alerts).where(unheard)).scalar_one()

    def unreachable(self) -> int:
        """How many families in the programme have no adult who can be written to."""
        query = select(func.count()).select_from(cases).where(text("cases.unreachable"))  # as the partial index has it
        return self._connection.execute(query).scalar_one()

    def probe(self, at: datetime) -> None:
        """Write something of no use: if that is kept, the database can be written."""
        statement = insert_or_update(self._connection, settings, "key", "value")
        self._connection.execute(statement, {"key": PROBE, "value": at.isoformat()})

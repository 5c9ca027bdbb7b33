"""What belongs to the clinic as a whole: its settings, and that its processes are alive."""

from datetime import datetime, timedelta

from sqlalchemy import Connection, select

from coachbot.store.dialects import insert_or_update
from coachbot.store.tables import heartbeats, settings

GONE = timedelta(days=1)
"""A process that was not felt for so long is not there any more."""


class Clinic:
    """Settings and heartbeats of one transaction."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def beat(self, process: str, at: datetime) -> None:
        """Say that a process is alive, and forget those that have long gone."""
        self._connection.execute(heartbeats.delete().where(heartbeats.c.at < at - GONE))
        statement = insert_or_update(self._connection, heartbeats, "process", "at")
        self._connection.execute(statement, {"process": process, "at": at})

    def beats(self) -> dict[str, datetime]:
        """When each process was last alive."""
        return {row.process: row.at for row in self._connection.execute(select(heartbeats))}

    def put(self, key: str, value: str) -> None:
        """Keep a setting. It is not sealed: no secret and no family's word belongs here."""
        self._connection.execute(
            insert_or_update(self._connection, settings, "key", "value"), {"key": key, "value": value}
        )

    def get(self, key: str) -> str | None:
        """A setting, or None while there is none."""
        return self._connection.execute(select(settings.c.value).where(settings.c.key == key)).scalar_one_or_none()

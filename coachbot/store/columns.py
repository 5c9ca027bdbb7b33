"""Kinds of column that both databases keep alike."""

from datetime import UTC, datetime

from sqlalchemy import BigInteger, DateTime, Dialect, Integer
from sqlalchemy.types import TypeDecorator

Id = BigInteger().with_variant(Integer(), "sqlite")
"""A row number. SQLite counts up by itself only in a plain INTEGER."""


class Instant(TypeDecorator[datetime]):
    """An instant. Goes in aware, in any zone; comes back aware, in UTC, whatever the database does with zones."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """Refuse what is no instant."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"{value} has no time zone: the store keeps instants only")
        return value.astimezone(UTC)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """Say again that it is UTC, where the database forgot."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)

"""What can go wrong between the program and its database; each says what to do."""

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DataError, DBAPIError, IntegrityError, StatementError


class StoreError(RuntimeError):
    """Any trouble of the store. Nothing of the transaction that raised it was kept."""


class BadKeyError(StoreError, ValueError):
    """The clinic's key cannot be used as given."""


class UnsealError(StoreError):
    """What is kept cannot be opened: the key is another one, or the bytes were changed."""


class SchemaError(StoreError):
    """The tables are not those that this program was written for."""


class NoSuchCaseError(StoreError, KeyError):
    """There is no case of that id: never was, or erased."""

    def __str__(self) -> str:
        return f"there is no case {self.args[0]}"


class StaleCaseError(StoreError):
    """The case was changed by somebody else, or was not loaded in this transaction: load it and decide anew."""


class LawError(StoreError):
    """The database refused a value: a second row for what may be there once, or one that is out of its range."""


class UnavailableError(StoreError):
    """The database is out of reach, full, locked or read-only. Nothing was kept, so nothing may be acknowledged.

    `word` says which in the driver's own word, ``SQLITE_FULL`` or ``ReadOnlySqlTransaction``: fit for a log.
    """

    word = "unavailable"


@contextmanager
def translated() -> Iterator[None]:
    """Hand the driver's errors on as the store's own, so that nobody outside needs to know the driver."""
    try:
        yield
    except (IntegrityError, DataError) as error:
        raise LawError(f"refused by the database: {_first_line(error)}") from error
    except DBAPIError as error:
        unavailable = UnavailableError(f"the database did not take it: {_first_line(error)}")
        unavailable.word = getattr(error.orig, "sqlite_errorname", "") or type(error.orig).__name__
        raise unavailable from error
    except StatementError as error:
        raise (error.orig or error) from error


def _first_line(error: DBAPIError) -> str:
    """What the driver says, without the details that follow: PostgreSQL quotes whole rows there."""
    return str(error.orig).partition("\n")[0]

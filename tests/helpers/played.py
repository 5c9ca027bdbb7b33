"""A beginning that many tests share: played once for each kind of database, and from then on brought back by rows."""

from collections.abc import Awaitable, Callable, Collection, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cache
from typing import Any

import pytest
from sqlalchemy import Table, select

from coachbot.coach.case import Role
from coachbot.rehearsal.stage import Spoken, Stage, cast, empty
from coachbot.store import Store, Transaction
from coachbot.store.tables import metadata
from coachbot.voice.catalogue import Catalogue

Play = Callable[[Stage], Awaitable[None]]

Rows = Sequence[tuple[Table, Sequence[dict[str, Any]]]]
"""What stood in the tables that held anything."""


@dataclass(frozen=True, slots=True)
class Kept:
    """All that there was once the beginning was over."""

    rows: Rows
    now: datetime
    case_id: int
    codes: dict[Role, str]
    spoken: dict[str, tuple[Spoken, ...]]


_texts = cache(Catalogue.load)


@contextmanager
def texts_read_once() -> Iterator[None]:
    """Every coachbot that is built meanwhile has the same catalogue, which cannot be changed."""
    texts = _texts()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Catalogue, "load", lambda **_: texts)
        yield


_kept: dict[tuple[str, Play], Kept] = {}


async def played(store: Store, play: Play, *, texting: Collection[str] = ()) -> Stage:
    """A stage over an empty store on which `play` is over; always the same `play` has the same `texting`."""
    key = (store.run(lambda tx: tx._connection.dialect.name), play)
    if key not in _kept:
        stage = await cast(store, texting=texting)
        await play(stage)
        spoken = {phone: tuple(said) for phone, said in stage.spoken.items()}
        _kept[key] = Kept(store.run(rows), stage.clock.now, stage.case_id, stage.codes, spoken)
        return stage
    kept = _kept[key]
    store.run(lambda tx: bring_back(tx, kept.rows))
    stage = await empty(store, start=kept.now, texting=texting)
    stage.spoken.update({phone: list(said) for phone, said in kept.spoken.items()})
    return replace(stage, case_id=kept.case_id, codes=kept.codes)


def rows(tx: Transaction) -> Rows:
    """All that the store holds. Ids are above all that a database has given since: a sequence never goes back."""
    found = ((table, tx._connection.execute(select(table)).mappings().all()) for table in metadata.sorted_tables)
    return [(table, [dict(row) for row in some]) for table, some in found if some]


def bring_back(tx: Transaction, found: Rows) -> None:
    """Put it into a store that holds nothing of it yet."""
    for table, some in found:
        if some:
            tx._connection.execute(table.insert(), some)

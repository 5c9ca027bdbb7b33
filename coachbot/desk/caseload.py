"""The caseload: a line for each child; found, sorted and narrowed down."""

import unicodedata
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from markupsafe import Markup
from starlette.responses import Response

from coachbot.coach.case import State
from coachbot.desk.board import Row
from coachbot.desk.plots import strip
from coachbot.desk.visit import Visit
from coachbot.programme.zones import local

PAGE = 100
"""Children on one page."""

WEEKS = 4

GROUPS: dict[str, tuple[State, ...]] = {
    "waiting": (State.INVITED, State.LESSON),
    "practising": (State.PRACTISING,),
    "on_hold": (State.ON_HOLD,),
    "paused": (State.PAUSED,),
    "finished": (State.FINISHED, State.FOLLOWED_UP),
    "ended": (State.WITHDRAWN,),
}
"""What can be narrowed down to, besides `all` and `needs`."""


def _plain(text: str) -> str:
    """A name as it is searched for and sorted: without accents and capitals."""
    return "".join(one for one in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(one))


def _heard(row: Row) -> date:
    return row.line.evenings[-1][0] if row.line.evenings else date.min


SORTS: dict[str, Callable[[Row], Any]] = {
    "needs": lambda row: (tuple(-one for one in row.weight), _plain(row.line.child)),
    "name": lambda row: (_plain(row.line.child), row.line.case_id),
    "nights": lambda row: (-row.line.practised, _plain(row.line.child)),
    "missed": lambda row: (-row.line.missed, _plain(row.line.child)),
    "evening": lambda row: (-_heard(row).toordinal(), _plain(row.line.child)),
}


@dataclass(frozen=True, slots=True)
class Wanted:
    """What of the caseload is wanted."""

    show: str = "all"
    sort: str = "needs"
    words: str = ""
    page: int = 1


async def caseload(visit: Visit) -> Response:
    """The list."""
    wanted = _wanted(visit)
    board = visit.desk.board
    rows = await visit.read(board.rows)
    found = choose(rows, wanted)
    first = (wanted.page - 1) * PAGE
    part = found[first : first + PAGE]
    counts = {name: sum(row.line.state in states for row in rows) for name, states in GROUPS.items()}
    counts |= {"all": len(rows), "needs": sum(row.waits for row in rows)}
    pages = max(1, -(-len(found) // PAGE))
    today = {row.line.case_id: local(visit.now, row.line.zone).date() for row in part}
    strips: dict[int, Markup] = {row.line.case_id: _strip(visit, row, today[row.line.case_id]) for row in part}
    return await visit.page(
        "caseload.html",
        rows=part,
        found=len(found),
        counts=counts,
        wanted=wanted,
        pages=pages,
        strips=strips,
        sorts=tuple(SORTS),
        shows=("all", "needs", *GROUPS),
    )


def choose(rows: Iterable[Row], wanted: Wanted) -> list[Row]:
    """The rows that are wanted, in the order that is wanted."""
    words = _plain(wanted.words)
    found = [row for row in rows if _fits(row, wanted.show) and words in _plain(row.line.child)]
    return sorted(found, key=SORTS[wanted.sort])


def _fits(row: Row, show: str) -> bool:
    return show == "all" or (row.waits if show == "needs" else row.line.state in GROUPS[show])


def _wanted(visit: Visit) -> Wanted:
    show, sort, page = visit.query("show"), visit.query("sort"), visit.query("page")
    return Wanted(
        show=show if show == "needs" or show in GROUPS else "all",
        sort=sort if sort in SORTS else "needs",
        words=visit.query("words").strip()[:80],
        page=max(1, int(page)) if page.isdecimal() and len(page) < 6 else 1,  # noqa: PLR2004 - no clinic has so many
    )


def _strip(visit: Visit, row: Row, today: date) -> Markup:
    days = [today - timedelta(days=back) for back in range(7 * WEEKS - 1, -1, -1)]
    known = dict(row.line.evenings)
    done = sum(known.get(day) in ("finished", "partial") for day in days)
    return strip(
        [known.get(day) for day in days], visit.t("strip", done=done, evenings=sum(day in known for day in days))
    )

"""Whether the service lives, for those and for programs that watch over it."""

from starlette.responses import JSONResponse, PlainTextResponse, Response

from coachbot.desk.heading import head
from coachbot.desk.visit import Visit
from coachbot.store import StoreError


async def live(_: Visit) -> Response:
    """The process answers."""
    return PlainTextResponse("live")


async def ready(visit: Visit) -> Response:
    """Whether everything that alerts depend on works. 503 where something does not; names nobody."""
    try:
        found = await visit.read(lambda tx: head(tx, visit.desk.coachbot, visit.desk.settings, visit.now))
        state = {"store": True, "heartbeat": found.beating, "somebody_reachable": found.reachable}
    except StoreError:
        state = {"store": False, "heartbeat": False, "somebody_reachable": False}
    return JSONResponse(state, status_code=200 if all(state.values()) else 503)


async def status(visit: Visit) -> Response:
    """The same for people, with the outbox and the processes."""
    beats, backlog = await visit.read(lambda tx: (tx.clinic.beats(), tx.outbox.oldest_waiting()))
    return await visit.page("status.html", beats=sorted(beats.items()), backlog=sorted(backlog.items()))

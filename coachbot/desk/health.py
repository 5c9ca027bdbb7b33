"""Whether the service lives and works, for those who run it and for programs that watch over it."""

import asyncio
from dataclasses import asdict
from typing import Any

from starlette.responses import JSONResponse, PlainTextResponse, Response

from coachbot.coach.actions import Urgency
from coachbot.desk.visit import Visit
from coachbot.service.metrics import CONTENT_TYPE_LATEST, exposition
from coachbot.service.vitals import NOT_READY, Vitals, readiness, vitals
from coachbot.store import StoreError, Transaction
from coachbot.triage import Level

PATIENCE = 5.0
"""Seconds within which the store must have answered: less than whoever asks will wait."""


async def live(_: Visit) -> Response:
    """The process answers."""
    return PlainTextResponse("live")


async def ready(visit: Visit) -> Response:
    """Whether everything that alerts depend on works. 503 where something does not; names nobody."""
    try:
        async with asyncio.timeout(PATIENCE):
            await visit.desk.probe(visit.desk.coachbot.store, visit.now)
            found = await visit.read(lambda tx: _vitals(tx, visit))
        state = readiness(found, visit.desk.settings, visit.now)
    except (StoreError, TimeoutError):
        state = NOT_READY
    return JSONResponse(asdict(state), status_code=200 if state else 503)


async def metrics(visit: Visit) -> Response:
    """The signs of the moment and what was counted, for Prometheus."""
    found, counted = await visit.read(lambda tx: (_vitals(tx, visit), tx.signs.counted()))
    return Response(exposition(found, counted, visit.now), media_type=CONTENT_TYPE_LATEST)


async def status(visit: Visit) -> Response:
    """The signs of the moment for people; asked for directly, without the desk around it (`Page.local`)."""
    found = await visit.read(lambda tx: _vitals(tx, visit))
    shown: dict[str, Any] = {
        "found": found,
        "state": readiness(found, visit.desk.settings, visit.now),
        "urgencies": tuple(Urgency),
        "levels": tuple(level for level in reversed(Level) if level in found.alerts),
    }
    if visit.who is None:
        return visit.fragment("status_local.html", **shown)
    return await visit.page("status.html", **shown)


def _vitals(tx: Transaction, visit: Visit) -> Vitals:
    return vitals(tx, visit.desk.coachbot.channels, visit.now)

"""The desk as one application: its pages, and the headers that go with every answer.

Pages bring no script and no style of their own and load nothing from elsewhere; `HEADERS` holds them to it.
"""

import asyncio
from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager, suppress
from pathlib import Path

import jinja2
import structlog
from starlette.applications import Starlette
from starlette.datastructures import MutableHeaders
from starlette.routing import BaseRoute, Mount
from starlette.staticfiles import StaticFiles
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from coachbot.bootstrap import Coachbot
from coachbot.desk import (
    alerts,
    caseload,
    child,
    clinic,
    deeds,
    enrol,
    health,
    invitations,
    papers,
    signing_in,
    study,
    takeout,
    target,
)
from coachbot.desk.pages import CLINICAL, EVERYBODY, LEAD, STAFF, STUDY, Page, route
from coachbot.desk.visit import Desk
from coachbot.desk.wording import Wording
from coachbot.settings import Settings
from coachbot.store import StoreError

log = structlog.get_logger(__name__)

ROOT = Path(__file__).parent

PAGES = (
    Page("GET", "/live", health.live, EVERYBODY),
    Page("GET", "/ready", health.ready, EVERYBODY),
    Page("GET", "/sign-in", signing_in.ask, EVERYBODY),
    Page("POST", "/sign-in", signing_in.sign_in, EVERYBODY),
    Page("GET", "/", signing_in.home, STAFF),
    Page("POST", "/sign-out", signing_in.sign_out, STAFF),
    Page("GET", "/account", signing_in.account, STAFF),
    Page("POST", "/account/password", signing_in.change_password, STAFF),
    Page("POST", "/account/language", signing_in.change_language, STAFF),
    Page("GET", "/alerts", alerts.alerts, CLINICAL),
    Page("GET", "/alerts/list", alerts.listed, CLINICAL, quiet=True),
    Page("GET", "/alerts/pulse", alerts.pulse, CLINICAL, quiet=True),
    Page("POST", "/messages/{message:int}/read", alerts.read_message, CLINICAL),
    Page("GET", "/children", caseload.caseload, CLINICAL),
    Page("GET", "/children/{case:int}", child.child, CLINICAL),
    Page("POST", "/children/{case:int}/do/{deed}", deeds.do, CLINICAL),
    Page("POST", "/children/{case:int}/note", deeds.note, CLINICAL),
    Page("GET", "/children/{case:int}/report.{form}", papers.report, CLINICAL),
    Page("GET", "/children/{case:int}/certificate.png", papers.certificate, CLINICAL),
    Page("GET", "/children/{case:int}/sheets.pdf", papers.rating_sheets, CLINICAL),
    Page("GET", "/children/{case:int}/night", papers.entry, CLINICAL),
    Page("POST", "/children/{case:int}/night", papers.enter, CLINICAL),
    Page("GET", "/children/{case:int}/target", target.form, CLINICAL),
    Page("POST", "/children/{case:int}/target", target.take, CLINICAL),
    Page("POST", "/children/{case:int}/invitation", invitations.renew, CLINICAL),
    Page("GET", "/children/{case:int}/invitation/{key}", invitations.invited, CLINICAL),
    Page("GET", "/children/{case:int}/invitation/{key}/{index:int}.pdf", invitations.card, CLINICAL),
    Page("GET", "/children/{case:int}/kept.json", takeout.kept, CLINICAL),
    Page("GET", "/children/{case:int}/fhir.json", takeout.bundle, CLINICAL),
    Page("POST", "/children/{case:int}/erase", takeout.erase, LEAD),
    Page("GET", "/erased/{number:int}", takeout.erased, LEAD),
    Page("GET", "/enrol", enrol.form, CLINICAL),
    Page("POST", "/enrol", enrol.take, CLINICAL),
    Page("GET", "/study", study.study, STUDY),
    Page("GET", "/study/files.zip", study.files, STUDY),
    Page("GET", "/clinic", clinic.clinic, LEAD),
    Page("POST", "/clinic", clinic.change, LEAD),
    Page("POST", "/clinic/people", clinic.duty, LEAD),
    Page("POST", "/clinic/people/add", clinic.add, LEAD),
    Page("POST", "/clinic/people/renew", clinic.renew, LEAD),
    Page("GET", "/clinic/log", clinic.log, LEAD),
    Page("GET", "/clinic/texts", clinic.texts, CLINICAL),
    Page("GET", "/status", health.status, CLINICAL, local=True),
    Page("GET", "/metrics", health.metrics, LEAD, local=True),
)
"""Every page there is."""

HEADERS = {
    "content-security-policy": "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'self'",
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=()",
    "cache-control": "no-store",
}
"""On every answer that does not say otherwise."""

LOOK_SECONDS = 5.0
"""How often the caseload looks for estimates to work out."""


def build_app(coachbot: Coachbot, settings: Settings, extra_routes: Sequence[BaseRoute] = ()) -> Starlette:
    """The desk over a coachbot; `extra_routes` are served beside it, under the same headers.

    Raises:
        WordingError: if one of the desk's texts is missing or mis-formed.
    """
    desk = Desk(coachbot, settings, Wording.load(), templates())

    @asynccontextmanager
    async def lifespan(_: Starlette) -> AsyncIterator[None]:
        working = asyncio.create_task(_work_out(desk))
        yield
        working.cancel()
        with suppress(asyncio.CancelledError):
            await working

    routes: list[BaseRoute] = [*extra_routes, *(route(desk, page) for page in PAGES)]
    routes.append(Mount("/static", StaticFiles(directory=ROOT / "static")))
    app = Starlette(routes=routes, lifespan=lifespan)
    app.add_middleware(Headers, https=desk.url.startswith("https:"))
    app.state.desk = desk
    return app


def templates() -> jinja2.Environment:
    """The templates, which escape whatever they are given."""
    loader = jinja2.FileSystemLoader(ROOT / "templates")
    environment = jinja2.Environment(
        loader=loader, autoescape=True, undefined=jinja2.StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    environment.globals["static"] = _stamped()
    return environment


def _stamped() -> dict[str, str]:
    """The address of each static file, which changes when the file does."""
    paths = (ROOT / "static").iterdir()
    return {path.name: f"/static/{path.name}?{int(path.stat().st_mtime):x}" for path in paths}


class Headers:
    """Puts `HEADERS` on every answer."""

    def __init__(self, app: ASGIApp, *, https: bool) -> None:
        self._app = app
        self._headers = HEADERS | ({"strict-transport-security": "max-age=31536000"} if https else {})

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, and the answer back with its headers."""

        async def sending(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in self._headers.items():
                    headers.setdefault(name, value)
            await send(message)

        await self._app(scope, receive, sending if scope["type"] == "http" else send)


async def _work_out(desk: Desk) -> None:
    """Keep the caseload's estimates up to date, so that no page waits for them."""
    while True:
        try:
            await desk.coachbot.store.read(desk.board.rows)
            for line in desk.board.outstanding():
                await asyncio.to_thread(desk.board.work_out, line)
        except StoreError:
            log.exception("caseload_unavailable")
        await asyncio.sleep(LOOK_SECONDS)

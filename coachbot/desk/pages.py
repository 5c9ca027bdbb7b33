"""The way in: each page with its address, who may open it, and what stands before it."""

from collections.abc import Awaitable, Callable
from dataclasses import dataclass

import structlog
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from coachbot.coach.actions import Line
from coachbot.coach.texts import Audience
from coachbot.coach.turn import Refused
from coachbot.desk import sessions
from coachbot.desk.visit import Desk, FormError, Visit
from coachbot.service import defaults
from coachbot.service.writer import common_values
from coachbot.store import NoSuchCaseError, Session, Transaction, UnavailableError

log = structlog.get_logger(__name__)

Handler = Callable[[Visit], Awaitable[Response]]

EVERYBODY: frozenset[str] = frozenset()
"""No sign-in is asked for."""

LEAD = frozenset({"lead"})
CLINICAL = LEAD | {"clinician"}
STUDY = LEAD | {"researcher"}
STAFF = CLINICAL | {"researcher"}

FORWARDED = ("forwarded", "via", "x-forwarded-for")
"""What a server puts into a request that it passes on."""

LARGEST = 200_000
"""Bytes of a form: far more than any of ours has."""


@dataclass(frozen=True, slots=True)
class Page:
    """One page: method, path, handler and roles. A `quiet` one is no use of the session, for it is not asked for.

    A `local` one opens without an account for who asks directly, not through the server that stands before the desk.
    """

    method: str
    path: str
    handler: Handler
    roles: frozenset[str]
    quiet: bool = False
    local: bool = False

    @property
    def name(self) -> str:
        """The word under which the log of access has it."""
        module = self.handler.__module__.rpartition(".")[2]
        return f"{module}.{self.handler.__name__}"


def route(desk: Desk, page: Page) -> Route:
    """The page as a route, behind its guard."""

    async def endpoint(request: Request) -> Response:
        return await _open(desk, page, request)

    return Route(page.path, endpoint, methods=[page.method], name=page.name)


async def _open(desk: Desk, page: Page, request: Request) -> Response:
    visit = Visit(desk, request, desk.coachbot.clock())
    try:
        if page.roles:
            await _recognise(visit, quiet=page.quiet)
        return await _guarded(visit, page)
    except NoSuchCaseError:
        return await visit.wrong(404, visit.t("wrong-no-case"))
    except Refused as refused:
        return await visit.wrong(409, await _reason(visit, refused.line))
    except FormError as error:
        return await visit.wrong(422, visit.t(error.text, **error.values))
    except UnavailableError:
        log.exception("desk_store_unavailable", page=page.name)
        return visit.fragment("bare.html", status=503, said=visit.t("wrong-store"))


async def _recognise(visit: Visit, *, quiet: bool) -> None:
    token = visit.request.cookies.get(sessions.cookie_name(visit.desk.url), "")
    if not token:
        return
    number = visit.desk.settings.get("EMERGENCY_NUMBER")

    def find(tx: Transaction) -> tuple[Session | None, str]:
        return sessions.find(tx, token, visit.now), defaults.read(tx, number).zone

    visit.who, visit.zone = await visit.read(find)
    visit.token = token if visit.who else ""
    if visit.who and not quiet and visit.now - visit.who.seen_at >= sessions.REFRESH:
        await visit.desk.coachbot.store.transact(lambda tx: tx.sessions.seen(sessions.hashed(token), visit.now))


async def _guarded(visit: Visit, page: Page) -> Response:
    if page.method == "POST":
        if not sessions.same_origin(visit.request, visit.desk.url):
            return visit.fragment("bare.html", status=403, said=visit.t("wrong-origin"))
        if _size(visit.request) > LARGEST:
            return visit.fragment("bare.html", status=413, said=visit.t("wrong-size"))
        visit.form = await visit.request.form(max_files=0, max_fields=500)
    if page.local and not (visit.who and visit.who.role in page.roles) and not _forwarded(visit.request):
        visit.who = None
    elif page.roles and (refusal := await _refusal(visit, page)):
        return refusal
    if "case" in visit.request.path_params:
        await visit.note(page.name, visit.case_id)
    return await page.handler(visit)


async def _refusal(visit: Visit, page: Page) -> Response | None:
    """What is answered to somebody for whom a page is not, or to a form that is not ours."""
    if visit.who is None:
        return visit.go("/sign-in") if page.method == "GET" and not page.quiet else _plain(visit, 401)
    if visit.who.role not in page.roles:
        return await visit.wrong(403, visit.t("wrong-role"))
    if page.method == "POST" and not sessions.same_csrf(visit.token, visit.field("csrf")):
        return await visit.wrong(403, visit.t("wrong-csrf"))
    return None


async def _reason(visit: Visit, line: Line) -> str:
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    common = common_values(case, visit.now)
    catalogue = visit.desk.coachbot.catalogue
    return catalogue.render(line, language=visit.language, audience=Audience.CLINICIAN, common=common)


def _forwarded(request: Request) -> bool:
    """Whether another server passed the request on, as it says in one of these (RFC 7239; RFC 9110, 7.6.3)."""
    return any(name in request.headers for name in FORWARDED)


def _plain(visit: Visit, status: int) -> Response:
    return visit.fragment("bare.html", status=status, said=visit.t("wrong-signed-out"))


def _size(request: Request) -> int:
    """The form's bytes as announced; without an announcement, too many."""
    given = request.headers.get("content-length", "")
    return int(given) if given.isdecimal() else LARGEST + 1

"""The rehearsal's local page: four phones side by side and a clock that is moved by hand, and the clinic's own desk.

The phones stand under ``/phones/``; every other address is the desk's, over the same store and clock, with an invented
clinic of forty children around the family that is played, who move in when the desk is first opened.
"""

import asyncio
import contextlib
import logging
import webbrowser
from collections.abc import AsyncIterator, Collection, Mapping
from contextlib import AsyncExitStack, asynccontextmanager
from dataclasses import dataclass, field
from datetime import timedelta
from functools import reduce
from pathlib import Path
from typing import Any

import pyotp
import uvicorn
from jinja2 import Environment, FileSystemLoader
from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.middleware.trustedhost import TrustedHostMiddleware
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles
from starlette.types import ASGIApp, Receive, Scope, Send

from coachbot import logs
from coachbot.channels.base import Outgoing, left_over
from coachbot.coach.case import Role
from coachbot.desk.accounts import renew
from coachbot.desk.app import build_app
from coachbot.desk.demo import seed
from coachbot.rehearsal.stage import BACKUP_NAME, CHILD, FAMILY, ON_CALL_NAME, PARENT, PHONES, Spoken, Stage, opened
from coachbot.settings import PREFIX, Settings
from coachbot.voice.gsm import segments
from coachbot.voice.wording import Wording

HERE = Path(__file__).parent
HOST = "127.0.0.1"
CHILDREN = 40
STEPS = {"five-minutes": timedelta(minutes=5), "hour": timedelta(hours=1)}
AFRESH = ("restart", "text")
"""What is followed by a new stage."""

INVITED = {PARENT: Role.PARENT, CHILD: Role.CHILD}
SAFE = {"Content-Security-Policy": "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'; "
        "connect-src 'self'; form-action 'none'; frame-ancestors 'none'; base-uri 'none'"}  # fmt: skip
"""The page loads nothing but its own files."""


@dataclass
class Show:
    """The stage now open; starting over closes it and opens another. One thing happens on it at a time."""

    wording: Wording = field(default_factory=lambda: Wording.load("rehearsal.ftl"))
    busy: asyncio.Lock = field(default_factory=asyncio.Lock)
    port: int = 0
    children: int = 0
    """How many children the invented clinic has besides. While they move in, what happens on the phones waits."""
    texting: frozenset[str] = frozenset()
    """The phones that have text messages only."""
    key: pyotp.TOTP | None = None
    password: str = ""
    desk: ASGIApp | None = None
    _stack: AsyncExitStack = field(default_factory=AsyncExitStack)
    _stage: Stage | None = None
    _moving: "asyncio.Task[None] | None" = None

    @property
    def stage(self) -> Stage:
        """The stage.

        Raises:
            RuntimeError: if none is open.
        """
        if self._stage is None:
            raise RuntimeError("the rehearsal has not begun")
        return self._stage

    async def begin(self) -> None:
        """Open a fresh stage."""
        await self.end()
        self._stage = stage = await self._stack.enter_async_context(opened(texting=self.texting))
        account = await stage.coachbot.store.transact(lambda tx: renew(tx, ON_CALL_NAME))
        self.key, self.password = pyotp.parse_uri(account.totp_uri), account.password  # type: ignore[assignment]
        desk = build_app(stage.coachbot, Settings({f"{PREFIX}DESK_URL": f"http://{HOST}:{self.port}"}))
        await self._stack.enter_async_context(desk.router.lifespan_context(desk))
        self.desk = desk
        await stage.coachbot.settle()

    async def end(self) -> None:
        """Close the stage, and with it all that was kept."""
        await self.stop_moving()
        await self._stack.aclose()
        self._stack, self._stage = AsyncExitStack(), None

    def move_in(self) -> None:
        """Let the invented clinic move in, unless it has."""
        if self.children and self._moving is None:
            self._moving = asyncio.create_task(self._live_through_the_past())

    async def stop_moving(self) -> None:
        """Leave off: what is there so far will be closed with the stage."""
        moving, self._moving = self._moving, None
        if moving:
            moving.cancel()
            with contextlib.suppress(asyncio.CancelledError):
                await moving

    async def _live_through_the_past(self) -> None:
        """The last weeks of the clinic, on a clock of its own; then the stage's clock beats again."""
        async with self.busy:
            await seed(self.stage.coachbot, self.stage.clock.now, self.children)
            await self.stage.coachbot.settle()


def build_page(*, port: int = 0, children: int = 0, texting: Collection[str] = ()) -> Starlette:
    """Phones and desk as one application; `port` is where it will be served, `texting` have text messages only."""
    show = Show(port=port, children=children, texting=frozenset(texting))

    @asynccontextmanager
    async def lifespan(_: Starlette) -> AsyncIterator[None]:
        await show.begin()
        yield
        await show.end()

    async def desk(scope: Scope, receive: Receive, send: Send) -> None:
        assert show.desk, "the lifespan has begun"
        show.move_in()
        await show.desk(scope, receive, send)

    phones = [
        Route("/", _page),
        Route("/state", _state),
        Route("/do", _do, methods=["POST"]),
        Route("/file/{phone}/{number:int}", _file),
        Mount("/static", StaticFiles(directory=HERE / "static")),
    ]
    routes = [Mount("/phones", routes=phones), Mount("/", app=desk)]
    hosts = Middleware(TrustedHostMiddleware, allowed_hosts=[HOST, "localhost", "testserver"])
    app = Starlette(routes=routes, middleware=[hosts], lifespan=lifespan)
    app.state.show = show
    app.state.pages = Environment(loader=FileSystemLoader(HERE), autoescape=True)
    return app


def serve(port: int, *, browser: bool, texting: Collection[str] = ()) -> None:
    """Serve the page until interrupted; with `browser`, open it in one."""
    logs.configure("console", logging.ERROR)  # the invented clinic's past would fill the terminal
    url = f"http://{HOST}:{port}/phones/"
    print(f"coachbot rehearsal: {url} (stop with Ctrl-C)", flush=True)  # noqa: T201 - a command talks to its terminal
    if browser:
        with contextlib.suppress(webbrowser.Error):
            webbrowser.open(url)
    uvicorn.run(build_page(port=port, children=CHILDREN, texting=texting), host=HOST, port=port, log_level="warning")


async def _page(request: Request) -> Response:
    show: Show = request.app.state.show
    language = request.query_params.get("language", "en")
    if language not in ("en", "es", "fr"):
        raise HTTPException(404)

    def text(name: str, /, **args: object) -> str:
        return show.wording.text(language, name, child=FAMILY.child, **args)

    titles = {
        "parent": text("phone-parent"),
        "child": text("phone-child"),
        "clinician": text("phone-clinician", name=ON_CALL_NAME),
        "backup": text("phone-backup", name=BACKUP_NAME),
    }
    page = request.app.state.pages.get_template("page.html")
    words = page.render(
        text=text, language=language, titles=titles, steps=["bedtime", *STEPS], invited=INVITED, clinician=ON_CALL_NAME
    )
    return HTMLResponse(words, headers=SAFE)


async def _state(request: Request) -> Response:
    return JSONResponse(_shown(request.app.state.show))


async def _do(request: Request) -> Response:
    """Do one thing: write, press, invite, move the clock, start over. The answer is what then stands on the phones."""
    show: Show = request.app.state.show
    try:
        wanted = await request.json()
        if wanted["what"] in AFRESH:
            await show.stop_moving()
        async with show.busy:
            await _deeds(show, wanted)
    except (ValueError, KeyError, TypeError) as error:
        return JSONResponse({"error": str(error)}, status_code=400)
    return JSONResponse(_shown(show))


async def _deeds(show: Show, wanted: Mapping[str, Any]) -> None:
    stage = show.stage
    match wanted["what"]:
        case "write" if str(wanted["text"]).strip():
            await stage.write(_phone(wanted), str(wanted["text"]))
        case "press":
            await stage.press(_phone(wanted), str(wanted["data"]))
        case "invite":
            code = stage.codes[INVITED[_phone(wanted)]]
            await stage.write(_phone(wanted), code if _phone(wanted) in stage.texting else f"/start {code}")
        case "text":
            show.texting ^= {_phone(wanted)}
            await show.begin()
        case "step" if wanted["step"] == "bedtime":
            await stage.to_bedtime()
        case "step":
            await stage.forward(STEPS[str(wanted["step"])])
        case "restart":
            await show.begin()
        case _:
            raise ValueError("write some words, press a button or move the clock")


async def _file(request: Request) -> Response:
    """A picture or paper that stands on a phone."""
    phone, number = request.path_params["phone"], request.path_params["number"]
    spoken = request.app.state.show.stage.spoken.get(phone, [])
    sent = spoken[number].sent if number < len(spoken) else None
    if sent is None or sent.file is None:
        raise HTTPException(404)
    return Response(sent.file.data, media_type=sent.file.media, headers={"Cache-Control": "no-store"})


def _phone(wanted: Mapping[str, Any]) -> str:
    if wanted["phone"] not in PHONES:
        raise ValueError(f"there is no phone {wanted['phone']!r}")
    return str(wanted["phone"])


def _shown(show: Show) -> dict[str, Any]:
    stage = show.stage
    return {
        "key": {"password": show.password, "code": show.key.at(stage.clock.now) if show.key else ""},
        "clock": stage.clock.now.isoformat(),
        "zone": FAMILY.zone,
        "texting": sorted(stage.texting),
        "phones": {
            phone: [_message(stage, one, phone, number) for number, one in enumerate(stage.spoken[phone])]
            for phone in PHONES
        },
    }


def _message(stage: Stage, one: Spoken, phone: str, number: int) -> dict[str, Any]:
    at = one.at.isoformat()
    words = one.sent.text if one.sent else one.own or ""
    cost = {"segments": segments(words)} if phone in stage.texting else {}
    if one.sent is None:
        return {"at": at, "own": words, **cost}
    buttons = reduce(left_over, one.pressed, one.sent.buttons)
    return {"at": at, "text": words, "buttons": buttons, **cost, **_attached(one.sent, phone, number)}


def _attached(sent: Outgoing, phone: str, number: int) -> dict[str, str]:
    if sent.file is None:
        return {}
    kind = "picture" if sent.file.media.startswith("image/") else "paper"
    return {kind: f"/phones/file/{phone}/{number}", "name": sent.file.name}

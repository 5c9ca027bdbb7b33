"""Signing in and out, and one's own account. Whatever is wrong with a sign-in, the answer is the same."""

import asyncio

import structlog
from starlette.responses import Response

from coachbot.desk import accounts, sessions
from coachbot.desk.accounts import AccountError
from coachbot.desk.visit import FormError, Visit
from coachbot.desk.wording import NAMES
from coachbot.store import Transaction

log = structlog.get_logger(__name__)


async def ask(visit: Visit) -> Response:
    """The form."""
    return visit.fragment("sign_in.html", said=None)


async def sign_in(visit: Visit) -> Response:
    """Check name, password and one-time code together, and open a session."""
    name, address = " ".join(visit.field("name").split()), _address(visit)
    if not visit.desk.by_address.allows(address, visit.now) or not visit.desk.by_name.allows(name, visit.now):
        log.warning("sign_in_limited")
        return visit.fragment("sign_in.html", status=429, said=visit.t("sign-in-wait"))
    known = await visit.read(lambda tx: tx.clinicians.sign_in(name))
    password = visit.form.get("password", "")
    right = await asyncio.to_thread(accounts.right_password, known, password if isinstance(password, str) else "")
    step = accounts.code_step(known, visit.field("code"), visit.now)
    token = (
        await visit.desk.coachbot.store.transact(lambda tx: _begin(tx, visit, name, step)) if right and step else None
    )
    if token is None:
        log.warning("sign_in_refused")
        return visit.fragment("sign_in.html", status=403, said=visit.t("sign-in-wrong"))
    log.info("signed_in")
    response = visit.go("/")
    sessions.set_cookie(response, visit.desk.url, token)
    return response


async def sign_out(visit: Visit) -> Response:
    """End the session, at the server too."""
    await visit.desk.coachbot.store.transact(lambda tx: tx.sessions.end(sessions.hashed(visit.token)))
    response = visit.go("/sign-in")
    sessions.drop_cookie(response, visit.desk.url)
    return response


async def home(visit: Visit) -> Response:
    """Where the day begins: alerts, or the study for those who see no names."""
    assert visit.who is not None
    return visit.go("/study" if visit.who.role == "researcher" else "/alerts")


async def account(visit: Visit) -> Response:
    """One's own account."""
    return await visit.page("account.html", done=visit.query("done"))


async def change_password(visit: Visit) -> Response:
    """Change one's own password; all other sessions end."""
    old, new = (str(visit.form.get(field, "")) for field in ("old", "new"))
    if new != visit.form.get("again"):
        raise FormError("password-differs")
    name, mine = visit.name, sessions.hashed(visit.token)
    assert visit.who is not None
    number = visit.who.clinician_id

    def change(tx: Transaction) -> None:
        accounts.change_password(tx, name, old, new)
        tx.sessions.end_all(number, but=mine)

    try:
        await visit.desk.coachbot.store.transact(change)
    except AccountError as error:
        raise FormError(error.text, least=accounts.SHORTEST) from error
    return visit.go("/account?done=password")


async def change_language(visit: Visit) -> Response:
    """The language that one reads the desk and one's alerts in."""
    wanted, name = visit.field("language"), visit.name
    if wanted not in NAMES:
        raise FormError("choice-needed")
    await visit.transact(lambda tx: tx.clinicians.change(name, language=wanted))
    return visit.go("/account")


def _begin(tx: Transaction, visit: Visit, name: str, step: int) -> str | None:
    clinician = tx.clinicians.named(name)
    if clinician is None or not clinician.active or not tx.sessions.use_code(clinician.id, step):
        return None
    old = visit.request.cookies.get(sessions.cookie_name(visit.desk.url))
    return sessions.begin(tx, clinician.id, visit.now, old)


def _address(visit: Visit) -> str:
    return visit.request.client.host if visit.request.client else "unknown"

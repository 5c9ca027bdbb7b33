"""Clinic set-up, for its lead: the protocol that enrolment starts from, who is on duty, accounts, the texts."""

from datetime import timedelta

import segno
from markupsafe import Markup
from starlette.responses import Response

from coachbot.desk import accounts, fields
from coachbot.desk.accounts import Account, AccountError
from coachbot.desk.fields import Fault, Faults
from coachbot.desk.preview import preview
from coachbot.desk.visit import FormError, Visit
from coachbot.desk.wording import NAMES
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Protocol, Step, Who
from coachbot.service import defaults
from coachbot.service.defaults import Defaults
from coachbot.store import Accessed, Transaction, Work

LADDERS = ("ladder", "calm_ladder")
STEPS = 5
"""Steps of a ladder that the form has room for."""

MINUTES = ("late_limit", "reminder_after", "close_after")
LATEST_LOG = 300
"""Entries of the log of access that are shown."""


async def clinic(visit: Visit) -> Response:
    """What is set."""
    return await _page(visit, await _defaults(visit), [])


async def change(visit: Visit) -> Response:
    """Set it anew. Families that are enrolled keep what they were enrolled with."""
    known = await _defaults(visit)
    faults = Faults(visit)
    wanted = _read(visit, faults, known)
    if wanted is None:
        return await _page(visit, known, faults.found)
    entry = Accessed(at=visit.now, by=visit.name, case_id=None, what="clinic.changed")

    def work(tx: Transaction) -> None:
        defaults.write(tx, wanted)
        tx.access.add([entry])

    await visit.transact(work)
    return visit.go("/clinic?done=clinic")


async def duty(visit: Visit) -> Response:
    """Change a clinician's role, duty, language, or whether the account is open."""
    name = visit.field("name")
    role = fields.choice(visit, "role", accounts.ROLES.index)
    wanted = fields.choice(visit, "duty", accounts.DUTIES.index)
    closed = visit.field("active") != "yes"
    if closed and name == visit.name:
        raise FormError("account-own")

    def work(tx: Transaction) -> None:
        tx.clinicians.change(name, role=accounts.ROLES[role], duty=accounts.DUTIES[wanted], active=True)
        if closed:
            accounts.disable(tx, name)

    await visit.transact(work)
    return visit.go("/clinic?done=people#people")


async def add(visit: Visit) -> Response:
    """Make an account and show, once, what it needs to sign in."""
    role = accounts.ROLES[fields.choice(visit, "role", accounts.ROLES.index)]
    wanted = accounts.DUTIES[fields.choice(visit, "duty", accounts.DUTIES.index)]
    language = fields.choice(visit, "language", {one: one for one in NAMES}.__getitem__)
    reach = _reach(visit)

    def work(tx: Transaction) -> Account:
        return accounts.add(tx, visit.field("name"), visit.now, role=role, duty=wanted, language=language, reach=reach)

    return await _new(visit, work)


def _reach(visit: Visit) -> tuple[str, str] | None:
    name = visit.field("channel")
    if not name:
        return None
    channel = visit.desk.coachbot.channels.get(name)
    address = channel.canonical(visit.field("address")) if channel else None
    if address is None:
        raise FormError("reach-wrong")
    return name, address


async def renew(visit: Visit) -> Response:
    """A new first password and secret for one who has lost either."""
    name = visit.field("name")

    def work(tx: Transaction) -> Account:
        if tx.clinicians.named(name) is None:
            raise AccountError("account-none", "there is no such account")
        return accounts.renew(tx, name)

    return await _new(visit, work)


async def log(visit: Visit) -> Response:
    """The newest entries of the log of access."""
    return await visit.page("log.html", entries=await visit.read(lambda tx: tx.access.latest(LATEST_LOG)))


async def texts(visit: Visit) -> Response:
    """What families are told, in one language."""
    language = visit.query("language") or visit.language
    if language not in NAMES:
        raise FormError("choice-needed")
    known = await _defaults(visit)
    shown = preview(visit.desk.coachbot.catalogue, language, known.protocol)
    return await visit.page("texts.html", shown=shown, language=language, languages=NAMES)


async def _new(visit: Visit, work: Work[Account]) -> Response:
    try:
        account = await visit.transact(work)
    except AccountError as error:
        raise FormError(error.text) from error
    picture = Markup(segno.make(account.totp_uri, error="m").svg_inline(scale=4, border=2))  # noqa: S704 - ours
    return await visit.page("account_new.html", account=account, picture=picture)


async def _defaults(visit: Visit) -> Defaults:
    number = visit.desk.settings.get("EMERGENCY_NUMBER")
    return await visit.read(lambda tx: defaults.read(tx, number))


async def _page(visit: Visit, known: Defaults, faults: list[Fault]) -> Response:
    people = await visit.read(lambda tx: tx.clinicians.all())
    return await visit.page(
        "clinic.html",
        status=422 if faults else 200,
        known=known,
        usual=known.protocol,
        people=people,
        faults={fault.field: fault.said for fault in faults},
        ladders={name: _rungs(getattr(known.protocol, name)) for name in LADDERS},
        positions=tuple(Position),
        whos=tuple(Who),
        roles=accounts.ROLES,
        duties=accounts.DUTIES,
        channels=sorted(visit.desk.coachbot.channels),
        languages=NAMES,
        zones=fields.zones(),
        done=visit.query("done"),
    )


def _rungs(ladder: tuple[Step, ...]) -> list[tuple[str, str]]:
    rungs = [(str(int(step.after.total_seconds()) // 60), str(step.who)) for step in ladder]
    return rungs + [("", "")] * (STEPS - len(rungs))


def _read(visit: Visit, faults: Faults, known: Defaults) -> Defaults | None:
    usual = known.protocol
    zone = faults.take("zone", known.zone, fields.zone_name, "zone")
    earliest = faults.take("earliest", usual.earliest, fields.clock, "earliest")
    latest = faults.take("latest", usual.latest, fields.clock, "latest")
    nights = faults.take("nights", usual.nights, fields.number, "nights", 1, 60)
    most = faults.take("max_nights", usual.max_nights, fields.number, "max_nights", 1, 60)
    missed = faults.take("missed_limit", usual.missed_limit, fields.number, "missed_limit", 1, 60)
    watch = faults.take("watch_days", usual.watch_days, fields.number, "watch_days", 0, 14)
    candy = faults.take("candy", usual.candies[0], fields.candy, "kind", "size")
    spans = {name: faults.take(name, getattr(usual, name), _span, name) for name in MINUTES}
    ladders = {name: faults.take(name, getattr(usual, name), _ladder, name) for name in LADDERS}
    if faults.found:
        return None
    try:
        protocol = Protocol(
            nights=nights,
            max_nights=most,
            positions=tuple(one for one in Position if visit.field(f"position-{one}")),
            candies=(candy,),
            earliest=earliest,
            latest=latest,
            late_limit=spans["late_limit"],
            reminder_after=spans["reminder_after"],
            close_after=spans["close_after"],
            missed_limit=missed,
            watch_days=watch,
            ladder=ladders["ladder"],
            calm_ladder=ladders["calm_ladder"],
            emergency_number=visit.field("emergency_number"),
        )
    except ValueError as error:
        faults.add("protocol", "protocol-wrong", why=str(error))
        return None
    return Defaults(zone=zone, protocol=protocol)


def _span(visit: Visit, name: str) -> timedelta:
    return timedelta(minutes=fields.number(visit, name, 1, 24 * 60))


def _ladder(visit: Visit, name: str) -> tuple[Step, ...]:
    filled = [index for index in range(STEPS) if visit.field(f"{name}-after-{index}")]
    return tuple(
        Step(
            after=timedelta(minutes=fields.number(visit, f"{name}-after-{index}", 0, 14 * 24 * 60)),
            who=fields.choice(visit, f"{name}-who-{index}", Who),
        )
        for index in filled
    )

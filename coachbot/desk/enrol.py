"""Enrolment by form. Hard stops are looked at here, at the server, each time: no click passes them."""

from dataclasses import dataclass

from starlette.responses import Response

from coachbot.coach.case import Role
from coachbot.desk import fields
from coachbot.desk.fields import Fault, Faults
from coachbot.desk.invitations import Made
from coachbot.desk.visit import FormError, Visit
from coachbot.desk.wording import NAMES
from coachbot.programme.positions import Position
from coachbot.programme.protocol import MOST_NIGHTS, Candy, CandyKind
from coachbot.programme.screening import Answers, Caution, Neck, Screening, screen
from coachbot.programme.zones import local
from coachbot.service import defaults
from coachbot.service.defaults import Defaults
from coachbot.service.enrolling import CODE_LIFE, Enrolled, EnrolmentError, Family, Screened, Wished, enrol, new_seed
from coachbot.store import Note, Transaction

QUESTIONS = ("swallowing", "ill", "allergy")
"""The yes-or-no questions of the screening; a yes to any is a hard stop."""

CONFIRMATIONS = ("asked", "adult", "never-forced")
"""What the clinician confirms each time, besides every caution that the answers raise."""

STEPS = 3
"""How many candies, one after the other, the form can plan."""

LANGUAGES = tuple(NAMES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A form as it was read. `family` is None as long as there is any fault."""

    faults: list[Fault]
    screening: Screening
    family: Family | None


async def form(visit: Visit) -> Response:
    """An empty form, but for what the clinic has set."""
    return await _page(visit, await _defaults(visit), None)


async def take(visit: Visit) -> Response:
    """Screen and enrol, or give the form back with all that was typed and what keeps it."""
    known = await _defaults(visit)
    asked = read(visit, known)
    family = asked.family
    if family is None:
        return await _page(visit, known, asked)
    confirmed = [f"confirm-{one}" for one in CONFIRMATIONS] + [f"confirm-{one}" for one in asked.screening.cautions]

    def work(tx: Transaction) -> Enrolled:
        number = known.protocol.emergency_number
        done = enrol(tx, family, emergency_number=number, seed=new_seed(tx), now=visit.now)
        words = "\n".join(map(visit.t, confirmed))
        tx.notes.add(Note(case_id=done.case.id, alert=None, at=visit.now, by=visit.name, kind="screening", words=words))
        return done

    try:
        done = await visit.transact(work)
    except EnrolmentError as error:
        asked.faults.append(Fault("child", str(error)))
        return await _page(visit, known, asked)
    key = visit.desk.once.put(visit.name, Made(done.case.id, done.codes, visit.now + CODE_LIFE), visit.now)
    return visit.go(f"/children/{done.case.id}/invitation/{key}")


def read(visit: Visit, known: Defaults) -> Asked:
    """Read and screen the whole form, so that all faults are told together."""
    faults = Faults(visit)
    positions = tuple(one for one in Position if visit.field(f"position-{one}"))
    zone = faults.take("zone", "UTC", fields.zone_name, "zone")
    screening = _screened(visit, faults, positions, zone)
    if not screening.stops:
        _confirmed(visit, faults, screening)
    if len(positions) < 2:  # noqa: PLR2004 - there must be something to choose between
        faults.add("positions", "positions-few")
    family = _family(visit, faults, known, positions, zone)
    stopped = faults.found or screening.stops
    return Asked(faults=faults.found, screening=screening, family=None if stopped else family)


def _screened(visit: Visit, faults: Faults, positions: tuple[Position, ...], zone: str) -> Screening:
    born = faults.take("born", None, fields.day, "born")
    answers = {one: faults.take(one, None, _yes, one) for one in QUESTIONS}
    neck = faults.take("neck", None, fields.choice, "neck", Neck)
    if born is None or neck is None or None in answers.values():
        return Screening(stops=(), cautions=())
    given = Answers(
        born=born,
        swallowing_disorder=bool(answers["swallowing"]),
        too_ill=bool(answers["ill"]),
        candy_allergy=bool(answers["allergy"]),
        neck=neck,
    )
    return screen(given, positions, local(visit.now, zone).date())


def _yes(visit: Visit, name: str) -> bool:
    return fields.choice(visit, name, {"yes": True, "no": False}.__getitem__)


def _confirmed(visit: Visit, faults: Faults, screening: Screening) -> None:
    needed: tuple[str | Caution, ...] = (*CONFIRMATIONS, *screening.cautions)
    for one in needed:
        if not visit.field(f"confirm-{one}"):
            faults.add(f"confirm-{one}", "confirm-needed")


def _family(visit: Visit, faults: Faults, known: Defaults, positions: tuple[Position, ...], zone: str) -> Family | None:
    usual = known.protocol
    child = faults.take("child", "", _name)
    bedtime = faults.take("bedtime", None, fields.clock, "bedtime")
    if bedtime and not usual.earliest <= bedtime <= usual.latest:
        faults.add("bedtime", "bedtime-hours", earliest=f"{usual.earliest:%H:%M}", latest=f"{usual.latest:%H:%M}")
    language = faults.take("language", 0, fields.choice, "language", LANGUAGES.index)
    nights = faults.take("nights", usual.nights, fields.number, "nights", 1, MOST_NIGHTS)
    candies = _candies(visit, faults, nights)
    if faults.found or bedtime is None:
        return None
    spare = max(usual.max_nights - usual.nights, 0)
    return Family(
        child=child,
        bedtime=bedtime,
        zone=zone,
        screening=Screened(
            born=fields.day(visit, "born"),
            swallowing_disorder=False,
            too_ill=False,
            candy_allergy=False,
            neck=Neck(visit.field("neck")),
            confirmed_by=visit.name,
        ),
        language=LANGUAGES[language],
        invite=(
            Role.PARENT,
            *([Role.PARENT] if visit.field("second") else []),
            *([Role.CHILD] if visit.field("own") else []),
        ),
        programme=Wished(
            nights=nights, max_nights=min(nights + spare, MOST_NIGHTS), positions=positions, candies=candies
        ),
    )


def _name(visit: Visit) -> str:
    name = visit.field("child")
    if not 1 <= len(name) <= 40:  # noqa: PLR2004 - as enrolment has it
        raise FormError("child-name")
    return name


def _candies(visit: Visit, faults: Faults, nights: int) -> tuple[Candy, ...]:
    """A candy for each night: each step of the plan from its night on."""
    plan: list[Candy] = []
    for step in range(1, STEPS + 1):
        if step > 1 and not visit.field(f"from-{step}"):
            continue
        name = f"candy-{step}"
        first = 1 if step == 1 else faults.take(name, 0, fields.number, f"from-{step}", 2, nights)
        candy = faults.take(name, None, fields.candy, f"kind-{step}", f"size-{step}")
        if candy is None or not first:
            continue
        if plan and first <= len(plan):
            faults.add(name, "candy-order")
        plan += [plan[-1]] * (first - 1 - len(plan)) if plan else []
        plan.append(candy)
    return tuple(plan)


async def _page(visit: Visit, known: Defaults, asked: Asked | None) -> Response:
    screening = asked.screening if asked else Screening(stops=(), cautions=())
    faults = asked.faults if asked else []
    return await visit.page(
        "enrol.html",
        status=422 if asked else 200,
        faults={fault.field: fault.said for fault in faults},
        screening=screening,
        usual=known.protocol,
        home=known.zone,
        fresh=asked is None,
        positions=tuple(Position),
        questions=QUESTIONS,
        confirmations=(*CONFIRMATIONS, *screening.cautions),
        necks=tuple(Neck),
        kinds=tuple(CandyKind),
        languages=NAMES,
        steps=range(1, STEPS + 1),
        zones=fields.zones(),
    )


async def _defaults(visit: Visit) -> Defaults:
    number = visit.desk.settings.get("EMERGENCY_NUMBER")
    return await visit.read(lambda tx: defaults.read(tx, number))

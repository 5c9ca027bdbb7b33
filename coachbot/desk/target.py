"""Reaching the real medicine: how big it is beside the practice candy. For clinicians; no family is told of it."""

import re
from dataclasses import dataclass

from starlette.responses import Response

from coachbot.coach.case import Case
from coachbot.coach.events import TargetSet
from coachbot.desk import plots
from coachbot.desk.fields import Fault, Faults
from coachbot.desk.plots import Shape
from coachbot.desk.visit import FormError, Visit
from coachbot.programme.sizes import CAPSULES, Size, Target
from coachbot.store import Transaction

LEAST, MOST = 1, 40
"""Millimetres that a side may have; what is beyond was mistyped."""

MOST_STEPS = 8

_NUMBER = r"\d{1,3}(?:[.,]\d{1,2})?"
_PAIR = re.compile(rf"({_NUMBER})\s*(?:mm)?\s*[x×*]\s*({_NUMBER})\s*(?:mm)?", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rung:
    """One line of the ladder: its words, its length over that of the one before, whether the candy is as long now."""

    label: str
    size: str
    growth: float | None = None
    passed: bool = False


async def form(visit: Visit) -> Response:
    """The form, with what is kept."""
    return await _page(visit, await _case(visit), [])


async def take(visit: Visit) -> Response:
    """Keep what was entered, or take it back."""
    case = await _case(visit)
    faults = Faults(visit)
    target = None if visit.field("remove") else _target(visit, faults, candy_mm(case))
    if faults.found:
        return await _page(visit, case, faults.found)

    def work(tx: Transaction) -> None:
        event = TargetSet(by=visit.name, target=target)
        visit.desk.coachbot.deciding.happen(tx, tx.cases.load(visit.case_id), event, visit.now)

    await visit.transact(work)
    return visit.go(f"/children/{visit.case_id}?done=target#target")


def candy_mm(case: Case) -> int:
    """The longest side of the candy of the next night."""
    return case.protocol.candy(case.practised + 1).size_mm


def ladder(visit: Visit, case: Case) -> list[Rung]:
    """The practice candy, the sizes between and the real medicine; empty if none is set."""
    if case.target is None:
        return []
    candy, sizes = candy_mm(case), (*case.target.steps, case.target.size)
    capsule = case.target.capsule
    last = visit.t("rung-capsule", name=capsule) if capsule else visit.t("rung-target")
    labels = [*(visit.t("rung-step", number=number) for number in range(1, len(sizes))), last]
    rungs = zip(labels, sizes, case.target.growth(candy), strict=True)
    return [
        Rung(label=visit.t("rung-candy"), size=visit.t("size-longest", length=candy)),
        *(
            Rung(label=label, size=written(visit, size), growth=round(growth, 2), passed=size.length_mm <= candy)
            for label, size, growth in rungs
        ),
    ]


def drawing(visit: Visit, case: Case) -> object:
    """The ladder to scale, None if there is none."""
    if case.target is None:
        return None
    sizes = (*case.target.steps, case.target.size)
    labels = [rung.label for rung in ladder(visit, case)]
    shapes = [Shape(label=labels[0], length=candy_mm(case))]
    shapes += [
        Shape(label=label, length=one.length_mm, width=one.width_mm)
        for label, one in zip(labels[1:], sizes, strict=True)
    ]
    return plots.sizes(shapes, visit.t("target-drawing"))


def written(visit: Visit, size: Size) -> str:
    """A size in words."""
    return visit.t("size-both", length=size.length_mm, width=size.width_mm)


def _target(visit: Visit, faults: Faults, candy: int) -> Target | None:
    capsule = visit.field("capsule")
    size = _named(visit, faults, capsule) if capsule else _measured(visit, faults)
    steps = faults.take("steps", (), _steps, size, candy)
    if faults.found or size is None:
        return None
    return Target(size=size, capsule=capsule or None, steps=steps)


def _named(visit: Visit, faults: Faults, capsule: str) -> Size | None:
    if capsule not in CAPSULES:
        faults.add("capsule", "choice-needed")
        return None
    if visit.field("length") or visit.field("width"):
        faults.add("capsule", "target-both")
    return CAPSULES[capsule].size


def _measured(visit: Visit, faults: Faults) -> Size | None:
    if not visit.field("length") and not visit.field("width"):
        faults.add("capsule", "target-needed")
        return None
    length = faults.take("length", None, lambda one: _millimetres(one.field("length")))
    width = faults.take("width", None, lambda one: _millimetres(one.field("width")))
    return faults.take("length", None, lambda _: _size(length, width)) if length and width else None


def _steps(visit: Visit, target: Size | None, candy: int) -> tuple[Size, ...]:
    lines = [line.strip() for line in visit.field("steps").splitlines() if line.strip()]
    if len(lines) > MOST_STEPS:
        raise FormError("steps-many", most=MOST_STEPS, given=len(lines))
    steps = tuple(_step(line) for line in lines)
    lengths = [step.length_mm for step in steps]
    if steps and (lengths != sorted(lengths) or lengths[0] <= candy or (target and lengths[-1] > target.length_mm)):
        raise FormError("steps-order", candy=candy, target=target.length_mm if target else MOST)
    return steps


def _step(line: str) -> Size:
    pair = _PAIR.fullmatch(line)
    if pair is None:
        raise FormError("steps-wrong", given=line)
    return _size(_millimetres(pair[1]), _millimetres(pair[2]))


def _size(length: float, width: float) -> Size:
    if width > length:
        raise FormError("size-sides", length=length, width=width)
    return Size(length_mm=length, width_mm=width)


def _millimetres(given: str) -> float:
    number = float(given.replace(",", ".")) if re.fullmatch(_NUMBER, given) else 0
    if not LEAST <= number <= MOST:
        raise FormError("mm-wrong", given=given or "—", least=LEAST, most=MOST)
    return number


async def _case(visit: Visit) -> Case:
    return await visit.read(lambda tx: tx.cases.load(visit.case_id))


async def _page(visit: Visit, case: Case, faults: list[Fault]) -> Response:
    given = {name: visit.field(name) for name in ("capsule", "length", "width", "steps")}
    return await visit.page(
        "target.html",
        status=422 if faults else 200,
        case=case,
        candy=candy_mm(case),
        given=given if faults else _kept(visit, case.target),
        faults={fault.field: fault.said for fault in faults},
        capsules={name: written(visit, capsule.size) for name, capsule in CAPSULES.items()},
        volumes={name: capsule.volume_ml for name, capsule in CAPSULES.items()},
    )


def _kept(visit: Visit, target: Target | None) -> dict[str, str]:
    """What is kept, as it would be typed."""
    if target is None:
        return dict.fromkeys(("capsule", "length", "width", "steps"), "")
    by_hand = target.capsule is None
    return {
        "capsule": target.capsule or "",
        "length": _typed(visit, target.size.length_mm) if by_hand else "",
        "width": _typed(visit, target.size.width_mm) if by_hand else "",
        "steps": "\n".join(
            f"{_typed(visit, step.length_mm)} x {_typed(visit, step.width_mm)}" for step in target.steps
        ),
    }


def _typed(visit: Visit, number: float) -> str:
    return visit.t("number", value=number)

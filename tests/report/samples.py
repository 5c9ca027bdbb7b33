"""Invented families for the papers: what a fortnight may look like, as values."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from random import Random

from coachbot.coach.case import Alert, Case, Child, Night, State, Status, Swallow
from coachbot.programme.orders import plan
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy, CandyKind, Protocol
from coachbot.reading.readings import Mark, Word
from coachbot.triage.levels import Level

FIRST = date(2026, 3, 2)
START = datetime(2026, 3, 2, 19, 30, tzinfo=UTC)

Liking = Mapping[Position, tuple[float, float]]
"""What each position is liked on the first and on the last evening, 1 to 5."""

LEFT_WINS: Liking = {
    Position.CENTER: (3.6, 3.2),
    Position.LEFT: (2.6, 4.8),
    Position.RIGHT: (2.4, 3.4),
    Position.UP: (1.6, 2.0),
    Position.DOWN: (3.0, 3.6),
}

ALL_ALIKE: Liking = dict.fromkeys(Position, (2.6, 3.6))


def enrolled(name: str = "Mila", *, nights: int = 14, positions: Sequence[Position] = tuple(Position)) -> Case:
    """A child that has not begun."""
    candies = (Candy(kind=CandyKind.MINT, size_mm=6),) * 4 + (Candy(kind=CandyKind.HARD, size_mm=9),)
    protocol = Protocol(nights=nights, max_nights=60, positions=tuple(positions), candies=candies)
    return Case(
        id=7,
        child=Child(name=name, birth_year=2018),
        protocol=protocol,
        orders=plan(protocol.positions, nights, 5),
        bedtime=time(19, 30),
        zone="Europe/Lisbon",
        language="en",
        state=State.PRACTISING,
        learned=FIRST - timedelta(days=1),
    )


def evening(case: Case, status: Status, marks: Mapping[Position, Mark] | None = None, **more: object) -> Case:
    """The case with one more evening; `more` sets other fields of the night, such as its note."""
    number = len(case.nights) + 1
    order = case.orders[min(case.finished_orders, len(case.orders) - 1)]
    now = START + timedelta(days=number - 1)
    night = Night(
        number=number,
        turn=case.finished_orders + 1,
        day=now.date(),
        order=order,
        candy=case.protocol.candy(case.practised + 1),
        prompted=now,
        touched=now,
        recipients=1,
        status=status,
    )
    for position, mark in (marks or {}).items():
        night = night.record(Swallow(position=position, mark=mark))
    return replace(case, nights=(*case.nights, replace(night, **more)))  # type: ignore[arg-type]


def practised(case: Case, evenings: int, liking: Liking, seed: int, *, missed: float = 0.0) -> Case:
    """The case with so many more evenings, rated at random around what the child likes."""
    chance = Random(seed)
    for count in range(evenings):
        if chance.random() < missed:
            case = evening(case, Status.MISSED)
            continue
        part = chance.random() < missed / 2
        marks = {
            position: _mark(liking[position], count / max(evenings - 1, 1), chance)
            for position in case.protocol.positions
            if not (part and chance.random() < 0.5)
        }
        rated = {position: mark for position, mark in marks.items() if isinstance(mark, int)}
        best = max(rated, key=lambda position: rated[position]) if rated else None
        case = evening(case, Status.PARTIAL if part else Status.FINISHED, marks, best=best)
    return case


def _mark(liking: tuple[float, float], through: float, chance: Random) -> Mark:
    value = liking[0] + (liking[1] - liking[0]) * through + chance.gauss(0, 0.7)
    if value < 1.2 or chance.random() < 0.02:
        return Word.NOT_DOWN
    return Word.SKIPPED if chance.random() < 0.02 else max(1, min(5, round(value)))


def noted(case: Case, *notes: tuple[int, Position | None, str]) -> Case:
    """The case with notes on nights, or on positions of them."""
    nights = list(case.nights)
    for number, position, text in notes:
        night = nights[number - 1]
        if position is None:
            nights[number - 1] = replace(night, note=text)
        else:
            nights[number - 1] = night.record(
                Swallow(position=position, mark=night.mark(position) or Word.SKIPPED, note=text)
            )
    return replace(case, nights=tuple(nights))


def alarmed(case: Case, category: str, *, day: int, seen: bool, level: Level = Level.EMERGENCY) -> Case:
    """The case with one more alert."""
    raised = START + timedelta(days=day - 1, minutes=9)
    alert = Alert(
        number=len(case.alerts) + 1,
        level=level,
        category=category,
        evidence=("the words that decided",),
        raised=raised,
        acknowledged_by="Dr Example" if seen else None,
        acknowledged=raised + timedelta(minutes=4) if seen else None,
    )
    return replace(case, alerts=(*case.alerts, alert))


def clear() -> Case:
    """A steady fortnight with a clear favourite."""
    case = practised(enrolled(), 14, LEFT_WINS, 3)
    return noted(
        case,
        (1, None, "It was scary but I did it"),
        (2, Position.UP, "felt funny in my nose"),
        (5, None, "New candy is bigger. Not so bad!"),
        (9, Position.LEFT, "super easy, like a slide"),
        (13, None, "I want to do left for the real one"),
    )


def unclear() -> Case:
    """A fortnight in which all positions were liked alike."""
    return practised(enrolled("Jonas"), 14, ALL_ALIKE, 8)


def patchy() -> Case:
    """Many missed evenings, some done in part, two that our message did not reach."""
    case = practised(enrolled("Amélie"), 4, LEFT_WINS, 4, missed=0.4)
    case = evening(evening(case, Status.UNSENT), Status.UNSENT)
    case = practised(case, 17, LEFT_WINS, 9, missed=0.5)
    return noted(case, (len(case.nights), None, "We were away at grandma's for a week, sorry for the gaps."))


def choked() -> Case:
    """A choke on the sixth evening: on hold, looked at; then again, and not looked at yet."""
    case = practised(enrolled("Tomás"), 6, LEFT_WINS, 6)
    case = evening(alarmed(case, "choking", day=6, seen=True), Status.PARTIAL, {Position.CENTER: Word.NOT_DOWN})
    case = practised(case, 3, LEFT_WINS, 7)
    case = alarmed(alarmed(case, "forced", day=9, seen=False), "choked", day=10, seen=False, level=Level.URGENT)
    case = noted(
        case,
        (6, Position.RIGHT, "It went down the wrong way and he coughed a lot. We stopped at once."),
        (7, None, "He did not want to do more than one."),
    )
    return replace(case, state=State.ON_HOLD, back_to=State.PRACTISING)


def longest() -> Case:
    """The longest calendar there is, every night with long notes."""
    case = practised(enrolled("Maximiliane-Theodora Konstantinopolska", nights=60), 60, LEFT_WINS, 12, missed=0.15)
    long = "Tonight we took our time and she told us a long story about how each of the swallows went. " * 6
    return noted(case, *((night, None, long) for night in range(1, 61)))


def two() -> Case:
    """Only two positions, as after a neck that must not be turned."""
    return practised(enrolled("Noor", positions=(Position.CENTER, Position.DOWN)), 9, LEFT_WINS, 2)


def fullest() -> Case:
    """The longest calendar with everything at once: a wide name, all kinds of evenings, many stops, a hold."""
    case = replace(longest(), child=Child(name="W" * 40, birth_year=2018), state=State.ON_HOLD)
    nights = [replace(night, status=Status.UNSENT) if night.status is Status.MISSED else night for night in case.nights]
    odd = [replace(night, status=Status.MISSED, swallows=(), best=None) for night in nights[20:23]]
    candies = [Candy(kind=CandyKind.HARD, size_mm=2 + number % 20) for number in range(60)]
    mixed = [*nights[:20], *odd, *nights[23:]]
    case = replace(case, nights=tuple(replace(one, candy=candy) for one, candy in zip(mixed, candies, strict=True)))
    for day in range(10, 18):
        case = alarmed(case, "choked", day=day, seen=day % 2 == 0)
    return case


def alike() -> Case:
    """A child that gives everything a three, for so long that more nights would not tell."""
    case = enrolled("Bo", nights=40)
    for _ in range(40):
        case = evening(case, Status.FINISHED, dict.fromkeys(Position, 3))
    return case


def begun() -> Case:
    """The second evening, of which one swallow has been told so far."""
    case = practised(enrolled("Ida"), 1, LEFT_WINS, 1)
    return evening(case, Status.OPEN, {Position.CENTER: 4})


SAMPLES = {
    "clear": clear,
    "unclear": unclear,
    "patchy": patchy,
    "choked": choked,
    "longest": longest,
    "fullest": fullest,
    "two": two,
    "alike": alike,
    "begun": begun,
    "empty": enrolled,
}

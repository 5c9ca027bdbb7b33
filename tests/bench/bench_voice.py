"""What a line costs to fill in, beside Fluent alone: python tests/bench/bench_voice.py.

The lines are those of a night's prompt for families of different names and orders, with nothing remembered at first.
The baseline formats the same
patterns with words that were put into the reader's language beforehand, which no real run can have.
"""

import random
import time
from collections.abc import Callable, Mapping
from itertools import permutations

from coachbot.coach.actions import Line, Value
from coachbot.coach.texts import Audience
from coachbot.programme.positions import Position
from coachbot.voice.catalogue import Catalogue

FAMILIES = 20_000
ROUNDS = 3


def prompt(night: int, order: tuple[Position, ...]) -> list[Line]:
    """The lines of one night's prompt."""
    told: Mapping[str, Value] = {"night": night, "nights": 14, "order": order, "candy": "mint", "size": 8}
    return [
        Line(id="night-prompt", args=told),
        Line(id="night-howto-3"),
        Line(id="night-safety"),
        Line(id="ask-swallow", args={"position": order[0]}),
    ]


def microseconds(work: Callable[[], object], lines: int) -> float:
    """The best of some rounds, for each line."""
    best = min(_timed(work) for _ in range(ROUNDS))
    return best / lines * 1e6


def _timed(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


def main() -> None:
    """Print one line for each language."""
    draw = random.Random(8)
    orders = list(permutations(Position))
    families = [(f"Child {number}", prompt(draw.randint(1, 14), draw.choice(orders))) for number in range(FAMILIES)]
    for language in ("en", "es", "fr"):
        catalogue = Catalogue.load()
        ours = microseconds(lambda: _ours(catalogue, language, families), 4 * FAMILIES)  # noqa: B023
        bare = microseconds(lambda: _bare(catalogue, language, families), 4 * FAMILIES)  # noqa: B023
        print(f"{language}: {ours:.1f} µs a line, {ours / bare:.2f} times Fluent alone ({bare:.1f} µs)")


def _ours(catalogue: Catalogue, language: str, families: list[tuple[str, list[Line]]]) -> None:
    catalogue._remembered.cache_clear()
    for name, lines in families:
        common: Mapping[str, Value] = {"child": name, "emergency": "112", "tone": "middle"}
        for line in lines:
            catalogue.render(line, language=language, audience=Audience.PARENT, common=common)


def _bare(catalogue: Catalogue, language: str, families: list[tuple[str, list[Line]]]) -> None:
    bundle = catalogue._rooms[language, Audience.PARENT].bundle
    for name, lines in families:
        common = {
            "child": name,
            "emergency": "112",
            "position": "Left",
            "order": "1. Left\n2. Up",
            "position-key": "left",
        }
        for line in lines:
            pattern = bundle.get_message(line.id).value
            assert pattern is not None
            bundle.format_pattern(pattern, {**common, **_plain(line.args)})


def _plain(args: Mapping[str, Value]) -> dict[str, object]:
    return {name: value for name, value in args.items() if name not in ("order", "position")}


if __name__ == "__main__":
    main()

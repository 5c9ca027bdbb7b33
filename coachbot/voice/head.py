"""A child's head seen from the front, turned or tilted: a round body in space, drawn as it would look."""

from dataclasses import dataclass
from math import atan2, cos, hypot, pi, radians, sin

from coachbot.programme.positions import Position
from coachbot.voice.svg import HAIR, INK, PAPER, Point, ellipse, line, path

WIDE, HIGH, DEEP = 94.0, 116.0, 100.0
"""Half axes of the head."""

TURNS = {
    Position.CENTER: (0, 0),
    Position.LEFT: (-42, 0),
    Position.RIGHT: (42, 0),
    Position.UP: (0, 17),
    Position.DOWN: (0, -30),
}
"""Degrees of turning (to the picture's right) and of tilting (up). Up is the smallest tilt that can be seen: head
back opens the airway and is commonly avoided."""


@dataclass(frozen=True, slots=True)
class Head:
    """A head with its middle at (0, 0)."""

    turn: float = 0
    tilt: float = 0

    def at(self, across: float, up: float, out: float = 1.0) -> tuple[float, float, float]:
        """Where a spot of the face lies: x and y on paper, z towards the reader.

        `across` and `up` are degrees from the middle of the face, `out` is in radii.
        """
        along, height = radians(across), radians(up)
        x = WIDE * cos(height) * sin(along) * out
        y = HIGH * sin(height) * out
        z = DEEP * cos(height) * cos(along) * out
        turn, tilt = radians(self.turn), radians(self.tilt)
        x, z = x * cos(turn) + z * sin(turn), -x * sin(turn) + z * cos(turn)
        y, z = y * cos(tilt) + z * sin(tilt), -y * sin(tilt) + z * cos(tilt)
        return x, -y, z

    def spots(self, places: list[tuple[float, float]], out: float = 1.0) -> list[Point]:
        """Those of the places that can be seen."""
        found = (self.at(across, up, out) for across, up in places)
        return [(x, y) for x, y, z in found if z > 0]

    @property
    def outline(self) -> Point:
        """Half width and half height of the head as seen."""
        turn, tilt = radians(self.turn), radians(self.tilt)
        return hypot(WIDE * cos(turn), DEEP * sin(turn)), hypot(HIGH * cos(tilt), DEEP * sin(tilt))

    def draw(self, *, mouth: str | None = None, puffed: bool = False) -> str:
        """The head in ink. `mouth` stands in place of the smile."""
        wide, high = self.outline
        ears = {side: self.at(side * 88, -2) for side in (-1, 1)}
        behind = "".join(_ear(x, y) for x, y, z in ears.values() if z <= DEEP / 3)
        before = "".join(_ear(x, y) for x, y, z in ears.values() if z > DEEP / 3)
        cheeks = (
            "".join(ellipse(side * wide * 0.82, high * 0.36, 38, 34, fill=PAPER) for side in (-1, 1)) if puffed else ""
        )
        skull = ellipse(0, 0, wide, high, fill=PAPER)
        inner = ellipse(0, 0, wide - 3, high - 3, fill=PAPER, stroke=PAPER, width=1) if puffed else ""
        return behind + skull + cheeks + inner + self._face(mouth) + self._hair() + before

    def _face(self, mouth: str | None) -> str:
        smile = line(self.spots([(across, -40 + 9 * (across / 21) ** 2) for across in range(-21, 22, 3)]))
        brows = "".join(
            line(self.spots([(side * across, 26 - ((across - 17) / 8) ** 2) for across in range(13, 36, 2)]))
            for side in (-1, 1)
        )
        return self._eye(-1) + self._eye(1) + brows + self._nose() + (smile if mouth is None else mouth)

    def _eye(self, side: int) -> str:
        x, y, z = self.at(side * 24, 8)
        narrow = max(z / DEEP, 0.45)
        shine = ellipse(x - 2 * narrow, y - 4, 2.2 * narrow, 2.6, fill=PAPER, stroke=PAPER, width=0.5)
        return ellipse(x, y, 7.5 * narrow, 10, fill=INK, width=1) + shine

    def _nose(self) -> str:
        side = -1 if self.turn < 0 else 1
        if not self.turn:
            return line([self.at(across, -12 - 5 * cos(across / 9 * pi / 2), 1.1)[:2] for across in range(-9, 10, 3)])
        bridge = [
            (4 * side, 4, 1.02),
            (3 * side, -4, 1.1),
            (2 * side, -12, 1.2),
            (-3 * side, -16, 1.14),
            (-8 * side, -15, 1.04),
        ]
        return line([self.at(*spot)[:2] for spot in bridge])

    def _hair(self) -> str:
        wide, high = (1.05 * half for half in self.outline)
        fringe = self.spots([(across, self._fringe(across)) for across in range(-120, 121, 3)], 1.05)
        (x0, y0), (x1, y1) = fringe[0], fringe[-1]
        start, end = atan2(-y1 / high, x1 / wide), atan2(-y0 / high, x0 / wide)
        end += 2 * pi if end < start else 0
        sweep = [start + (end - start) * part / 24 for part in range(25)]
        ring = [*fringe, *((wide * cos(angle), -high * sin(angle)) for angle in sweep)]
        tuft = path(f"M0 {-high:.1f} q12 -24 30 -18 M-2 {-high:.1f} q-6 -20 -24 -20")
        return tuft + path("M" + " L".join(f"{x:.1f} {y:.1f}" for x, y in ring) + " Z", fill=HAIR)

    def _fringe(self, across: float) -> float:
        """How high the hair ends: in waves that lie flat where the head turns away."""
        facing = max(0.0, cos(radians(across + self.turn)) - 0.3)
        return 39 - (across / 34) ** 2 + 9 * facing * cos(radians(across * 9))


def _ear(x: float, y: float) -> str:
    return ellipse(x, y, 13, 22, fill=PAPER) + ellipse(x, y, 5, 10, width=2.5)


def head(position: Position) -> Head:
    """The head in one of the positions, as in a mirror: the child's left is the picture's left."""
    turn, tilt = TURNS[position]
    return Head(turn=turn, tilt=tilt)

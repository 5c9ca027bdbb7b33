"""The five head positions, named from the child's own point of view."""

from enum import StrEnum


class Position(StrEnum):
    """Where the head is while swallowing: left and right are the child's own, up is chin raised, down lowered."""

    CENTER = "center"
    LEFT = "left"
    RIGHT = "right"
    UP = "up"
    DOWN = "down"

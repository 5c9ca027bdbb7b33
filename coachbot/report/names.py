"""How the papers call a child."""

from coachbot.report.printable import printable, shortened, whole
from coachbot.report.wording import Say

MOST = 40
"""The most letters of a name."""


def called(name: str, say: Say) -> str:
    """The child's name as it stands in a sentence; a name that our fonts cannot print is spoken around."""
    return shortened(printable(name), MOST) if whole(name) else say("child")


def name_line(name: str, say: Say) -> str | None:
    """The label of a line on which to write the name by hand, where our fonts cannot print it."""
    return None if whole(name) else say("name-line")

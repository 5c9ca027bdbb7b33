"""The words of the papers: `prompts/<language>/report.ftl`, beside the words that every reader shares."""

from datetime import date
from functools import cache

from coachbot.coach.actions import Value
from coachbot.programme.positions import Position
from coachbot.programme.protocol import Candy
from coachbot.reading.readings import Mark
from coachbot.voice.drawings import labels
from coachbot.voice.vocabulary import LANGUAGES
from coachbot.voice.wording import Wording

FILE = "report.ftl"

Part = dict[str, object]
"""A part of a paper in words and numbers, as its layout takes it."""


class Say:
    """The words of one language.

    Raises:
        WordingError: the texts of some language are missing, too many, mis-formed or unlike.
        KeyError: there is no such language.
    """

    def __init__(self, language: str) -> None:
        if language not in LANGUAGES:
            raise KeyError(f"{language!r} is none of {', '.join(LANGUAGES)}")
        self.language = language
        self._own = _texts()

    def __call__(self, name: str, /, **args: Value | float) -> str:
        """One text, filled in; a position is shown by its name.

        Raises:
            LookupError: there is no such text, or a variable is missing.
        """
        shown = {key: self.position(value) if isinstance(value, Position) else value for key, value in args.items()}
        return self._own.text(self.language, name, **shown)

    def position(self, position: Position) -> str:
        """The name of a position."""
        return self._shared("position", position=position)

    def mark(self, mark: Mark) -> str:
        """A rating, or what a swallow got instead, in words."""
        return self._shared("mark", mark=mark if isinstance(mark, int) else str(mark))

    def candy(self, candy: Candy) -> str:
        """A candy with its size."""
        return self._shared("candy", candy=candy.kind, size=candy.size_mm)

    def category(self, category: str) -> str:
        """What an alert was about."""
        return self._shared("category", category=category)

    def date(self, day: date) -> str:
        """A date with its year, written out."""
        return self("date", day=day.day, month=day.month, year=str(day.year))

    def _shared(self, name: str, **args: Value) -> str:
        return labels().word(name, self.language, **args)


@cache
def _texts() -> Wording:
    return Wording.load(FILE)

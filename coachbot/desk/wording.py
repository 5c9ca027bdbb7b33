"""What clinicians read at the desk: `prompts/<language>/desk.ftl`, checked when it is loaded."""

from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from coachbot.voice import wording

FILE = "desk.ftl"

NAMES = {"en": "English", "es": "Español", "fr": "Français"}
"""Each language by its own name."""


@dataclass(frozen=True, slots=True)
class Wording:
    """The desk's texts in every language."""

    texts: wording.Wording

    @classmethod
    def load(cls, folder: Path | None = None) -> "Wording":
        """Read and check the texts.

        Raises:
            WordingError: listing what is missing, too much, mis-formed or unlike.
        """
        return cls(wording.Wording.load(FILE, folder))

    def text(self, language: str, name: str, /, **args: object) -> str:
        """One text, filled in; see `voice.wording`."""
        return self.texts.text(language, name, **args)

    def day(self, language: str, at: date) -> str:
        """A date without its year, as in ``25 Nov``."""
        return self.text(language, "date-short", day=str(at.day), month=at.month)

    def moment(self, language: str, at: datetime) -> str:
        """A date and a time of day."""
        return self.text(language, "date-time", date=self.day(language, at), time=f"{at:%H:%M}")

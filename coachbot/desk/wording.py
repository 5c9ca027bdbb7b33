"""What clinicians read at the desk: `prompts/<language>/desk.ftl`, checked when it is loaded."""

from collections.abc import Iterator, Mapping
from datetime import date, datetime
from pathlib import Path

from fluent.runtime import FluentBundle
from fluent.syntax import ast

from coachbot.voice import sources
from coachbot.voice.sources import Fault, Source
from coachbot.voice.vocabulary import LANGUAGES

FILE = "desk.ftl"

NAMES = {"en": "English", "es": "Español", "fr": "Français"}
"""Each language by its own name."""


class WordingError(ValueError):
    """The desk's texts cannot be used; the message lists every fault with its file and id."""

    def __init__(self, faults: list[Fault]) -> None:
        super().__init__("mend the desk's texts and start again:\n" + "\n".join(f"  {fault}" for fault in faults))


class Wording:
    """The desk's texts in every language."""

    def __init__(self, bundles: Mapping[str, FluentBundle]) -> None:
        self._bundles = bundles

    @classmethod
    def load(cls, folder: Path | None = None) -> "Wording":
        """Read and check the texts: the same ids with the same variables in every language.

        Raises:
            WordingError: listing what is missing, too much, mis-formed or unlike.
        """
        root = folder or sources.default_folder()
        found = {language: sources.read(root / language / FILE) for language in LANGUAGES}
        if faults := sorted({fault for source in found.values() for fault in _faults(source, found[LANGUAGES[0]])}):
            raise WordingError(faults)
        return cls({language: _bundle(language, source) for language, source in found.items()})

    def text(self, language: str, name: str, /, **args: object) -> str:
        """One text, filled in.

        Raises:
            KeyError: there is no such text.
            LookupError: a variable is missing.
        """
        message = self._bundles[language].get_message(name)
        if message.value is None:
            raise KeyError(name)
        text, errors = self._bundles[language].format_pattern(message.value, args)
        if errors:
            raise LookupError(f"{FILE}: {name}: {errors[0]}")
        return str(text)

    def day(self, language: str, at: date) -> str:
        """A date without its year, as in ``25 Nov``."""
        return self.text(language, "date-short", day=str(at.day), month=at.month)

    def moment(self, language: str, at: datetime) -> str:
        """A date and a time of day."""
        return self.text(language, "date-time", date=self.day(language, at), time=f"{at:%H:%M}")


def _bundle(language: str, source: Source) -> FluentBundle:
    bundle = FluentBundle([language], use_isolating=False)
    bundle.add_resource(ast.Resource(body=list(source.entries.values())))
    return bundle


def _faults(source: Source, model: Source) -> Iterator[Fault]:
    yield from source.faults
    for name in sorted(model.entries.keys() - source.entries.keys()):
        yield source.fault(name, "missing")
    for name, entry in source.entries.items():
        if name not in model.entries:
            yield source.fault(name, "no such text in the first language")
        elif (needs := sources.uses(entry, source.entries)) != (
            wanted := sources.uses(model.entries[name], model.entries)
        ):
            yield source.fault(name, f"uses the variables {sorted(needs)} and not {sorted(wanted)}")

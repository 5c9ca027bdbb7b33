"""What staff read on a page or a paper: one file of texts in each language, checked when it is loaded.

What families and clinicians are told in chat has stricter rules; see `catalogue`.
"""

from collections.abc import Iterator, Mapping
from pathlib import Path

from fluent.runtime import FluentBundle
from fluent.syntax import ast

from coachbot.voice import sources
from coachbot.voice.sources import Fault, Source
from coachbot.voice.vocabulary import LANGUAGES


class WordingError(ValueError):
    """A file of texts cannot be used; the message lists every fault with its file and id."""

    def __init__(self, faults: list[Fault]) -> None:
        super().__init__("mend these texts and start again:\n" + "\n".join(f"  {fault}" for fault in faults))


class Wording:
    """The texts of one file in every language."""

    def __init__(self, file: str, bundles: Mapping[str, FluentBundle]) -> None:
        self._file = file
        self._bundles = bundles

    @classmethod
    def load(cls, file: str, folder: Path | None = None) -> "Wording":
        """Read and check ``prompts/<language>/<file>``: the same ids with the same variables in every language.

        Raises:
            WordingError: listing what is missing, too much, mis-formed or unlike.
        """
        root = folder or sources.default_folder()
        found = {language: sources.read(root / language / file) for language in LANGUAGES}
        if faults := sorted({fault for source in found.values() for fault in _faults(source, found[LANGUAGES[0]])}):
            raise WordingError(faults)
        return cls(file, {language: _bundle(language, source) for language, source in found.items()})

    def text(self, language: str, name: str, /, **args: object) -> str:
        """One text, filled in.

        Raises:
            KeyError: there is no such text.
            LookupError: a variable is missing.
        """
        pattern = self._bundles[language].get_message(name).value
        if pattern is None:
            raise KeyError(name)
        text, errors = self._bundles[language].format_pattern(pattern, args)
        if errors:
            raise LookupError(f"{self._file}: {name}: {errors[0]}")
        return str(text)

    def names(self) -> list[str]:
        """The ids of all texts."""
        return list(self._bundles[LANGUAGES[0]]._messages)  # noqa: SLF001 - the library has no public way


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
            continue
        needs, wanted = sources.uses(entry, source.entries), sources.uses(model.entries[name], model.entries)
        if needs != wanted:
            yield source.fault(name, f"uses the variables {sorted(needs)} and not {sorted(wanted)}")

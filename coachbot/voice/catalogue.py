"""The texts of `prompts/`, checked when they are loaded and fast to fill in.

>>> catalogue = Catalogue.load()
>>> catalogue.render(line, language="es", audience=Audience.PARENT, common={"child": "Ana", ...})
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache, partial
from pathlib import Path
from typing import Any, Literal

import structlog
from fluent.runtime import FluentBundle
from fluent.syntax import ast

from coachbot.coach.actions import Line, Value
from coachbot.coach.texts import Audience
from coachbot.voice import sources
from coachbot.voice.gsm import fold
from coachbot.voice.sources import Entries, Fault, Source
from coachbot.voice.values import Words
from coachbot.voice.vocabulary import LANGUAGES, SHARED, SMS

Form = Literal["chat", "sms"]

JOINERS: dict[Form, str] = {"chat": "\n", "sms": ", "}
"""What stands between the items of a list."""

REMEMBERED = 16_384
"""How many filled-in texts are kept for the next family that needs the same: some nights, orders and languages more."""

CHILD = "child"
"""The value that every family has to itself."""

LONG = 2000
"""Characters from which a value is put in after Fluent has done its work: it refuses values that are longer, as a guard
against hostile translations, and a clinician's own words must not be lost to that."""

FALLBACK = "fallback"

log = structlog.get_logger(__name__)


class CatalogueError(ValueError):
    """The texts cannot be used; the message lists every fault with its file and id."""

    def __init__(self, faults: list[Fault]) -> None:
        self.faults = faults
        lines = "\n".join(f"  {fault}" for fault in faults)
        super().__init__(f"{len(faults)} faults in the texts; mend them and start again:\n{lines}")


@dataclass(frozen=True, slots=True, eq=False)
class _Text:
    """One form of one text: its pattern, the variables that it needs and those that choose, and where it belongs."""

    id: str
    pattern: Any
    variables: tuple[str, ...]
    choosers: frozenset[str]
    room: "_Room"
    form: Form


class _Room:
    """All texts of one language for one audience, each compiled when it is first wanted."""

    def __init__(self, language: str, entries: Entries) -> None:
        self.bundle = FluentBundle([language], use_isolating=False)
        self.bundle.add_resource(ast.Resource(body=list(entries.values())))
        self.text = cache(partial(self._text, entries))
        self.words = {form: Words(partial(self.plain, form), joiner=joiner) for form, joiner in JOINERS.items()}

    def _text(self, entries: Entries, name: str, form: Form) -> _Text:
        entry = entries[name]
        compiled = self.bundle.get_message(name)
        short = next((one for one in entry.attributes if one.id.name == SMS and form == "sms"), None)
        pattern = compiled.attributes[SMS] if short else compiled.value
        words = short or entry.value
        assert words is not None, "a message without words is a fault and is never loaded"
        needed = tuple(sorted(sources.uses(words, entries)))
        return _Text(name, pattern, needed, sources.choosers(words, entries), self, form)

    def plain(self, form: Form, name: str, args: dict[str, object]) -> str:
        """One of voice's own words, filled in."""
        return str(self.bundle.format_pattern(self.text(name, form).pattern, args)[0])


class Catalogue:
    """Everything that anyone can be told, in every language."""

    def __init__(self, rooms: Mapping[tuple[str, Audience], _Room]) -> None:
        self._rooms = rooms
        self._remembered = lru_cache(REMEMBERED)(_fill)

    @classmethod
    def load(cls, folder: Path | None = None, overrides: Path | None = None) -> "Catalogue":
        """Read and check all texts.

        Args:
            folder: holds ``<language>/{shared,parent,child,clinician}.ftl``; the project's own where None.
            overrides: a clinic's folder of the same layout, which holds only the texts that it puts in place of ours.

        Raises:
            CatalogueError: a text is missing, unknown, twice there, mis-formed, or uses a variable not given to it.
        """
        rooms: dict[tuple[str, Audience], _Room] = {}
        faults = [] if overrides is None else list(sources.stray_faults(overrides))
        for language in LANGUAGES:
            ours = sources.read_language(folder or sources.default_folder(), language, whole=True)
            theirs = {} if overrides is None else sources.read_language(overrides, language, whole=False)
            found = [*sources.language_faults(ours, whole=True), *sources.language_faults(theirs, whole=False)]
            found += _entry_faults(ours, theirs)
            faults += found
            if not found:
                rooms |= {(language, one): _Room(language, _entries(one, ours, theirs)) for one in Audience}
        if faults:
            raise CatalogueError(sorted(set(faults)))
        return cls(rooms)

    def render(
        self, line: Line, *, language: str, audience: Audience, common: Mapping[str, Value], form: Form = "chat"
    ) -> str:
        """One text in the reader's language.

        `common` holds ``child``, ``emergency`` and ``tone``. A text that cannot be filled in is logged as an error and
        replaced by one that says so and is safe, so that neither an id nor a placeholder reaches anyone.

        Raises:
            KeyError: there is no such text for this audience, or no such language.
        """
        text = self._rooms[language, audience].text(line.id, form)
        try:
            return self._filled(text, [_value(name, line.args, common) for name in text.variables])
        except Exception:
            log.exception("text_unfillable", text=line.id, language=language, audience=str(audience))
            return text.room.plain(form, FALLBACK, {})

    def word(self, name: str, language: str, **args: Value) -> str:
        """One of voice's own words, such as the label of a picture.

        Raises:
            KeyError: there is no such word, or it is not given a variable that it needs.
        """
        text = self._rooms[language, Audience.PARENT].text(name, "chat")
        return self._filled(text, [_value(one, args, {}) for one in text.variables])

    def _filled(self, text: _Text, values: list[Value]) -> str:
        """Long values and the child's name are put in last, so that what is remembered serves other families too."""
        last: dict[str, str] = {}
        for place, name in enumerate(text.variables):
            value = values[place]
            if (
                isinstance(value, str)
                and (len(value) > LONG or (name == CHILD and value))
                and name not in text.choosers
            ):
                values[place] = mark = f"\ue000{name}\ue001"
                last[mark] = fold(value) if text.form == "sms" else value
        whole = self._remembered(text, tuple(values))
        for mark, value in last.items():
            whole = whole.replace(mark, value)
        return whole


def _value(name: str, own: Mapping[str, Value], common: Mapping[str, Value]) -> Value:
    if name in own:
        return own[name]
    if name.endswith("-key"):
        return str(own[name.removesuffix("-key")])
    return common[name]


def _fill(text: _Text, values: tuple[Value, ...]) -> str:
    words = text.room.words[text.form]
    args = {
        name: value if name in text.choosers else words.show(value)
        for name, value in zip(text.variables, values, strict=True)
    }
    filled, errors = text.room.bundle.format_pattern(text.pattern, args)
    if errors:
        raise errors[0]
    return fold(str(filled)) if text.form == "sms" else str(filled)


def _entries(audience: Audience, *layers: Mapping[str, Source]) -> Entries:
    """What one audience's texts are made of; a later layer stands in place of an earlier one."""
    merged: Entries = {}
    for layer in layers:
        for file in (SHARED, audience):
            if file in layer:
                merged |= layer[file].entries
    return merged


def _entry_faults(*layers: Mapping[str, Source]) -> Iterator[Fault]:
    for audience in Audience:
        entries = _entries(audience, *layers)
        for layer in layers:
            for file in (SHARED, audience):
                if file in layer:
                    yield from sources.entry_faults(layer[file], entries)

"""Reads `prompts/` and says everything that is wrong with it, before a word of it reaches anyone."""

import sysconfig
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path

from fluent.syntax import FluentParser, ast
from fluent.syntax.visitor import Visitor

from coachbot.coach.texts import TEXTS, Audience
from coachbot.voice.vocabulary import FILES, LANGUAGES, POSITIONAL, SHARED, SMS, WORDS, allowed, wanted

Entry = ast.Message | ast.Term
Entries = dict[str, Entry]


@dataclass(frozen=True, slots=True, order=True)
class Fault:
    """One thing wrong in a file: where, in which text, and what."""

    file: str
    id: str
    what: str

    def __str__(self) -> str:
        return f"{self.file}: {self.id}: {self.what}"


@dataclass(frozen=True, slots=True)
class Source:
    """One file as read: its entries by id (a term's with its hyphen) and what is wrong with its form."""

    path: Path
    entries: Entries = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)

    def fault(self, name: str, what: str) -> Fault:
        """A fault in this file."""
        return Fault(str(self.path), name, what)


@dataclass
class _Uses(Visitor):
    """What one entry mentions: variables, those that choose a wording, other messages, terms and functions."""

    variables: set[str] = field(default_factory=set)
    choosers: set[str] = field(default_factory=set)
    messages: set[str] = field(default_factory=set)
    terms: set[str] = field(default_factory=set)
    functions: set[str] = field(default_factory=set)

    def visit_VariableReference(self, node: ast.VariableReference) -> None:  # noqa: N802 - the visitor's own naming
        self.variables.add(node.id.name)

    def visit_SelectExpression(self, node: ast.SelectExpression) -> None:  # noqa: N802
        if isinstance(node.selector, ast.VariableReference):
            self.choosers.add(node.selector.id.name)
        self.generic_visit(node)

    def visit_MessageReference(self, node: ast.MessageReference) -> None:  # noqa: N802
        self.messages.add(node.id.name)

    def visit_TermReference(self, node: ast.TermReference) -> None:  # noqa: N802
        self.terms.add(f"-{node.id.name}")

    def visit_FunctionReference(self, node: ast.FunctionReference) -> None:  # noqa: N802
        self.functions.add(node.id.name)


def default_folder() -> Path:
    """Where the texts lie: beside the package in a checkout, under the environment's data when installed."""
    beside = Path(__file__).parents[2] / "prompts"
    return beside if beside.is_dir() else Path(sysconfig.get_path("data")) / "share" / "coachbot" / "prompts"


def read(path: Path) -> Source:
    """One file, with the faults of its form. A file that is not there is one fault."""
    source = Source(path)
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        source.faults.append(source.fault("file", f"cannot be read as UTF-8 text: {error}"))
        return source
    for entry in _parsed(text):
        if isinstance(entry, ast.Junk):
            source.faults.append(source.fault(_junk_name(entry), f"mis-formed: {entry.annotations[0].message}"))
        elif isinstance(entry, Entry):
            _add(source, entry)
    return source


@lru_cache(maxsize=64)
def _parsed(text: str) -> list[ast.EntryType]:
    """Parsing is most of what loading costs, and the same text is loaded for several uses."""
    return list(FluentParser().parse(text).body)


def _add(source: Source, entry: Entry) -> None:
    name = f"-{entry.id.name}" if isinstance(entry, ast.Term) else entry.id.name
    if name in source.entries:
        source.faults.append(source.fault(name, "stands twice in this file"))
    source.entries[name] = entry


def _junk_name(junk: ast.Junk) -> str:
    return str(junk.content).partition("=")[0].strip().partition("\n")[0][:40]


def uses(node: ast.BaseNode, entries: Entries) -> frozenset[str]:
    """The variables that a message or a form of it needs, also through the messages that it refers to."""
    return frozenset().union(*(one.variables for one in _reached(node, entries, frozenset())))


def choosers(node: ast.BaseNode, entries: Entries) -> frozenset[str]:
    """Those variables by which a wording is chosen, so that they must keep their kind."""
    return frozenset().union(*(one.choosers for one in _reached(node, entries, frozenset())))


def _reached(node: ast.BaseNode, entries: Entries, seen: frozenset[str]) -> Iterator[_Uses]:
    found = _mentions(node)
    yield found
    for name in found.messages - seen:
        if name in entries:
            yield from _reached(entries[name], entries, seen | {name})


@lru_cache(maxsize=16_384)
def _mentions(node: ast.BaseNode) -> _Uses:
    found = _Uses()
    found.visit(node)
    return found


def language_faults(sources: dict[str, Source], *, whole: bool) -> Iterator[Fault]:
    """What is wrong with one language's files, by file name; `whole` is for a set in which nothing may be missing."""
    for file, source in sources.items():
        yield from source.faults
        for name in source.entries:
            if not name.startswith("-") and name not in wanted(file):
                yield source.fault(name, "no such text for this file; see coachbot/coach/texts.py")
    if whole:
        yield from _missing(sources)


def _missing(sources: dict[str, Source]) -> Iterator[Fault]:
    shared = sources[SHARED]
    yield from (shared.fault(name, "missing") for name in sorted(WORDS.keys() - shared.entries.keys()))
    for audience in Audience:
        source = sources[audience]
        twice = source.entries.keys() & shared.entries.keys()
        yield from (source.fault(name, f"stands also in {SHARED}.ftl") for name in sorted(twice))
        needed = wanted(audience) - source.entries.keys() - shared.entries.keys()
        yield from (source.fault(name, "missing") for name in sorted(needed))


def entry_faults(source: Source, entries: Entries) -> Iterator[Fault]:
    """What is wrong inside the messages of one file, given all the entries that they may refer to."""
    for name, entry in source.entries.items():
        found = _mentions(entry)
        strange = (found.messages | found.terms) - entries.keys()
        yield from (source.fault(name, f"refers to {{ {other} }}, which is not there") for other in sorted(strange))
        yield from (source.fault(name, f"calls {function}(); say it without") for function in sorted(found.functions))
        if isinstance(entry, ast.Message):
            yield from _message_faults(source, name, entry, entries)


def _message_faults(source: Source, name: str, entry: ast.Message, entries: Entries) -> Iterator[Fault]:
    if entry.value is None:
        yield source.fault(name, "has no words of its own")
    for attribute in entry.attributes:
        if attribute.id.name != SMS:
            yield source.fault(name, f"has .{attribute.id.name}; the only other form is .{SMS}")
    for variable in sorted(choosers(entry, entries) & POSITIONAL):
        yield source.fault(name, f"chooses by ${variable}; choose by ${variable}-key")
    for variable in sorted(uses(entry, entries) - allowed(name)):
        if name in WORDS or name in TEXTS:
            yield source.fault(name, f"uses ${variable}, which it is not given")


def read_language(folder: Path, language: str, *, whole: bool) -> dict[str, Source]:
    """The files of one language by name; where not `whole`, only those that are there."""
    paths = {file: folder / language / f"{file}.ftl" for file in FILES}
    return {file: read(path) for file, path in paths.items() if whole or path.exists()}


def stray_faults(folder: Path) -> Iterator[Fault]:
    """Files of a clinic's own folder that would never be read: a mistyped language or name."""
    known = {folder / language / f"{file}.ftl" for language in LANGUAGES for file in FILES}
    for path in sorted(folder.rglob("*.ftl")):
        if path not in known:
            yield Fault(str(path), "file", f"is never read; the names are <language>/{'|'.join(FILES)}.ftl")

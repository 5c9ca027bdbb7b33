"""The house keeps its own laws: what a room may import and call, how long things get, what lies on top."""

import ast
import re
import subprocess
import sys
import tomllib
from collections.abc import Iterable, Iterator
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]

PURE = {
    "programme": set[str](),
    "triage": {"rapidfuzz"},
    "reading": {"rapidfuzz"},
    "coach": set[str](),
    "insight": {"numpy", "scipy"},
}
"""The pure rooms, each with the libraries that it may use."""

SHARED = {f"coachbot.{room}" for room in PURE} | {"coachbot.jsonlines"}

FORBIDDEN_CALLS = {".now", ".utcnow", ".today", "open", "print", "input", "exec", "eval"}
"""What reads the clock or touches the world; a room's own data is opened through `importlib.resources`."""

TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "coachbot", "prompts", "tests", "deploy"}

PRODUCT = sorted((ROOT / "coachbot").rglob("*.py"))

TESTS = sorted(path for path in (ROOT / "tests").rglob("*.py") if "node_modules" not in path.parts)

PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def parse(path: Path) -> ast.Module:
    """The syntax tree of a source file."""
    return ast.parse(path.read_text(encoding="utf-8"))


def imported(tree: ast.Module) -> Iterator[str]:
    """The dotted name of every module that is imported anywhere in a file."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module == "coachbot":
            yield from (f"coachbot.{alias.name}" for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield node.module or ""


def called(tree: ast.Module) -> Iterator[str]:
    """Everything that is called, by its bare name, or as ``.now`` for a method such as ``datetime.now()``."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
            yield f".{node.func.attr}"
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            yield node.func.id


def foreign(name: str, libraries: set[str]) -> bool:
    """Whether a pure room has no business with a module."""
    top = name.partition(".")[0]
    if top == "coachbot":
        return ".".join(name.split(".")[:2]) not in SHARED
    return top not in sys.stdlib_module_names | libraries


def unseeded(tree: ast.Module) -> Iterator[str]:
    """What a file takes from `random` other than `Random`, which is given a seed."""
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module == "random":
            yield from (alias.name for alias in node.names if alias.name != "Random")
        elif isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "random":
            yield from {node.attr} - {"Random"}


@pytest.mark.parametrize("room", PURE)
def test_a_pure_room_imports_only_what_it_may(room: str) -> None:
    """Law 1: the standard library, the other pure rooms, and the libraries named here."""
    found = {
        (path.name, name)
        for path in (ROOT / "coachbot" / room).rglob("*.py")
        for name in imported(parse(path))
        if foreign(name, PURE[room])
    }

    assert found == set()


@pytest.mark.parametrize("room", PURE)
def test_a_pure_room_reads_no_clock_and_draws_no_unseeded_number(room: str) -> None:
    """Law 1: time is an argument, and so is the seed."""
    found = {
        (path.name, name)
        for path in (ROOT / "coachbot" / room).rglob("*.py")
        for name in [*(FORBIDDEN_CALLS & set(called(parse(path)))), *unseeded(parse(path))]
    }

    assert found == set()


def test_the_search_for_clocks_and_dice_finds_them() -> None:
    """The checks above can fail."""
    tree = ast.parse(
        "import random, datetime, socket\nfrom random import choice\nrandom.random()\ndatetime.date.today()"
    )

    assert set(unseeded(tree)) == {"choice", "random"}
    assert ".today" in set(called(tree))
    assert [name for name in imported(tree) if foreign(name, set())] == []
    assert foreign("sqlalchemy.orm", {"numpy"})
    assert foreign("coachbot.store", {"numpy"})


def test_no_function_is_over_60_lines_and_no_file_over_500() -> None:
    """A person can read each thing in one go."""
    long = [
        f"{path.relative_to(ROOT)}"
        for path in [*PRODUCT, *TESTS]
        if len(path.read_text(encoding="utf-8").splitlines()) > 500
    ]
    long += [
        f"{path.relative_to(ROOT)}:{node.lineno} {node.name}"
        for path in [*PRODUCT, *TESTS]
        for node in ast.walk(parse(path))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and (node.end_lineno or 0) - node.lineno >= 60
    ]

    assert long == []


def test_the_top_level_holds_nothing_but_its_fixed_names() -> None:
    """Everything has its place further down."""
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    top = {line.split("/")[0] for line in listed.splitlines()}

    assert {name for name in top if not name.startswith(".")} - TOP == set()


def packages(requirements: Iterable[str]) -> set[str]:
    """The names of packages out of requirements such as ``name[extra]>=1``, spelled as PyPA's rule has it."""
    names = (re.match(r"[A-Za-z0-9._-]+", requirement) for requirement in requirements)
    return {re.sub(r"[-_.]+", "-", name[0]).lower() for name in names if name}


def undeclared(paths: Iterable[Path], declared: set[str]) -> set[tuple[str, str]]:
    """Each file with a library that it imports though no declared package brings it."""
    brought = {module: packages(names) for module, names in packages_distributions().items()}
    tops = ((path, name.partition(".")[0]) for path in paths for name in imported(parse(path)))
    return {
        (str(path.relative_to(ROOT)), top)
        for path, top in tops
        if top in brought and top != "coachbot" and not brought[top] & declared
    }


def test_every_library_that_is_imported_is_declared() -> None:
    """What only another package happens to bring may be gone with its next version."""
    declared = packages(PROJECT["dependencies"])
    for_tests = declared | packages(PROJECT["optional-dependencies"]["test"])

    assert undeclared(PRODUCT, declared) == set()
    assert undeclared([path for path in TESTS if path.name.startswith(("test_", "conftest"))], for_tests) == set()


@pytest.mark.parametrize("name", ["requirements.txt", "requirements-test.txt"])
def test_every_declared_package_is_pinned_with_hashes_and_without_addresses(name: str) -> None:
    """deploy/pin has been run since pyproject.toml was changed; PEP 503's names, pip's hash-checking mode."""
    pinned = (ROOT / "deploy" / name).read_text(encoding="utf-8")
    wanted = packages(PROJECT["dependencies"])
    if name == "requirements-test.txt":
        wanted |= packages(PROJECT["optional-dependencies"]["test"])
    blocks = re.findall(r"^(\S+?)==\S+.*((?:\n    --hash=sha256:[0-9a-f]{64}.*)+)", pinned, re.MULTILINE)

    assert wanted <= packages(block[0] for block in blocks)
    assert len(blocks) == len(re.findall(r"^[^ #\n]", pinned, re.MULTILINE))
    assert "://" not in pinned

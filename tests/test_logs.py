"""The log's words: one stable action a line, each explained to the person who reads them, and no other."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
CODE = sorted((ROOT / "coachbot").rglob("*.py"))
LEVELS = {"debug", "info", "warning", "error", "critical", "exception"}
LOGS = {"log", "logger", "structlog"}
README = (ROOT / "deploy" / "README.md").read_text(encoding="utf-8")


def calls(tree: ast.AST) -> Iterator[ast.Call]:
    """Every call of a logger."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in LEVELS:
            root = node.func.value
            while isinstance(root, ast.Attribute | ast.Call):
                root = root.func if isinstance(root, ast.Call) else root.value
            if isinstance(root, ast.Name) and root.id in LOGS:
                yield node


def actions(tree: ast.AST) -> list[object]:
    """What each call says first: a word, or None if that is not written out."""
    return [
        call.args[0].value if len(call.args) == 1 and isinstance(call.args[0], ast.Constant) else None
        for call in calls(tree)
    ]


def documented() -> set[str]:
    """The words of the table."""
    table = README.partition("| action | what happened |")[2].partition("\n\n")[0]
    return {word for row in table.splitlines() for word in re.findall(r"`([a-z_]+)`", row.partition(" | ")[0])}


@pytest.mark.parametrize("path", [path for path in CODE if list(calls(ast.parse(path.read_text(encoding="utf-8"))))])
def test_every_line_is_one_action_word_and_fields(path: Path) -> None:
    """Nothing but the word stands before the fields, and it is written out where it is logged."""
    for action in actions(ast.parse(path.read_text(encoding="utf-8"))):
        assert isinstance(action, str), f"{path.name} logs what is not written out"
        assert re.fullmatch(r"[a-z]+(_[a-z]+)*", action), f"{path.name}: {action!r} is no action word"


def test_every_action_word_is_explained_and_no_other() -> None:
    """`deploy/README.md` has a line for each."""
    used = {action for path in CODE for action in actions(ast.parse(path.read_text(encoding="utf-8")))}

    assert used == documented()


def test_the_search_finds_what_is_wrong() -> None:
    """The checks above can fail."""
    tree = ast.parse(
        'log.info("two words")\nlog.bind(a=1).error(f"{x}")\nstructlog.get_logger().info("fine", a=1)\nx.info("no")'
    )

    assert actions(tree) == ["two words", None, "fine"]

"""A working names the formula that made its number, and the list shows those that make numbers."""

import ast
import re
from collections import defaultdict
from pathlib import Path

from demo import PACKAGE
from strength_handbook.calc.registry import all_formulas
from strength_handbook.calc.unused import UNUSED

CALC = PACKAGE / "calc"
FORMULAS = {entry.id for entry in all_formulas()}


def names_in(node: ast.AST) -> set[str]:
    found = {one.id for one in ast.walk(node) if isinstance(one, ast.Name)}
    return found | {one.attr for one in ast.walk(node) if isinstance(one, ast.Attribute)}


def needs() -> dict[str, set[str]]:
    """What every function and table of the formulas needs."""
    found: dict[str, set[str]] = defaultdict(set)
    for path in CALC.glob("*.py"):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                found[node.name] |= names_in(node)
            elif isinstance(node, ast.Assign | ast.AnnAssign):
                targets = node.targets if isinstance(node, ast.Assign) else [node.target]
                for target in targets:
                    if isinstance(target, ast.Name):
                        found[target.id] |= names_in(node)
    return found


def is_working(path: Path) -> bool:
    return path.name.startswith("working")


def in_use() -> set[str]:
    """Everything that a module which makes numbers imports, and what that needs in turn.

    A working only tells how a number came about: what it imports does not count.
    """
    calls, seen = needs(), set[str]()
    todo = [
        alias.name
        for path in PACKAGE.rglob("*.py")
        if path.parent != CALC and not is_working(path)
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith(
            "strength_handbook.calc."
        )
        for alias in node.names
    ]  # fmt: skip
    while todo:
        name = todo.pop()
        if name not in seen:
            seen.add(name)
            todo += [one for one in calls.get(name, ()) if one in calls]
    return seen


def test_workings_name_what_made_the_number() -> None:
    used = in_use()
    named = {
        name
        for path in (PACKAGE / "workings").glob("*.py")
        for name in re.findall(r'"([a-z_0-9]+)"', path.read_text(encoding="utf-8"))
        if name in FORMULAS
    }
    assert len(named) > 15
    assert named - used == set()


def test_formulas_that_make_no_number_are_listed_with_a_reason() -> None:
    assert in_use() & UNUSED.keys() == set()
    assert UNUSED.keys() == FORMULAS - in_use()
    assert all(len(reason) > 10 for reason in UNUSED.values())

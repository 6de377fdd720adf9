"""The flow runs one way: which part of the package may import which."""

import ast
from pathlib import Path

import pytest

import demo

MAY_IMPORT = {
    "model": {"model"},
    "calc": {"calc"},
    "pictures": {"pictures"},
    "figures": {"figures", "model"},
    "dose": {"dose", "model", "calc"},
    "reading": {"reading", "figures", "dose", "model"},
    "plan": {"plan", "calc", "dose", "model"},
    "floor": {"floor", "plan", "calc", "dose", "model"},
    "phone": {"phone", "plan", "calc", "dose", "model"},
    "record": {"record", "plan", "calc", "dose", "model"},
    "workings": {"workings", "plan", "calc", "dose", "model"},
    "review": {"review", "floor", "plan", "reading", "dose", "model", "calc"},
    "pages": {
        "pages", "review", "pictures", "figures", "floor", "phone", "record", "workings", "plan",
        "reading", "dose", "model", "calc",
    },
    "checked": {"reading", "review", "plan", "model"},
    "publish": {"publish", "pages", "checked", "review", "record", "plan", "reading", "model"},
    "trace": {"pages", "review", "phone", "plan", "dose", "model"},
    "cli_shared": {"publish"},
    "cli_room": {"publish"},
    "cli_begin": {"cli_room", "cli_shared", "publish", "checked"},
    "cli_new": {"cli_room", "cli_shared", "publish", "checked"},
    "cli": {
        "cli_begin", "cli_new", "cli_shared", "publish", "pages", "checked", "trace", "review",
        "reading", "cli",
    },
    "__main__": {"cli"},
    "__init__": set(),
    "plugin_built": {"publish", "pages", "reading"},
    "plugin_config": set(),
    "plugin_edition": {"plugin_built", "plugin_config", "publish", "pages", "checked", "reading"},
    "plugin_serve": {"plugin_edition", "publish", "pages"},
    "plugin_nav": {"publish", "pages"},
    "plugin_files": {"publish", "pages"},
    "plugin": {
        "plugin_built", "plugin_config", "plugin_serve", "plugin_nav", "plugin_files", "publish",
        "pages", "checked", "reading",
    },
}  # fmt: skip
PACKAGE = "strength_handbook"
MODULES = sorted(demo.PACKAGE.rglob("*.py"))


def part_of(path: Path) -> str:
    return path.relative_to(demo.PACKAGE).parts[0].removesuffix(".py")


def imported(path: Path) -> set[str]:
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports by full name"
            found.add(node.module or "")
            if node.module == PACKAGE:
                found |= {f"{PACKAGE}.{alias.name}" for alias in node.names}
    return found


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(demo.PACKAGE)))
def test_nothing_imports_its_right_neighbour(path: Path) -> None:
    parts = {name.split(".")[1] for name in imported(path) if name.startswith(f"{PACKAGE}.")}
    assert parts <= MAY_IMPORT[part_of(path)]


def test_only_the_plugin_imports_mkdocs() -> None:
    users = {part_of(path) for path in MODULES if any(
        name.split(".")[0] in ("mkdocs", "material") for name in imported(path)
    )}  # fmt: skip
    assert users == {
        "plugin",
        "plugin_built",
        "plugin_config",
        "plugin_files",
        "plugin_nav",
        "plugin_serve",
    }

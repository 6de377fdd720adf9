"""Other code for the functions of modules that are loaded, wherever else they are held.

Not for pytest's own run: this is a part of `mutants.py`.
"""

import ast
import gc
import sys
from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import _lru_cache_wrapper
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

Functions = Mapping[str, list[FunctionType]]
"""Every function there is, by its file."""
Lines = dict[str, int]
"""Lines of each file that were come by, as the bits of a number."""

_NOTE = "_come_by"
"""Name in a module of what its statements note in."""


class Looking:
    """Notes the statements that tests come by: functions get code that says so itself.

    A trace function would do without, and take several times as long.
    """

    def __init__(self, functions: Functions) -> None:
        self._hits: dict[str, bytearray] = {}
        for file, several in functions.items():
            tree = _noting(Path(file))
            hits = self._hits[file] = bytearray((tree.body[-1].end_lineno or 0) + 1)
            vars(_module(file))[_NOTE] = hits
            put_in(tree, file, several)

    def take(self) -> Lines:
        """Lines since the last time."""
        lines = {}
        for file, hits in self._hits.items():
            if any(hits):
                lines[file] = sum(1 << line for line, hit in enumerate(hits) if hit)
                hits[:] = bytes(len(hits))
        return lines


def _noting(file: Path) -> ast.Module:
    """The module's tree in which each statement of a function first notes that it is come by."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    blocks = {
        id(block): block
        for function in ast.walk(tree)
        if isinstance(function, ast.FunctionDef)
        for node in ast.walk(function)
        for name in ("body", "orelse", "finalbody")
        if isinstance(block := getattr(node, name, None), list)
    }
    for block in blocks.values():
        block[:] = [
            part for one in block for part in (*ast.parse(f"{_NOTE}[{one.lineno}] = 1").body, one)
        ]
    return ast.fix_missing_locations(tree)


def add(lines: Lines, more: Lines) -> None:
    """Lines of several tests together."""
    for file, bits in more.items():
        lines[file] = lines.get(file, 0) | bits


def all_functions(folders: tuple[str, ...]) -> Functions:
    """Every function of the files under some folders."""
    functions: dict[str, list[FunctionType]] = defaultdict(list)
    for one in gc.get_objects():
        if isinstance(one, FunctionType) and one.__code__.co_filename.startswith(folders):
            functions[one.__code__.co_filename].append(one)
    return functions


def all_caches() -> list[Any]:
    """Everything that keeps the answers of a function."""
    return [one for one in gc.get_objects() if isinstance(one, _lru_cache_wrapper)]


def put_in(tree: ast.Module, file: str, functions: list[FunctionType]) -> bool:
    """Give the functions of a module their code in another tree of it; True if one changed."""
    codes = {
        (one.co_qualname, one.co_firstlineno): one for one in _codes(compile(tree, file, "exec"))
    }
    changed = False
    for function in functions:
        old = function.__code__
        new = codes.get((old.co_qualname, old.co_firstlineno), old)
        if new != old and new.co_freevars == old.co_freevars:
            function.__code__ = new
            changed = True
    return changed


def set_constant(tree: ast.Module, file: str, name: str, line: int) -> bool:
    """Set a module's constant in every module that has it; True if it is another one now.

    What was worked out from it while modules were loaded stays as it was.
    """
    names = vars(_module(file))
    old, fresh = names[name], dict(names)
    tree.body = [one for one in tree.body if one.lineno == line]
    exec(compile(tree, file, "exec"), fresh)  # noqa: S102  # our own module
    for one in list(sys.modules.values()):
        held = getattr(one, "__dict__", {})
        if name in held and held[name] is old:
            held[name] = fresh[name]
    return bool(fresh[name] != old)


def _module(file: str) -> Any:
    return next(one for one in list(sys.modules.values()) if getattr(one, "__file__", "") == file)


def _codes(code: CodeType) -> Iterator[CodeType]:
    yield code
    for one in code.co_consts:
        if isinstance(one, CodeType):
            yield from _codes(one)

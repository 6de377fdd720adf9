"""What each field of a file's model says of itself: the docstring that stands under it.

A class keeps only its own docstring, so those of fields are read from the source. Only hover help,
a new file and a few messages need them: nothing is read before somebody asks, since reading every
module again would cost a command more than all else it does to begin.
"""

import ast
import inspect
import sys
from collections.abc import Mapping
from functools import cache
from itertools import pairwise

from pydantic import BaseModel


@cache
def field_words(model: type[BaseModel]) -> Mapping[str, str]:
    """The docstring of each field by its name in the code; fields without one are left out.

    Those that are inherited are there too.
    """
    found: dict[str, str] = {}
    for kind in reversed(model.__mro__):
        if issubclass(kind, BaseModel) and kind is not BaseModel:
            body = _classes(kind.__module__).get(kind.__qualname__, [])
            found |= _docstrings(body)
    return {name: found[name] for name in model.model_fields if name in found}


@cache
def _classes(module: str) -> Mapping[str, list[ast.stmt]]:
    """The body of every class at the top of a module, by name."""
    tree = ast.parse(inspect.getsource(sys.modules[module]))
    return {one.name: one.body for one in tree.body if isinstance(one, ast.ClassDef)}


def _docstrings(body: list[ast.stmt]) -> dict[str, str]:
    """Texts that stand right under a field, as `inspect.cleandoc` leaves them."""
    found = {}
    for field, text in pairwise(body):
        match field, text:
            case (
                ast.AnnAssign(target=ast.Name(id=name)),
                ast.Expr(value=ast.Constant(value=str(said))),
            ):
                found[name] = inspect.cleandoc(said)
    return found

"""Small faults that can be put into a module: which places there are, and its tree with one.

Left alone: texts, annotations, docstrings, decorators, what is raised, and class bodies outside
their methods. Defaults of parameters too, because a function that is there keeps its old ones.
"""

import ast
import copy
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

_BOUNDARY: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt,
}  # fmt: skip
_CONTRARY: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.GtE, ast.LtE: ast.Gt, ast.Gt: ast.LtE, ast.GtE: ast.Lt, ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq, ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In,
}  # fmt: skip
_ARITHMETIC: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
    ast.FloorDiv: ast.Div, ast.Mod: ast.Mult, ast.Pow: ast.Mult,
}  # fmt: skip
_SWAPPED = {"min": "max", "max": "min", "any": "all", "all": "any"}
_TINY = 1e-3
"""Floats below are allowances for rounding: another one changes nothing."""

Change = Callable[[], None]


@dataclass(frozen=True)
class Mutation:
    """One fault.

    Attributes:
        file: the module.
        line: of the statement that it stands in, from 1.
        node: number of the changed node in the order of `ast.walk`.
        kind: which of the faults that the node can have.
        says: the code before and after.
        constant: name of the module's constant that it is in; empty inside a function.
    """

    file: Path
    line: int
    node: int
    kind: str
    says: str
    constant: str

    @property
    def key(self) -> str:
        """Names the fault for as long as the module stays as it is."""
        return f"{self.file.stem}:{self.line}:{self.node}:{self.kind}"


def sample(file: Path, most: int, seed: int) -> list[Mutation]:
    """Up to ``most`` faults of a module, always the same; a smaller sample is part of a larger."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    numbers = {id(node): number for number, node in enumerate(ast.walk(tree))}
    places = [
        Mutation(file, line, numbers[id(node)], kind, _says(node, kind), constant)
        for node, line, constant in _inside(tree, 0, "")
        for kind, _ in _faults(node)
    ]
    random.Random(f"{seed} {file.name}").shuffle(places)
    return places[:most]


def mutated(mutation: Mutation) -> ast.Module:
    """The module's tree with the fault."""
    tree = ast.parse(mutation.file.read_text(encoding="utf-8"))
    node = next(n for number, n in enumerate(ast.walk(tree)) if number == mutation.node)
    dict(_faults(node))[mutation.kind]()
    return ast.fix_missing_locations(tree)


def _says(node: ast.AST, kind: str) -> str:
    after = copy.deepcopy(node)
    dict(_faults(after))[kind]()
    return "  =>  ".join(_short(ast.unparse(one)) for one in (node, after))


def _short(text: str) -> str:
    line = text.partition("\n")[0] if text.startswith("if ") else " ".join(text.split())
    return line if len(line) <= 90 else f"{line[:55]} ... {line[-30:]}"


def _inside(node: ast.AST, line: int, constant: str) -> Iterator[tuple[ast.AST, int, str]]:
    """Nodes that may have a fault, with the statement's line and the module's constant."""
    for child in _parts(node):
        here = child.lineno if isinstance(child, ast.stmt) else line
        name = constant
        if isinstance(node, ast.Module):
            name = _constant(child)
            if not name and not isinstance(child, ast.FunctionDef | ast.ClassDef):
                continue
        if isinstance(node, ast.ClassDef) and not isinstance(child, ast.FunctionDef):
            continue
        yield child, here, name
        yield from _inside(child, here, name)


def _constant(statement: ast.AST) -> str:
    match statement:
        case ast.Assign(targets=[ast.Name(id=name)]) | ast.AnnAssign(target=ast.Name(id=name)):
            return name
        case _:
            return ""


def _parts(node: ast.AST) -> Iterator[ast.AST]:
    """The children of a node in which a fault means something."""
    match node:
        case ast.FunctionDef(name="__repr__") | ast.Raise() | ast.Assert():
            return
        case ast.FunctionDef() | ast.ClassDef():
            yield from node.body
        case ast.Lambda():
            yield node.body
        case ast.AnnAssign():
            yield from [node.value] if node.value is not None else []
        case ast.Call(func=ast.Name(id="zip")):
            yield from node.args  # `strict` only raises
        case ast.Call(func=ast.Name(id="round")):
            yield node.args[0]
        case ast.Call(func=ast.Name(id="cast" | "TypeVar" | "field" | "isinstance")):
            return
        case _:
            yield from ast.iter_child_nodes(node)


def _faults(node: ast.AST) -> Iterator[tuple[str, Change]]:
    """Kinds of fault that a node can have, with what makes each in place."""

    def put(name: str, value: object) -> Change:
        return lambda: setattr(node, name, value)

    match node:
        case ast.Compare(ops=[one]):
            for kind, others in (("boundary", _BOUNDARY), ("contrary", _CONTRARY)):
                if type(one) in others:
                    yield kind, put("ops", [others[type(one)]()])
        case ast.BinOp(op=op, left=left, right=right) if type(op) in _ARITHMETIC:
            if not (_text(left) or _text(right)):
                yield "arithmetic", put("op", _ARITHMETIC[type(op)]())
        case ast.AugAssign(op=op, value=value) if type(op) in _ARITHMETIC:
            if not _text(value):
                yield "arithmetic", put("op", _ARITHMETIC[type(op)]())
        case ast.BoolOp(op=op):
            yield "and-or", put("op", ast.Or() if isinstance(op, ast.And) else ast.And())
        case ast.UnaryOp(op=ast.Not(), operand=operand):
            yield "not", put("operand", ast.UnaryOp(ast.Not(), operand))
        case ast.Constant(value=bool() as flag):
            yield "flag", put("value", not flag)
        case ast.Constant(value=int() | float() as number) if not 0 < abs(number) < _TINY:
            yield "more", put("value", number + 1)
            yield "less", put("value", number - 1)
        case ast.Return(value=ast.expr() as value) if not isinstance(value, ast.Constant):
            yield "nothing", put("value", ast.Constant(None))
        case ast.Expr(value=ast.Call() | ast.Yield() | ast.YieldFrom() as value):
            # `False and` keeps a generator a generator.
            never = ast.BoolOp(ast.And(), [ast.Constant(False), value])  # noqa: FBT003
            yield "left-out", put("value", never)
        case ast.If(test=test) | ast.IfExp(test=test):
            # The contrary of one comparison is a fault of its own already.
            if not isinstance(test, ast.Compare | ast.UnaryOp):
                yield "swapped", put("test", ast.UnaryOp(ast.Not(), test))
        case ast.Call(func=ast.Name(id=name)) if name in _SWAPPED:
            yield "swapped", put("func", ast.Name(_SWAPPED[name], ast.Load()))
        case ast.comprehension(ifs=[_, *_]):
            yield "all-of-them", put("ifs", [])


def _text(node: ast.expr) -> bool:
    """Texts and lists are added too, and taking one away only fails."""
    return isinstance(node, ast.JoinedStr | ast.List | ast.Tuple) or (
        isinstance(node, ast.Constant) and isinstance(node.value, str)
    )

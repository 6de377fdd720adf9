"""Which values of the files are words that somebody reads, told by the types of their fields.

Every text of a coach's own choosing is prose: sentences that checks read. Where a field is none,
its type or its field says so, with the reason.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from pydantic import BaseModel

from strength_handbook.model.marks import CoachOnly, Label, NamesThings, NotProse

FieldPath = tuple[str | int, ...]
"""Keys as a coach writes them, and indexes of lists."""
EACH = "*"
"""Stands in the path of a field for any key and any index."""


@dataclass(frozen=True, slots=True)
class Words:
    """What kind of words stand at a place.

    Attributes:
        label: it is the handbook's own name of something, not a sentence.
        names: its words with a capital letter are the handbook's own.
        place: among them are places, which may be called after people.
        coach: only the coach reads it.
    """

    label: bool = False
    names: bool = False
    place: bool = False
    coach: bool = False


@dataclass(frozen=True, slots=True)
class _Type:
    """One of the types that a place may have, and what its field says about it."""

    of: Any
    marks: tuple[object, ...] = ()


def words_at(root: type[BaseModel], path: FieldPath, *, key: bool = False) -> Words | None:
    """What kind of words stand at a path of a file; None where they are none.

    Args:
        root: what the whole file is.
        path: the way from its top.
        key: look at the last key itself, not at what stands under it.
    """
    plain = tuple(EACH if isinstance(part, int) else part for part in path)
    return _words_at(root, plain, key=key)


@cache
def _words_at(root: type[BaseModel], path: tuple[str, ...], *, key: bool) -> Words | None:
    if key:
        several = [inner for one in _types_at(root, path[:-1]) for inner in _keys(one)]
        return next((found for one in several if (found := _kind(one, sure=True))), None)
    return next((found for one in _types_at(root, path) if (found := _kind(one))), None)


@cache  # everything below a place asks for the place
def _types_at(root: type[BaseModel], path: tuple[str, ...]) -> tuple[_Type, ...]:
    if not path:
        return (_Type(root),)
    *above, part = path
    return tuple(inner for one in _types_at(root, tuple(above)) for inner in _inside(one, part))


def text_fields(root: type[BaseModel]) -> Iterator[tuple[FieldPath, bool]]:
    """Every place of a file where words may stand; True where they are the key itself."""
    yield from dict.fromkeys(_fields(_Type(root), ()))


def _fields(one: _Type, path: FieldPath) -> Iterator[tuple[FieldPath, bool]]:
    for key in _keys(one):
        if _kind(key, sure=True):
            yield (*path, EACH), True
    if isinstance(one.of, type) and issubclass(one.of, BaseModel):
        for part in _hints(one.of):
            for inner in _inside(one, part):
                yield from _fields(inner, (*path, part))
    elif get_origin(one.of) in (list, tuple, dict):
        for inner in _inside(one, EACH):
            yield from _fields(inner, (*path, EACH))
    elif _kind(one, sure=True):
        yield path, False


def marks_of(root: type[BaseModel]) -> Iterator[object]:
    """Everything that the fields of a file say of themselves besides their types."""
    yield from _marks(_Type(root))


def _marks(one: _Type) -> Iterator[object]:
    yield from one.marks
    block = isinstance(one.of, type) and issubclass(one.of, BaseModel)
    parts = tuple(_hints(one.of)) if block else (EACH,)
    for inner in (*_keys(one), *(found for part in parts for found in _inside(one, part))):
        yield from _marks(inner)


def _kind(one: _Type, *, sure: bool = False) -> Words | None:
    """Words of a type; a short way of writing a whole block counts too, unless `sure`."""
    block = isinstance(one.of, type) and issubclass(one.of, BaseModel)
    if one.of is not str and (sure or not (block or get_origin(one.of) in (list, dict))):
        return None
    if any(isinstance(mark, NotProse) for mark in one.marks):
        return None
    names = [mark for mark in one.marks if isinstance(mark, Label | NamesThings)]
    return Words(
        label=any(isinstance(mark, Label) for mark in names),
        names=bool(names),
        place=any(mark.place for mark in names),
        coach=any(isinstance(mark, CoachOnly) for mark in one.marks),
    )


def _inside(one: _Type, part: str) -> Iterator[_Type]:
    """Types of what stands under a key or an index."""
    origin, args = get_origin(one.of), get_args(one.of)
    if isinstance(one.of, type) and issubclass(one.of, BaseModel):
        if part in (hints := _hints(one.of)):
            yield from _alternatives(hints[part])
    elif origin is dict:
        yield from _alternatives(args[1])
    elif origin in (list, tuple):
        yield from _alternatives(args[0])


def _keys(one: _Type) -> Iterator[_Type]:
    if get_origin(one.of) is dict:
        yield from _alternatives(get_args(one.of)[0])


def _alternatives(annotation: Any, marks: tuple[object, ...] = ()) -> Iterator[_Type]:
    origin = get_origin(annotation)
    if origin is Annotated:
        inner, *more = get_args(annotation)
        yield from _alternatives(inner, (*marks, *more))
    elif origin in (Union, UnionType):
        for inner in get_args(annotation):
            yield from _alternatives(inner, marks)
    elif annotation is not NoneType:
        yield _Type(annotation, marks)


@cache
def _hints(shape: type[BaseModel]) -> dict[str, Any]:
    """Types of a block's fields, by the key that a coach writes."""
    hints = get_type_hints(shape, include_extras=True)
    return {field.alias or name: hints[name] for name, field in shape.model_fields.items()}

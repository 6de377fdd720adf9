"""Plain data to typed model, with every refusal worded for the coach and put at its place.

pydantic finds what is wrong and where in the data; the source's marks tell where in the file; the
words are ours. A refusal whose kind has no wording here fails a test, not a coach.
"""

from collections.abc import Mapping, Sequence
from typing import Any, TypeVar, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from strength_handbook.reading.problem import Problem
from strength_handbook.reading.suggest import did_you_mean, one_of
from strength_handbook.reading.source import Path, Source

Model = TypeVar("Model", bound=BaseModel)

OWN_SLUGS = frozenset(
    {"unit", "tempo", "load", "count", "date", "weeks", "two-kinds", "range", "masses", "pair"}
)
"""Refusals raised by our own types; their text is already the coach's."""


def shape(model: type[Model], source: Source) -> tuple[Model | None, list[Problem]]:
    """A file's data as a typed model, or the list of everything that is wrong with it."""
    try:
        return model.model_validate(source.data), []
    except ValidationError as error:
        return None, [_problem(model, source, detail) for detail in error.errors()]


def _problem(model: type[BaseModel], source: Source, detail: ErrorDetails) -> Problem:
    path = _known_path(source, detail["loc"])
    kind = detail["type"]
    if kind == "extra_forbidden":
        key = str(detail["loc"][-1])
        options = _keys_at(model, detail["loc"][:-1])
        hint = did_you_mean(key, options) or f"; known keys here: {one_of(options)}"
        return source.problem(path, "unknown-key", f"unknown key '{key}'{hint}", key=True)
    if kind == "missing":
        key = str(detail["loc"][-1])
        return source.problem(path, "missing-key", f"missing key '{key}'")
    slug, text = _wording(kind, detail)
    on_key = detail["loc"][-1:] == ("[key]",)
    return source.problem(path, slug, text, key=on_key)


def _wording(kind: str, detail: ErrorDetails) -> tuple[str, str]:
    """Slug and text of a refusal, by its kind."""
    context: Mapping[str, Any] = detail.get("ctx") or {}
    shown = _shown(detail["input"])
    if kind in OWN_SLUGS:
        return kind, detail["msg"]
    if kind in _SIMPLE:
        slug, text = _SIMPLE[kind]
        return slug, text.format(shown=shown, **context)
    if kind in ("literal_error", "enum"):
        options = _options(str(context["expected"]))
        hint = did_you_mean(str(detail["input"]), options)
        return "unknown-word", f"{shown} is not one of {one_of(options, limit=30)}{hint}"
    if kind == "string_pattern_mismatch":
        return "form", f"{shown} does not have the right form; {_FORMS.get(context['pattern'], '')}"
    return "shape", f"{shown}: {detail['msg']}"


_WHOLE = "write a whole number"
_BLOCK = "{shown} stands where keys with values belong; indent 'key: value' lines under it"
_SIMPLE: dict[str, tuple[str, str]] = {
    "bool_parsing": ("true-false", "{shown} is neither true nor false"),
    "bool_type": ("true-false", "{shown} is neither true nor false"),
    "dict_type": ("shape", _BLOCK),
    "float_parsing": ("number", "{shown} is not a number"),
    "float_type": ("number", "{shown} is not a number"),
    "finite_number": ("number", "{shown} is not a number"),
    "greater_than": ("range", "{shown} is too small; it must be more than {gt:g}"),
    "greater_than_equal": ("range", "{shown} is too small; the least is {ge:g}"),
    "int_from_float": ("number", "{shown} is not whole; " + _WHOLE),
    "int_parsing": ("number", "{shown} is not a whole number; " + _WHOLE),
    "int_parsing_size": ("range", "{shown} is far too large"),
    "int_type": ("number", "{shown} is not a whole number; " + _WHOLE),
    "less_than": ("range", "{shown} is too large; it must be less than {lt:g}"),
    "less_than_equal": ("range", "{shown} is too large; the most is {le:g}"),
    "list_type": ("shape", "{shown} stands where a list belongs; write one '- ' line for each"),
    "model_type": ("shape", _BLOCK),
    "string_too_long": ("length", "this text is too long; at most {max_length} characters"),
    "string_too_short": ("length", "text is missing here"),
    "string_type": ("text", "{shown} stands where text belongs; put text here"),
    "too_long": ("length", "too many entries: {actual_length}, at most {max_length}"),
    "too_short": ("length", "too few entries: {actual_length}, at least {min_length}"),
    "union_tag_invalid": (
        "unknown-word", "'{tag}' is not a kind of loading; it is one of {expected_tags}"
    ),
    "union_tag_not_found": ("missing-key", "missing key 'kind': say how it is loaded"),
}  # fmt: skip

_FORMS = {
    r"^[a-z0-9]+(-[a-z0-9]+)*$": "small letters, digits and hyphens only, such as 'trap-bar'",
    r"^[A-Z][1-9]?$": "an order is a capital letter, with a digit when paired: A, B1, B2",
    r"^(\d{1,2}RM|none)$": "write it like '5RM', or 'none'",
    r"^P[1-9][0-9]?$": "profiles are called P1, P2 …: numbers only, never a name",
}


def _known_path(source: Source, location: Sequence[str | int]) -> Path:
    """The location without the parts that pydantic puts in (union tags, ``[key]``).

    Keys are text in our data, also where the model reads them as numbers.
    """
    path: Path = ()
    for part in location:
        for candidate in ((*path, part), (*path, str(part))):
            if candidate in source.marks:
                path = candidate
                break
    return path


def _keys_at(model: type[BaseModel], location: Sequence[str | int]) -> list[str]:
    """The keys a coach may write at a location: found by walking the model along it."""
    here: list[Any] = [model]
    for part in location:
        step: list[Any] = []
        for kind in here:
            step.extend(_children(kind, part))
        here = step or here
    keys: dict[str, None] = {}
    for kind in here:
        if isinstance(kind, type) and issubclass(kind, BaseModel):
            keys.update({(f.alias or name): None for name, f in kind.model_fields.items()})
    return list(keys)


def _children(kind: Any, part: str | int) -> list[Any]:
    """The model types one step further down."""
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        tag = kind.model_fields.get("kind")
        if tag is not None and part in get_args(tag.annotation):
            return [kind]
        for name, field in kind.model_fields.items():
            if part in (field.alias, name):
                return _models(field.annotation)
    return []


def _models(annotation: Any) -> list[Any]:
    """All model types inside an annotation, through lists, mappings and unions."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [annotation]
    found: list[Any] = []
    for inner in get_args(annotation):
        found.extend(_models(inner))
    return found


def _options(expected: str) -> list[str]:
    return [word.strip().strip("'") for word in expected.replace(" or ", ", ").split(",")]


def _shown(value: object) -> str:
    if value is None:
        return "an empty value"
    if isinstance(value, dict):
        return "a block of keys"
    if isinstance(value, list):
        return "a list"
    text = str(value)
    return f"'{text if len(text) <= 60 else text[:57] + '…'}'"

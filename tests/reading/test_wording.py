"""Every refusal that the models can produce has words for the coach."""

from collections.abc import Iterator, Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import BaseModel, ValidationError

from strength_handbook.reading.book import MODELS
from strength_handbook.reading.keys import Place
from strength_handbook.reading.wording import FORMS, is_worded, words_for
from thorough import tries

TOP = tuple(MODELS.values())

# What each kind of core schema can refuse. A schema inside one of our own readers is not asked
# about types: the reader hands on the right one, and only limits can still be missed.
REFUSALS: Mapping[str, tuple[str, ...]] = {
    "bool": ("bool_type", "bool_parsing"),
    "dict": ("dict_type",),
    "enum": ("enum",),
    "list": ("list_type",),
    "literal": ("literal_error",),
    "model": ("model_type",),
    "model-field": ("missing",),
    "model-fields": ("extra_forbidden",),
    "str": ("string_type",),
    "tagged-union": ("union_tag_invalid", "union_tag_not_found", "model_attributes_type"),
}
LIMITS = {
    "ge": "greater_than_equal",
    "gt": "greater_than",
    "le": "less_than_equal",
    "lt": "less_than",
    "multiple_of": "multiple_of",
}
LENGTHS = {
    "str": {"min_length": "string_too_short", "max_length": "string_too_long"},
    "list": {"min_length": "too_short", "max_length": "too_long"},
    "dict": {"min_length": "too_short", "max_length": "too_long"},
}
WITHOUT_OWN = {
    "any", "default", "definition-ref", "definitions", "function-after", "function-before",
    "function-plain", "no-info", "nullable",
}  # fmt: skip
"""Kinds that refuse nothing themselves; functions have the words of `refuse`."""
IN_READERS = {
    "dataclass",
    "dataclass-args",
    "dataclass-field",
    "date",
    "float",
    "int",
    "tuple",
    "union",
}
"""Kinds that stand inside our own readers only."""


def schemas(top: Mapping[str, Any]) -> Iterator[tuple[Mapping[str, Any], bool]]:
    """Every part of a core schema, and whether one of our own readers is before it."""
    shared = {part["ref"]: part for part in top.get("definitions", ())}
    seen = set()

    def walk(node: Any, *, read: bool) -> Iterator[tuple[Mapping[str, Any], bool]]:
        if isinstance(node, list | tuple):
            for inner in node:
                yield from walk(inner, read=read)
        if not isinstance(node, Mapping):
            return
        kind = node.get("type")
        if kind == "definition-ref" and (node["schema_ref"], read) not in seen:
            seen.add((node["schema_ref"], read))
            yield from walk(shared[node["schema_ref"]], read=read)
        if isinstance(kind, str):
            yield node, read
            read = read or kind == "function-before"
        for key, inner in node.items():
            if key not in ("metadata", "serialization", "definitions"):
                yield from walk(inner, read=read)

    return walk(top, read=False)


def refusals(model: type[BaseModel]) -> Iterator[str]:
    """Kinds of refusal that a model's schema can give; fails where a schema is of a new kind."""
    for schema, read in schemas(model.__pydantic_core_schema__):
        kind = schema["type"]
        if kind in REFUSALS:
            yield from REFUSALS[kind]
        elif kind in IN_READERS:
            assert read, f"{kind} without a reader before it in {model.__name__}"
        else:
            assert kind in WITHOUT_OWN, f"a new kind of schema: {kind}"
        for limit, name in (LIMITS | LENGTHS.get(kind, {})).items():
            if schema.get(limit) is not None:
                yield name
        if schema.get("pattern"):
            yield "string_pattern_mismatch"


@pytest.mark.parametrize("model", TOP)
def test_every_refusal_of_the_schemas_is_worded(model: type[BaseModel]) -> None:
    found = set(refusals(model))
    assert "missing" in found
    assert {kind for kind in found if not is_worded(kind, {})} == set()


@pytest.mark.parametrize("model", TOP)
def test_every_pattern_says_what_form_it_wants(model: type[BaseModel]) -> None:
    patterns = {
        s["pattern"] for s, _ in schemas(model.__pydantic_core_schema__) if s.get("pattern")
    }
    assert patterns <= set(FORMS)


def test_an_unknown_refusal_still_has_words() -> None:
    assert words_for("new_kind", "English of pydantic", "5", Place((), None), {}) == (
        "shape", "'5' does not belong here",
    )  # fmt: skip
    assert not is_worded("new_kind", {})


KEYS = sorted({key for model in TOP for s, _ in schemas(model.__pydantic_core_schema__)
               if s["type"] == "model-fields" for f in s["fields"].values()
               for key in [f["validation_alias"]]})  # fmt: skip
PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=8)
    | st.sampled_from(("1-4", "20 kg", "3-1-X-0", "5RM", "bar", "kg", "2:30", "70 %")),
    lambda inner: st.lists(inner, max_size=3)
    | st.dictionaries(st.sampled_from(KEYS) | st.text(max_size=5), inner, max_size=6),
    max_leaves=30,
)  # fmt: skip


@settings(deadline=None, max_examples=tries(300, 3000))
@given(which=st.integers(0, len(TOP) - 1), data=PLAIN)
def test_whatever_the_data_are_the_refusals_are_worded(which: int, data: object) -> None:
    try:
        TOP[which].model_validate(data)
    except ValidationError as error:
        for detail in error.errors(include_url=False):
            assert is_worded(detail["type"], detail.get("ctx") or {}), detail

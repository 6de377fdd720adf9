"""Whatever the bytes: nothing is raised, both parsers agree, and every place exists."""

import math
import re

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from strength_handbook.reading.problem import Problem
from strength_handbook.reading.yaml_source import Path, Plain, Source, read_source
from thorough import tries

# Pieces of YAML that make parsers stumble when they meet.
PIECES = st.sampled_from([
    *(" ", "  ", "\n", "\n  ", "\n- ", "- ", ": ", ":", ",", "[", "]", "{", "}", '"', "'", " #"),
    *("a", "b: ", "a: 1\n", "- a: ", "12", "-", "1.5", "\\", "\\u00e9", "é", "\u00a0", "🏋", "~"),
    *("&a ", "*a", "!t ", "!", "|\n", ">-\n", "|2\n", "|", "%", "@", "`", "?", "? ", "<<", "="),
    *("---\n", "...\n", "\t", "\r\n", "\r", "\ufeff", "%YAML 1.1\n", "[a, b]", "{c: d}", "'y'"),
])  # fmt: skip
YAML_LIKE = st.lists(PIECES, max_size=16).map("".join)


# Letters of all scripts, signs and ordinary blanks, but nothing invisible. `safe_dump` writes by
# YAML 1.1, where 1e3 without a point is text and needs no quotes.
VISIBLE = st.characters(exclude_categories=["C", "Z"], include_characters=" \t\n")
TEXTS = st.text(VISIBLE, max_size=90).filter(
    lambda text: not re.fullmatch(r"[-+]?[0-9]+[eE][-+]?[0-9]+", text)
)
KEYS = TEXTS.filter(bool)
NUMBERS = st.integers() | st.floats(allow_nan=False, allow_infinity=False)
DATA = st.recursive(
    TEXTS | NUMBERS | st.booleans() | st.none(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS, inner, max_size=4),
    max_leaves=12,
)


def read_both(raw: bytes) -> tuple[Source | None, list[Problem]]:
    result = read_source(raw, "a.yml")
    assert result == read_source(raw, "a.yml", fast=False)
    source, problems = result
    assert (source is None) <= bool(problems)
    return source, problems


def paths_of(data: Plain, path: Path = ()) -> set[Path]:
    found = {path}
    if isinstance(data, dict):
        for key, value in data.items():
            found |= paths_of(value, (*path, key))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            found |= paths_of(value, (*path, index))
    return found


def check_places(source: Source, lines: list[str]) -> None:
    """Each part has a mark, each text with a text column stands there."""
    assert set(source.marks) == paths_of(source.data)
    keyed = {path for path in source.marks if path and isinstance(path[-1], str)}
    assert set(source.key_marks) == keyed
    for path, mark in source.key_marks.items():
        if mark.text_column:
            assert lines[mark.line - 1].startswith(str(path[-1]), mark.text_column - 1)
    for path, mark in source.marks.items():
        assert 1 <= mark.column <= len(lines[mark.line - 1]) + 1
        value: Plain = source.data
        for part in path:
            value = value[part]  # type: ignore[index]  # a path of this data
        if mark.text_column and isinstance(value, str):
            assert lines[mark.line - 1].startswith(value, mark.text_column - 1)


def lines_of(text: str) -> list[str]:
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")


@given(st.binary(max_size=200))
@settings(deadline=None)
def test_bytes(raw: bytes) -> None:
    read_both(raw)


@given(st.text(max_size=200) | YAML_LIKE | YAML_LIKE.map(lambda text: f"a: 1\nb:\n  - {text}"))
@settings(max_examples=tries(300, 6000), deadline=None)
def test_text(text: str) -> None:
    lines = lines_of(text)
    source, problems = read_both(text.encode(errors="surrogatepass"))
    for problem in problems:
        assert 1 <= problem.column <= len(lines[problem.line - 1]) + 1
        assert len(str(problem).splitlines()) == 1
    if source:
        check_places(source, lines)


@given(
    data=st.dictionaries(KEYS, DATA, min_size=1, max_size=5),
    flow=st.sampled_from([True, False, None]),
    line_end=st.sampled_from(["\n", "\r\n"]),
)
@settings(deadline=None)
def test_what_is_dumped_is_read_again(
    data: dict[str, Plain], *, flow: bool | None, line_end: str
) -> None:
    text = yaml.safe_dump(
        data, default_flow_style=flow, allow_unicode=True, sort_keys=False, line_break=line_end
    )
    source, problems = read_both(text.encode())
    assert problems == []
    assert source is not None
    assert repr(source.data) == repr(data)
    check_places(source, lines_of(text))


@given(st.dictionaries(st.integers(-999, 999), st.integers(), min_size=1))
@settings(deadline=None)
def test_numbers_as_keys_become_text(data: dict[int, int]) -> None:
    source, _ = read_both(yaml.safe_dump(data).encode())
    assert source is not None
    assert source.data == {str(key): value for key, value in data.items()}


@pytest.mark.parametrize("number", [1e16, 1e-7, -0.0, 72.5, math.pi])
def test_floats_survive(number: float) -> None:
    source, _ = read_both(yaml.safe_dump({"a": number}).encode())
    assert source is not None
    assert repr(source.data) == repr({"a": number})

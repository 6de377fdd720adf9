"""Every kind of problem can be explained, and the examples are what they say."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import demo
from strength_handbook.reading.explain import EXPLANATIONS
from strength_handbook.reading.explain_yaml import YAML
from strength_handbook.reading.yaml_source import read_source

FOLDERS = ("reading", "figures", "model", "publish", "review")
MODULES = sorted(path for folder in FOLDERS for path in (demo.PACKAGE / folder).rglob("*.py"))
KEBAB = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
# Which argument of a call is the slug.
PLACES = {"Problem": 3, "problem": 1, "Impossible": 1, "_problem": 1, "_refuse_key": 1, "refuse": 0,
          "PydanticCustomError": 0}  # fmt: skip


def slugs_of(path: Path) -> Iterator[str]:
    """Every slug that a module can give to a problem, found in its syntax tree."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            name = getattr(node.func, "id", None) or getattr(node.func, "attr", "")
            if name in PLACES and len(node.args) > PLACES[name]:
                yield from _kebab(node.args[PLACES[name]])
            if name == "_unknown":
                yield from _unknown(node.args[2])
        elif (
            isinstance(node, ast.Tuple)
            and len(node.elts) in (2, 3)
            and ("reading" in path.parts or path.stem == "accepting")
        ):
            *_, slug, text = node.elts
            if _is_message(text):
                yield from _kebab(slug)
        elif isinstance(node, ast.Tuple) and len(node.elts) == 4 and path.stem == "references":
            # What an exercise is loaded with: (key, name, things of the room, word for them).
            yield from _unknown(node.elts[3])


def _kebab(node: ast.expr) -> Iterator[str]:
    if isinstance(node, ast.Constant) and KEBAB.fullmatch(str(node.value)):
        yield str(node.value)


def _unknown(node: ast.expr) -> Iterator[str]:
    if isinstance(node, ast.Constant):
        yield f"unknown-{str(node.value).replace(' ', '-')}"


def _is_message(node: ast.expr) -> bool:
    if isinstance(node, ast.Constant):
        return isinstance(node.value, str) and " " in node.value
    if isinstance(node, ast.Name):
        return node.id == "text" or node.id.isupper()
    return isinstance(node, ast.JoinedStr | ast.BinOp | ast.IfExp)


FOUND = {slug for path in MODULES for slug in slugs_of(path)}


def test_the_search_for_slugs_finds_those_of_every_kind() -> None:
    assert {
        "tab", "needs-quotes", "unknown-key", "unit", "no-file", "duplicate-key", "unknown-part",
        "incomplete-dose", "unknown-thing-in-the-room", "unknown-hand-weight", "true-false",
    } <= FOUND  # fmt: skip


def test_every_slug_in_the_source_has_an_explanation() -> None:
    missing = FOUND - set(EXPLANATIONS)
    assert not missing, sorted(missing)


def test_no_explanation_is_left_over_from_a_slug_that_is_gone() -> None:
    stale = set(EXPLANATIONS) - FOUND
    assert not stale, sorted(stale)


@pytest.mark.parametrize("slug", [slug for slug, entry in YAML.items() if entry.wrong])
def test_the_example_has_its_problem_and_the_correction_has_none(slug: str) -> None:
    entry = YAML[slug]
    _, wrong = read_source(entry.wrong.encode(), "a.yml")
    assert slug in {problem.slug for problem in wrong}
    source, right = read_source(entry.right.encode(), "a.yml")
    assert right == []
    assert source is not None


@pytest.mark.parametrize("slug", EXPLANATIONS)
def test_explanations_are_sentences(slug: str) -> None:
    text = EXPLANATIONS[slug].what
    assert text[0].isupper() or text[0] in "'<"
    assert text.endswith(".")
    assert slug in EXPLANATIONS[slug].text(slug)

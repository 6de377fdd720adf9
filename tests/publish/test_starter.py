"""The file that `new exercise` begins: nothing missing, everything explained, nothing wrong."""

import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any, get_args

import pytest
import yaml
from pydantic import BaseModel

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.words import Hazard, Muscle, Pattern
from strength_handbook.publish.starter import new_exercise
from strength_handbook.reading.book import read_book
from tiny import write_tiny


@pytest.fixture(scope="module")
def text(tmp_path_factory: pytest.TempPathFactory) -> str:
    """A new file."""
    path = new_exercise("Press", tmp_path_factory.mktemp("programs"))
    return path.read_text(encoding="utf-8")


def _models(annotation: Any) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
        for field in annotation.model_fields.values():
            yield from _models(field.annotation)
    for inner in get_args(annotation):
        yield from _models(inner)


KEYS = sorted(
    {
        field.alias or name
        for model in set(_models(Exercise))
        for name, field in model.model_fields.items()
    }
)


def test_the_walk_through_the_model_finds_nested_keys() -> None:
    assert {"name", "alone-how", "if-it-stays", "multiples", "share-source", "cap"} <= set(KEYS)


@pytest.mark.parametrize("key", KEYS)
def test_every_key_an_exercise_may_have_stands_in_it(key: str, text: str) -> None:
    assert re.search(rf"^[ #-]*{re.escape(key)}:( |$)", text, re.MULTILINE)


@pytest.mark.parametrize("words", [Pattern, Hazard, Muscle])
def test_every_word_to_choose_from_is_listed(words: Any, text: str) -> None:
    comments = " ".join(line.lstrip("# ") for line in text.split("\n"))
    missing = [word for word in words if not re.search(rf"[ :]{word}[,.]", comments)]
    assert not missing


def test_every_key_at_the_left_has_a_comment_above_it(text: str) -> None:
    lines = text.split("\n")
    for above, line in pairwise(lines):
        if re.match(r"[a-z-]+:", line):
            assert above.startswith("#"), line


@pytest.mark.parametrize("name", ["Press", 'A "wide": grip, #1', "Überzug – langsam", "0310", "no"])
def test_it_has_no_problem_whatever_the_name(tmp_path: Path, name: str) -> None:
    write_tiny(tmp_path)
    path = new_exercise(name, tmp_path / "programs")
    reading = read_book(tmp_path / "programs")
    assert reading.problems == []
    assert reading.book is not None
    assert reading.book.exercises[path.stem].name == name


def test_it_stands_on_something_that_the_room_has(tmp_path: Path) -> None:
    write_tiny(tmp_path)
    room = tmp_path / "programs/room.yml"
    room.write_text(room.read_text("utf-8").replace("floor:", "lawn:"), "utf-8")
    path = new_exercise("Press", tmp_path / "programs")
    assert yaml.safe_load(path.read_text(encoding="utf-8"))["stations"] == ["lawn"]


def test_without_a_room_it_is_begun_all_the_same(tmp_path: Path) -> None:
    path = new_exercise("Press", tmp_path)
    assert yaml.safe_load(path.read_text(encoding="utf-8"))["stations"] == ["floor"]

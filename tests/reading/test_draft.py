"""An exercise that is only begun is read; one with less than that, or with a wrong word, is not."""

from pathlib import Path
from typing import Any

import pytest

import desks
from strength_handbook.model.exercise import DraftExercise, Exercise
from strength_handbook.reading.book import read_book

ROW = "exercises/cable-row.yml"
BEGUN: dict[str, Any] = {
    "name": "Cable row",
    "load": {"kind": "body-weight"},
    "cues": {"during": ["Elbows back."]},
    "stop": ["End the set when your back rounds."],
}


def read(folder: Path, exercise: dict[str, Any]) -> tuple[Exercise | None, list[str]]:
    files = desks.edited({}) | {ROW: exercise}
    reading = read_book(desks.write(files, folder), "gym")
    book = reading.book
    return book.exercises["cable-row"] if book else None, [str(one) for one in reading.problems]


def whole() -> dict[str, Any]:
    data: dict[str, Any] = desks.edited({})[ROW]
    return data


def test_what_is_begun_is_read_with_the_careful_answer_for_the_rest(tmp_path: Path) -> None:
    exercise, problems = read(tmp_path, BEGUN)
    assert problems == []
    assert isinstance(exercise, DraftExercise)
    assert exercise.name == "Cable row (DRAFT)"
    assert exercise.spotting.alone == "no"
    hurts = exercise.doors.hurts.everywhere()
    assert hurts is not None
    assert "Stop" in hurts.how
    assert exercise.missing == [
        "pattern", "role", "stations", "poses", "set-up", "breathing", "spotting", "doors",
        "faults", "why", "muscles",
    ]  # fmt: skip


@pytest.mark.parametrize("key", BEGUN)
def test_with_less_it_is_read_as_before(tmp_path: Path, key: str) -> None:
    exercise, problems = read(tmp_path, {one: BEGUN[one] for one in BEGUN if one != key})
    assert exercise is None
    assert any(f"missing key '{key}'" in line for line in problems)
    assert any("missing key 'why'" in line for line in problems)


def test_every_key_that_an_exercise_needs_may_be_left_for_later(tmp_path: Path) -> None:
    needed = {
        field.alias for field in Exercise.model_fields.values() if field.is_required()
    } - BEGUN.keys()
    for key in sorted(filter(None, needed)):
        exercise, problems = read(tmp_path / key, {k: v for k, v in whole().items() if k != key})
        assert problems == []
        assert isinstance(exercise, DraftExercise)
        assert exercise.missing == [key]


def test_a_wrong_word_in_what_is_begun_is_told_where_it_stands(tmp_path: Path) -> None:
    exercise, problems = read(tmp_path, BEGUN | {"breething": "In and out.", "role": "chief"})
    assert exercise is None
    assert [line.split(": ")[1] for line in problems] == ["error unknown-key", "error unknown-word"]


@pytest.mark.parametrize("empty", [None, [], {}])
def test_a_key_without_anything_is_as_good_as_none(tmp_path: Path, empty: Any) -> None:
    exercise, problems = read(tmp_path, whole() | {"faults": empty})
    assert problems == []
    assert isinstance(exercise, DraftExercise)
    assert exercise.missing == ["faults"]


def test_a_file_may_not_call_itself_a_draft(tmp_path: Path) -> None:
    exercise, problems = read(tmp_path, BEGUN | {"missing": ["nothing"]})
    assert exercise is None
    assert any("'missing'" in line for line in problems)


def test_a_complete_exercise_is_none(tmp_path: Path) -> None:
    exercise, problems = read(tmp_path, whole())
    assert problems == []
    assert exercise is not None
    assert not isinstance(exercise, DraftExercise)
    assert exercise.name == whole()["name"]

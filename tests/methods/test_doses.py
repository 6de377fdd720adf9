"""Every method of the trade: both ways of writing it, what a page prints, and the numbers of it."""

import re
from pathlib import Path
from typing import Any

import pytest

from books import BAR, build_book, exercise, slot
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose, DosePart, complete
from strength_handbook.model.dose_line import dose_line
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.program import Slot
from strength_handbook.model.slot_dose import slot_dose
from strength_handbook.pages.dose_text import in_words, notation, partial_notation
from strength_handbook.plan.minutes import work_seconds
from strength_handbook.plan.volume import slot_volume
from strength_handbook.publish.json_schema import json_schema
from strength_handbook.reading.doses import store
from strength_handbook.reading.notation import read_dose
from strength_handbook.reading.yaml_source import read_source

HERE = Path(__file__).parent
MOST_WORDS = 20
"""In one sentence, for somebody out of breath. Common practice, no source."""


def examples() -> list[dict[str, Any]]:
    """The file, read as a coach's files are read."""
    source, problems = read_source((HERE / "doses.yml").read_bytes(), "doses.yml")
    assert source is not None, problems
    assert isinstance(source.data, dict)
    doses: Any = source.data["doses"]
    return list(doses)


EXAMPLES = examples()
SCHEMA = json_schema("exercise")
DOSE_SCHEMA = {**SCHEMA["properties"]["dose"], "$defs": SCHEMA["$defs"]}
each = pytest.mark.parametrize(
    "one", EXAMPLES, ids=[f"{one['v']}: {one['line']}" for one in EXAMPLES]
)


def part_of(line: str) -> DosePart:
    long: dict[str, Any] = {}
    for value in read_dose(line):
        store(long, value)
    return DosePart.model_validate(long)


def exercise_of(one: dict[str, Any]) -> Exercise:
    keys = {key: one[key] for key in ("sides", "hazards") if key in one}
    return Exercise.model_validate(exercise(load=one.get("load", BAR), **keys))


def dose_of(one: dict[str, Any]) -> Dose:
    part, lift = part_of(one["line"]), exercise_of(one)
    if "week-3" not in one:
        return complete(part, each_side=lift.sides == "each")
    weeks = {"3": part_of(one["week-3"]), "4": part}
    return slot_dose(Slot.model_validate(slot("A", "lift", weeks)), lift, 4)


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    root = tmp_path_factory.mktemp("book")
    sessions = {"a": [slot("A", "lift", "3x5")]}
    return build_book(root, exercises={"lift": exercise()}, sessions=sessions)


def plain(text: str) -> str:
    """With ordinary spaces, for reading."""
    return text.replace("\u00a0", " ")


def test_every_method_has_an_example() -> None:
    # Pairs, rules for going on, doors and variants are no doses: test_sessions.py has them.
    elsewhere = {24, *range(34, 39), 41, 42}
    assert {int(one["v"][1:]) for one in EXAMPLES} == set(range(1, 46)) - elsewhere


@each
def test_both_ways_of_writing_say_the_same(one: dict[str, Any]) -> None:
    assert part_of(one["line"]) == DosePart.model_validate(one["long"])


@each
def test_the_long_form_prints_a_line_that_reads_back(one: dict[str, Any]) -> None:
    long = DosePart.model_validate(one["long"])
    assert part_of(dose_line(long)) == long


@each
def test_both_ways_are_valid_by_the_schema(one: dict[str, Any]) -> None:
    # Oracle: the reference implementation of JSON Schema for Python.
    jsonschema = pytest.importorskip("jsonschema")
    validator = jsonschema.Draft202012Validator(DOSE_SCHEMA)
    assert validator.is_valid(one["line"])
    assert validator.is_valid(one["long"])
    assert not validator.is_valid({**one["long"], "rezt": "90 s"})


@each
def test_what_a_page_prints(one: dict[str, Any]) -> None:
    dose = dose_of(one)
    assert plain(notation(dose)) == one["notation"]
    assert plain(in_words(dose, exercise_of(one))) == one["words"]
    # Numbers stay with their units and signs.
    assert not re.search(r"\d [%×→]|[×→↓Σ@] ", notation(dose))


@pytest.mark.parametrize("one", [one for one in EXAMPLES if "part" in one])
def test_a_part_prints_what_it_says(one: dict[str, Any]) -> None:
    assert plain(partial_notation(part_of(one["line"]))) == one["part"]


def test_a_part_says_something_for_every_key() -> None:
    for one in EXAMPLES:
        for key, value in one["long"].items():
            part = DosePart.model_validate({key: value})
            assert partial_notation(part), key


@each
def test_sentences_are_short(one: dict[str, Any]) -> None:
    for sentence in re.split(r"(?<=\.)\s", in_words(dose_of(one), exercise_of(one))):
        assert len(sentence.split()) <= MOST_WORDS, sentence


@each
def test_numbers(one: dict[str, Any], book: Book) -> None:
    dose, lift = dose_of(one), exercise_of(one)
    volume = slot_volume(book, lift, dose, {})
    found = {
        "reps": volume.reps,
        "eccentric-s": volume.eccentric_s,
        "isometric-s": volume.isometric_s,
        "fast-reps": volume.fast_reps,
        "contacts": volume.contacts,
        "hard-sets": volume.hard_sets.get("quads", 0),
        "set-s": work_seconds(book, dose),
        "rest-per-work": (dose.rest or 0) / work_seconds(book, dose),
    }
    expected = {key: float(value) for key, value in one.get("expect", {}).items()}
    assert {key: found[key] for key in expected} == pytest.approx(expected)

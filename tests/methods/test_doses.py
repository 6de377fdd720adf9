"""Every method of the trade: both ways of writing it, what a page prints, and the numbers of it."""

import re
from typing import Any

import pytest

from books import build_book, exercise, slot
from dose_examples import EXAMPLES, dose_of, exercise_of, part_of
from strength_handbook.dose.printing import dose_line, in_words, notation, partial_notation
from strength_handbook.model.book import Book
from strength_handbook.model.dose import DosePart
from strength_handbook.plan.minutes import work_seconds
from strength_handbook.plan.volume import slot_volume
from strength_handbook.publish.json_schema import json_schema

MOST_WORDS = 20
"""In one sentence, for somebody out of breath. Common practice, no source."""


SCHEMA = json_schema("exercise")
DOSE_SCHEMA = {**SCHEMA["properties"]["dose"], "$defs": SCHEMA["$defs"]}
each = pytest.mark.parametrize(
    "one", EXAMPLES, ids=[f"{one['v']}: {one['line']}" for one in EXAMPLES]
)


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
    there = {int(one["v"][1:]) for one in EXAMPLES}
    assert there == set(range(1, max(45, *there) + 1)) - elsewhere


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

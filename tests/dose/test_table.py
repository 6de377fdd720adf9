"""The table of keys is whole: each key is read, written, printed and said, or says why it isn't."""

from dataclasses import fields
from typing import Any

import pytest

from dose_examples import EXAMPLES, dose_of, exercise_of, part_of
from strength_handbook.dose.clause import Clause
from strength_handbook.dose.key import Because, Board, Key, Told, Way, texts
from strength_handbook.dose.load import load_in_words
from strength_handbook.dose.table import CLAUSES, KEYS
from strength_handbook.model.dose_part import WORK_FIELDS, DosePart
from strength_handbook.model.marks import Compared
from strength_handbook.model.shape import kebab
from strength_handbook.phone.train import LETTERS
from strength_handbook.reading import notation

each = pytest.mark.parametrize("key", KEYS, ids=lambda key: str(key.field))


def test_every_field_of_a_dose_has_one_entry() -> None:
    assert sorted(key.field for key in KEYS) == sorted(DosePart.model_fields)


def examples_of(key: Key[Any]) -> list[dict[str, Any]]:
    return [one for one in EXAMPLES if kebab(key.field) in one["long"]]


@each
def test_what_is_left_out_says_why(key: Key[Any]) -> None:
    for held in (key, key.use):
        for one in fields(held):
            left_out = getattr(held, one.name)
            assert not isinstance(left_out, Because) or len(left_out.why.split()) > 3, one.name


@each
def test_what_is_there_says_something_of_an_example(key: Key[Any]) -> None:
    found = examples_of(key)
    if key.field == "note":  # has no place in a line, so that no example has both
        return
    assert found, f"no example in doses.yml has '{kebab(key.field)}'"
    parts = [DosePart.model_validate(one["long"]) for one in found]
    if not isinstance(key.line, Because):
        said_each = [bool([*texts(key.line[1](key.value(part), part))]) for part in parts]
        # "AMRAP" stands beside its time; a short one has no pace to write behind it.
        assert key.field == "sets" or (any if key.field == "density" else all)(said_each)
    if not isinstance(key.board, Because):
        for _, text in key.board:
            assert any([*texts(text(key.value(part), Board(part)))] for part in parts)
    if not isinstance(key.words, Because):
        said = [(dose_of(one), exercise_of(one)) for one in found]
        told = [Told(dose, dose.part, lift, load_in_words(dose.load, lift)) for dose, lift in said]
        for _, say in key.words:
            assert any(
                [*texts(say(key.value(one.part), one))]
                for one in told
                if key.value(one.part) is not None
            )


@each
def test_what_is_read_is_what_the_long_form_calls_it(key: Key[Any]) -> None:
    if isinstance(key.read, Clause):
        read = [part_of(one["line"]) for one in examples_of(key)]
        assert any(key.value(part) is not None for part in read)


def test_the_order_of_clauses_tells_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    before = [part_of(one["line"]) for one in EXAMPLES]
    monkeypatch.setattr(notation, "CLAUSES", CLAUSES[::-1])
    assert [part_of(one["line"]) for one in EXAMPLES] == before


def test_what_a_set_is_decides_how_it_is_called() -> None:
    assert {key.field for key in KEYS if key.method} >= set(WORK_FIELDS)


def test_what_is_published_of_a_key_is_marked_in_its_field() -> None:
    # What is marked stands in the data, so that no digest holds it: both lists are one.
    published = {
        name
        for key in KEYS
        if not isinstance(key.data, Because)
        for name in (key.field, *(datum.key for datum in key.data))
    }
    marked = {
        (name, mark.key)
        for name, field in DosePart.model_fields.items()
        for mark in field.metadata
        if isinstance(mark, Compared)
    }
    assert {key for _, key in marked} <= published
    assert {key.field for key in KEYS if not isinstance(key.data, Because)} <= {
        name for name, _ in marked
    }


@each
def test_a_phone_gets_what_follows_from_an_example(key: Key[Any]) -> None:
    if isinstance(key.use.phone, Because):
        return
    found = {
        letter
        for one in examples_of(key)
        if (value := key.value(dose_of(one).part)) is not None
        for letter in key.use.phone(value, dose_of(one))
    }
    assert found
    assert found <= set(LETTERS)


@each
def test_a_step_says_something_of_two_examples(key: Key[Any]) -> None:
    """More or less of it is told in words, from any example to any other that has it."""
    if isinstance(key.step, Because | Way):
        return
    doses = [dose_of(one) for one in EXAMPLES]
    assert any(list(key.step(a, b)) for a in doses for b in doses)
    assert not any(list(key.step(a, a)) for a in doses)

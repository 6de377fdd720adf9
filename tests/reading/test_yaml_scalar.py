import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from strength_handbook.reading.yaml_scalar import plain_value


@pytest.mark.parametrize(
    ("word", "value"),
    # Examples of YAML 1.2.2, section 10.3.2 (core schema), as far as they are taken over.
    [
        ("", None),
        ("~", None),
        ("null", None),
        ("Null", None),
        ("NULL", None),
        ("true", True),
        ("True", True),
        ("TRUE", True),
        ("false", False),
        ("False", False),
        ("FALSE", False),
        ("0", 0),
        ("-19", -19),
        ("+12", 12),
        ("0.", 0.0),
        ("-0.0", -0.0),
        (".5", 0.5),
        ("+12e03", 12000.0),
        ("-2E+05", -200000.0),
        ("1e3", 1000.0),
        ("72.5", 72.5),
    ],
)
def test_words_of_the_core_schema(word: str, value: object) -> None:
    result = plain_value(word)
    assert (type(result), result) == (type(value), value)


@pytest.mark.parametrize(
    "word",
    [
        *("2:30", "0310", "3-1-X-0", "2026-11-25", "3x5", "70 %", "1-4", "5RM", "1_000", "1,5"),
        *("no", "No", "yes", "on", "off", "y", "n", "tRUE", "nULL", "none"),
        *("0x1F", "0o17", "00", "-01", "007.5", ".inf", "-.inf", ".nan", "inf", "nan", "1e999"),
        *("+", "-", ".", "-.", "+-1", "1.2.3", "1e", "e3", "--1", "½", "٣", "5 ", "="),
    ],
)
def test_everything_else_is_text(word: str) -> None:
    assert plain_value(word) == word


def test_a_number_too_long_for_python_is_text() -> None:
    digits = "9" * 5000
    assert plain_value(digits) == digits


@given(st.integers())
@settings(deadline=None)
def test_integers_are_read_as_written(number: int) -> None:
    assert plain_value(str(number)) == number


@given(st.floats(allow_nan=False, allow_infinity=False))
@settings(deadline=None)
def test_floats_are_read_as_written(number: float) -> None:
    result = plain_value(repr(number))
    assert isinstance(result, float)
    assert (result, math.copysign(1, result)) == (number, math.copysign(1, number))


@given(st.text())
@settings(deadline=None)
def test_no_word_raises(word: str) -> None:
    value = plain_value(word)
    assert value == word or not isinstance(value, str)

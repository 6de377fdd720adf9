"""Quantities with their units, and what is said where the unit is missing or wrong."""

from collections.abc import Callable
from typing import Annotated, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import Field, TypeAdapter, ValidationError

from strength_handbook.model.plain import DECIMAL, WHOLE, Name, within
from strength_handbook.model.quantities import (
    GRAMS_PER_POUND,
    Mass,
    MassText,
    Metres,
    Percent,
    Seconds,
    in_unit,
    read_angle,
    read_duration,
    read_length,
    read_percent,
    stamped,
)


@pytest.mark.parametrize(
    ("text", "grams", "unit"),
    [
        ("20 kg", 20_000, "kg"),
        ("20kg", 20_000, "kg"),
        ("2,5 kg", 2_500, "kg"),
        ("0.125 kg", 125, "kg"),
        ("500 g", 500, "kg"),
        # 1 lb = 0.45359237 kg exactly: international yard and pound agreement, 1959.
        ("1 lb", 454, "lb"),
        ("45 lbs", 20_412, "lb"),
        ("2.5 lb", 1_134, "lb"),
        (" 1000 kg ", 1_000_000, "kg"),
    ],
)
def test_a_mass_is_whole_grams(text: str, grams: int, unit: str) -> None:
    assert Mass.parse(text) == Mass(grams, unit)


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (read_length, "1.10 m", 1.1),
        (read_length, "30 cm", 0.3),
        (read_length, "60 mm", 0.06),
        # 1 ft = 0.3048 m and 1 in = 2.54 cm exactly, by the same agreement.
        (read_length, "10 ft", 3.048),
        (read_length, "20 in", 0.508),
        (read_duration, "2:30", 150),
        (read_duration, "0:05", 5),
        (read_duration, "90 s", 90),
        (read_duration, "90 sec", 90),
        (read_duration, "1.5 min", 90),
        (read_duration, "1 h", 3600),
        (read_percent, "70 %", 70),
        (read_percent, "12,5%", 12.5),
        (read_angle, "90°", 90),
        (read_angle, "45 deg", 45),
    ],
)
def test_other_quantities(read: Callable[[object], float], text: str, value: float) -> None:
    assert read(text) == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("kind", "value", "message"),
    [
        (MassText, 20, "'20' has no unit; write '20 kg' or '20 lb'"),
        (MassText, 2.5, "'2.5' has no unit; write '2.5 kg' or '2.5 lb'"),
        (MassText, "20 KG", "units are written small: '20 kg'"),
        (MassText, "20 m", "'20 m' is not a mass; write it like '20 kg' or '45 lb'"),
        (MassText, "-20 kg", "'-20 kg' is not a mass; write it like '20 kg' or '45 lb'"),
        (MassText, "1001 kg", "'1001 kg' is too large; the most is 1000 kg"),
        (MassText, True, "a mass is expected here, such as '20 kg'"),
        (MassText, ["20 kg"], "a mass is expected here, such as '20 kg'"),
        (Metres, 2, "'2' has no unit; write '2 m' or '2 cm'"),
        (Metres, "2 s", "'2 s' is not a length; write it like '1.10 m' or '30 cm'"),
        (Metres, "101 km", "'101 km' is too large; the most is 100 km"),
        (Seconds, 90, "'90' has no unit; write '90 s' or '90 min'"),
        (Seconds, "2.30", "'2.30' has no unit; write '2:30', '2.30 s' or '2.30 min'"),
        (Seconds, "12,05", "'12,05' has no unit; write '12:05', '12,05 s' or '12,05 min'"),
        (Seconds, 2.5, "'2.5' has no unit; write '2.5 s' or '2.5 min'"),
        (Seconds, "2.75", "'2.75' has no unit; write '2.75 s' or '2.75 min'"),
        (Metres, "2.30", "'2.30' has no unit; write '2.30 m' or '2.30 cm'"),
        (Seconds, "2:75", "'2:75' is not a time; write it like '2:30' or '90 s'"),
        (Seconds, "25 h", "'25 h' is too large; the most is 24 h"),
        (Percent, 70, "'70' has no unit; write '70 %'"),
        (Percent, "501 %", "'501 %' is too large; the most is 500 %"),
    ],
)
def test_a_refusal_says_what_to_write(kind: Any, value: object, message: str) -> None:
    with pytest.raises(ValidationError) as caught:
        TypeAdapter(kind).validate_python(value)
    assert [error["msg"] for error in caught.value.errors()] == [message]


@pytest.mark.parametrize("digits", [10, 300, 400, 5000])
def test_any_number_of_digits_is_read_or_refused(digits: int) -> None:
    for text in ("9" * digits, f"{'9' * digits} kg", f"0.{'9' * digits} kg"):
        try:
            assert Mass.parse(text).grams <= 1_000_000
        except ValueError as error:
            assert len(str(error)) < 150  # noqa: PT017  # either way is right


@given(st.integers(0, 1_000_000))
def test_a_mass_in_kilograms_keeps_its_label(grams: int) -> None:
    mass = Mass(grams)
    assert Mass.parse(mass.label) == mass
    assert mass.kg * 1000 == pytest.approx(grams)


@given(st.integers(1, 22_000))
def test_a_mass_in_pounds_keeps_its_label_to_a_tenth(tenths: int) -> None:
    label = Mass.parse(f"{tenths / 10:.1f} lb").label
    assert label == f"{tenths / 10:g} lb"


@given(st.integers(1, 40))
def test_many_plates_in_pounds_still_print_right(count: int) -> None:
    assert in_unit(Mass.parse("45 lb").grams * count, "lb") == str(45 * count)
    assert abs(Mass.parse("45 lb").grams - 45 * GRAMS_PER_POUND) <= 0.5


def test_limits_have_units_and_include_their_ends() -> None:
    kind = TypeAdapter(Annotated[Metres, within(read_length, "30 cm", "2 m")])
    assert kind.validate_python("300 mm") == 0.3
    assert kind.validate_python("200 cm") == 2
    for text, context in (("29 cm", {"least": "30 cm"}), ("2.01 m", {"most": "2 m"})):
        with pytest.raises(ValidationError) as caught:
            kind.validate_python(text)
        assert [error.get("ctx") for error in caught.value.errors()] == [context]


@pytest.mark.parametrize("value", [3, "3", 3.0, "+3"])
def test_whole_numbers(value: object) -> None:
    kind = TypeAdapter(Annotated[int, Field(ge=0, le=4), WHOLE])
    assert kind.validate_python(value) == 3


@pytest.mark.parametrize("value", [True, None, "1_0", "3.0", 2.5, "three", [3], 5, -1, 10**30])
def test_what_is_no_whole_number_here(value: object) -> None:
    kind = TypeAdapter(Annotated[int, Field(ge=0, le=4), WHOLE])
    with pytest.raises(ValidationError):
        kind.validate_python(value)


@pytest.mark.parametrize("value", [True, None, "1e3", "nan", "inf", float("nan"), "1_0", {}])
def test_what_is_no_decimal(value: object) -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(Annotated[float, DECIMAL]).validate_python(value)


def test_a_limit_of_a_number_stands_in_the_schema_for_editors() -> None:
    schema = TypeAdapter(Annotated[int, Field(ge=0, le=4), WHOLE]).json_schema()
    assert schema == {"type": "integer", "minimum": 0, "maximum": 4}


def test_a_name_is_one_line() -> None:
    kind = TypeAdapter(Name)
    assert kind.validate_python("Box squat") == "Box squat"
    for value in ("", "two\nlines", "x" * 121):
        with pytest.raises(ValidationError):
            kind.validate_python(value)


@pytest.mark.parametrize("unit", ["kg", "lb"])
def test_plates_are_named_as_they_are_stamped(unit: str) -> None:
    # Sizes that are sold: discs of the IWF and IPF rules, and the trade's pound plates.
    kilograms = (0.25, 0.5, 1, 1.25, 1.5, 2, 2.5, 5, 10, 15, 20, 25, 50)
    pounds = (1.25, 2.5, 5, 10, 15, 25, 35, 45, 55, 100)
    for own, sizes in (("kg", kilograms), ("lb", pounds)):
        for size in sizes:
            grams = Mass.parse(f"{size} {own}").grams
            bare = f"{size:g}"
            assert stamped(grams, unit) == (bare if own == unit else f"{bare}\u00a0{own}")

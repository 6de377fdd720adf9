"""The room: rows of masses, plates that can be searched, limits of every thing."""

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import ValidationError

import books
from strength_handbook.model.masses import Masses
from strength_handbook.model.room import MOST_LOADS, Bar, Machine, Plate, Rack, Room


def room(**more: Any) -> Room:
    return Room.model_validate({**books.KG_ROOM, **more})


def messages(kind: type, data: Mapping[str, Any]) -> list[str]:
    with pytest.raises(ValidationError) as caught:
        kind.model_validate(data)  # type: ignore[attr-defined]
    return [error["msg"] for error in caught.value.errors()]


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ({}, "A4"),
        ({"units": "lb"}, "Letter"),
        ({"units": "lb", "paper": "A4"}, "A4"),
        ({"units": "kg", "paper": "letter"}, "Letter"),
    ],
)
def test_paper_goes_with_the_units_unless_it_is_written(
    written: Mapping[str, str], name: str
) -> None:
    assert room(**written).printed_on().name == name


@pytest.mark.parametrize(
    ("row", "kilograms"),
    [
        ({"mass": "8 kg"}, [8]),
        ({"from": "4 kg", "to": "4 kg", "by": "2 kg"}, [4]),
        ({"from": "4 kg", "to": "10 kg", "by": "2 kg"}, [4, 6, 8, 10]),
        ({"from": "2.5 kg", "to": "5 kg", "by": "1.25 kg"}, [2.5, 3.75, 5]),
    ],
)
def test_a_row_has_every_step(row: Mapping[str, str], kilograms: list[float]) -> None:
    assert [mass.kg for mass in Masses.model_validate(row).each()] == kilograms


@given(st.integers(1, 40), st.integers(1, 10), st.integers(0, 40), st.sampled_from(("kg", "lb")))
def test_a_row_of_any_length_is_even(start: int, step: int, count: int, unit: str) -> None:
    row = {
        "from": f"{start} {unit}", "to": f"{start + count * step} {unit}", "by": f"{step} {unit}"
    }  # fmt: skip
    masses = Masses.model_validate(row).each()
    assert [mass.label for mass in masses] == [
        f"{start + i * step} {unit}" for i in range(count + 1)
    ]


@pytest.mark.parametrize(
    ("row", "message"),
    [
        ({}, "write either 'mass', or 'from', 'to' and 'by'"),
        ({"mass": "8 kg", "by": "1 kg"}, "write either 'mass', or 'from', 'to' and 'by'"),
        ({"from": "4 kg", "to": "8 kg"}, "write either 'mass', or 'from', 'to' and 'by'"),
        (
            {"from": "8 kg", "to": "4 kg", "by": "2 kg"},
            "the row must go up; it begins at 8 kg and ends at 4 kg",
        ),
        (
            {"from": "4 kg", "to": "9 kg", "by": "2 kg"},
            "steps of 2 kg from 4 kg do not end at 9 kg; check 'by' and 'to'",
        ),
        (
            {"from": "4 kg", "to": "40 kg", "by": "100 g"},
            "this row has more than 200 masses; check 'by'",
        ),
    ],
)
def test_a_row_that_is_none(row: Mapping[str, str], message: str) -> None:
    assert messages(Masses, row) == [message]


def quarter_kilo_set() -> list[dict[str, Any]]:
    masses = (25, 20, 15, 10, 5, 2.5, 2, 1.5, 1, 0.75, 0.5, 0.25)
    pairs = (8, 4, 2, 3, 3, 3, 2, 2, 2, 2, 2, 2)
    return [{"mass": f"{m} kg", "pairs": n} for m, n in zip(masses, pairs, strict=True)]


def test_a_full_set_down_to_quarter_kilos_is_welcome() -> None:
    assert len(room(plates=quarter_kilo_set()).plates) == 12


@pytest.mark.parametrize(
    ("plates", "part"),
    [
        ([{"mass": f"{20 + i} kg", "pairs": 20} for i in range(3)], "there are 60 pairs here"),
        (
            [
                {"mass": f"{mass} kg", "pairs": 4}
                for mass in (1.013, 2.027, 3.041, 5.077, 7.103, 11.1)
            ],
            "more than 5000 different loads",
        ),
        ([{"mass": f"{i + 1} kg", "pairs": 1} for i in range(25)], "at most 24 items"),
    ],
)
def test_plates_that_cannot_be_searched_in_time(plates: list[Any], part: str) -> None:
    (message,) = messages(Room, {**books.KG_ROOM, "plates": plates})
    assert part in message


@settings(deadline=None)
@given(st.lists(st.tuples(st.integers(1, 80), st.integers(0, 3)), max_size=5))
def test_loads_are_counted_as_they_add_up(plates: list[tuple[int, int]]) -> None:
    """The same count by brute force, for masses on an odd grid."""
    sums = {0}
    for mass, pairs in plates:
        sums = {total + mass * 123 * n for total in sums for n in range(2 * pairs + 1)}
    data = {
        **books.KG_ROOM,
        "plates": [{"mass": f"{mass * 0.123:.3f} kg", "pairs": pairs} for mass, pairs in plates],
    }
    if len(sums) <= MOST_LOADS:
        Room.model_validate(data)
    else:
        assert len(messages(Room, data)) == 1


@pytest.mark.parametrize(("pairs", "loads"), [(2, 3645), (3, 5103)])
def test_the_limit_is_a_number_of_loads(pairs: int, loads: int) -> None:
    """Masses that each outweigh all smaller ones twice over: every choice is a load of its own."""
    masses = [50 * 3**power for power in range(6)]
    plates = [{"mass": f"{mass} g", "pairs": 1} for mass in masses]
    plates.append({"mass": f"{50 * 3**6} g", "pairs": pairs})
    assert loads == 3**6 * (2 * pairs + 1)
    data = {**books.KG_ROOM, "plates": plates}
    if loads <= MOST_LOADS:
        Room.model_validate(data)
    else:
        assert len(messages(Room, data)) == 1


@pytest.mark.parametrize(
    ("kind", "data"),
    [
        (Bar, {"name": "bar", "mass": "101 kg"}),
        (Bar, {"name": "bar", "mass": "20 kg", "limit": "19 kg"}),
        (Bar, {"name": "bar", "mass": "20 kg", "sleeve": "2 m"}),
        (Bar, {"name": "bar", "mass": "20 kg", "between-collars": "4 m"}),
        (Plate, {"mass": "0 kg", "pairs": 1}),
        (Plate, {"mass": "101 kg", "pairs": 1}),
        (Plate, {"mass": "20 kg", "pairs": 21}),
        (Plate, {"mass": "20 kg", "pairs": -1}),
        (Plate, {"mass": "20 kg", "pairs": 1, "thickness": "30 cm"}),
        (Rack, {"name": "rack", "hook-spacing": "20 cm"}),
        (Rack, {"name": "rack", "hook-spacing": "1.1 m", "holes": 0}),
        (Machine, {"name": "press", "by": 0}),
        (Machine, {"name": "press", "from": 10, "to": 5}),
        (Machine, {"name": "press", "to": 10_000, "by": 1}),
        (Machine, {"name": "press", "to": "nan"}),
    ],
)
def test_a_thing_that_cannot_be(kind: type, data: Mapping[str, Any]) -> None:
    assert len(messages(kind, data)) == 1


def test_every_thing_has_a_name() -> None:
    small = room(
        racks={"rack": {"name": "rack", "hook-spacing": "1.1 m"}},
        machines={"press": {"name": "leg press"}},
    )
    assert small.names() == {
        "bar": "bar", "rack": "rack", "press": "leg press", "floor": "floor"
    }  # fmt: skip

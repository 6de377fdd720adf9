"""Ladders: any of them is the sets that its numbers say, and what is uneven is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.ladder import ladder_at
from strength_handbook.dose.printing import dose_line
from strength_handbook.model.dose_part import MOST_PARTS, DosePart
from strength_handbook.reading.long_form import stored
from strength_handbook.reading.notation import read_dose, read_house


def reps_of(line: str) -> list[int]:
    """Repetitions of each set of a line, which comes back from its own line the same."""
    part = DosePart.model_validate(stored(read_dose(line)))
    assert DosePart.model_validate(stored(read_house(dose_line(part)))) == part
    if part.series is None:
        assert part.sets is not None
        assert part.reps is not None
        return [part.reps.low] * part.sets.low
    return [one.reps.low for one in part.series for _ in range(one.sets)]


rungs = st.lists(st.integers(1, 30), min_size=3, max_size=6)
betweens = st.sampled_from(["-", "–", ",", ", ", "/", " - "])


@given(rungs, st.integers(1, 3), betweens, st.sampled_from(range(4)))
def test_a_written_ladder_is_its_numbers(
    numbers: list[int], times: int, between: str, way: int
) -> None:
    written = between.join(map(str, numbers))
    line = (
        f"ladder {written} x {times}",
        f"{times}x ladder {written}",
        f"({written}) x {times}",
        f"{written} ladder x {times}",
    )[way]
    assert reps_of(line) == numbers * times


@given(st.integers(1, 20), st.integers(-4, 4).filter(bool), st.integers(3, MOST_PARTS))
def test_dots_stand_for_even_steps(first: int, step: int, several: int) -> None:
    first = max(first, 1 - step * (several - 1))
    whole = [first + step * one for one in range(several)]
    assert reps_of(f"{whole[0]}-{whole[1]}-…-{whole[-1]}") == whole
    assert reps_of(f"{whole[0]}, {whole[1]}, ..., {whole[-1]}") == whole


@pytest.mark.parametrize(
    ("line", "reps"),
    [
        ("10 down to 1", list(range(10, 0, -1))),
        ("1 up to 4", [1, 2, 3, 4]),
        ("ladder 1 to 3 x 2", [1, 2, 3, 1, 2, 3]),
        ("ladder of 2, 4", [2, 4]),
        ("10-9-8-…-1", list(range(10, 0, -1))),
    ],
)
def test_ladders_as_they_are_called(line: str, reps: list[int]) -> None:
    assert reps_of(line) == reps


@pytest.mark.parametrize("line", ["1-2-4-…-9", "2-4-…-9", "3-2-…-9", "5-5-…-5", "ladder 0-3"])
def test_uneven_ladders_are_refused(line: str) -> None:
    with pytest.raises(NotationError):
        read_dose(line)


@pytest.mark.parametrize("line", ["1x5, 1x3", "5 @ 65 %, 3 @ 75 %", "3x8-12", "12/10/8", "1, 2, 3"])
def test_what_is_no_ladder_is_left_alone(line: str) -> None:
    assert ladder_at(line, 0, sets=False) is None
    assert ladder_at("ladder 1-2-3", 0, sets=True) is None

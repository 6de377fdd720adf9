"""Hand weights in one line."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.publish.first_gym.listed import Row, read_hands
from strength_handbook.publish.first_gym.things_said import read_things


def spelled(line: str, unit: str = "kg") -> str:
    found, wrong = read_hands(line, unit)
    parts = []
    for one in found:
        for mass in one.masses:
            masses = (
                f"{mass.low}-{mass.high} by {mass.step}"
                if isinstance(mass, Row)
                else str(mass.mass)
            )
            parts.append(f"{one.kind} {masses} {mass.unit} x{mass.number}")
    return ", ".join(wrong or parts)


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        ("5-50 by 5", "dumbbell 5-50 by 5 kg x2"),
        ("dumbbells from 4 to 30 in steps of 2", "dumbbell 4-30 by 2 kg x2"),
        ("DBs 4–30 kg in 2s x 4", "dumbbell 4-30 by 2 kg x4"),
        ("dumbbells 10, 12.5; kettlebells 16, 24x2",
         "dumbbell 10 kg x2, dumbbell 12.5 kg x2, kettlebell 16 kg x1, kettlebell 24 kg x2"),
        ("5-50 lb by 5, 60 lb", "dumbbell 5-50 by 5 lb x2, dumbbell 60 lb x2"),
        ("dumbbells 10-60 by 5, two of each", "dumbbell 10-60 by 5 kg x2"),
        ("10-60 by 5, a pair of each; kettlebells 12, 16",
         "dumbbell 10-60 by 5 kg x2, kettlebell 12 kg x1, kettlebell 16 kg x1"),
        ("5-50 by 5 (2 pairs of each)", "dumbbell 5-50 by 5 kg x4"),
        ("5-50 by 5 and one of each size", "dumbbell 5-50 by 5 kg x1"),
        ("5-50 by 5 in pairs, kettlebells 8, 12, two each",
         "dumbbell 5-50 by 5 kg x2, kettlebell 8 kg x2, kettlebell 12 kg x2"),
        ("dumbbells 4, 6, three of each", "dumbbell 4 kg x3, dumbbell 6 kg x3"),
        ("none", ""),
        ("", ""),
    ],
)  # fmt: skip
def test_hand_weights(line: str, meant: str) -> None:
    assert spelled(line) == meant


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("5-50", "'5-50' says no step; write 'dumbbells 5-50 kg by 2'"),
        ("5-50 by 4", "in steps of 4 write '5-49 by 4'"),
        ("50-5 by 5", "write the lightest first"),
        ("kettlebells", "'kettlebells': from what to what? Write 'kettlebells 12, 16, 24'"),
        ("4 kg, two of each, 6 kg", "'two of each' says no mass"),
        ("5-50 by 5, 40 of each", "from 1 to 12 of a mass, not 40"),
        ("some", "can't read 'some' in 'some'; write it like 'dumbbells 4-30 by 2'"),
        ("1-400 by 1", "are too many; check the step"),
    ],
)
def test_what_to_write_instead(line: str, says: str) -> None:
    assert says in spelled(line)


@given(st.text(alphabet="0123456789x-– ,;bykgldumbelstin.\n", max_size=50) | st.text(max_size=30))
def test_any_text_is_read_or_refused_in_words(line: str) -> None:
    found, _ = read_hands(line, "kg")
    for one in found:
        assert all(mass.number > 0 for mass in one.masses)
        rows = [mass for mass in one.masses if isinstance(mass, Row)]
        assert all(Decimal(0) < row.low <= row.high and row.step > 0 for row in rows)
    things, _ = read_things(line, "kg")
    assert all(thing.number is None or 0 < thing.number <= 100 for thing in things)
